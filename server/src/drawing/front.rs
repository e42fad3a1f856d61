//! What digging less, or paying less, costs the star: every pier of the front as a dot, the ways by name, the trade's rules
//! beside them.

use stillground::figure::{Count, PerCent, ToPrimitive, Unit, Units};
use stillground::options::{Options, Point as Pier};

use crate::drawing::area::area_of;
use crate::drawing::axis::{Axis, steps};
use crate::drawing::pen::{Head, Pen, SIZE as LETTERS};
use crate::drawing::{Anchor, Drawing, Label, Line, Point, at};

/// Size of the picture, mm.
const SIZE: (f64, f64) = (120.0, 70.0);
/// Radius of a dot, mm.
const DOT_MM: f64 = 0.9;
/// Least growth that is drawn, per cent: less cannot be seen on any star.
const LEAST_PER_CENT: f64 = 0.01;
/// A dot with its name.
struct Named {
    name: String,
    across: f64,
    per_cent: f64,
}

/// What a picture shows across.
struct Across<'a> {
    name: &'static str,
    title: &'static str,
    /// Where a pier stands; none where it has no such figure.
    of: fn(&Pier) -> Option<f64>,
    say: &'a dyn Fn(f64) -> String,
    /// What the reader's unit counts for one of it, so that ticks are round to the reader.
    per_unit: f64,
    words: &'static str,
}

fn per_cent(pier: &Pier) -> Option<f64> {
    let worst = pier.star_growth_ratio?.worst;
    worst
        .is_finite()
        .then(|| (100.0 * worst).max(LEAST_PER_CENT))
}

/// Draws the ground to dig against the star's growth; none where no pier has a figure for the star.
#[must_use]
pub fn draw(options: &Options, units: Units) -> Option<Drawing> {
    let ways = &options.named;
    picture(
        options,
        units,
        &options.front,
        &[
            ("least digging", &ways.least_digging),
            ("middle", &ways.middle),
            ("stillest", &ways.stillest),
        ],
        &Across {
            name: "front",
            title: "Ground to dig, and how much wider the star becomes at worst",
            of: |pier| Some(pier.dig_volume_m3),
            say: &|value| units.say(value, Unit::CubicMetre),
            per_unit: units.convert(1.0, Unit::CubicMetre).0,
            words: "to dig",
        },
    )
}

/// Draws the cost against the star's growth; none where nothing has a price.
#[must_use]
pub fn by_cost(options: &Options, units: Units, currency: Option<&str>) -> Option<Drawing> {
    let found = options.by_cost.as_ref()?;
    picture(
        options,
        units,
        &found.front,
        &[
            ("cheapest", &found.cheapest),
            ("least digging", &options.named.least_digging),
            ("middle", &options.named.middle),
            ("stillest", &options.named.stillest),
        ],
        &Across {
            name: "front-by-cost",
            title: "What has a price, and how much wider the star becomes at worst",
            of: |pier| pier.cost?.0.to_f64(),
            say: &|value| match currency {
                Some(currency) => format!("{}\u{a0}{currency}", units.say(value, Count)),
                None => units.say(value, Count),
            },
            per_unit: 1.0,
            words: "to pay",
        },
    )
}

fn picture(
    options: &Options,
    units: Units,
    piers: &[Pier],
    ways: &[(&str, &Option<Pier>)],
    across_is: &Across<'_>,
) -> Option<Drawing> {
    let named = |name: &str, pier: &Pier| {
        Some(Named {
            name: name.to_owned(),
            across: (across_is.of)(pier)?,
            per_cent: per_cent(pier)?,
        })
    };
    let front: Vec<(f64, f64)> = piers
        .iter()
        .filter_map(|pier| Some(((across_is.of)(pier)?, per_cent(pier)?)))
        .collect();
    let mut all: Vec<Named> = Vec::new();
    let found = ways
        .iter()
        .filter_map(|(name, pier)| named(name, pier.as_ref()?));
    for one in found {
        match all.last_mut() {
            // One pier that is two of the three has one dot and one name.
            Some(last) if (last.across, last.per_cent) == (one.across, one.per_cent) => {
                last.name = format!("{} and {}", last.name, one.name);
            }
            _ => all.push(one),
        }
    }
    let ways = all;
    let thumbs: Vec<Named> = options
        .rules_of_thumb
        .iter()
        .filter_map(|thumb| named(thumb.title, &thumb.point))
        .collect();
    if front.is_empty() {
        return None;
    }
    let asked = (100.0 * options.asked_ratio).max(LEAST_PER_CENT);
    let all = || {
        let others = ways.iter().chain(&thumbs);
        let others = others.map(|one| (one.across, one.per_cent));
        front.iter().copied().chain(others)
    };
    let most = 1.08 * all().map(|(across, _)| across).fold(0.0, f64::max);
    let logs = all()
        .map(|(_, growth)| growth.log10())
        .chain([asked.log10()]);
    let (low, high) = logs.fold((f64::MAX, f64::MIN), |(low, high), log| {
        (low.min(log), high.max(log))
    });
    let across = Axis {
        from: at(0.0, SIZE.1),
        to: at(SIZE.0, SIZE.1),
        low: 0.0,
        high: most,
    };
    let up = Axis {
        from: at(SIZE.0, SIZE.1),
        to: at(SIZE.0, 0.0),
        low: low - 0.15,
        high: high + 0.15,
    };
    let place = |(value, growth): (f64, f64)| at(across.place(value).x, up.place(growth.log10()).y);
    let mut pen = Pen::default();
    pen.rectangle(Line::Hair, at(0.0, 0.0), at(SIZE.0, SIZE.1));
    let line = up.place(asked.log10()).y;
    pen.line(Line::Dashed, &[at(0.0, line), at(SIZE.0, line)]);
    pen.text(at(1.5, line - 1.2), Anchor::Start, "what is asked");
    let places: Vec<Point> = front.iter().copied().map(place).collect();
    pen.line(Line::Thin, &places);
    for place in places {
        pen.dot(place, DOT_MM);
    }
    let kinds = [
        (&thumbs, Line::Thick, 1.6 * DOT_MM, -1.6),
        (&ways, Line::Heavy, 2.2 * DOT_MM, 4.2),
    ];
    for (named, line, radius, _) in kinds {
        for one in named {
            pen.circle(line, place((one.across, one.per_cent)), radius);
        }
    }
    // Names come last, clear of every dot.
    for (named, _, _, below) in kinds {
        for one in named {
            beside(
                &mut pen,
                place((one.across, one.per_cent)),
                &one.name,
                below,
            );
        }
    }
    let ticks = steps(0.0, most * across_is.per_unit, 6).into_iter();
    for value in ticks.map(|tick| tick / across_is.per_unit) {
        across.mark(&mut pen, value, at(0.0, 2.0), &(across_is.say)(value));
    }
    for value in [
        0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0,
    ] {
        let log = f64::log10(value);
        if (up.low..=up.high).contains(&log) {
            up.mark(&mut pen, log, at(1.2, 0.0), &units.say(value, PerCent));
        }
    }
    Some(pen.finish(Head {
        name: across_is.name,
        title: across_is.title.to_owned(),
        description: words(
            front.len(),
            ways.iter().chain(&thumbs),
            asked,
            units,
            across_is,
        ),
        scale: None,
    }))
}

/// A name beside a dot: where it is asked for, or else the nearest place that is free of other names and of lines.
fn beside(pen: &mut Pen, centre: Point, name: &str, below: f64) {
    let asked = if centre.x < 0.7 * SIZE.0 { 1.0 } else { -1.0 };
    let label = |side: f64, below: f64| Label {
        at: at(
            centre.x + 3.0 * side,
            (centre.y + below).clamp(LETTERS, SIZE.1 - 1.0),
        ),
        size: LETTERS,
        anchor: if side > 0.0 {
            Anchor::Start
        } else {
            Anchor::End
        },
        upright: false,
        bold: false,
        text: name.to_owned(),
    };
    let heights = [below, -1.6, 4.2, -6.2, 8.8, -10.8, 13.4];
    let free = heights
        .into_iter()
        .flat_map(|below| [label(asked, below), label(-asked, below)])
        .find(|label| {
            let area = area_of(label);
            area.left >= 0.0 && area.right <= SIZE.0 && pen.is_free(&area)
        });
    pen.label(free.unwrap_or_else(|| label(asked, below)));
}

fn words<'a>(
    count: usize,
    named: impl Iterator<Item = &'a Named>,
    asked: f64,
    units: Units,
    across: &Across<'_>,
) -> String {
    let say = |one: &Named| {
        let (value, growth) = ((across.say)(one.across), units.say(one.per_cent, PerCent));
        format!("{}: {value} {}, {growth} wider", one.name, across.words)
    };
    let all: Vec<String> = named.map(say).collect();
    format!(
        "{count} piers of which none betters another in both; {} is asked. {}.",
        units.say(asked, PerCent),
        all.join("; ")
    )
}
