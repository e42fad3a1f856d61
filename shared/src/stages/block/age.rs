//! Strength by day, and from it the days of curing, drilling and loading.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Celsius, Day, One, Unit};
use crate::notes::{Notes, Working};
use crate::rules::en_1992_1_1_2004::{maturity, strength, strength_by_age as by_age};
use crate::rules::en_13670_2009::curing;
use crate::site_plan::block::{Cement, Concrete};
use crate::source::Source;
use crate::stock::goods::CONCRETES;
use crate::units::{Pressure, Time, day, megapascal};

/// Least age before drilling for resin-bonded studs, days.
pub const LEAST_AGE_D: f64 = 21.0;
/// Where that is from.
pub const LEAST_AGE_SOURCE: Source = Source::from_memory(
    "ACI 318",
    "19",
    "17.2.2, least age of concrete for bonded anchors; EN 1992-1-1 3.1.2",
);
/// Strength below which no approval of a bonded stud reaches, MPa.
pub const DRILL_STRENGTH_MPA: f64 = 20.0;
/// Curing that is advised at least, days.
const ADVISED_CURING_D: f64 = 7.0;
/// Days of the table.
const TABLE_D: [f64; 8] = [1.0, 2.0, 3.0, 7.0, 14.0, 21.0, 28.0, 56.0];

/// Strength at one day.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Age {
    /// Days after the pour, at the stated temperature.
    pub day: f64,
    /// The same age at 20 °C.
    pub adjusted_day: f64,
    /// Share of the mean strength at 28 days.
    pub share_ratio: f64,
    /// Share of the full load that may come then: nought before the day of drilling, afterwards the characteristic strength over
    /// that at 28 days.
    pub load_ratio: f64,
    /// Mean cylinder strength.
    #[serde(rename = "mean_mpa", with = "megapascal")]
    pub mean: Pressure,
    /// Characteristic cylinder strength; none before an adjusted age of three days.
    #[serde(rename = "characteristic_mpa", with = "megapascal::option")]
    pub characteristic: Option<Pressure>,
}

/// The days and the table.
pub(super) struct Ages {
    pub(super) drill: Time,
    pub(super) load: Time,
    pub(super) curing: Time,
    pub(super) table: Vec<Age>,
}

/// The days by themselves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Days {
    /// Until holes may be drilled.
    pub drill: Time,
    /// Until it may be loaded fully.
    pub load: Time,
    /// For which it is kept damp and covered.
    pub curing: Time,
}

/// The days for the brief's temperature of the work.
pub fn days(brief: &Brief) -> Days {
    let Ages {
        drill,
        load,
        curing,
        ..
    } = of(brief, &mut Notes::default());
    Days {
        drill,
        load,
        curing,
    }
}

/// Characteristic cylinder strength of a class.
pub fn characteristic(class: Concrete) -> Pressure {
    megapascal::new(row(class, "cylinder_mpa"))
}

/// The strength that a class is specified by, the f'_c of ACI 318: of a class in psi a little above the characteristic one.
///
/// ACI 301 lets one result in eleven fall below f'_c, EN 206 one in twenty below f_ck: with 5 MPa of scatter f_ck is
/// (1.645 − 1.34) · 5 = 1.5 MPa less.
pub fn specified(class: Concrete) -> Pressure {
    megapascal::new(row(class, "specified_mpa"))
}

/// A figure of a class's row.
pub(super) fn row(class: Concrete, column: &'static str) -> f64 {
    CONCRETES
        .row(class.key())
        .map_or(f64::NAN, |row| row.value(column))
}

/// Coefficient s of the cement.
pub(super) fn cement_factor(cement: Cement) -> f64 {
    match cement {
        Cement::Slow => by_age::SLOW_FACTOR,
        Cement::Normal => by_age::NORMAL_FACTOR,
        Cement::Rapid => by_age::RAPID_FACTOR,
    }
}

/// Finds them for the stated temperature.
pub(super) fn of(brief: &Brief, notes: &mut Notes) -> Ages {
    let temperature = brief.work.temperature_c.value;
    let class = characteristic(brief.block.concrete.value);
    let s = cement_factor(brief.block.cement.value);
    let pace = maturity::pace_factor(temperature);
    let strong =
        by_age::age_for(megapascal::new(DRILL_STRENGTH_MPA), class, s).unwrap_or(day::new(28.0));
    let strong = day::get(maturity::time_for(strong, temperature));
    let drill = strong.max(LEAST_AGE_D).ceil();
    let load = day::get(maturity::time_for(day::new(28.0), temperature))
        .max(drill)
        .ceil();
    workings(temperature, pace, strong, notes);
    let ratio = by_age::share_ratio(day::new(2.0), s);
    let least = curing::least(temperature, curing::development(ratio)).unwrap_or(day::new(18.0));
    let curing = if day::get(least) > ADVISED_CURING_D {
        least
    } else {
        day::new(ADVISED_CURING_D)
    };
    later_workings(pace, load, curing, ratio, notes);
    Ages {
        drill: day::new(drill),
        load: day::new(load),
        curing,
        table: table(class, s, temperature, drill),
    }
}

fn table(class: Pressure, s: f64, temperature: f64, drill_d: f64) -> Vec<Age> {
    let at = |days: f64| {
        let adjusted = maturity::adjusted_age(day::new(days), temperature);
        let characteristic = by_age::characteristic_at(adjusted, class, s);
        let share = characteristic.map_or(0.0, |strength| (strength / class).value.clamp(0.0, 1.0));
        Age {
            load_ratio: if days < drill_d { 0.0 } else { share },
            day: days,
            adjusted_day: day::get(adjusted),
            share_ratio: by_age::share_ratio(adjusted, s),
            mean: by_age::mean_at(adjusted, strength::mean(class), s),
            characteristic,
        }
    };
    TABLE_D.into_iter().map(at).collect()
}

fn workings(temperature: f64, pace: f64, strong: f64, notes: &mut Notes) {
    notes.working(
        Working::new(
            "block.pace",
            "Pace of hardening at this temperature",
            "k = exp(13.65 − 4000 / (273 + T))",
            maturity::SOURCE,
        )
        .with("T", temperature, Celsius)
        .gives("k", pace, One),
    );
    notes.working(
        Working::new(
            "block.drill_after",
            "Days until a characteristic strength f",
            "t = 28 / (k [1 − ln((f + 8) / f_cm) / s]²)",
            by_age::SOURCE,
        )
        .with("f", DRILL_STRENGTH_MPA, Unit::Megapascal)
        .with("k", pace, One)
        .gives("t", strong, Unit::Day),
    );
}

fn later_workings(pace: f64, load: f64, curing: Time, ratio: f64, notes: &mut Notes) {
    notes.working(
        Working::new(
            "block.load_after",
            "Days until the strength that 28 mild days give",
            "t = max(28 / k, t_drill), whole days",
            maturity::SOURCE,
        )
        .with("k", pace, One)
        .gives("t", load, Unit::Day),
    );
    notes.working(
        Working::new(
            "block.curing",
            "Days of curing",
            "class 3 by temperature and r = f_cm2 / f_cm28, at least a week",
            curing::SOURCE,
        )
        .with("r", ratio, One)
        .gives("t", curing, Day),
    );
}
