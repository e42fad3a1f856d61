//! Drilling, bonding, lifting, tightening.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Notes, When};
use crate::site_plan::block::Reinforcement;
use crate::site_plan::pier::Fill;
use crate::source::Source;
use crate::stages::anchors::Seat;
use crate::stages::pier::TWO_PEOPLE_KG;
use crate::units::{Mass, kilogram, metre};

use super::Job;

/// Height of a column's top that asks for steps to work at, m.
const HIGH_M: f64 = 1.8;

pub(super) fn list(job: &Job, notes: &mut Notes) {
    drilling(job, notes);
    bonding(notes);
    steel(notes);
    lifting(job, notes);
    tightening(job, notes);
}

fn drilling(job: &Job, notes: &mut Notes) {
    notes.caution(
        "drill.silica",
        When::Drilling,
        "Dust of drilled concrete holds silica, which scars lungs for good. Take it away at the bit with an extractor, wear a close-fitting \
         FFP3 or P100 mask on a shaven face, keep others upwind, and blow holes out through a shroud or into a vacuum, never into a face.",
        Source::from_memory("29 CFR 1926.1153", "2016", "Table 1, handheld drills"),
    );
    let steel = match job.brief.block.reinforcement.value {
        Reinforcement::Plain => "",
        Reinforcement::TopMesh | Reinforcement::Cage => {
            " If the bit meets a bar, stop: do not drill through it or lean on the machine. Move the template, and ask what \
             the bar is for."
        }
    };
    notes.caution(
        "drill.machine",
        When::Drilling,
        format!(
            "A rotary hammer that jams can wrench the arms that hold it. Use both hands and the side handle, stand firmly \
             and keep the slip clutch on. Wear ear defenders and goggles, and rest your hands often.{steel}"
        ),
        Source::common_practice("hand-held hammer drills"),
    );
}

fn bonding(notes: &mut Notes) {
    notes.caution(
        "bond.resin",
        When::Bonding,
        "Resin and its hardener make some people allergic for life, and burn eyes. Wear nitrile gloves and goggles and work \
         in fresh air; change soiled gloves at once; use no solvent on skin. Read the product's own sheet for its holes, \
         times and temperatures: where it differs from this plan, it is right.",
        Source::common_practice("safety data sheets of injection resins"),
    );
    notes.caution(
        "bond.wait",
        When::Bonding,
        "Do not touch a stud while the resin cures, and do not tighten it before the product's curing time at the concrete's \
         own temperature is over. A stud that was moved does not hold, and nothing shows it.",
        Source::common_practice("bonded anchors"),
    );
}

fn steel(notes: &mut Notes) {
    notes.caution(
        "column.welding",
        When::Planning,
        "The column's welds carry it: have them made by a qualified welder. Never weld on zinc without extraction, and never send a closed \
         tube to a galvanising bath: without vent holes it explodes.",
        Source::common_practice("welding and galvanising of hollow sections"),
    );
}

fn lifting(job: &Job, notes: &mut Notes) {
    notes.caution(
        "lift.column",
        When::Lifting,
        "A column that tips over crushes whoever is under it. Sling it above its middle and lift it with a hoist on firm \
         boards, with nobody beneath or astride it. Keep fingers out from under the plate: lower it onto blocks first. It is not safe to let go before a nut is on every stud.",
        Source::common_practice("lifting and setting columns"),
    );
    let top = metre::get(job.block.upstand) + metre::get(job.pier.height);
    if top > HIGH_M {
        notes.caution(
            "lift.height",
            When::Lifting,
            format!(
                "The column's top stands {} above ground. Work there from a platform with a rail, not from a ladder that leans on the column.",
                job.brief.units.say(top, Unit::Metre)
            ),
            Source::common_practice("work at height"),
        );
    }
    if job.brief.pier.fill.value != Fill::None {
        notes.caution(
            "lift.fill",
            When::Lifting,
            "Fill the column only where it stands for good: full, it is too heavy to lift. Sand dust holds silica: wear the mask.",
            Source::common_practice("filled columns"),
        );
    }
}

fn tightening(job: &Job, notes: &mut Notes) {
    notes.caution(
        "tighten.unit",
        When::Tightening,
        "Read the unit on the wrench before the first click: newton metres, kilogram-force metres and pound-force feet differ up to tenfold. \
         Never exceed the torque that the resin's maker allows, and keep your face clear: a stud can fly out of its hole.",
        Source::common_practice("torque wrenches"),
    );
    if Seat::wants_grout(job.brief) {
        notes.caution(
            "tighten.grout",
            When::Tightening,
            "Grout burns like any wet cement: gloves and goggles. Do not tighten fully before it is hard.",
            Source::common_practice("cement grout"),
        );
    }
}

/// A column too heavy for hands.
pub(super) fn heavy(brief: &Brief, empty: Mass, notes: &mut Notes) {
    let mass = kilogram::get(empty);
    if mass > TWO_PEOPLE_KG {
        notes.caution(
            "pier.lifting",
            When::Lifting,
            format!(
                "Column and plates weigh about {}. That is too much for two people to lift and set over studs by hand: use a \
                 hoist, an engine crane or more people, keep hands and feet out from under the plate, and fill the column only \
                 once it stands and its nuts are on.",
                brief.units.say(mass, Unit::Kilogram)
            ),
            Source::common_practice("what guidance lets one person lift under the best conditions"),
        );
    }
}
