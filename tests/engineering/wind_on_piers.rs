//! Wind against worked figures: Steel Buildings in Europe, Multi-Storey Steel Buildings Part 3, Appendix A (EN 1991-1-4
//! Annex B, read), and the Davenport-like facts of this project's basis.

use stillground::rules::en_1991_1_4_2005::{cylinder, gust, turbulence};
use stillground::units::{hertz, metre, metre_per_second, newton, pascal, square_metre};
use stillground_tests::close;

/// MSB03 App. A, page 41: f_L 9.89 → S_L 0.0302; δ 0.0503, R_h 0.0465, R_b 0.153 → R² 0.0211.
#[test]
fn the_resonant_factor_of_the_worked_building_comes_out() {
    let spectrum = turbulence::spectrum_ratio(9.89);
    close("S_L", spectrum, 0.0302, 5e-3);
    close(
        "R²",
        turbulence::resonance_ratio(0.0503, spectrum) * 0.0465 * 0.153,
        0.0211,
        5e-3,
    );
}

/// EN 1991-1-4, 4.3 to 4.5, computed in the basis: 26 m/s at 10 m over 0.05 m has I_v 0.1887 and, with 7 I_v, 993.8 Pa at 26.17 m/s.
#[test]
fn the_peak_pressure_of_the_standard_terrain_comes_out() {
    let intensity = turbulence::intensity_ratio(metre::new(10.0), metre::new(0.05));
    close("I_v", intensity, 0.1887, 1e-3);
    close(
        "q_p",
        (1.0 + 7.0 * intensity) * pascal::get(gust::pressure(metre_per_second::new(26.17))),
        993.8,
        2e-3,
    );
}

/// The basis: at 5 m/s at 10 m only 3.9 per cent of the variance is above 1 Hz.
#[test]
fn little_of_the_wind_is_faster_than_a_second() {
    let length = turbulence::length_scale(metre::new(10.0), metre::new(0.05));
    let eddies = turbulence::eddies_ratio(hertz::new(1.0), length, metre_per_second::new(5.0));
    close("share", turbulence::share_above_ratio(eddies), 0.039, 0.05);
}

/// The basis: tube 0.25 by 1.0 m at 3, 5 and 8 m/s: 1.7, 4.7 and 12 N.
#[test]
fn a_tube_in_a_breeze_feels_newtons() {
    for (speed, expected) in [(3.0, 1.7), (5.0, 4.7), (8.0, 12.0)] {
        let speed = metre_per_second::new(speed);
        let drag = cylinder::cylinder_factor(speed, metre::new(0.25));
        close(
            "F",
            newton::get(gust::force(speed, square_metre::new(0.25), drag)),
            expected,
            0.02,
        );
    }
}

/// EN 1991-1-4, B.2: at ν = 0.23 Hz and 600 s the peak factor is 3.33.
#[test]
fn the_peak_factor_is_that_of_the_code() {
    let root = (2.0f64 * (0.23f64 * 600.0).ln()).sqrt();
    close(
        "k_p",
        turbulence::peak_factor(hertz::new(0.23)),
        root + 0.6 / root,
        1e-12,
    );
    close("k_p", turbulence::peak_factor(hertz::new(0.23)), 3.33, 5e-3);
}
