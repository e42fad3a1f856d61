//! The parts that a plan is made of, each beside its row of the catalogue: what was chosen is always one; what a person stated
//! may be none, and is then named.

use serde::Serialize;

use crate::brief::Brief;
use crate::field::Path;
use crate::figure::{Metre, Millimetre};
use crate::notes::{Found, Notes, When};
use crate::path;
use crate::rules::tubes;
use crate::site_plan::SitePlan;
use crate::site_plan::block::Mix;
use crate::source::Source;
use crate::stages::block::Block;
use crate::stages::pier::Pier;
use crate::stock::goods::{self, BARS, COLUMN_STEELS, CONCRETES, PLATES};
use crate::stock::words;
use crate::units::{Length, kilogram, metre, millimetre};

/// Two thicknesses that are one, mm.
const SAME_PLATE_MM: f64 = 0.05;
/// Two bags that are one, kg.
const SAME_BAG_KG: f64 = 0.05;

/// A part of the plan.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Part {
    /// What it is.
    pub part: &'static str,
    /// The answer that says its size.
    pub field: Path,
    /// Name of its row in the catalogue; none where it is none, or where any round size can be made.
    pub stock_row: Option<&'static str>,
    /// Whether it is sold, or can be set out, where the pier is built.
    pub sold: bool,
    /// Its size in words.
    pub says: String,
    /// The standard that its row names, and how that was met; none where it has no row.
    pub source: Option<&'static str>,
}

/// Where the families come from.
const SOURCE: Source = Source::common_practice("what yards and merchants keep, by their standards");

/// Finds the row of each part.
pub fn stage(brief: &Brief, block: &Block, pier: &Pier) -> Found<Vec<Part>> {
    let mut parts = steel(brief, pier);
    parts.extend(studs(brief));
    parts.extend(concrete(brief, block));
    let mut notes = Notes::default();
    let missing: Vec<String> = parts
        .iter()
        .filter(|part| !part.sold)
        .map(|part| format!("{} {} (“{}”)", part.part, part.says, asked(part.field)))
        .collect();
    if !missing.is_empty() {
        notes.caution(
            "materials.not_stock",
            When::Planning,
            format!(
                "Not every size of this plan is a stock size. As stated, and checked as stated: {}. Ask at the counter before anything \
                 is ordered, or take a size that is kept there.",
                missing.join("; ")
            ),
            SOURCE,
        );
    }
    Found {
        value: parts,
        notes,
    }
}

/// How the form asks for an answer, so that whoever reads of it finds it there.
fn asked(field: Path) -> &'static str {
    let number = SitePlan::number(&field).and_then(|row| row.words);
    let other = SitePlan::other(&field).and_then(|row| row.words);
    number.or(other).map_or("", |words| words.label)
}

fn steel(brief: &Brief, pier: &Pier) -> Vec<Part> {
    let (stock, units) = (brief.stock.value, brief.units);
    let [outside, wall] = [pier.outside_diameter, pier.wall];
    let row = tubes::sold(stock, millimetre::get(outside), millimetre::get(wall))
        .filter(|row| brief.yard.keeps_tube(row));
    let tube = Part {
        part: "column",
        field: path!(pier.outside_diameter_mm),
        stock_row: row.map(|row| row.name),
        sold: row.is_some(),
        says: words::tube(stock, units, outside, wall).unwrap_or_else(|| {
            format!(
                "{} × {}",
                units.say(outside, Millimetre),
                units.say(wall, Millimetre)
            )
        }),
        source: row.map(|row| row.standard),
    };
    let plate = |part, field, thickness: Length| {
        let row = goods::near(
            &PLATES,
            stock,
            "thickness_mm",
            millimetre::get(thickness),
            SAME_PLATE_MM,
        )
        .filter(|row| brief.yard.keeps_plate(row.name()));
        Part {
            part,
            field,
            stock_row: row.as_ref().map(|row| row.name()),
            sold: row.is_some(),
            says: units.say(thickness, Millimetre),
            source: row.map(|row| row.text("source")),
        }
    };
    let grade = brief.pier.steel.value;
    vec![
        tube,
        plate(
            "base plate",
            path!(pier.plate_thickness_mm),
            pier.plate_thickness,
        ),
        plate(
            "top plate",
            path!(pier.top_plate_thickness_mm),
            brief.pier.top_plate_thickness.value,
        ),
        Part {
            part: "steel",
            field: path!(pier.steel),
            stock_row: Some(grade.key()),
            sold: grade.stock() == stock,
            says: grade.said().to_owned(),
            source: COLUMN_STEELS.row(grade.key()).map(|row| row.text("source")),
        },
    ]
}

fn studs(brief: &Brief) -> Vec<Part> {
    let (stock, units) = (brief.stock.value, brief.units);
    let anchors = &brief.anchors;
    let (size, class) = (anchors.size.value, anchors.strength_class.value);
    let longest = metre::new(
        brief
            .yard
            .longest_rod_m
            .unwrap_or(goods::size("rod-longest", stock)),
    );
    vec![
        Part {
            part: "studs",
            field: path!(anchors.size),
            stock_row: Some(size.key()),
            sold: size.stock() == stock && brief.yard.keeps_size(size),
            says: size.said().to_owned(),
            source: Some(crate::rules::threads::row_source(size)),
        },
        Part {
            part: "class of the studs",
            field: path!(anchors.strength_class),
            stock_row: Some(class.key()),
            // A thread is made of the steels of its own family.
            sold: class.stock() == stock && class.stock() == size.stock(),
            says: class.said().to_owned(),
            source: Some(crate::rules::threads::class_row_source(class)),
        },
        Part {
            part: "rod",
            field: path!(anchors.length_mm),
            stock_row: Some("rod-longest"),
            sold: anchors.length.value <= longest,
            says: units.say(anchors.length.value, Millimetre),
            source: None,
        },
    ]
}

fn concrete(brief: &Brief, block: &Block) -> Vec<Part> {
    let (stock, units) = (brief.stock.value, brief.units);
    let class = brief.block.concrete.value;
    let mut parts = vec![Part {
        part: "concrete",
        field: path!(block.concrete),
        stock_row: Some(class.key()),
        sold: class.stock() == stock,
        says: class.said().to_owned(),
        source: CONCRETES.row(class.key()).map(|row| row.text("source")),
    }];
    if brief.block.mix.value == Mix::Bagged {
        let bag = brief.block.bag.value;
        let row = goods::near(
            &goods::GOODS,
            stock,
            "value",
            kilogram::get(bag),
            SAME_BAG_KG,
        )
        .filter(|row| row.name().starts_with("bag"));
        parts.push(Part {
            part: "bags",
            field: path!(block.bag_mass_kg),
            stock_row: row.as_ref().map(|row| row.name()),
            sold: row.is_some(),
            says: units.say(bag, crate::figure::Kilogram),
            source: row.map(|row| row.text("source")),
        });
    }
    if brief.block.mix.value == Mix::Site {
        let cement = brief.block.cement.value;
        let row = goods::cement(stock, cement.key());
        parts.push(Part {
            part: "cement",
            field: path!(block.cement),
            stock_row: row.map(|row| row.name()),
            sold: row.is_some(),
            says: row.map_or("", |row| row.text("says")).to_owned(),
            source: row.map(|row| row.text("source")),
        });
    }
    let bars = block
        .reinforcement
        .iter()
        .find(|option| option.chosen)
        .and_then(|option| Some((option.bar?, option.bar_mm?)));
    if let Some((bar, diameter_mm)) = bars {
        parts.push(Part {
            part: "bars",
            field: path!(block.reinforcement),
            stock_row: Some(bar),
            sold: BARS.row(bar).is_some(),
            says: stock.either(
                units.say(millimetre::new(diameter_mm), Millimetre),
                bar.to_owned(),
            ),
            source: BARS.row(bar).map(|row| row.text("source")),
        });
    }
    let sides = [
        ("block", path!(block.length_m), block.length),
        ("block", path!(block.width_m), block.width),
        ("block", path!(block.depth_m), block.depth),
        ("block", path!(block.upstand_m), block.upstand),
    ];
    parts.extend(sides.into_iter().map(|(part, field, side)| Part {
        part,
        field,
        stock_row: None,
        sold: stock.is_round(side),
        says: units.say(side, Metre),
        source: None,
    }));
    parts
}
