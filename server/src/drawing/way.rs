//! One of three ways to build it, in section, all to the same scale so that they can be compared. Sizes stand in the table below it:
//! on a telephone no lettering on it could be read.

use stillground::figure::{Unit, Units};
use stillground::options::Point as Pier;

use crate::drawing::hatch::Hatch;
use crate::drawing::pen::{Head, Pen, rectangle};
use crate::drawing::{Drawing, Line, at};

/// Millimetres on paper for a metre: 1 to 40.
const MM_PER_M: f64 = 25.0;
/// Free ground beside the widest block, and below the deepest, m.
const FREE_M: f64 = 0.35;
/// Shortest frame to either side of the pier, m.
const LEAST_HALF_M: f64 = 0.8;

/// What has to find room in every one of the drawings, in metres.
#[derive(Debug, Clone, Copy)]
pub struct Extent {
    half_width: f64,
    above: f64,
    below: f64,
}

impl Extent {
    /// Room for all of these.
    #[must_use]
    pub fn of<'a>(piers: impl Iterator<Item = &'a Pier>) -> Self {
        let start = Self {
            half_width: LEAST_HALF_M,
            above: 0.0,
            below: 0.0,
        };
        piers.fold(start, |extent, pier| Self {
            half_width: extent.half_width.max(pier.block.length_m / 2.0 + FREE_M),
            above: extent.above.max(top(pier) + 0.1),
            below: extent.below.max(pier.block.depth_m + FREE_M),
        })
    }
}

/// Top of the column above the ground, m.
fn top(pier: &Pier) -> f64 {
    pier.block.upstand_m + pier.pier.height_m
}

/// Draws a pier; `name` is unique on its page.
#[must_use]
pub fn draw(name: &'static str, pier: &Pier, extent: Extent, units: Units) -> Drawing {
    let place = |x: f64, up: f64| {
        at(
            (x + extent.half_width) * MM_PER_M,
            (extent.above - up) * MM_PER_M,
        )
    };
    let (half, block) = (extent.half_width, &pier.block);
    let side = block.length_m / 2.0;
    let radius = pier.pier.outside_diameter_mm / 2000.0;
    let plate = pier.pier.plate_side_mm / 2000.0;
    let mut pen = Pen::default();
    pen.rectangle(
        Line::Hair,
        place(-half, extent.above),
        place(half, -extent.below),
    );
    pen.line(Line::Thick, &[place(-half, 0.0), place(-side, 0.0)]);
    pen.line(Line::Thick, &[place(side, 0.0), place(half, 0.0)]);
    let concrete = rectangle(place(-side, block.upstand_m), place(side, -block.depth_m));
    let ground = rectangle(place(-half, 0.0), place(half, -extent.below));
    pen.hatch(Hatch::Ground, &[ground, concrete.clone()]);
    pen.hatch(Hatch::Concrete, std::slice::from_ref(&concrete));
    pen.outline(Line::Heavy, &concrete);
    let thick = (pier.pier.plate_thickness_mm / 1000.0).max(0.02);
    pen.solid(&rectangle(
        place(-plate, block.upstand_m + thick),
        place(plate, block.upstand_m),
    ));
    pen.rectangle(
        Line::Thick,
        place(-radius, top(pier)),
        place(radius, block.upstand_m + thick),
    );
    let say = |metres| units.say(metres, Unit::Metre);
    pen.finish(Head {
        name,
        title: "The pier in section".to_owned(),
        description: format!(
            "A block {} long and {} deep with a column {} tall. The three ways are drawn to one scale.",
            say(block.length_m),
            say(block.depth_m),
            say(pier.pier.height_m)
        ),
        scale: None,
    })
}
