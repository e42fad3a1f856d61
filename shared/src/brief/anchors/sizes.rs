//! Usual sizes of studs beside what is stated: the circle inside the plate, the embedment inside block and stud.

use crate::brief::pier::Pier;
use crate::figure::Unit;
use crate::rules::threads::{self, Thread};
use crate::site_plan::SitePlan;
use crate::site_plan::anchors::{Size, StrengthClass};
use crate::stock::Stock;
use crate::units::{Length, metre, millimetre};

/// Threads that show above the nut.
const FREE_THREADS: f64 = 2.0;
/// From the weld's toe to the middle of a stud, in diameters: room for a socket.
const SOCKET_DIAMETERS: f64 = 2.75;
/// From the middle of a hole in the plate to its edge, in hole diameters; EN 1993-1-8 Table 3.3 asks for 1.2.
const PLATE_EDGE_HOLES: f64 = 1.5;

/// Usual sizes, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Usual {
    /// Embedment.
    pub embedment_mm: f64,
    /// Length of the stud.
    pub length_mm: f64,
    /// Circle.
    pub circle_mm: f64,
    /// Hole.
    pub hole_mm: f64,
}

impl Usual {
    /// Finds them.
    pub fn find(plan: &SitePlan, pier: &Pier, count: f64, thread: &Thread, stock: Stock) -> Self {
        let above = millimetre::get(above_concrete(
            thread,
            pier.gap.value,
            pier.plate_thickness.value,
        ));
        let embedment_mm = embedment(plan, thread, above, stock);
        let stated = plan.anchors.embedment_mm.unwrap_or(embedment_mm);
        Self {
            embedment_mm,
            length_mm: stock.plate_up_mm(stated + above),
            circle_mm: circle(pier, count, thread, stock),
            hole_mm: millimetre::get(thread.drill),
        }
    }
}

/// M16 or 5/8 inch, or the nearest size that a stated hole takes and whose bond model covers a stated depth.
pub fn usual_size(plan: &SitePlan, stock: Stock) -> Size {
    let said = &plan.anchors;
    let fits = |size: &Size| {
        let diameter = millimetre::get(threads::thread(*size).diameter);
        said.hole_diameter_mm.is_none_or(|hole| hole > diameter)
            && said
                .embedment_mm
                .is_none_or(|depth| (4.0 * diameter..=20.0 * diameter).contains(&depth))
    };
    let usual = stock.either(
        [Size::M16, Size::M20, Size::M12, Size::M24, Size::M10],
        [
            Size::Unc5_8,
            Size::Unc3_4,
            Size::Unc1_2,
            Size::Unc1,
            Size::Unc3_8,
        ],
    );
    let least = usual[usual.len() - 1];
    let kept = |size: &Size| plan.yard.keeps_size(*size);
    usual
        .into_iter()
        .find(|size| fits(size) && kept(size))
        .or(usual.into_iter().find(fits))
        .unwrap_or(least)
}

/// The class that is usual for a thread: 8.8, or the least grade of anchor rod.
pub fn usual_class(size: Size) -> StrengthClass {
    size.stock()
        .either(StrengthClass::C8_8, StrengthClass::F1554_36)
}

/// Length of stud above the concrete: gap, plate, washer, nut and two threads.
pub fn above_concrete(thread: &Thread, gap: Length, plate: Length) -> Length {
    gap + plate + thread.washer_thickness + thread.nut_height + thread.pitch * FREE_THREADS
}

/// The usual depth, less where a stated stud or block is too short for it, within the product's limits; never below four
/// diameters. It is drilled to a mark of the tape, so that whoever asks for the stud's length and whoever asks for the depth of the
/// hole are told of the same one.
fn embedment(plan: &SitePlan, thread: &Thread, above_mm: f64, stock: Stock) -> f64 {
    let up = |value| stock.mark_up_mm(value);
    let down = |value| stock.mark_down_mm(value);
    let least =
        (4.0 * millimetre::get(thread.diameter)).max(plan.anchors.min_embedment_mm.unwrap_or(0.0));
    let usual = stock.round(Unit::Millimetre, millimetre::get(thread.usual_embedment));
    let mut most = up(usual).min(down(plan.anchors.max_embedment_mm.unwrap_or(f64::INFINITY)));
    if let Some(length) = plan.anchors.length_mm {
        most = most.min(stock.depth_down_mm(length - above_mm));
    }
    if let Some(depth) = plan.block.depth_m {
        let block = millimetre::get(metre::new(depth + plan.block.upstand_m.unwrap_or(0.0)));
        let hole = plan
            .anchors
            .hole_diameter_mm
            .unwrap_or(millimetre::get(thread.drill));
        most = most.min(stock.depth_down_mm(block - (2.0 * hole).max(30.0)));
    }
    most.max(up(least))
}

/// Clear of the column's weld for a socket, within the plate's edges.
fn circle(pier: &Pier, count: f64, thread: &Thread, stock: Stock) -> f64 {
    let clear = 2.0
        * (millimetre::get(pier.outside_diameter.value) / 2.0
            + millimetre::get(pier.weld_leg.value)
            + SOCKET_DIAMETERS * millimetre::get(thread.diameter));
    let inside = millimetre::get(pier.plate_side.value)
        - 2.0 * PLATE_EDGE_HOLES * millimetre::get(thread.plate_hole);
    // Four studs stand in the plate's corners, where there is more room.
    let most = if (count - 4.0).abs() < 0.5 {
        inside * std::f64::consts::SQRT_2
    } else {
        inside
    };
    let (step, least) = stock.either((10.0, 4.0), (12.7, 4.0));
    (clear / step)
        .round()
        .max(least)
        .min((most / step).floor().max(least))
        * step
}
