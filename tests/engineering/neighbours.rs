//! Plans beside their neighbours: what is worse is never better, and nothing jumps that no rule makes jump. What the example
//! `neighbours` found over many made-up plans is kept here, a plan for each fault; the laws are judgement.

use stillground::brief::resolve;
use stillground::design::{Design, design};
use stillground::halfspace::SmallShelf;
use stillground::notes::Verdict;
use stillground::site_plan::{SitePlan, Use};
use stillground_tests::example;
use stillground_tests::generated::{Dice, plan_on};
use stillground_tests::neighbours::{LAWS, Search, broken, figures, is_shaped, movable, pinned};

fn designed(plan: &SitePlan, shelf: &SmallShelf) -> Design {
    design(&resolve(plan).unwrap(), shelf)
}

/// A garden's pier past which nobody walks: a walk's steps take most of a design's time.
fn garden() -> (SitePlan, SmallShelf) {
    let mut plan = example("firm-clay-garden");
    plan.floor.walk = Some(Vec::new());
    (plan, SmallShelf::holding(16))
}

/// A block that tips in the storm was once held against half of its side, which used less of it than the ground's pressure
/// had used at a smaller gust.
#[test]
fn a_gust_that_tips_the_block_leaves_it_no_bearing() {
    let (mut plan, shelf) = garden();
    plan.load.wind_area_m2 = Some(6.0);
    plan.block.length_m = Some(0.8);
    plan.block.width_m = Some(0.8);
    plan.block.depth_m = Some(0.8);
    let (mut before, mut tipped) = (0.0, 0);
    for gust in (20..=60).step_by(4) {
        plan.site.design_gust_m_s = Some(f64::from(gust));
        let found = designed(&plan, &shelf);
        let check = found.checks.iter().find(|c| c.id == "block.bearing");
        let check = check.unwrap();
        let used = figures::usage(check).unwrap();
        assert!(used >= before, "{gust} m/s: {used} after {before}");
        if used.is_infinite() {
            tipped += 1;
            assert_eq!((check.verdict, check.capacity), (Verdict::Fails, Some(0.0)));
        }
        before = used;
    }
    assert!((1..10).contains(&tipped), "{tipped}");
}

/// Where the flow round a thick column changes, its drag falls at once to little more than half; the wind that is observed in
/// passes through the slower speeds too.
#[test]
fn a_faster_wind_never_moves_the_star_less() {
    let (mut plan, shelf) = garden();
    plan.pier.outside_diameter_mm = Some(457.0);
    plan.pier.wall_mm = Some(10.0);
    plan.load.wind_area_m2 = Some(0.0);
    let mut before = 0.0;
    for tenth in 60..72 {
        plan.load.observing_wind_m_s = Some(f64::from(tenth) / 10.0);
        let arcsec = designed(&plan, &shelf).motion.wind_arcsec.unwrap();
        assert!(
            arcsec >= before * (1.0 - 1e-9),
            "{tenth}: {arcsec} after {before}"
        );
        before = arcsec;
    }
}

/// A mount that swings the star by hundreds of its widths was once seen through cells as wide as several of them, and its growth
/// went to and fro by twenty times with the swing's frequency.
#[test]
fn a_bump_on_a_soft_mount_costs_what_its_neighbour_costs() {
    let (mut plan, shelf) = garden();
    plan.purpose = Some(Use::DeepSky);
    let bump = |hertz: f64| {
        let mut plan = plan.clone();
        plan.load.mount_frequency_hz = Some(hertz);
        let found = designed(&plan, &shelf);
        let bump = found.motion.conduct.iter().find(|one| one.id == "bump");
        bump.unwrap().star_growth_ratio.unwrap().worst
    };
    let mut before = bump(0.5);
    for step in 1..=20 {
        let now = bump(0.5 + 0.005 * f64::from(step));
        assert!(
            (now - before).abs() < 0.1 * now.max(before).max(0.005),
            "{step}: {now} {before}"
        );
        before = now;
    }
}

/// Some made-up plans, each against every law and searched for a jump; the example does the same with as many as one likes.
#[test]
fn made_up_plans_stand_well_beside_their_neighbours() {
    let (shelf, mut searched) = (SmallShelf::holding(16), 0);
    for number in 40..52 {
        let (mut plan, _) = plan_on(2, None, number);
        plan.floor.walk = Some(Vec::new());
        let brief = resolve(&plan).unwrap();
        let said = pinned(&plan, &brief, &design(&brief, &shelf));
        let Ok(brief) = resolve(&said) else { continue };
        let (base, mut dice) = (design(&brief, &shelf), Dice::new(!number));
        for law in LAWS.iter().filter(|law| !is_shaped(law.field)) {
            let found = broken(law, &said, &base, &mut dice, &shelf);
            assert_eq!(found, Vec::new(), "plan {number}");
        }
        let search = Search {
            plan: &said,
            base: &base,
            watched: figures::figures,
            shelf: &shelf,
        };
        for field in movable().filter(|field| !is_shaped(field.path)).step_by(12) {
            let found = search.jump(field, &mut dice);
            assert_eq!(
                found.filter(|jump| jump.rule.is_none()),
                None,
                "plan {number}"
            );
            searched += 1;
        }
    }
    assert!(searched > 30, "{searched}");
}
