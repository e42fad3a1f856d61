//! Where true north is: by compass, by the sun's shadow at noon, by the pole star. For the mark on plate and template.
//!
//! Each way that cannot be had says why. None of them needs the others, so that one can check another.

mod compass;
mod moment;
mod noon;
mod polaris;
#[cfg(test)]
mod tests;

use crate::field::Path;
use crate::path;
use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Degree, Unit};
use crate::notes::{AssumedValue, Assumption, Found, Notes};
use crate::rules::calendar;
use crate::source::Source;

pub use compass::Compass;
pub use moment::Moment;
pub use noon::{Noon, NoonDay};
pub use polaris::{Polaris, PolarisAt};

/// Years for which the sun's and the star's formulas are used.
const YEARS: std::ops::RangeInclusive<f64> = 1950.0..=2100.0;

/// True north, three ways.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct North {
    /// By compass.
    pub compass: Compass,
    /// By the shadow at noon.
    pub noon: Noon,
    /// By the pole star.
    pub polaris: Polaris,
    /// How to carry it to the template and the plate, one step after another.
    pub marking: Vec<String>,
}

/// Where and when.
#[derive(Debug, Clone, Copy)]
struct Place<'a> {
    latitude_deg: f64,
    longitude_deg: f64,
    /// Julian day at which the start day begins in universal time; none where no day was said.
    midnight: Option<f64>,
    year: Option<f64>,
    brief: &'a Brief,
}

impl Place<'_> {
    fn moment(&self, julian_day: f64) -> Moment {
        Moment::of(julian_day, self.brief.work.utc_offset_h)
    }

    /// The start day in words.
    fn day(&self) -> &str {
        self.brief
            .work
            .start_date
            .as_deref()
            .unwrap_or("the start day")
    }

    fn degrees(&self, value: f64) -> String {
        self.brief.units.say(value, Degree)
    }
}

const NO_PLACE: &str = "Nobody said where the site is: give its latitude and longitude, two decimals of a degree are enough.";
const NO_PLACE_EITHER: &str = "This too asks for the site's latitude and longitude.";
const NO_DAY: &str = "No start day was said, and the sun and the stars keep to the day: give the day on which north is to be marked.";
const NO_YEAR: &str = "The formulas for sun and stars are used from 1950 to 2100, and the start day is not among these years.";

/// Finds true north.
pub fn stage(brief: &Brief) -> Found<North> {
    let mut notes = Notes::default();
    let place = place(brief, &mut notes);
    let dated = place.ok_or(NO_PLACE).and_then(|place| {
        let (midnight, year) = place.midnight.zip(place.year).ok_or(NO_DAY)?;
        if YEARS.contains(&year) {
            Ok((place, midnight))
        } else {
            Err(NO_YEAR)
        }
    });
    let compass = place
        .ok_or_else(|| NO_PLACE_EITHER.to_owned())
        .and_then(|place| compass::find(&place, &mut notes))
        .unwrap_or_else(Compass::not);
    let noon = match dated {
        Ok((place, midnight)) => noon::find(&place, midnight, &mut notes),
        Err(why) => Noon::by_the_circle(why.to_owned()),
    };
    let polaris = match dated {
        Ok((place, midnight)) => {
            polaris::find(&place, midnight, &mut notes).unwrap_or_else(Polaris::not)
        }
        Err(why) => Polaris::not(why.to_owned()),
    };
    Found {
        value: North {
            compass,
            noon,
            polaris,
            marking: marking(brief),
        },
        notes,
    }
}

fn place<'a>(brief: &'a Brief, notes: &mut Notes) -> Option<Place<'a>> {
    let stated = &brief.site.stated;
    for (field, said) in [
        (path!(site.latitude_deg), stated.latitude_deg),
        (path!(site.longitude_deg), stated.longitude_deg),
    ] {
        if said.is_none() {
            assume(
                notes,
                field,
                "not known",
                "it was not said where the site is, and no other place can stand in for it",
                "true north is not worked out",
            );
        }
    }
    let date = brief.work.start_date.as_deref();
    let place = Place {
        latitude_deg: stated.latitude_deg?,
        longitude_deg: stated.longitude_deg?,
        midnight: date.and_then(calendar::julian_day),
        year: date.and_then(calendar::decimal_year),
        brief,
    };
    if place.midnight.is_some() && brief.work.utc_offset_h.is_none() {
        let effect = "times for finding north are given in universal time; a clock of the place reads otherwise";
        assume(
            notes,
            path!(work.utc_offset_h),
            "universal time",
            "it was not said what the clocks there show",
            effect,
        );
    }
    Some(place)
}

fn assume(notes: &mut Notes, field: Path, value: &str, why: &str, effect: &str) {
    notes.assumptions.push(Assumption {
        field,
        value: AssumedValue::Text(value.to_owned()),
        unit: Unit::One,
        why: why.to_owned(),
        effect: effect.to_owned(),
        source: Source::judgement("no figure is invented for a place"),
    });
}

/// How north is carried to the template and the plate.
fn marking(brief: &Brief) -> Vec<String> {
    let line = brief.units.about(5.0, Unit::Metre);
    vec![
        format!(
            "Drive a peg at the pier's axis and one {} north or south of it, or stretch a string over both: the longer the line, the \
             truer, and a line of {} that ends {} aside is half a degree out.",
            line,
            line,
            brief.units.about(44.0, Unit::Millimetre)
        ),
        "Mark the line outside the pit, on two pegs or a fence, where the digging leaves it alone; set the block's form square to it."
            .to_owned(),
        "Lay the template's arrow along the string over both pegs, and scribe the same line on the concrete beside the plate before the \
         first hole is drilled."
            .to_owned(),
        "Find north by a second way before you drill. Two ways that differ by more than two degrees mean that one of them is wrong. A \
         mount's own screws take up the last few degrees, not a quarter of a turn."
            .to_owned(),
    ]
}
