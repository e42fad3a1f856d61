//! The lines of calculation behind the loads: each formula gives its printed result from its printed inputs.

use crate::brief::Brief;
use crate::figure::{
    Kilonewton, KilonewtonMetre, Kilopascal, Metre, MetrePerSecond, One, SquareMetre, Unit,
};
use crate::notes::{Notes, Working};
use crate::rules::en_1991_1_1_2002::person;
use crate::rules::en_1991_1_4_2005::{cylinder, gust as wind};
use crate::source::Source;
use crate::units::gravity;

use super::{Loads, kinds};

/// Writes them down.
pub(super) fn workings(brief: &Brief, loads: &Loads, notes: &mut Notes) {
    notes.working(pressure(brief));
    for (id, line) in [
        ("leaning", leaning(brief)),
        ("gust", gust(brief)),
        ("ladder", ladder(brief)),
        ("knock", knock(brief)),
    ] {
        if let Some(load) = loads.of(id) {
            notes.working(line.gives("M", load.moment, KilonewtonMetre));
        }
    }
}

fn pressure(brief: &Brief) -> Working {
    let speed = brief.site.design_gust.value;
    Working::new(
        "loads.gust_pressure",
        "Pressure of the design gust",
        "q = ½ ρ v²",
        wind::SOURCE,
    )
    .with("ρ", wind::AIR_DENSITY, Unit::KilogramPerCubicMetre)
    .with("v", speed, MetrePerSecond)
    .gives("q", wind::pressure(speed), Kilopascal)
}

fn leaning(brief: &Brief) -> Working {
    Working::new(
        "loads.leaning",
        "Moment at the column's foot of a person who leans on the telescope",
        "M = H (h + e)",
        person::SOURCE,
    )
    .with("H", person::leaning(), Kilonewton)
    .with("h", brief.pier.height.value, Metre)
    .with("e", brief.load.centre_above_pier.value, Metre)
}

fn gust(brief: &Brief) -> Working {
    let (speed, pier) = (brief.site.design_gust.value, &brief.pier);
    Working::new(
        "loads.gust",
        "Moment at the column's foot of the design gust",
        "M = q (c_c d h h/2 + c_t A (h + e))",
        wind::SOURCE,
    )
    .with("q", wind::pressure(speed), Kilopascal)
    .with(
        "c_c",
        cylinder::enveloped_factor(speed, pier.outside_diameter.value),
        One,
    )
    .with("d", pier.outside_diameter.value, Metre)
    .with("h", pier.height.value, Metre)
    .with("c_t", cylinder::TELESCOPE_FORCE_FACTOR, One)
    .with("A", brief.load.wind_area.value, SquareMetre)
    .with("e", brief.load.centre_above_pier.value, Metre)
}

fn ladder(brief: &Brief) -> Working {
    Working::new(
        "loads.ladder",
        "Moment at the column's foot of a ladder with a person on it, hung from the column",
        "M = W h/4 + W (d/2 + a)",
        person::LADDER_SOURCE,
    )
    .with("W", person::climber() * gravity(), Kilonewton)
    .with("h", brief.pier.height.value, Metre)
    .with("d", brief.pier.outside_diameter.value, Metre)
    .with("a", person::LADDER_STANDOFF_M, Unit::Metre)
}

fn knock(brief: &Brief) -> Working {
    let height = kinds::knock_height(brief);
    Working::new(
        "loads.knock",
        "Moment at the column's foot of a knock",
        "M = H z",
        Source::judgement("1 kN at 1 m, or at the top of a lower column"),
    )
    .with("H", kinds::knock_force(), Kilonewton)
    .with("z", height, Metre)
}
