//! The five loads, one function each.

use crate::brief::Brief;
use crate::rules::en_1991_1_1_2002::person;
use crate::rules::en_1991_1_4_2005::{cylinder, gust as wind};
use crate::source::{Source, Standing};
use crate::units::{Force, Length, Moment, gravity, metre, newton, newton_metre, square_metre};

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
pub(super) const CAUGHT_OPEN: Source = Source::new(
    "EN 1991-1-4",
    "2005",
    "7.2.9 (3), as an advisory note on dominant openings tells it",
    Standing::SecondHand,
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

fn moment(force: Force, height: Length) -> Moment {
    force * height
}

/// The middle of telescope and mount above the foot.
pub(super) fn centre(brief: &Brief) -> Length {
    brief.pier.height.value + brief.load.centre_above_pier.value
}

pub(super) fn rest(brief: &Brief, weight: Force) -> Load {
    plain(brief, "rest", "weight at rest", weight)
}

pub(super) fn leaning(brief: &Brief, weight: Force) -> Load {
    let push = person::leaning();
    Load {
        shear: push,
        moment: moment(push, centre(brief)),
        torsion: moment(push, metre::new(LEANING_ARM_M)),
        source: person::SOURCE,
        ..plain(
            brief,
            "leaning",
            "a person who leans on the telescope",
            weight,
        )
    }
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
pub(super) fn gust(brief: &Brief, weight: Force) -> Load {
    let [column, top] = gust_forces(brief);
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
        moment: moment(column, brief.pier.height.value / 2.0) + moment(top, centre(brief)),
        torsion: moment(top, width * GUST_ARM_RATIO),
        roof: Roof::Open,
        source: wind::SOURCE,
        ..plain(brief, "gust", title, weight)
    };
    if shut(brief) {
        accident(
            brief,
            Load {
                source: CAUGHT_OPEN,
                ..load
            },
        )
    } else {
        load
    }
}

/// A ladder hung from the column, which pushes and hangs.
pub(super) fn ladder(brief: &Brief, weight: Force) -> Load {
    let climber = person::climber();
    let push = person::ladder_push(climber);
    let hanging = person::hanging_moment(
        climber,
        person::ladder_arm(brief.pier.outside_diameter.value),
    );
    Load {
        shear: push,
        moment: hanging + moment(push, brief.pier.height.value),
        source: person::LADDER_SOURCE,
        ..plain(
            brief,
            "ladder",
            "a ladder hung on the column with a person on it",
            weight + climber * gravity(),
        )
    }
}

/// How high a knock hits: a metre, or the column's top where it is lower.
pub(super) fn knock_height(brief: &Brief) -> Length {
    metre::new(metre::get(brief.pier.height.value).min(KNOCK_HEIGHT_M))
}

/// A knock's force.
pub(super) fn knock_force() -> Force {
    newton::new(KNOCK_N)
}

pub(super) fn knock(brief: &Brief, weight: Force) -> Load {
    let push = knock_force();
    let load = Load {
        shear: push,
        moment: moment(push, knock_height(brief)),
        source: KNOCK,
        ..plain(brief, "knock", "a knock against the column", weight)
    };
    accident(brief, load)
}
