//! The five loads, one function each, which finds the moment at the foot with its line of calculation.

use crate::brief::Brief;
use crate::figure::{
    KilogramPerCubicMetre, Kilonewton, KilonewtonMetre, Kilopascal, Metre, One, SquareMetre,
    WindMetrePerSecond,
};
use crate::notes::{Line, Worked, Working};
use crate::rules::en_1991_1_1_2002::person;
use crate::rules::en_1991_1_4_2005::{cylinder, gust as wind};
use crate::source::Source;
use crate::units::{
    Force, Moment, Pressure, gravity, kilogram_per_cubic_metre, metre, newton, newton_metre,
    square_metre,
};

use super::{Load, Roof, factor, shut};

/// A knock: somebody falls against the column, or a barrow runs into it.
const KNOCK: Source = Source::judgement(
    "1.0 kN at 1 m above the foot, a person who falls against the column or a barrow that runs into it",
);
/// A knock's force, N, and its height, m.
const KNOCK_N: f64 = 1000.0;
const KNOCK_HEIGHT_M: f64 = 1.0;
/// How far beside the axis a person takes hold of the telescope, m: the end of a tube, or the counterweights' shaft.
const LEANING_ARM_M: f64 = 0.75;
/// How far beside the axis the gust on a telescope acts, in widths: EN 1991-1-4, 7.4.3, says so of signboards.
const GUST_ARM_RATIO: f64 = 0.25;
/// Weights.
const WEIGHT: Source = Source::derived("mass times gravity");
/// Why a roof that shuts is looked at open once.
pub(super) const CAUGHT_OPEN: Source = Source::second_hand(
    "EN 1991-1-4",
    "2005",
    "7.2.9 (3), as an advisory note on dominant openings tells it",
);

/// Any load of this plan: no wind, no partial factor's exception.
fn plain(brief: &Brief, id: &'static str, title: &'static str, axial: Force) -> Load {
    Load {
        id,
        title,
        shear: newton::new(0.0),
        moment: newton_metre::new(0.0),
        axial,
        torsion: newton_metre::new(0.0),
        roof: if shut(brief) {
            Roof::Closed
        } else {
            Roof::Open
        },
        accidental: false,
        factor: factor(brief.code.value, false),
        source: WEIGHT,
    }
}

/// The same as an accident.
fn accident(brief: &Brief, load: Load) -> Load {
    Load {
        accidental: true,
        factor: factor(brief.code.value, true),
        ..load
    }
}

pub(super) fn rest(brief: &Brief, weight: Force) -> Load {
    plain(brief, "rest", "weight at rest", weight)
}

pub(super) fn leaning(brief: &Brief, weight: Force) -> (Load, Working) {
    let moment = Line::new(
        "loads.leaning",
        "Moment at the column's foot of a person who leans on the telescope",
        "M = H (h + e)",
        person::SOURCE,
    )
    .with("H", person::leaning(), Kilonewton)
    .with("h", brief.pier.height.value, Metre)
    .with("e", brief.load.centre_above_pier.value, Metre)
    .gives("M", KilonewtonMetre, |(push, height, above)| -> Moment {
        push * (height + above)
    });
    let load = Load {
        shear: person::leaning(),
        moment: moment.value,
        torsion: person::leaning() * metre::new(LEANING_ARM_M),
        source: person::SOURCE,
        ..plain(
            brief,
            "leaning",
            "a person who leans on the telescope",
            weight,
        )
    };
    (load, moment.working)
}

/// Pressure of the design gust.
pub(super) fn gust_pressure(brief: &Brief) -> Worked<Pressure> {
    Line::new(
        "loads.gust_pressure",
        "Pressure of the design gust",
        "q = ½ ρ v²",
        wind::SOURCE,
    )
    .with(
        "ρ",
        kilogram_per_cubic_metre::new(wind::AIR_DENSITY),
        KilogramPerCubicMetre,
    )
    .with("v", brief.site.design_gust.value, WindMetrePerSecond)
    .gives("q", Kilopascal, |(_, speed)| wind::pressure(speed))
}

/// Force of the gust on the column, and on telescope and mount.
pub(super) fn gust_forces(brief: &Brief) -> [Force; 2] {
    let (speed, pier) = (brief.site.design_gust.value, &brief.pier);
    let outside = pier.outside_diameter.value;
    [
        wind::force(
            speed,
            outside * pier.height.value,
            cylinder::enveloped_factor(speed, outside),
        ),
        wind::force(
            speed,
            brief.load.wind_area.value,
            cylinder::TELESCOPE_FORCE_FACTOR,
        ),
    ]
}

/// The design gust. A roof that shuts is looked at caught open once, as an accident.
pub(super) fn gust(brief: &Brief, weight: Force) -> (Load, Working) {
    let [column, top] = gust_forces(brief);
    let (speed, pier) = (brief.site.design_gust.value, &brief.pier);
    let moment = Line::new(
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
    .gives(
        "M",
        KilonewtonMetre,
        |(q, column_factor, d, h, top_factor, area, e)| -> Moment {
            q * (d * h) * column_factor * (h / 2.0) + q * area * top_factor * (h + e)
        },
    );
    let width = metre::new(
        square_metre::get(brief.load.wind_area.value)
            .max(0.0)
            .sqrt(),
    );
    let title = if shut(brief) {
        "the design gust that catches the roof open"
    } else {
        "the design gust, with no roof to keep it off"
    };
    let load = Load {
        shear: column + top,
        moment: moment.value,
        torsion: top * (width * GUST_ARM_RATIO),
        roof: Roof::Open,
        source: wind::SOURCE,
        ..plain(brief, "gust", title, weight)
    };
    let load = if shut(brief) {
        accident(
            brief,
            Load {
                source: CAUGHT_OPEN,
                ..load
            },
        )
    } else {
        load
    };
    (load, moment.working)
}

/// A ladder hung from the column, which pushes and hangs.
pub(super) fn ladder(brief: &Brief, weight: Force) -> (Load, Working) {
    let climber = person::climber();
    let moment = Line::new(
        "loads.ladder",
        "Moment at the column's foot of a ladder with a person on it, hung from the column",
        "M = W h/4 + W (d/2 + a)",
        person::LADDER_SOURCE,
    )
    .with("W", climber * gravity(), Kilonewton)
    .with("h", brief.pier.height.value, Metre)
    .with("d", brief.pier.outside_diameter.value, Metre)
    .with("a", metre::new(person::LADDER_STANDOFF_M), Metre)
    .gives(
        "M",
        KilonewtonMetre,
        |(weight, height, column, standoff)| {
            person::ladder_moment(weight, height, column, standoff)
        },
    );
    let load = Load {
        shear: person::ladder_push(climber),
        moment: moment.value,
        source: person::LADDER_SOURCE,
        ..plain(
            brief,
            "ladder",
            "a ladder hung on the column with a person on it",
            weight + climber * gravity(),
        )
    };
    (load, moment.working)
}

/// A knock hits at a metre, or at the column's top where it is lower.
pub(super) fn knock(brief: &Brief, weight: Force) -> (Load, Working) {
    let push = newton::new(KNOCK_N);
    let height = metre::new(metre::get(brief.pier.height.value).min(KNOCK_HEIGHT_M));
    let moment = Line::new(
        "loads.knock",
        "Moment at the column's foot of a knock",
        "M = H z",
        Source::judgement("1 kN at 1 m, or at the top of a lower column"),
    )
    .with("H", push, Kilonewton)
    .with("z", height, Metre)
    .gives("M", KilonewtonMetre, |(push, height)| -> Moment {
        push * height
    });
    let load = Load {
        shear: push,
        moment: moment.value,
        source: KNOCK,
        ..plain(brief, "knock", "a knock against the column", weight)
    };
    (accident(brief, load), moment.working)
}
