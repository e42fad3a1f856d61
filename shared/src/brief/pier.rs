//! Pier, decided.

pub mod sight;
pub mod tube;

use crate::brief::floor::Floor;
use crate::brief::load::Load;
use crate::brief::{Ask, Given, taken, usual};
use crate::site_plan::pier::{Fill, Levelling, Steel};
use crate::site_plan::{Pier as Said, SitePlan};
use crate::stock::{Stock, goods};
use crate::units::customary::INCH_MM;
use crate::units::{Length, millimetre};

/// Complete answers about the pier.
#[derive(Debug, Clone, PartialEq)]
pub struct Pier {
    /// Height of the column with its plates.
    pub height: Given<Length>,
    /// Outside diameter.
    pub outside_diameter: Given<Length>,
    /// Wall.
    pub wall: Given<Length>,
    /// Fill.
    pub fill: Given<Fill>,
    /// Side of the base plate.
    pub plate_side: Given<Length>,
    /// Thickness of the base plate.
    pub plate_thickness: Given<Length>,
    /// What the plate stands on.
    pub levelling: Given<Levelling>,
    /// Gap or grout under the plate.
    pub gap: Given<Length>,
    /// Leg of the weld at the foot.
    pub weld_leg: Given<Length>,
    /// Ribs at the foot.
    pub stiffener_count: Given<f64>,
    /// Side of the top plate.
    pub top_plate_side: Given<Length>,
    /// Thickness of the top plate.
    pub top_plate_thickness: Given<Length>,
    /// Circle of the mount's bolts.
    pub top_bolt_circle: Given<Length>,
    /// Steel.
    pub steel: Given<Steel>,
    /// What must clear what.
    pub sight: sight::Sight,
}

/// Decides the pier's unknowns.
pub fn resolve(plan: &SitePlan, load: &Load, floor: &Floor, ask: &mut Ask) -> Pier {
    let gap = taken!(ask, Said::gap_mm, ask.stock.either(25.0, INCH_MM));
    let sight = sight::Sight::new(plan, load, floor, gap.value, ask.stock);
    let height = sight::height(plan, &sight, load, ask);
    let (outside_diameter, wall) = tube::resolve(plan, load, height.value, ask);
    let plates = Plates::resolve(plan, millimetre::get(outside_diameter.value), ask);
    Pier {
        height,
        outside_diameter,
        wall,
        gap,
        plate_side: plates.base_side,
        plate_thickness: plates.base_thickness,
        weld_leg: taken!(ask, Said::weld_leg_mm, ask.stock.either(6.0, 6.35)),
        top_plate_side: plates.top_side,
        top_plate_thickness: plates.top_thickness,
        top_bolt_circle: plates.top_circle,
        fill: usual!(ask, Said::fill),
        levelling: usual!(ask, Said::levelling),
        stiffener_count: usual!(ask, Said::stiffener_count),
        steel: taken!(ask, Said::steel, tube::steel(plan, ask.stock)),
        sight,
    }
}

/// Sides and thicknesses of the plates.
struct Plates {
    base_side: Given<Length>,
    base_thickness: Given<Length>,
    top_side: Given<Length>,
    top_thickness: Given<Length>,
    top_circle: Given<Length>,
}

/// Room for studs and socket on either side of the column, mm.
const BESIDE_COLUMN_MM: f64 = 90.0;
/// Room for a bolt's edge outside the mount's circle, mm.
const BESIDE_BOLT_MM: f64 = 30.0;
/// Largest sides that the fields take, mm.
const LARGEST_MM: (f64, f64) = (1600.0, 1000.0);

impl Plates {
    fn resolve(plan: &SitePlan, outside_mm: f64, ask: &mut Ask) -> Self {
        let said = &plan.pier;
        let stock = ask.stock;
        let up = |value: f64| stock.plate_up_mm(value);
        let base = up(outside_mm + 2.0 * BESIDE_COLUMN_MM).min(LARGEST_MM.0);
        // A stated top plate bounds the circle that is taken when none is stated.
        let usual = stock.either(180.0, 177.8);
        let circle = said.top_plate_side_mm.map_or(usual, |side| {
            (side - 2.0 * BESIDE_BOLT_MM).clamp(30.0, usual)
        });
        let top_circle = taken!(ask, Said::top_bolt_circle_mm, circle);
        let top =
            up((millimetre::get(top_circle.value) + 2.0 * BESIDE_BOLT_MM).max(outside_mm + 20.0))
                .min(LARGEST_MM.1);
        Self {
            base_side: taken!(ask, Said::plate_side_mm, base),
            base_thickness: taken!(
                ask,
                Said::plate_thickness_mm,
                plate(plan, stock, stock.either(20.0, 19.05))
            ),
            top_side: taken!(ask, Said::top_plate_side_mm, top),
            top_thickness: taken!(
                ask,
                Said::top_plate_thickness_mm,
                plate(plan, stock, stock.either(15.0, 15.875))
            ),
            top_circle,
        }
    }
}

/// The plate of this thickness, or where the yard does not keep it the next thicker one that it keeps, else its thickest.
fn plate(plan: &SitePlan, stock: Stock, wanted_mm: f64) -> f64 {
    goods::rows(&goods::PLATES, stock)
        .filter(|row| plan.yard.keeps_plate(row.name()))
        .map(|row| row.value("thickness_mm"))
        .fold(None, |kept: Option<f64>, thickness| match kept {
            Some(enough) if enough >= wanted_mm - 1e-6 => Some(enough),
            _ => Some(thickness),
        })
        .unwrap_or(wanted_mm)
}
