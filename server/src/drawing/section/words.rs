//! What the section's notes say.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::Units;
use stillground::stages::pier::figures::fill_words;
use stillground::units::metre;

use super::Layout;
use crate::drawing::furniture::{dimension_text, length_text};

/// The notes.
#[derive(Debug, Clone, Default)]
pub struct Words {
    pub(super) top_plate: String,
    pub(super) column: String,
    pub(super) plate: String,
    pub(super) block: String,
    pub(super) studs: String,
    pub(super) floor: Option<String>,
    pub(super) frost: String,
    pub(super) water: String,
    pub(super) contact: String,
    pub(super) ducts: String,
}

/// Puts them together.
pub(super) fn words(brief: &Brief, design: &Design, layout: &Layout) -> Words {
    let say = |length_m: f64| say_mm(brief.units, length_m);
    let number = |length_m: f64| dimension_text(brief.units, length_m * 1000.0);
    let width = metre::get(design.block.width);
    let (from, to) = layout.contact;
    let stand = if layout.pier.grouted {
        "on grout"
    } else {
        "on nuts, gap"
    };
    let plate = number(2.0 * layout.pier.plate_half);
    let top = number(2.0 * layout.pier.top_plate_half);
    Words {
        top_plate: format!(
            "Top plate {top}\u{a0}×\u{a0}{top}\u{a0}×\u{a0}{}",
            say(layout.pier.top_plate_thickness)
        ),
        column: format!(
            "Column ø\u{a0}{}\u{a0}×\u{a0}{}, {}",
            number(2.0 * layout.pier.radius),
            say(layout.wall),
            fill_words(brief.pier.fill.value)
        ),
        plate: format!(
            "Base plate {plate}\u{a0}×\u{a0}{plate}\u{a0}×\u{a0}{}, {stand} {}",
            say(layout.pier.plate_thickness),
            say(layout.pier.gap)
        ),
        block: format!(
            "Block {}\u{a0}×\u{a0}{}, {}",
            number(2.0 * layout.half_length),
            say(width),
            brief.block.concrete.value.said()
        ),
        studs: match design.anchors.studs.len() {
            0 => "No studs".to_owned(),
            count => format!(
                "{count} studs {}, {} deep",
                brief.anchors.size.value.said(),
                say(layout.pier.embedment)
            ),
        },
        floor: layout.floor.as_ref().map(|floor| {
            let kind = if floor.is_concrete { "Slab" } else { "Deck" };
            format!(
                "{kind}, {} clear all round",
                say(metre::get(brief.floor.gap.value))
            )
        }),
        frost: format!("Frost goes to {}", say(layout.frost)),
        water: format!(
            "Water at its highest {} down",
            say(layout.water.unwrap_or_default())
        ),
        contact: format!(
            "Soil hard against the sides from {} to {}",
            number(from),
            say(to)
        ),
        ducts: ducts(
            brief.block.duct_count.value,
            &say(layout.duct_diameter.unwrap_or_default()),
        ),
    }
}

fn ducts(count: f64, diameter: &str) -> String {
    if count > 1.0 {
        format!("{count} ducts ø\u{a0}{diameter}")
    } else {
        format!("Duct ø\u{a0}{diameter}")
    }
}

/// A length in millimetres or inches, with its unit.
pub(super) fn say_mm(units: Units, length_m: f64) -> String {
    length_text(units, length_m * 1000.0)
}

/// What the column holds.
#[must_use]
/// The drawing in words.
pub(super) fn description(layout: &Layout) -> String {
    let say = |length_m: f64| say_mm(layout.units, length_m);
    let words = &layout.words;
    let mut text = format!(
        "The base of the block is {} below ground and its top {} above. {}. {}. {}. {}. The pier stands {} high. {}.",
        say(layout.depth),
        say(layout.pier.upstand),
        words.block,
        words.studs,
        words.plate,
        words.column,
        say(layout.pier.height),
        words.frost
    );
    let contact = (layout.contact.1 > layout.contact.0).then_some(words.contact.as_str());
    for extra in [
        words.floor.as_deref(),
        layout.water.map(|_| words.water.as_str()),
        contact,
    ]
    .into_iter()
    .flatten()
    {
        text.push_str(&format!(" {extra}."));
    }
    text
}
