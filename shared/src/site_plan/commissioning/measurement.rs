//! One measurement by itself, as a helper enters it, and in words.

use serde::{Deserialize, Serialize};

use super::{Commissioning, Knock, Lean, Pull};
use crate::field::Problem;
use crate::figure::{Unit, Units};

crate::field::choice! {
    /// What is measured.
    pub enum MeasurementKind {
        /// A swing after a knock.
        Knock = "knock";
        /// A lean under somebody's weight.
        Lean = "lean";
        /// A steady pull.
        Pull = "pull";
    }
}

/// A measurement.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Measurement {
    /// A swing after a knock.
    Knock(Knock),
    /// A lean under somebody's weight.
    Lean(Lean),
    /// A steady pull.
    Pull(Pull),
}

impl Measurement {
    /// What it is of.
    pub const fn kind(&self) -> MeasurementKind {
        match self {
            Self::Knock(_) => MeasurementKind::Knock,
            Self::Lean(_) => MeasurementKind::Lean,
            Self::Pull(_) => MeasurementKind::Pull,
        }
    }

    /// Its numbers that are out of range.
    pub fn problems(&self) -> Vec<Problem> {
        match self {
            Self::Knock(knock) => knock.problems("knock"),
            Self::Lean(lean) => lean.problems("lean"),
            Self::Pull(pull) => pull.problems("pull"),
        }
    }

    /// Puts it with the plan's other measurements, once: what is there already is not doubled. Whether it is new there.
    pub fn put(&self, said: &mut Commissioning) -> bool {
        fn add<T: Clone + PartialEq>(list: &mut Vec<T>, one: &T) -> bool {
            let is_new = !list.contains(one);
            if is_new {
                list.push(one.clone());
            }
            is_new
        }
        match self {
            Self::Knock(knock) => add(&mut said.knocks, knock),
            Self::Lean(lean) => add(&mut said.leans, lean),
            Self::Pull(pull) => add(&mut said.pulls, pull),
        }
    }

    /// In words, in the reader's units.
    pub fn says(&self, units: Units) -> String {
        match self {
            Self::Knock(knock) => knock.says(units),
            Self::Lean(lean) => lean.says(units),
            Self::Pull(pull) => pull.says(units),
        }
    }
}

impl Commissioning {
    /// Every measurement and symptom in words, in the reader's units.
    pub fn says(&self, units: Units) -> Vec<String> {
        let knocks = self.knocks.iter().map(|knock| knock.says(units));
        let leans = self.leans.iter().map(|lean| lean.says(units));
        let pulls = self.pulls.iter().map(|pull| pull.says(units));
        let symptoms = &self.symptoms;
        let when = [
            (symptoms.in_wind, "It trembles in the wind"),
            (symptoms.at_steps, "It trembles when somebody steps near it"),
            (symptoms.at_touch, "It trembles when it is touched"),
            (symptoms.at_slew, "It trembles when the mount slews"),
        ];
        let when = when.into_iter().filter(|(said, _)| *said == Some(true));
        let lasts = symptoms.lasts_s;
        let moves = symptoms.moves_arcsec;
        let sizes = [
            lasts.map(|lasts| format!("It lasts {}", units.say(lasts, Unit::Second))),
            moves.map(|moves| format!("The star moves {}", units.say(moves, Unit::Arcsecond))),
        ];
        knocks
            .chain(leans)
            .chain(pulls)
            .chain(when.map(|(_, said)| said.to_owned()))
            .chain(sizes.into_iter().flatten())
            .collect()
    }
}

fn with_sd(value: f64, sd: Option<f64>, unit: Unit, units: Units) -> String {
    match sd {
        Some(sd) => format!("{} ± {}", units.say(value, unit), units.say(sd, unit)),
        None => units.say(value, unit),
    }
}

impl Knock {
    /// In words, in the reader's units.
    pub fn says(&self, units: Units) -> String {
        let on = if self.with_mount {
            "mount and telescope on"
        } else {
            "nothing on the pier"
        };
        let second = if self.mode == Some(2) {
            ", second swing"
        } else {
            ""
        };
        let damping = self.damping_ratio.map_or_else(String::new, |ratio| {
            format!(", damping {}", units.say(100.0 * ratio, Unit::PerCent))
        });
        format!(
            "Knock, {}, {on}{second}: {}{damping}",
            self.direction.words(),
            with_sd(self.frequency_hz, self.frequency_sd_hz, Unit::Hertz, units)
        )
    }
}

impl Lean {
    /// In words, in the reader's units.
    pub fn says(&self, units: Units) -> String {
        let way = |value: f64, towards: [&str; 2]| {
            let towards = towards[usize::from(value < 0.0)];
            format!("{} {towards}", units.say(value.abs(), Unit::Metre))
        };
        let bearing = self.bearing_deg.map_or_else(String::new, |bearing| {
            format!(", towards {} from north", units.say(bearing, Unit::Degree))
        });
        format!(
            "Lean, {} at {} and {} of the pier: {}{bearing}",
            units.say(self.mass_kg, Unit::Kilogram),
            way(self.x_m, ["east", "west"]),
            way(self.y_m, ["north", "south"]),
            with_sd(
                self.tilt_arcsec,
                self.tilt_sd_arcsec,
                Unit::Arcsecond,
                units
            )
        )
    }
}

impl Pull {
    /// In words, in the reader's units.
    pub fn says(&self, units: Units) -> String {
        format!(
            "Pull, {}, {} at {} above the ground: {}",
            self.direction.words(),
            units.say(self.force_n, Unit::Newton),
            units.say(self.height_m, Unit::Metre),
            with_sd(
                self.tilt_arcsec,
                self.tilt_sd_arcsec,
                Unit::Arcsecond,
                units
            )
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site_plan::commissioning::Direction;

    fn lean() -> Measurement {
        Measurement::Lean(Lean {
            x_m: -0.8,
            y_m: 0.0,
            mass_kg: 80.0,
            tilt_arcsec: 0.41,
            tilt_sd_arcsec: Some(0.07),
            bearing_deg: None,
        })
    }

    #[test]
    fn a_measurement_is_said_in_both_systems_of_units() {
        let metric = "Lean, 80\u{a0}kg at 0.8\u{a0}m west and 0\u{a0}m north of the pier: 0.41\u{a0}arcsec ± 0.07\u{a0}arcsec";
        assert_eq!(lean().says(Units::Metric), metric);
        assert!(
            lean()
                .says(Units::Imperial)
                .contains("176\u{a0}lb at 2′\u{a0}7\u{a0}1/2″ west")
        );
    }

    #[test]
    fn the_same_measurement_stands_in_the_plan_once() {
        let mut said = Commissioning::default();
        assert!(lean().put(&mut said));
        assert!(!lean().put(&mut said));
        assert_eq!(said.leans.len(), 1);
    }

    #[test]
    fn what_is_out_of_range_is_named_with_its_place() {
        let knock = Measurement::Knock(Knock {
            direction: Direction::X,
            with_mount: true,
            frequency_hz: 3000.0,
            frequency_sd_hz: None,
            damping_ratio: None,
            mode: None,
        });
        let problems = knock.problems();
        assert_eq!(problems[0].fields, ["commissioning.knock.frequency_hz"]);
        assert!(lean().problems().is_empty());
    }
}
