//! The cases on a metre cube, and what must hold for any block.

use super::*;
use crate::brief::{Brief, resolve};
use crate::halfspace::NoShelf;
use crate::site_plan::SitePlan;
use crate::site_plan::block::FrostRemedy;
use crate::site_plan::site::Soil;
use crate::stages::ground_stiffness::GroundStiffness;

fn plan(change: impl FnOnce(&mut SitePlan)) -> SitePlan {
    let mut plan = SitePlan::unknown();
    plan.site.soil = Some(Soil::FirmClay);
    plan.site.poisson_ratio = Some(0.35);
    plan.block.length_m = Some(1.0);
    plan.block.width_m = Some(1.0);
    plan.block.depth_m = Some(1.0);
    change(&mut plan);
    plan
}

fn case_of(change: impl FnOnce(&mut SitePlan)) -> Case {
    let brief: Brief = resolve(&plan(change)).unwrap();
    let ground = crate::stages::ground::stage(&brief).value;
    let room = crate::stages::room::room(&brief, &ground);
    let loads = crate::stages::loads::stage(&brief).value;
    let block = crate::stages::block::stage(&brief, &ground, &room, &loads).value;
    of(&brief, &ground, &block)
}

fn stiffness(change: impl FnOnce(&mut SitePlan)) -> GroundStiffness {
    let (brief, shelf) = (resolve(&plan(change)).unwrap(), NoShelf);
    let ground = crate::stages::ground::stage(&brief).value;
    let room = crate::stages::room::room(&brief, &ground);
    let loads = crate::stages::loads::stage(&brief).value;
    let block = crate::stages::block::stage(&brief, &ground, &room, &loads).value;
    super::super::stage(&brief, &ground, &block, &shelf).value
}

fn found(change: impl FnOnce(&mut SitePlan)) -> SideContact {
    stiffness(change).side_contact.unwrap()
}

/// Engineering basis, section 2: where nothing is known 0.50, 0.73 and 1.00 of the bonded rocking stiffness of a metre cube,
/// scatter of the logarithm 0.22; a ravelled sand face 0.24, 0.43 and 0.77; shrinking clay 0.17, 0.39 and 0.81, 0.28. The
/// basis's own figures are of a disc by finite elements; a square block by the solver, with a curve between four depths, is within
/// 0.045 of them, and within 0.02 where nothing is known.
#[test]
fn the_metre_cube_has_the_evidences_range() {
    for (soil, expected, sd) in [
        (Soil::FirmClay, [0.50, 0.73, 1.00], 0.22),
        (Soil::MediumSand, [0.24, 0.43, 0.77], 0.22),
        (Soil::ShrinkingClay, [0.17, 0.39, 0.81], 0.28),
    ] {
        let contact = found(|plan| {
            plan.site.soil = Some(soil);
            plan.site.shear_wave_speed_m_s = Some(150.0);
        });
        for (ratio, expected) in [contact.low, contact.typical, contact.high]
            .into_iter()
            .zip(expected)
        {
            let within = if soil == Soil::FirmClay { 0.02 } else { 0.045 };
            assert!((ratio - expected).abs() < within, "{soil:?} {contact:?}");
        }
        assert!((contact.sd_ln - sd).abs() < 0.02, "{soil:?} {contact:?}");
    }
}

/// A stated contact is the middle, as a stated speed is; only how hard the ground is against it stays open.
#[test]
fn a_stated_contact_is_the_middle() {
    let all = found(|plan| {
        plan.block.side_contact_from_m = Some(0.0);
        plan.block.side_contact_to_m = Some(1.0);
    });
    assert!((all.typical - 1.0).abs() < 0.01 && (all.high - 1.0).abs() < 0.01);
    // 0.17 + 0.70 · 0.83: what is left when three tenths of the grip are lost.
    assert!((all.low - 0.75).abs() < 0.02, "{all:?}");
    let none = found(|plan| {
        plan.block.side_contact_from_m = Some(1.0);
        plan.block.side_contact_to_m = Some(1.0);
    });
    assert!(none.low == none.high && none.sd_ln == 0.0 && (none.typical - 0.17).abs() < 0.01);
}

#[test]
fn what_the_plan_says_of_the_sides_chooses_the_case() {
    use crate::site_plan::excavation::Sides;
    assert_eq!(
        case_of(|_| ()).words,
        case_of(|plan| plan.site.soil = Some(Soil::Silt)).words
    );
    let frost = |remedy| {
        case_of(|plan| {
            plan.site.frost_depth_m = Some(0.8);
            plan.block.frost_remedy = Some(remedy);
        })
        .lost_m
    };
    let known = Spread {
        low: 0.8,
        typical: 0.4,
        high: 0.0,
    };
    assert_eq!(frost(FrostRemedy::None), known);
    // Boards keep the frost out of the ground beside the block, all but a hand's breadth.
    assert_eq!(frost(FrostRemedy::Insulation), case_of(|_| ()).lost_m);
    // Gravel grows no ice, and a frost of which nobody spoke is not counted against the sides.
    let gravel = |frost| {
        case_of(|plan| {
            plan.site.soil = Some(Soil::Gravel);
            plan.site.frost_depth_m = frost;
        })
    };
    assert_eq!(gravel(Some(1.5)), gravel(None));
    let sloped = case_of(|plan| plan.excavation.sides = Some(Sides::Sloped));
    assert!(sloped.is_stated && sloped.words.contains("no side"));
    assert!(case_of(|plan| plan.block.side_contact_from_m = Some(0.2)).is_stated);
}

/// Nothing that takes contact away makes any end of the rocking stiffness stiffer, and no small step makes a jump of a tenth.
#[test]
fn less_contact_is_never_stiffer_and_nothing_jumps() {
    let designed = |change: &dyn Fn(&mut SitePlan)| {
        let of = stiffness(change);
        [of.low, of.typical, of.high]
            .map(|ground| crate::units::newton_metre_per_radian::get(ground.rocking_y.unwrap()))
    };
    type Step = (&'static str, f64, f64, usize, fn(&mut SitePlan, f64));
    let steps: [Step; 3] = [
        ("topsoil", 0.0, 0.6, 12, |plan, at| {
            plan.site.topsoil_depth_m = Some(at)
        }),
        ("frost", 0.0, 1.0, 20, |plan, at| {
            plan.site.frost_depth_m = Some(at);
            plan.block.frost_remedy = Some(FrostRemedy::None);
        }),
        ("contact", 0.0, 0.6, 12, |plan, at| {
            plan.block.side_contact_from_m = Some(at);
            plan.block.side_contact_to_m = Some(1.0);
        }),
    ];
    for (name, from, to, count, set) in steps {
        let all: Vec<[f64; 3]> = (0..=count)
            .map(|i| designed(&|plan| set(plan, from + (to - from) * i as f64 / count as f64)))
            .collect();
        for (i, pair) in all.windows(2).enumerate() {
            for (end, (before, after)) in pair[0].iter().zip(&pair[1]).enumerate() {
                let ratio = after / before;
                assert!(ratio <= 1.0 + 5e-3, "{name} {i} {end}: {ratio}");
                assert!(ratio > 0.9, "{name} {i} {end}: {ratio}");
            }
        }
    }
}

#[test]
fn the_share_is_said_in_plain_words() {
    let said = found(|_| ()).sentence();
    assert_eq!(
        said,
        "We count on about three quarters of what a perfect grip of the ground would give; at worst a half."
    );
}
