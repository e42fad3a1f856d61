//! Time to dig, by hand or by machine.

use crate::brief::Brief;
use crate::figure::{Count, One, Unit};
use crate::notes::{Notes, Working};
use crate::site_plan::excavation::Method;
use crate::stages::excavation::digging_table::{self, SOURCE};
use crate::stages::excavation::pit::Pit;
use crate::units::{cubic_metre, metre};

/// Time to dig.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Digging {
    /// Hours on the site.
    pub hours: f64,
    /// One person's hours.
    pub person_hours: f64,
}

/// Not more than two dig and barrow at a pit of this size without standing in each other's way.
const MOST_DIGGERS: f64 = 2.0;
/// From this depth the soil is thrown twice.
const DEEP_M: f64 = 1.2;
/// What that costs.
const DEEP_FACTOR: f64 = 1.3;
/// Machine to the pit, and the bottom and corners trimmed by hand.
const MACHINE_BESIDES_H: f64 = 1.5;

/// Finds the time to dig.
pub fn digging(brief: &Brief, pit: &Pit, notes: &mut Notes) -> Digging {
    let row = digging_table::rate(brief.site.soil.value);
    let volume = cubic_metre::get(pit.volume);
    match brief.excavation.method.value {
        Method::Hand => {
            let deep_factor = if metre::get(pit.depth) > DEEP_M {
                DEEP_FACTOR
            } else {
                1.0
            };
            let person_hours = volume * row.hand_h_m3 * deep_factor;
            let diggers = brief.work.people.value.clamp(1.0, MOST_DIGGERS);
            notes.working(
                Working::new(
                    "excavation.digging",
                    "Hours to dig by hand",
                    "t = V h c / n",
                    SOURCE,
                )
                .with("V", volume, Unit::CubicMetre)
                .with("h", row.hand_h_m3, Unit::Hour)
                .with("c", deep_factor, One)
                .with("n", diggers, Count)
                .gives("t", person_hours / diggers, Unit::Hour),
            );
            Digging {
                hours: person_hours / diggers,
                person_hours,
            }
        }
        Method::Machine => {
            let hours = volume * row.machine_h_m3 + MACHINE_BESIDES_H;
            notes.working(
                Working::new(
                    "excavation.digging",
                    "Hours to dig with a small machine",
                    "t = V h + t₀",
                    SOURCE,
                )
                .with("V", volume, Unit::CubicMetre)
                .with("h", row.machine_h_m3, Unit::Hour)
                .with("t₀", MACHINE_BESIDES_H, Unit::Hour)
                .gives("t", hours, Unit::Hour),
            );
            Digging {
                hours,
                person_hours: hours,
            }
        }
    }
}
