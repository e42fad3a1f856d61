//! What the trade says, beside what the calculation says; the tool never picks one silently.

use crate::brief::Brief;
use crate::figure::{Kilopascal, Metre, One, PerCent, Tonne, Unit};
use crate::notes::Opinion;
use crate::rules::en_1991_1_1_2002::concrete::density;
use crate::source::Source;
use crate::stages::excavation::wider;
use crate::stages::ground::Ground;
use crate::stages::room::{DepthLimit, Room};
use crate::units::{kilogram, metre};

use super::actions::Actions;
use super::checks;
use super::needs::TONNE_KG;
use super::outline::{METRE_CUBE_M, Outline, contact_ratio};

/// Where the rules come from.
const CUBE: Source = Source::common_practice("a block of about a metre cube");
const TONNE: Source = Source::common_practice("about a tonne of concrete at least");
const STRENGTH: Source = Source::common_practice("a block is sized for stillness");
/// Share of what the ground carries up to which there is strength to spare.
const TO_SPARE_RATIO: f64 = 0.7;

/// Both rules, and how they disagree with each other and with this block.
pub(super) fn beside(
    brief: &Brief,
    ground: &Ground,
    room: &Room,
    outline: &Outline,
    actions: &Actions,
) -> Vec<Opinion> {
    vec![
        cube(brief, outline, &wider_instead(brief, ground, room)),
        tonne(brief, outline),
        bearing(brief, ground, outline, actions),
    ]
}

fn cube_mass() -> f64 {
    kilogram::get(
        density()
            * (metre::new(METRE_CUBE_M) * metre::new(METRE_CUBE_M) * metre::new(METRE_CUBE_M)),
    )
}

fn cube(brief: &Brief, outline: &Outline, wider: &str) -> Opinion {
    let units = brief.units;
    let m = |length| units.say(length, Metre);
    let tonnes = units.say(cube_mass() / 1000.0, Unit::Tonne);
    let a_metre = units.either("a metre", "a metre (3.28\u{a0}ft)");
    let square = metre::get(outline.shorter()) >= METRE_CUBE_M - 1e-9;
    let deep = metre::get(outline.depth) >= METRE_CUBE_M - 1e-9;
    let verdict_words = match (square, deep) {
        (true, true) => {
            format!("This block keeps the rule: at least {a_metre} square and {a_metre} deep.")
        }
        (true, false) => {
            format!(
                "This block breaks the rule in depth and makes up for it in width: {} deep instead of {a_metre}.",
                m(outline.depth)
            )
        }
        (false, true) => {
            format!(
                "This block is deep enough but narrower than the rule has it: {} at its shorter side.",
                m(outline.shorter())
            )
        }
        (false, false) => {
            "This block is smaller than the rule has it both ways; see what the star does with it."
                .to_owned()
        }
    };
    Opinion::new(
        "block.length",
        "A metre cube",
        format!(
            "About {a_metre} square and at least {a_metre} deep, hard against undisturbed ground."
        ),
        CUBE,
    )
    .beside(format!(
            "A metre cube weighs {tonnes}. This block is {} by {} and {} deep, weighs {} and stands against rocking {} \
             the cube would in the same ground.{wider}",
            m(outline.length),
            m(outline.width),
            m(outline.depth),
            units.say(outline.mass(), Tonne),
            as_stiffly(units.say(
                outline.rocking_ratio(contact_ratio(brief, outline.depth)),
                One
            ))
        ))
    .together(verdict_words)
}

/// What the rule asks for where it cannot go deep: wider, and how much.
fn wider_instead(brief: &Brief, ground: &Ground, room: &Room) -> String {
    let Some(side) = wider::as_stiff_side(ground.group, room.depth) else {
        return String::new();
    };
    let say = |length| brief.units.say(length, Metre);
    let on_rock = if room.limited_by == DepthLimit::Rock {
        " On rock it is stiffer still, which is not counted here."
    } else {
        ""
    };
    format!(
        " The base can go to {} only, so that it would have to be wider: {} square is as stiff in rocking as the cube, with its sides \
         hard against the same ground; there is room for {}.{on_rock}",
        say(room.depth),
        say(side),
        say(room.length.min(room.width))
    )
}

/// How one stiffness compares with another, as a sentence has it.
fn as_stiffly(times: String) -> String {
    if times == "1" {
        "as stiffly as".to_owned()
    } else {
        format!("{times} times as stiffly as")
    }
}

fn tonne(brief: &Brief, outline: &Outline) -> Opinion {
    let units = brief.units;
    let mass = kilogram::get(outline.mass());
    let side = (TONNE_KG / cube_mass()).cbrt();
    let against = if mass >= TONNE_KG {
        format!(
            "This block has {} times that.",
            units.say(mass / TONNE_KG, One)
        )
    } else {
        format!(
            "This block has only {} of it.",
            units.say(100.0 * mass / TONNE_KG, PerCent)
        )
    };
    Opinion::new(
        "block.mass",
        "About a tonne",
        format!(
            "About {} of concrete below ground as the least.",
            units.either("a tonne", "a tonne (1.1\u{a0}short\u{a0}tons)")
        ),
        TONNE,
    )
    .beside(format!(
            "A tonne is a cube of only {} a side: {} of a metre cube's concrete, and {} of its rocking stiffness on the same ground.",
            units.say(side, Unit::Metre),
            units.say(100.0 * TONNE_KG / cube_mass(), PerCent),
            units.say(100.0 * side.powi(3), PerCent),
        ))
    .together(format!(
            "The two rules disagree: the metre cube asks for {} what the tonne does. Take the tonne as the floor and the cube as the aim. \
             {against}",
            times(cube_mass() / TONNE_KG)
        ))
}

fn times(ratio: f64) -> String {
    format!("{ratio:.1} times")
}

fn bearing(brief: &Brief, ground: &Ground, outline: &Outline, actions: &Actions) -> Opinion {
    let units = brief.units;
    let pressure = units.say(checks::largest(outline, actions), Kilopascal);
    let calculation = match ground.presumed_bearing {
        Some(capacity) => {
            format!(
                "At the worst it presses with {pressure}; tables allow {} for this ground.",
                units.say(capacity, Kilopascal)
            )
        }
        None => format!(
            "At the worst it presses with {pressure}; what this ground carries is not known."
        ),
    };
    Opinion::new(
        "block.bearing",
        "Strength hardly ever decides",
        "A pier's block is sized for stillness, not for strength.".to_owned(),
        STRENGTH,
    )
    .beside(calculation)
    .together(match ground.presumed_bearing {
        Some(capacity) if checks::largest(outline, actions) <= capacity * TO_SPARE_RATIO => {
            "The calculation agrees: there is strength to spare.".to_owned()
        }
        Some(_) => {
            "Here the calculation disagrees: the ground is weak enough for strength to count."
                .to_owned()
        }
        None => "Here nobody can say before the ground has been looked at.".to_owned(),
    })
}
