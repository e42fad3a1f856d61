//! What stands beside the picture, and the picture in words.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::stages::motion::card::metres_up;
use stillground::stock::Stock;
use stillground::units::metre;

use super::Layout;
use super::layout::PERSON_M;
use crate::drawing::furniture::{dimension_text, length_text};

/// The labels, and the picture in words.
#[derive(Debug, Clone, Default)]
pub struct Words {
    pub(super) column: String,
    pub(super) studs: String,
    pub(super) block: String,
    pub(super) depth: String,
    pub(super) distance: Option<String>,
    pub(super) water: Option<String>,
    pub(super) description: String,
}

impl Words {
    /// What the labels say.
    #[must_use]
    pub fn labels(&self) -> Vec<&str> {
        let always = [&self.column, &self.studs, &self.block, &self.depth];
        always
            .into_iter()
            .chain(&self.distance)
            .chain(&self.water)
            .map(String::as_str)
            .filter(|label| !label.is_empty())
            .collect()
    }
}

/// Puts them together.
#[must_use]
pub fn words(brief: &Brief, design: &Design, layout: &Layout) -> Words {
    let units = brief.units;
    let millimetres = |length_m: f64| length_text(units, length_m * 1000.0);
    let long = |length_m: f64| units.say(length_m, Unit::Metre);
    let count = design.anchors.studs.len();
    let mut words = Words {
        column: format!(
            "Column ø\u{a0}{}\u{a0}×\u{a0}{}, {} high",
            dimension_text(units, 2000.0 * layout.pier.radius),
            millimetres(metre::get(design.pier.wall)),
            long(layout.pier.height)
        ),
        studs: if count == 0 {
            String::new()
        } else {
            format!(
                "{count} studs {}, {} deep",
                brief.anchors.size.value.said(),
                millimetres(layout.pier.embedment)
            )
        },
        block: block(units, layout),
        depth: format!("Base {} below ground", long(layout.depth)),
        distance: layout.quiet.map(|away| {
            let away = metres_up(units, away);
            if layout.drawn_quiet().is_some() {
                format!("Stand {away} or more from the middle of the pier")
            } else {
                format!(
                    "Stand {away} or more from the middle of the pier, which is farther than drawn"
                )
            }
        }),
        water: layout
            .layers
            .water
            .filter(|water| *water < layout.bottom())
            .map(|water| format!("Water at its highest {} down", long(water))),
        description: String::new(),
    };
    words.description = description(units, layout, &words);
    words
}

fn block(units: Units, layout: &Layout) -> String {
    let number = |length_m: f64| units.figure(length_m, Unit::Metre).digits;
    format!(
        "Block {}\u{a0}×\u{a0}{}\u{a0}×\u{a0}{}",
        number(2.0 * layout.block.0),
        number(2.0 * layout.block.1),
        units.say(layout.depth + layout.pier.upstand, Unit::Metre)
    )
}

fn description(units: Units, layout: &Layout, words: &Words) -> String {
    let long = |length_m: f64| units.say(length_m, Unit::Metre);
    let mut parts = vec![
        "The ground is cut open at its near corner".to_owned(),
        words.block.clone(),
        words.depth.clone(),
        if words.studs.is_empty() {
            "There are no studs".to_owned()
        } else {
            words.studs.clone()
        },
        words.column.clone(),
        "On it stands a plain tube in the telescope’s place".to_owned(),
    ];
    if layout.is_wider() {
        parts.push(format!(
            "The pit is {} by {} at the top",
            long(2.0 * layout.pit[0].0),
            long(2.0 * layout.pit[0].1)
        ));
    }
    parts.push(match &layout.floor {
        None => "People stand on the ground itself".to_owned(),
        Some(floor) if floor.beside.is_concrete => format!(
            "A slab lies round the pier with its top {}",
            level(units, floor.beside.level)
        ),
        Some(floor) => format!(
            "A deck on posts lies round the pier with its top {}",
            level(units, floor.beside.level)
        ),
    });
    let layers = &layout.layers;
    if let Some(topsoil) = layers.topsoil {
        parts.push(format!("The topsoil is {} thick", long(topsoil)));
    }
    match layers.rock.filter(|rock| *rock < layout.bottom()) {
        Some(rock) if rock > 0.0 => parts.push(format!("Rock begins {} down", long(rock))),
        Some(_) => parts.push("The ground is rock".to_owned()),
        None => {}
    }
    parts.extend(words.water.clone());
    parts.extend(words.distance.clone());
    parts.push(format!(
        "A person of {} stands {} from the pier’s axis",
        long(Stock::of(units).round(Unit::Metre, PERSON_M)),
        long(layout.person)
    ));
    parts.join(". ") + "."
}

fn level(units: Units, level_m: f64) -> String {
    match level_m {
        level if level > 0.0 => format!("{} above ground", units.say(level, Unit::Metre)),
        level if level < 0.0 => format!("{} below ground", units.say(-level, Unit::Metre)),
        _ => "level with the ground".to_owned(),
    }
}
