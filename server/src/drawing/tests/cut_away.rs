//! The cut-away over the examples and over made-up plans at their ends.

use super::*;

/// Made-up plans at the ends of what the cut-away has to draw.
fn extremes() -> Vec<(String, SitePlan)> {
    let mut plans = plans();
    let mut add = |name: &str, change: fn(&mut SitePlan)| {
        for kind in [FloorKind::Ground, FloorKind::Slab, FloorKind::Deck] {
            for units in [Units::Metric, Units::Imperial] {
                let mut plan = SitePlan::unknown();
                plan.units = Some(units);
                plan.floor.kind = Some(kind);
                change(&mut plan);
                plans.push((format!("{name}, {kind:?}, {units:?}"), plan));
            }
        }
    };
    add("the smallest block", |plan| {
        (plan.block.length_m, plan.block.width_m, plan.block.depth_m) =
            (Some(0.3), Some(0.3), Some(0.3));
        plan.pier.plate_side_mm = Some(200.0);
    });
    add("a block of six metres", |plan| {
        plan.excavation.max_length_m = Some(8.0);
        plan.excavation.max_width_m = Some(8.0);
        (plan.block.length_m, plan.block.width_m, plan.block.depth_m) =
            (Some(6.0), Some(5.0), Some(1.2));
    });
    add("a column of four metres, a high floor", |plan| {
        plan.pier.height_m = Some(4.0);
        plan.floor.level_m = Some(2.5);
        plan.floor.supports = Some(vec![[-1.0, -1.0], [-1.0, 1.0], [1.0, 1.0], [1.0, -1.0]]);
    });
    add("a camera lens", |plan| {
        (plan.load.mass_kg, plan.load.aperture_mm) = (Some(1.0), Some(10.0));
    });
    add("a telescope of three metres", |plan| {
        (plan.load.mass_kg, plan.load.aperture_mm) = (Some(3000.0), Some(3000.0));
    });
    add("water in a wide pit", |plan| {
        plan.excavation.sides = Some(Sides::Sloped);
        plan.site.groundwater_depth_m = Some(0.4);
        plan.site.topsoil_depth_m = Some(0.3);
        plan.site.rock_depth_m = Some(0.7);
    });
    plans
}

#[test]
fn the_cut_away_shows_every_plan_with_few_labels() {
    let (mut found, mut drawn) = (Vec::new(), 0);
    for (name, plan) in examples().into_iter().chain(extremes()) {
        let Some((brief, design)) = designed(&plan) else {
            continue;
        };
        drawn += 1;
        let sheet = by_name("cut-away", &brief, &design).expect("a cut-away");
        let phone = on_a_phone("cut-away", &brief, &design).expect("a cut-away");
        found.extend(faults(&name, &sheet, WIDEST));
        found.extend(phone_faults(&name, &phone));
        let picture = crate::drawing::cut_away::layout(&brief, &design);
        let count = crate::drawing::cut_away::words(&brief, &design, &picture)
            .labels()
            .len();
        assert!((3..=6).contains(&count), "{name}: {count} labels");
        // On the telephone each label is a number in its ring and a number of the list.
        for number in 1..=count {
            let shown = labels(&phone)
                .iter()
                .filter(|label| label.bold && label.text == number.to_string())
                .count();
            assert_eq!(shown, 2, "{name}: number {number}");
        }
        for drawing in [&sheet, &phone] {
            let text = svg::write(drawing);
            assert!(!text.contains("NaN") && !text.contains("inf"), "{name}");
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
    assert!(drawn > 35, "{drawn} plans were drawn");
}
