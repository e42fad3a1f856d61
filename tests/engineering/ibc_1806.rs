//! International Building Code, Table 1806.2 (2012 text): presumptive values, in the units printed there.

use stillground::brief::resolve;
use stillground::site_plan::SitePlan;
use stillground::site_plan::site::Soil;
use stillground::stages::ground;
use stillground::units::kilopascal;
use stillground_tests::close;

/// The table's own footnote: 1 psf = 0.0479 kPa.
const PSF_KPA: f64 = 0.0479;

fn presumed(soil: Soil) -> Option<f64> {
    let mut plan = SitePlan::unknown();
    plan.site.soil = Some(soil);
    ground::stage(&resolve(&plan).unwrap())
        .value
        .presumed_bearing
        .map(kilopascal::get)
}

#[test]
fn the_least_that_is_presumed_is_the_codes_for_the_same_material_or_less() {
    for (soil, psf) in [
        (Soil::Rock, 4_000.0),
        (Soil::Gravel, 3_000.0),
        (Soil::DenseSand, 2_000.0),
        (Soil::MediumSand, 2_000.0),
        (Soil::HardClay, 1_500.0),
        (Soil::StiffClay, 1_500.0),
        (Soil::FirmClay, 1_500.0),
    ] {
        close(soil.key(), presumed(soil).unwrap(), psf * PSF_KPA, 2e-3);
    }
    for (soil, psf) in [
        (Soil::WeatheredRock, 4_000.0),
        (Soil::Silt, 1_500.0),
        (Soil::SoftClay, 1_500.0),
        (Soil::LooseSand, 2_000.0),
    ] {
        assert!(presumed(soil).unwrap() < psf * PSF_KPA, "{}", soil.key());
    }
}

#[test]
fn mud_peat_and_fill_have_no_presumptive_value() {
    // 1806.2, last paragraph: no presumptive value for organic silt and clay, peat and unprepared fill.
    for soil in [Soil::Peat, Soil::MadeGround, Soil::ShrinkingClay] {
        assert_eq!(presumed(soil), None, "{}", soil.key());
    }
}
