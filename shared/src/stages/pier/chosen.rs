//! The lines of calculation behind the column's height, diameter and wall, where the person left them open.

use crate::brief::pier::{sight, tube};
use crate::brief::{Brief, Origin};
use crate::figure::{Kilogram, KilogramPerMetre, Metre, Millimetre, MillimetreToTheFourth, Unit};
use crate::notes::{Notes, Working};
use crate::rules::tubes::{self, Tube};
use crate::source::Source;
use crate::units::millimetre;

/// Writes them.
pub fn workings(brief: &Brief, notes: &mut Notes) {
    if brief.pier.height.origin == Origin::Assumed {
        height(brief, notes);
    }
    let (outside, wall) = (brief.pier.outside_diameter, brief.pier.wall);
    if outside.origin == Origin::Assumed {
        notes.working(
            swinging(
                "pier.outside_diameter",
                "Outside diameter of the column",
                brief,
            )
            .gives("d", outside.value, Millimetre),
        );
    }
    if wall.origin == Origin::Assumed {
        let working = match outside.origin {
            Origin::Assumed => swinging(
                "pier.wall",
                "Wall of the column, that of the tube so chosen",
                brief,
            ),
            _ => Working::new(
                "pier.wall",
                "Wall of the column",
                "t of the tube that is usual for d",
                tubes::SOURCE,
            )
            .with("d", outside.value, Millimetre),
        };
        notes.working(working.gives("t", wall.value, Millimetre));
    }
}

fn height(brief: &Brief, notes: &mut Notes) {
    let (axis, reason) = sight::wanted_axis(&brief.pier.sight, &brief.load, brief.units);
    notes.working(
        Working::new(
            "pier.height",
            format!("Height of the column: {reason}"),
            "h = H − h_seat, up to the next step s",
            Source::derived("eye height, sight over the walls, swing above the floor"),
        )
        .with("H", axis, Metre)
        .with("h_seat", brief.pier.sight.seat, Metre)
        .with("s", sight::round_m(brief.stock.value), Unit::Metre)
        .gives("h", brief.pier.height.value, Metre),
    );
}

/// Why this tube: the slimmest usual one that swings fast enough with the load on it.
fn swinging(id: &'static str, title: &'static str, brief: &Brief) -> Working {
    let (pier, load) = (&brief.pier, &brief.load);
    let tube = Tube::own(
        millimetre::get(pier.outside_diameter.value),
        millimetre::get(pier.wall.value),
    );
    let steel = pier.steel.value;
    let second_moment = tube::second_moment(&tube, steel);
    let shaft =
        crate::rules::en_10210_2_2006::section::mass_per_length(tube.outside(), tube.wall());
    let formula = "the slimmest usual tube with f ≥ f₀, else the largest; f = 1/(2π √(M c)), c = (h³/3 + e h² + e² h)/(E I), M = m + 33/140 μ h";
    Working::new(
        id,
        title,
        formula,
        Source::derived(brief.stock.value.either(
            "Rayleigh's method, foot held fast; the tubes of EN 10210-2",
            "Rayleigh's method, foot held fast; the pipe of ASME B36.10M",
        )),
    )
    .with("h", pier.height.value, Metre)
    .with("e", load.centre_above_pier.value, Metre)
    .with("m", load.mass.value, Kilogram)
    .with("μ", shaft, KilogramPerMetre)
    .with(
        "E",
        crate::rules::en_1993_1_1_2005::material::E_MPA,
        Unit::Megapascal,
    )
    .with("I", second_moment, MillimetreToTheFourth)
    .with("f₀", tube::WANTED_HZ, Unit::Hertz)
    .with(
        "f",
        tube::held_frequency_hz(&tube, steel, load, pier.height.value),
        Unit::Hertz,
    )
}

#[cfg(test)]
mod tests {
    use crate::decided::design_plan;
    use crate::halfspace::NoShelf;
    use crate::site_plan::SitePlan;

    #[test]
    fn what_was_chosen_can_be_followed_and_what_was_stated_needs_no_line() {
        let ids = |plan: &SitePlan| -> Vec<&'static str> {
            let design = design_plan(plan, &NoShelf).unwrap();
            design
                .workings
                .iter()
                .map(|working| working.id)
                .filter(|id| CHOSEN.contains(id))
                .collect()
        };
        const CHOSEN: [&str; 3] = ["pier.height", "pier.outside_diameter", "pier.wall"];
        let mut plan = SitePlan::unknown();
        assert_eq!(ids(&plan), CHOSEN);
        plan.pier.outside_diameter_mm = Some(219.1);
        assert_eq!(ids(&plan), ["pier.height", "pier.wall"]);
        plan.pier.wall_mm = Some(6.3);
        plan.pier.height_m = Some(1.2);
        assert!(ids(&plan).is_empty());
    }
}
