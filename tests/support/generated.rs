//! Plans made up from the catalogue of answers, the same ones each time: likely, extreme and odd answers mixed. And
//! what is wrong with a design, whatever its plan.
#![allow(clippy::expect_used, reason = "a test fails by panicking")]

mod figures;
#[cfg(feature = "service")]
mod sheets;

#[cfg(feature = "service")]
pub use sheets::sheet_faults;

use serde_json::{Value, json};
use stillground::design::Design;
use stillground::field::{Cell, Kind, Problem};
use stillground::figure::Units;
use stillground::site_plan::SitePlan;
use stillground::site_plan::prices::{MOST, Price, lines, per};
use stillground::stock::Stock;

/// Numbers that look random and are the same each time: the 64-bit mixer of Steele, Lea and Flood 2014, SplitMix.
pub struct Dice(u64);

impl Dice {
    /// Dice for a plan's number.
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    const fn roll(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Nought up to one.
    #[allow(clippy::cast_precision_loss, reason = "53 bits fit")]
    pub(crate) fn share(&mut self) -> f64 {
        (self.roll() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// True as often as said.
    pub(crate) fn happens(&mut self, share: f64) -> bool {
        self.share() < share
    }

    /// A whole number below a count.
    #[allow(clippy::cast_possible_truncation, reason = "below the count")]
    pub const fn below(&mut self, count: usize) -> usize {
        (self.roll() % count as u64) as usize
    }

    /// A number in a range: one of its ends, or evenly, or evenly by magnitude.
    pub(crate) fn number(&mut self, least: f64, most: f64) -> f64 {
        let share = self.share();
        match self.below(8) {
            0 => least,
            1 => most,
            2..=4 if least > 0.0 => (least.ln() + share * (most / least).ln())
                .exp()
                .clamp(least, most),
            _ => least + share * (most - least),
        }
    }
}

/// A plan that may hold contradictions; whether it can be planned with, the engine says.
///
/// # Panics
/// When the catalogue names an answer that the document does not take.
#[must_use]
pub fn plan(seed: u64) -> SitePlan {
    drawn(&mut Dice::new(seed), |_| true)
}

/// Sections that say what the ground is and what stands in it; two plans that share them mostly share the shape that is
/// solved, which is nearly all of a design's time.
const IN_THE_GROUND: [&str; 3] = ["site", "excavation", "block"];

/// A plan whose ground, pit and block are those of a ground's number and whose other answers are its own; answers that
/// contradict each other are taken back until it can be planned with. With what was said of them. Where the ground's own
/// answers leave the block's length, width or depth open, it has these, or the engine chooses them.
///
/// # Panics
/// When the catalogue names an answer that the document does not take.
#[must_use]
pub fn plan_on(ground: u64, sides_m: Option<[f64; 3]>, seed: u64) -> (SitePlan, Vec<Problem>) {
    let in_the_ground = |path: &str| {
        path.split_once('.')
            .is_some_and(|(section, _)| IN_THE_GROUND.contains(&section))
    };
    let mut shared = drawn(&mut Dice::new(!ground), in_the_ground);
    let mut refusals = agreed(&mut shared);
    if let Some(sides_m) = sides_m {
        let block = &mut shared.block;
        for (side, found) in [&mut block.length_m, &mut block.width_m, &mut block.depth_m]
            .into_iter()
            .zip(sides_m)
        {
            side.get_or_insert(found);
        }
    }
    let own = drawn(&mut Dice::new(seed), |path| !in_the_ground(path));
    let mut plan = SitePlan {
        site: shared.site,
        excavation: shared.excavation,
        block: shared.block,
        ..own
    };
    refusals.extend(agreed(&mut plan));
    (plan, refusals)
}

/// Takes back an answer of each contradiction, the last that was named, until none is left; what was said of each.
fn agreed(plan: &mut SitePlan) -> Vec<Problem> {
    let mut said = Vec::new();
    while let Err(problems) = plan.validate() {
        let mut document = serde_json::to_value(&*plan).expect("a document");
        for problem in &problems.0 {
            let mut places = problem.fields.iter().rev().map(|name| place_of(name));
            // None where another problem took the same answer back already.
            if let Some(place) = places.find(|place| {
                document
                    .pointer(place)
                    .is_some_and(|value| !value.is_null())
            }) {
                *document.pointer_mut(&place).expect("the answer just found") = Value::Null;
            }
        }
        *plan = serde_json::from_value(document).expect("a plan with an answer less");
        said.extend(problems.0);
        assert!(
            said.len() < 1000,
            "answers that cannot be taken back: {said:?}"
        );
    }
    said
}

/// Where an answer stands in the document: `floor.stands[2].mass_kg` is taken back with all stands.
fn place_of(name: &str) -> String {
    format!(
        "/{}",
        name.split('[').next().unwrap_or_default().replace('.', "/")
    )
}

fn drawn(dice: &mut Dice, asked: impl Fn(&str) -> bool) -> SitePlan {
    let said = [0.1, 0.3, 0.6, 1.0][dice.below(4)];
    let mut document = serde_json::to_value(SitePlan::unknown()).expect("a document");
    document["title"] = title(dice);
    for (field, answers) in [
        ("use", &["visual", "planetary", "deep_sky"][..]),
        ("units", &["metric", "imperial"]),
        ("code", &["eurocode", "aci"]),
    ] {
        if dice.happens(0.7) {
            document[field] = answers[dice.below(answers.len())].into();
        }
    }
    for field in SitePlan::others().filter(|field| asked(&field.path)) {
        if dice.happens(said) {
            let (section, name) = field.path.split_once('.').expect("a section");
            document[section][name] = other(dice, &field.path, field.kind);
        }
    }
    let mut plan: SitePlan = serde_json::from_value(document).expect("a plan");
    for field in SitePlan::numbers().filter(|field| asked(&field.path)) {
        if dice.happens(said) {
            (field.set)(&mut plan, Some(dice.number(field.least, field.most)));
        }
    }
    prices(dice, &mut plan);
    plan.stock = [None, Some(Stock::Metric), Some(Stock::Inch)][dice.below(3)];
    plan
}

/// Prices of some lines, for a plan in three.
fn prices(dice: &mut Dice, plan: &mut SitePlan) {
    if !dice.happens(1.0 / 3.0) {
        return;
    }
    let share = [0.05, 0.5, 1.0][dice.below(3)];
    let price = |dice: &mut Dice, line: &lines::Line| {
        let price = [0.0, 0.0001, 0.4, 145.5, 999_999.99, MOST][dice.below(6)];
        let units = [Units::Metric, Units::Imperial][dice.below(2)];
        let item =
            [None, Some(NAMES[0].to_owned()), Some(NAMES[4].to_owned())][dice.below(3)].clone();
        (
            line.id.to_owned(),
            Price {
                price,
                per: per(line.unit, units).to_owned(),
                item,
            },
        )
    };
    let currency = [
        None,
        Some("EUR"),
        Some("₹"),
        Some("\u{5e9}\u{5e7}\u{5dc}"),
        Some("元"),
    ][dice.below(5)];
    let priced: Vec<&lines::Line> = lines::LINES
        .iter()
        .filter(|_| dice.happens(share))
        .collect();
    plan.prices.currency = currency.map(str::to_owned);
    plan.prices.lines = Some(priced.into_iter().map(|line| price(dice, line)).collect());
}

/// Titles and names that break careless printers.
const NAMES: [&str; 9] = [
    "Quarry Lane",
    "",
    " ",
    "\"><script>alert(1)</script>'&amp;]]>--\u{301}\u{301}",
    "=1+1",
    "\u{627}\u{644}\u{631}\u{635}\u{62f} \u{5de}\u{5e6}\u{5e4}\u{5d4}",
    "\u{671b}\u{9060}\u{93e1}\u{306e}\u{67f1} \u{1f52d}\u{1f30c}",
    "\\, ; BEGIN:VEVENT",
    "W",
];

fn title(dice: &mut Dice) -> Value {
    match dice.below(12) {
        0 => Value::Null,
        1 => "W".repeat(500).into(),
        2 => "\u{671b}".repeat(500).into(),
        _ => NAMES[dice.below(NAMES.len())].into(),
    }
}

fn other(dice: &mut Dice, path: &str, kind: Kind) -> Value {
    match kind {
        Kind::Choice(keys) => keys[dice.below(keys.len())].into(),
        Kind::YesOrNo => dice.happens(0.5).into(),
        // The one text with a form of its own.
        Kind::Text if path == "work.start_date" => format!(
            "20{:02}-{:02}-{:02}",
            dice.below(100),
            1 + dice.below(12),
            1 + dice.below(28)
        )
        .into(),
        Kind::Text => NAMES[dice.below(NAMES.len())].into(),
        Kind::Rows(cells, most) => (0..rows(dice, most))
            .map(|row| line(dice, cells, row))
            .collect(),
        Kind::Points(most) => {
            let reach = [1.0, 3.0, 15.0, 50.0][dice.below(4)];
            (0..rows(dice, most))
                .map(|_| json!([dice.number(-reach, reach), dice.number(-reach, reach)]))
                .collect()
        }
    }
}

/// None, a few, or as many as are taken.
fn rows(dice: &mut Dice, most: usize) -> usize {
    match dice.below(6) {
        0 => 0,
        1 => most,
        _ => 1 + dice.below(most.min(5)),
    }
}

fn line(dice: &mut Dice, cells: &[Cell], row: usize) -> Value {
    let step = |dice: &mut Dice, row: usize| 5.0 * row as f64 + dice.number(0.0, 5.0);
    let cell = |cell: &Cell| {
        let value = match cell.name {
            _ if cell.is_text => NAMES[dice.below(NAMES.len())].into(),
            "x_m" | "y_m" => dice.number(-10.0, 10.0).into(),
            "mass_kg" => dice.number(10.0, 250.0).into(),
            "up_to_c" => step(dice, row).into(),
            "concrete_c" => (step(dice, row) - 20.0).into(),
            _ => dice.number(1.0, 20.0).into(),
        };
        (cell.name.to_owned(), value)
    };
    Value::Object(cells.iter().map(cell).collect())
}

/// Words in a measure's name for which less than nothing is absurd.
const NEVER_NEGATIVE: [&str; 12] = [
    "length",
    "width",
    "volume",
    "mass",
    "height",
    "diameter",
    "thickness",
    "stiffness_n",
    "quantity",
    "utilisation",
    "lasts",
    "frequencies",
];

/// What is wrong with what a design shows, whatever its plan: figures that are none, sizes below nothing, lists that may
/// not be empty. Quick enough for a million of them.
#[must_use]
pub fn shown_faults(design: &Design) -> Vec<String> {
    let mut found = figures::figure_faults(design, |name| {
        NEVER_NEGATIVE.iter().any(|word| name.contains(word))
    });
    for (list, empty) in [
        ("checks", design.checks.is_empty()),
        ("materials", design.materials.is_empty()),
        ("schedule", design.schedule.is_empty()),
        ("cautions", design.cautions.is_empty()),
        ("workings", design.workings.is_empty()),
    ] {
        if empty {
            found.push(format!("no {list}"));
        }
    }
    found
}

/// The same, and what a design keeps to itself: solutions, and figures that stand in no document.
#[must_use]
pub fn faults(design: &Design) -> Vec<String> {
    let mut found = shown_faults(design);
    let kept = format!("{design:?}");
    let none = kept
        .split(|c: char| !c.is_alphanumeric())
        .find(|word| matches!(*word, "NaN" | "inf"));
    found.extend(none.map(|word| format!("{word} {}", around(&kept, word))));
    found
}

/// The text before the first figure that is none.
fn around(shown: &str, word: &str) -> String {
    let at = shown
        .match_indices(word)
        .map(|(at, _)| at)
        .find(|&at| !shown[..at].ends_with(char::is_alphanumeric))
        .unwrap_or(0);
    shown
        .get(at.saturating_sub(160)..at)
        .unwrap_or_default()
        .to_owned()
}
