use super::*;
use crate::stages::motion::modes::Mode;
use crate::stages::motion::people::steady;

fn mode(hertz: f64, turn: f64) -> Mode {
    Mode {
        omega: 2.0 * std::f64::consts::PI * hertz,
        damping_ratio: 0.05,
        base: 0.01,
        block_turn: turn,
        top_turn: turn,
        load_turn: turn,
        load_move: 0.0,
        middle_move: 0.0,
        shares: [1.0, 0.0, 0.0, 0.0],
        ground_dynamic_ratio: 1.0,
        shape: Vec::new(),
    }
}

fn planes() -> Planes {
    Planes {
        x: vec![mode(18.0, 0.02), mode(400.0, 0.03)],
        y: vec![mode(25.0, 0.02)],
        shear_speed_m_s: None,
    }
}

#[test]
fn a_load_that_stays_ends_at_the_steady_turn() {
    let load = [30.0, -20.0, 0.0, 500.0, 400.0, 0.0];
    let mut forces = Forces::at_rest(4.0);
    forces.add(&load, 0.0, &vec![1.0; 3000]);
    let end = *run(&planes(), &forces).turns.last().unwrap();
    let expected = steady(&planes(), &load);
    assert!(
        (end[0] / expected[0] - 1.0).abs() < 1e-9 && (end[1] / expected[1] - 1.0).abs() < 1e-9,
        "{end:?} {expected:?}"
    );
}

/// By hand: at rest nothing is a wave; at 20 Hz and 2 m in ground of 150 m/s the phase is 1.676, the ratio of the table
/// 2.262; a blow of 0.075 s has little at 20 Hz, and goes as at 10 Hz (phase 0.838, 1.431).
#[test]
fn a_quick_load_comes_as_a_wave_by_what_the_mode_and_the_blow_are() {
    let at = |hertz: f64, blow_s: f64, speed| {
        let omega = 2.0 * std::f64::consts::PI * hertz;
        Place {
            distance_m: 2.0,
            blow_s,
        }
        .wave_ratio(omega, speed)
    };
    assert!((at(20.0, 0.01, Some(150.0)) - 2.262).abs() < 2e-3);
    assert!((at(20.0, 0.075, Some(150.0)) - 1.431).abs() < 2e-3);
    assert_eq!(
        (at(20.0, 0.01, None), at(0.0, 0.01, Some(150.0))),
        (1.0, 1.0)
    );
}

#[test]
fn a_guider_takes_out_what_stays() {
    let history = History::of(vec![[1.0, -2.0]; 5000]);
    let guided = history.guided(2.0);
    assert!(guided.turns[4000].iter().all(|turn| turn.abs() < 1e-12));
    assert_eq!(guided.turns[500], [1.0, -2.0]);
    assert!(history.rms_arcsec() < 1e-12);
}
