//! The pit: buried services, size, soil met, water.

use super::Job;
use super::bands::{number, number_or, up_to};
use crate::figure::Unit;
use crate::record::item::{Answer, Asks, Item};
use crate::record::verdict::Verdict;
use crate::rules::osha_1926_p_1989::distances;
use crate::site_plan::site::Soil;
use crate::source::Source;
use crate::stages::ground::soil_table::{Group, row, words};
use crate::units::metre;

/// Shallower or narrower by more than this changes the block, mm and in.
const SHORT: (f64, f64) = (50.0, 2.0);
/// Shallower by up to this is the unevenness of a trimmed bottom.
const TRIM: (f64, f64) = (10.0, 0.5);
/// Deeper or wider by more than this is filled with something.
const LOOSE: (f64, f64) = (30.0, 1.0);
/// Deeper by more than this is another pit.
const OTHER: (f64, f64) = (150.0, 6.0);
/// Water closer than this under the bottom may rise into it.
const NEAR_WATER: (f64, f64) = (300.0, 12.0);
/// Water that comes this much higher than expected is told.
const HIGHER: (f64, f64) = (100.0, 4.0);
const PLANNER: &str = "whoever made the plan";

pub(super) fn items(job: &Job, items: &mut Vec<Item>) {
    items.push(services());
    items.push(depth(job));
    let pit = &job.design.excavation;
    for (id, title, side) in [
        (
            "pit_length",
            "Length of the pit at the bottom",
            pit.bottom_length,
        ),
        (
            "pit_width",
            "Width of the pit at the bottom",
            pit.bottom_width,
        ),
    ] {
        items.push(side_of(job, id, title, metre::get(side)));
    }
    items.push(soil(job));
    items.push(water(job));
}

fn services() -> Item {
    let unclear = Verdict::stop(
        "do not dig. A find that nobody can name may be a live cable or a gas pipe.",
        "the owners of the services, and whoever made the plan",
    );
    let marked = Verdict::outside(
        "keep the marks, dig by hand near them, and tell whoever made the plan before the pit is set out.",
    );
    let answers = vec![
        Answer::fine("none", "nothing found, plans and ground looked at"),
        Answer::then("marked", "found and marked", marked),
        Answer::then("unclear", "something found that nobody can name", unclear),
    ];
    Item::new("services_found", "services", "Buried services", "nothing under the pit", Asks::Choice(answers))
        .lead("Buried services:")
        .how("Plans of the owners in hand, the ground swept with a locator. Anything that cannot be named stops the digging.")
}

fn depth(job: &Job) -> Item {
    let (pit, units) = (&job.design.excavation, |value| job.say(value, Unit::Metre));
    let depth = metre::get(pit.depth);
    let shallow = format!(
        "do not go on. The block would be lighter and its base nearer to the frost. Dig on to {} and measure again.",
        units(depth)
    );
    let protected = if pit.protection {
        ""
    } else {
        " Nobody enters a pit that is deeper than its sides were planned for."
    };
    let deep = format!(
        "do not go on. The concrete ordered may not fill it, and the sides stand higher than was planned.{protected}"
    );
    let fill = "never put loose soil back under the block: fill the difference with concrete, and order that much more.";
    let limit = |(mm, inches)| job.limit_mm(mm, inches) / 1000.0;
    let bands = up_to(
        depth - limit(SHORT),
        Verdict::stop(shallow, "whoever made the plan, if it cannot be dug deeper"),
    )
    .up_to(
        depth - limit(TRIM),
        Verdict::outside(format!("trim the bottom down to {}.", units(depth))),
    )
    .fine_to(depth + limit(LOOSE))
    .up_to(depth + limit(OTHER), Verdict::outside(fill))
    .above(Verdict::stop(deep, PLANNER));
    let limit = units(metre::get(distances::protection_from()));
    Item::new("pit_depth", "inspect", "Depth of the pit found", units(depth), number(Unit::Metre, [0.0, 10.0], bands))
        .lead("Pit depth")
        .how(format!(
            "From a board across the pit at ground level, at each corner and in the middle; write the least. Measure from outside: from \
             {limit} on nobody enters without sides that are held or cut back, and nobody at any depth where a side moves or water seeps."
        ))
}

fn side_of(job: &Job, id: &'static str, title: &'static str, side: f64) -> Item {
    let units = |value| job.say(value, Unit::Metre);
    let limit = |(mm, inches)| job.limit_mm(mm, inches) / 1000.0;
    let bands = up_to(
        side - limit(SHORT),
        Verdict::stop(format!("do not go on. The block would be narrower than planned. Widen it to {}.", units(side)), PLANNER),
    )
    .up_to(side - limit(TRIM), Verdict::outside(format!("trim the side back to {}.", units(side))))
    .fine_to(side + limit(SHORT))
    .above(Verdict::outside("a wider pit takes more concrete where it is poured against the ground: order that much more, or set a form."));
    Item::new(
        id,
        "inspect",
        title,
        units(side),
        number(Unit::Metre, [0.0, 20.0], bands),
    )
}

fn soil(job: &Job) -> Item {
    let planned = job.brief.site.soil.value;
    let answers = Soil::ALL
        .iter()
        .map(|&soil| Answer::then(soil.key(), words(soil), soil_met(planned, soil)))
        .collect();
    Item::new("soil_met", "inspect", "Soil met at the bottom", words(planned), Asks::Choice(answers))
        .lead("Soil met,")
        .how("From the bottom, in the hand, away from the smeared face. Softer ground than the plan's stops the work until the plan was changed.")
        .from(Source::judgement("held against the table of soils"))
}

fn soil_met(planned: Soil, met: Soil) -> Verdict {
    let (had, has) = (row(planned), row(met));
    let engineer = "a ground engineer, and whoever made the plan";
    match (had.speed_m_s, has.speed_m_s) {
        _ if has.group == Group::Unfit => Verdict::stop(
            "do not pour. This ground is not to be built on by a rule.",
            engineer,
        ),
        _ if planned == met => Verdict::Within,
        (Some([_, had_speed, _]), Some([_, speed, _])) if speed < had_speed => {
            let said = format!(
                "do not pour. It is softer than the {} of the plan, and the pier would move more.",
                words(planned)
            );
            Verdict::stop(
                said,
                "whoever made the plan: the plan is changed to the soil that was met",
            )
        }
        _ if has.slope_type > had.slope_type => Verdict::stop(
            "nobody goes down. This soil's sides stand less steep than was planned.",
            "whoever made the plan: the plan is changed to the soil that was met",
        ),
        _ => Verdict::outside("tell whoever made the plan; it is at least as firm as planned."),
    }
}

fn water(job: &Job) -> Item {
    let units = |value| job.say(value, Unit::Metre);
    let depth = metre::get(job.design.excavation.depth);
    let expected = job.design.ground.groundwater_depth.map(metre::get);
    let in_pit = "do not pour, and nobody goes down: water stands above the bottom, loosens it, washes out the cement and brings the sides \
                  in. Keep it out until the bottom is firm and dry, and look again.";
    let near = Verdict::outside(
        "watch it: pour only while the bottom is dry and firm, and tell whoever made the plan, since wet ground is softer.",
    );
    let told =
        Verdict::outside("tell whoever made the plan: the plan assumes dry ground to there.");
    let from = expected.unwrap_or(f64::MAX).min(20.0);
    let limit = |(mm, inches)| job.limit_mm(mm, inches) / 1000.0;
    let bands = up_to(depth, Verdict::stop(in_pit, PLANNER))
        .up_to(depth + limit(NEAR_WATER), near)
        .up_to(from - limit(HIGHER), told)
        .above(Verdict::Within);
    let none = Answer::fine("none", "no water");
    let said = expected.map_or_else(
        || "none expected".to_owned(),
        |depth| format!("at {} or deeper", units(depth)),
    );
    Item::new("water_depth", "inspect", "Water, depth to it below the ground", said, number_or(Unit::Metre, [0.0, 20.0], none, bands))
        .lead("Water at")
        .how(format!("Wait an hour after digging and look again. Water above {} stops the work: do not pour; ask.", units(depth)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::items::bands::fine_to;

    #[test]
    fn softer_or_unfit_ground_stops_and_firmer_does_not() {
        assert_eq!(soil_met(Soil::StiffClay, Soil::StiffClay), Verdict::Within);
        assert!(soil_met(Soil::StiffClay, Soil::SoftClay).is_stop());
        assert!(soil_met(Soil::StiffClay, Soil::Peat).is_stop());
        assert!(
            soil_met(Soil::Peat, Soil::Peat).is_stop(),
            "a plan on peat stops too"
        );
        assert!(!soil_met(Soil::StiffClay, Soil::HardClay).is_stop());
        assert!(
            soil_met(Soil::StiffClay, Soil::DenseSand).is_stop(),
            "sand's sides stand less steep than clay's"
        );
    }

    #[test]
    fn a_limit_below_the_last_adds_no_band() {
        assert_eq!(
            fine_to(2.0)
                .up_to(1.0, Verdict::outside("x"))
                .above(Verdict::Within)
                .len(),
            2
        );
    }
}
