//! Vertical cuts in clay: printed answers of textbook and examination problems, H = 4 c/γ; strengths of BS 5930's words.

use stillground::rules::terzaghi_1943::vertical_cut::{cracked, whole};
use stillground::site_plan::site::Soil;
use stillground::stages::ground::soil_table::row;
use stillground::units::{kilonewton_per_cubic_metre, kilopascal, metre};
use stillground_tests::close;

#[test]
fn printed_answers() {
    // Three problems with their printed answers: c 15, γ 20: 3 m; c 14, γ 21: 2.67 m; c 30, γ 15: 8 m.
    for (strength, weight, height) in [(15.0, 20.0, 3.0), (14.0, 21.0, 2.67), (30.0, 15.0, 8.0)] {
        let found = whole(
            kilopascal::new(strength),
            kilonewton_per_cubic_metre::new(weight),
        );
        close("critical height", metre::get(found), height, 2e-3);
    }
}

#[test]
fn a_cracked_face_falls_at_two_thirds() {
    // Terzaghi's 2.67 c/γ.
    let (strength, weight) = (kilopascal::new(40.0), kilonewton_per_cubic_metre::new(18.5));
    close(
        "cracked",
        metre::get(cracked(strength, weight)),
        2.67 * 40.0 / 18.5,
        2e-3,
    );
}

#[test]
fn words_of_bs_5930() {
    // Soft 20 to 40 kPa, firm 40 to 75, stiff 75 to 150, very stiff 150 to 300: the table has each word's low end.
    let strengths = [
        Soil::SoftClay,
        Soil::FirmClay,
        Soil::StiffClay,
        Soil::HardClay,
    ]
    .map(|soil| row(soil).undrained_strength_kpa);
    assert_eq!(strengths, [Some(20.0), Some(40.0), Some(75.0), Some(150.0)]);
}

#[test]
fn slope_types_follow_from_the_words_strengths() {
    // 29 CFR 1926 Subpart P, Appendix A: unconfined strength 2 c of at most 48 kPa is C, 48 to 144 kPa B; above that A only
    // where no fissure, vibration or earlier digging weakens it, which no word can say.
    use stillground::rules::osha_1926_p_1989::slopes::SlopeType;
    let soft = row(Soil::SoftClay);
    assert!(2.0 * soft.undrained_strength_kpa.unwrap() <= 48.0 && soft.slope_type == SlopeType::C);
    let firm = row(Soil::FirmClay);
    assert!(
        (48.0..144.0).contains(&(2.0 * firm.undrained_strength_kpa.unwrap()))
            && firm.slope_type == SlopeType::B
    );
    assert_eq!(
        [Soil::StiffClay, Soil::HardClay].map(|soil| row(soil).slope_type),
        [SlopeType::B; 2]
    );
}
