//! Which way a column of a record measures: by its name, and by where gravity pulls. What is found so is told and may be
//! corrected; what no name says is asked for.

use serde::Serialize;

use crate::site_plan::commissioning::Direction;
use crate::trace::names::words;
use crate::trace::{Kind, statistics};
use crate::units::STANDARD_GRAVITY_M_S2;

/// Which way a column measures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Along {
    /// East and west, or a picture's first axis.
    X,
    /// North and south, or a picture's second axis.
    Y,
    /// Up and down.
    Z,
}

/// A column of measurements, as it was taken.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Column {
    /// Its name, or its number from one.
    pub name: String,
    /// Which way it measures, where that is known.
    pub along: Option<Along>,
    /// Whether the answer is read from it.
    pub used: bool,
}

impl Along {
    /// The direction of a knock or a pull.
    pub const fn direction(self) -> Option<Direction> {
        match self {
            Self::X => Some(Direction::X),
            Self::Y => Some(Direction::Y),
            Self::Z => None,
        }
    }

    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::X => Direction::X.words(),
            Self::Y => Direction::Y.words(),
            Self::Z => "up and down",
        }
    }
}

/// What stands before the letter of an axis in the names that loggers write.
const STEMS: [&str; 14] = [
    "",
    "a",
    "acc",
    "accel",
    "acceleration",
    "accelerometer",
    "g",
    "gf",
    "gforce",
    "linear",
    "tilt",
    "d",
    "pos",
    "star",
];

/// Which way a column measures, by its name.
pub(super) fn by_name(name: &str) -> Option<Along> {
    words(name).iter().find_map(|word| by_word(word))
}

fn by_word(word: &str) -> Option<Along> {
    match word {
        "east" | "west" | "ew" => return Some(Along::X),
        "north" | "south" => return Some(Along::Y),
        "up" | "down" | "vertical" => return Some(Along::Z),
        _ => {}
    }
    if let [band, kind, side] = word.as_bytes() {
        // Channels of seismometers: EHE, HHN, BHZ.
        if b"ehbs".contains(band) && b"hln".contains(kind) {
            match side {
                b'e' => return Some(Along::X),
                b'n' => return Some(Along::Y),
                b'z' => return Some(Along::Z),
                _ => {}
            }
        }
    }
    let along = match word.chars().next_back()? {
        'x' => Along::X,
        'y' => Along::Y,
        'z' => Along::Z,
        _ => return None,
    };
    let stem = &word[..word.len() - 1];
    STEMS.contains(&stem).then_some(along)
}

/// The bearing towards which a column grows, by its name.
pub(super) fn bearing(name: &str) -> Option<f64> {
    words(name).iter().find_map(|word| match word.as_str() {
        "north" => Some(0.0),
        "east" => Some(90.0),
        "south" => Some(180.0),
        "west" => Some(270.0),
        _ => None,
    })
}

/// The column in which gravity stands, by each column's first value: in metres a second squared or in times gravity.
pub(super) fn upright(first: &[f64]) -> Option<usize> {
    let is_gravity = |value: f64| {
        [1.0, STANDARD_GRAVITY_M_S2]
            .iter()
            .any(|g| (value.abs() / g - 1.0).abs() < 0.05)
    };
    let mut found = (0..first.len()).filter(|i| is_gravity(first[*i]));
    let one = found.next()?;
    let mut rest = (0..first.len()).filter(|i| *i != one);
    let is_alone = rest.all(|i| first[i].abs() < 0.2 * first[one].abs());
    (is_alone && first.len() > 1).then_some(one)
}

/// Which way each column measures. A sensor that did not lie flat says nothing of east and north.
pub(super) fn ways(
    names: &[String],
    first: &[f64],
    kind: Kind,
    remarks: &mut Vec<String>,
) -> Vec<Column> {
    let mut ways: Vec<Option<Along>> = names.iter().map(|name| by_name(name)).collect();
    if kind == Kind::Knock
        && let Some(up) = upright(first)
    {
        if ways[up].is_some_and(|along| along != Along::Z) {
            remarks.push(format!(
                "Gravity stands in “{}”, so that the sensor did not lie flat: which of the others is east and west has to be said.",
                names[up]
            ));
            ways.fill(None);
        }
        ways[up] = Some(Along::Z);
    }
    let columns = names.iter().zip(ways);
    columns
        .enumerate()
        .map(|(n, (name, along))| Column {
            name: name.clone(),
            along,
            used: n < 2,
        })
        .collect()
}

/// The column from which a swing is read: the one that swings most, of those that lie level where any does.
pub(super) fn swinging(
    columns: &[Column],
    values: &[Vec<f32>],
    rate_hz: f64,
    remarks: &mut Vec<String>,
) -> usize {
    let is_upright = |n: &usize| columns[*n].along == Some(Along::Z);
    let (level, upright): (Vec<usize>, Vec<usize>) =
        (0..columns.len()).partition(|n| !is_upright(n));
    let among = if level.is_empty() { &upright } else { &level };
    let chosen = statistics::loudest(among, values, rate_hz);
    let quoted = |n: usize| format!("“{}”", columns[n].name);
    let others: Vec<String> = among
        .iter()
        .filter(|n| **n != chosen)
        .map(|n| match columns[*n].along {
            Some(along) => format!("{}, {},", quoted(*n), along.words()),
            None => quoted(*n),
        })
        .collect();
    if !others.is_empty() {
        remarks.push(format!(
            "The swing is read from {}, where it is largest; {} is read where it is named.",
            quoted(chosen),
            others.join(" and ")
        ));
    }
    if !level.is_empty() && !upright.is_empty() {
        let names: Vec<String> = upright.into_iter().map(quoted).collect();
        remarks.push(format!(
            "{} is up and down and is not looked at.",
            names.join(" and ")
        ));
    }
    remarks.push(match columns[chosen].along {
        Some(Along::Z) => format!(
            "{} is up and down, which is no swing of a pier; name the column that lies level.",
            quoted(chosen)
        ),
        Some(along) => format!(
            "{} is taken for {}, as its name says and with the telephone's long side north and south; say so if it lay otherwise.",
            quoted(chosen),
            along.words()
        ),
        None => format!(
            "Nothing says which way {} measures: choose the direction.",
            quoted(chosen)
        ),
    });
    chosen
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_that_loggers_write_say_their_way() {
        for (name, along) in [
            ("ax", Some(Along::X)),
            ("Acceleration y (m/s^2)", Some(Along::Y)),
            ("accZ", Some(Along::Z)),
            ("x_px", Some(Along::X)),
            ("EHN", Some(Along::Y)),
            ("tilt_east_arcsec", Some(Along::X)),
            ("px", None),
            ("Absolute acceleration (m/s^2)", None),
            ("max", None),
            ("value", None),
        ] {
            assert_eq!(by_name(name), along, "{name}");
        }
    }

    #[test]
    fn gravity_stands_in_one_column_or_is_not_told() {
        assert_eq!(upright(&[0.03, -0.02, 9.83]), Some(2));
        assert_eq!(upright(&[-0.99, 0.02, 0.01]), Some(0));
        assert_eq!(upright(&[0.03, -0.02, 0.01]), None);
        assert_eq!(upright(&[6.9, 6.9, 0.2]), None);
        assert_eq!(upright(&[9.81]), None);
    }
}
