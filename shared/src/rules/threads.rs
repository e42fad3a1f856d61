//! Threads, nuts, washers and stud steels: rows of the data files `threads.csv` and `stud_steels.csv`.

use crate::site_plan::anchors::{Size, StrengthClass};
use crate::source::Source;
use crate::stock::Stock;
use crate::table::{Row, Table};
use crate::units::{
    Area, Length, Moment, Pressure, megapascal, millimetre, newton_metre, square_millimetre,
};

static SIZES: Table = Table::new("threads.csv", include_str!("../../data/threads.csv"));
static CEILINGS: Table = Table::new(
    "torque_ceilings.csv",
    include_str!("../../data/torque_ceilings.csv"),
);
static STEELS: Table = Table::new(
    "stud_steels.csv",
    include_str!("../../data/stud_steels.csv"),
);

/// Thread sizes and stress areas.
pub const THREADS: Source = Source::second_hand("ISO 898-1", "2013", "Table 4 and 9.1.6.1");
/// Where usual holes and depths come from.
pub const DRILL: Source =
    Source::common_practice("holes and depths that makers of bonded studs give for each size");
/// Strengths of carbon-steel studs.
pub const CARBON: Source = Source::second_hand("ISO 898-1", "2013", "Table 3");
/// Sizes and areas of inch threads.
pub const UNC: Source = Source::second_hand(
    "ASME B1.1",
    "2003",
    "Table 1 and Appendix B, A_t = 0.7854 (D − 0.9743/n)²",
);
/// Strengths of inch rods.
pub const ASTM: Source = Source::second_hand(
    "ASTM F1554 and A193",
    "2018",
    "tensile requirements; those of A193 from memory",
);
/// Strengths of stainless studs.
pub const STAINLESS: Source = Source::second_hand(
    "ISO 3506-1",
    "2009",
    "Table 2; the 0.2 % stresses from memory",
);

/// Largest torque that the sheets of bonded studs allow; the row of each size in `torque_ceilings.csv` says which was read.
pub const CEILING: Source = Source::from_memory(
    "Published sheets of bonded studs",
    "",
    "least largest torque for the thread, rounded down; of the smallest size read, of the others from memory",
);
/// Nearer to an edge than so many diameters those sheets allow about half.
pub const NEAR_EDGE_DIAMETERS: f64 = 5.0;

/// A size of stud with what belongs to it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thread {
    /// Nominal diameter.
    pub diameter: Length,
    /// Pitch, coarse.
    pub pitch: Length,
    /// Nominal stress area.
    pub stress_area: Area,
    /// Width of the nut across its flats.
    pub across_flats: Length,
    /// Height of the nut.
    pub nut_height: Length,
    /// Thickness of the washer.
    pub washer_thickness: Length,
    /// Outside diameter of the washer.
    pub washer_diameter: Length,
    /// Usual hole for a bolt, medium series.
    pub bolt_hole: Length,
    /// Largest hole in the plate for a fastener to count in shear.
    pub plate_hole: Length,
    /// Usual hole in the concrete.
    pub drill: Length,
    /// Usual embedment.
    pub usual_embedment: Length,
    /// Diameter of the brush for that hole.
    pub brush: Length,
    /// Widest minor diameter of the nut's thread.
    pub inner_minor: Length,
    /// Least pitch diameter of the stud's thread.
    pub outer_pitch: Length,
}

/// A steel of studs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StudSteel {
    /// Nominal ultimate strength.
    pub ultimate: Pressure,
    /// Nominal yield strength.
    pub yield_strength: Pressure,
    /// Proof stress for the size; of stainless steel the 0.2 % stress.
    pub proof: Pressure,
    /// Least ultimate strength for the size.
    pub least_ultimate: Pressure,
    /// Elongation after fracture, per cent.
    pub elongation_ratio: f64,
    /// Whether it is stainless.
    pub stainless: bool,
    /// Where its strengths come from.
    pub source: Source,
}

/// The row of a size.
///
/// # Source
/// ISO 898-1:2013, Table 4; EN 1992-4:2018, Table 6.1.
#[must_use]
pub fn thread(size: Size) -> Thread {
    let row = SIZES.row(size.key());
    let mm = |column| millimetre::new(value(row, column));
    Thread {
        diameter: mm("diameter_mm"),
        pitch: mm("pitch_mm"),
        stress_area: square_millimetre::new(value(row, "stress_area_mm2")),
        across_flats: mm("across_flats_mm"),
        nut_height: mm("nut_height_mm"),
        washer_thickness: mm("washer_thickness_mm"),
        washer_diameter: mm("washer_diameter_mm"),
        bolt_hole: mm("bolt_hole_mm"),
        plate_hole: mm("plate_hole_mm"),
        drill: mm("drill_mm"),
        usual_embedment: mm("usual_embedment_mm"),
        brush: mm("brush_mm"),
        inner_minor: mm("inner_minor_mm"),
        outer_pitch: mm("outer_pitch_mm"),
    }
}

/// The torque that no nut passes before the product's own sheet is at hand: the least that published sheets of bonded studs
/// allow for the thread, half of it nearer than five diameters to an edge.
///
/// # Source
/// One epoxy's sheet and two of inch rods (read), others from memory; `torque_ceilings.csv` has each figure with its mark.
/// # Valid for
/// Solid concrete; hollow masonry takes far less.
#[must_use]
pub fn torque_ceiling(size: Size, edge: Length) -> Moment {
    let ceiling = value(CEILINGS.row(size.key()), "ceiling_n_m");
    let near = edge < thread(size).diameter * NEAR_EDGE_DIAMETERS;
    newton_metre::new(ceiling * if near { 0.5 } else { 1.0 })
}

/// The row of a strength class, for a size.
///
/// # Source
/// ISO 898-1:2013, Table 3; ISO 3506-1:2009, Table 2.
#[must_use]
pub fn steel(class: StrengthClass, size: Size) -> StudSteel {
    let row = STEELS.row(class.key());
    let mpa = |column| megapascal::new(value(row, column));
    let above = millimetre::get(thread(size).diameter) > 16.0;
    let stainless = row.is_some_and(|row| row.text("stainless") == "yes");
    let (proof, least_ultimate) = if above {
        ("proof_above_mpa", "least_ultimate_above_mpa")
    } else {
        ("proof_to_16_mm_mpa", "least_ultimate_to_16_mm_mpa")
    };
    StudSteel {
        ultimate: mpa("ultimate_mpa"),
        yield_strength: mpa("yield_mpa"),
        proof: mpa(proof),
        least_ultimate: mpa(least_ultimate),
        elongation_ratio: value(row, "elongation_percent") / 100.0,
        stainless,
        source: class_source(class, stainless),
    }
}

/// What the row of a size names as its source.
///
/// # Source
/// `data/threads.csv`, its last column.
pub fn row_source(size: Size) -> &'static str {
    SIZES.row(size.key()).map_or("", |row| row.text("source"))
}

/// What the row of a class names as its source.
///
/// # Source
/// `data/stud_steels.csv`, its last column.
pub fn class_row_source(class: StrengthClass) -> &'static str {
    STEELS.row(class.key()).map_or("", |row| row.text("source"))
}

/// Nut and washer that belong to a class, as they are asked for.
///
/// # Source
/// `data/stud_steels.csv`; each row says how they were met.
pub fn nut_and_washer(class: StrengthClass) -> [&'static str; 2] {
    let row = STEELS.row(class.key());
    ["nut", "washer"].map(|column| row.map_or("", |row| row.text(column)))
}

fn class_source(class: StrengthClass, stainless: bool) -> Source {
    match (class.stock(), stainless) {
        (Stock::Inch, _) => ASTM,
        (Stock::Metric, true) => STAINLESS,
        (Stock::Metric, false) => CARBON,
    }
}

/// A number of a row; not a number where the cell is missing, which every check reports as unknown.
fn value(row: Option<&Row>, column: &'static str) -> f64 {
    row.map_or(f64::NAN, |row| row.value(column))
}

/// Pitch diameter d₂ = d − 0.649 519 P.
///
/// # Source
/// ISO 724:1993, Table 1; the height of the sharp thread is 0.866 025 P.
#[must_use]
pub fn pitch_diameter(thread: &Thread) -> Length {
    thread.diameter - thread.pitch * 0.649_519
}

/// Stress area A_s = π/4 [(d₂ + d₃)/2]².
///
/// # Source
/// ISO 898-1:2013, 9.1.6.1.
#[must_use]
pub fn stress_area(thread: &Thread) -> Area {
    let core = thread.diameter - thread.pitch * 1.226_869;
    let mean = (pitch_diameter(thread) + core) / 2.0;
    mean * mean * std::f64::consts::FRAC_PI_4
}

/// Stress area of an inch thread, A_t = 0.7854 (D − 0.9743/n)², n threads to the inch.
///
/// # Source
/// ASME B1.1-2003, Appendix B.
#[expect(clippy::approx_constant, reason = "the standard prints 0.7854")]
pub fn inch_stress_area(thread: &Thread) -> Area {
    let across = thread.diameter - thread.pitch * 0.9743;
    across * across * 0.7854
}

/// Diameter of a circle with the stress area, d_s = √(4 A_s/π).
///
/// # Source
/// Mechanics.
#[must_use]
pub fn stress_diameter(thread: &Thread) -> Length {
    millimetre::new(
        (4.0 * square_millimetre::get(thread.stress_area) / std::f64::consts::PI).sqrt(),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 898-1 Table 4 prints 58.0, 84.3, 157, 245 and 353 mm².
    #[test]
    fn the_formula_gives_the_printed_stress_areas() {
        for size in Size::of(Stock::Metric) {
            let thread = thread(size);
            let found = square_millimetre::get(stress_area(&thread));
            let printed = square_millimetre::get(thread.stress_area);
            assert!(
                (found - printed).abs() < 0.005 * printed,
                "{size:?}: {found} against {printed}"
            );
        }
    }

    /// ASME B1.1 prints 0.0775, 0.1419, 0.226, 0.334, 0.462 and 0.606 sq in for 3/8-16 to 1-8.
    #[test]
    fn the_formula_of_inch_threads_gives_the_printed_areas() {
        let printed = [0.0775, 0.1419, 0.226, 0.334, 0.462, 0.606];
        let sizes: Vec<Size> = Size::of(Stock::Inch).collect();
        assert_eq!(sizes.len(), printed.len());
        for (size, printed) in sizes.into_iter().zip(printed) {
            let thread = thread(size);
            let row = square_millimetre::get(thread.stress_area) / 645.16;
            let found = square_millimetre::get(inch_stress_area(&thread)) / 645.16;
            assert!((row - printed).abs() < 0.000_05, "{size:?}: {row}");
            assert!((found - printed).abs() < 0.0006, "{size:?}: {found}");
        }
    }

    #[test]
    fn every_class_has_finite_strengths_in_every_size() {
        for &class in StrengthClass::ALL {
            for &size in Size::ALL {
                let steel = steel(class, size);
                assert!(
                    steel.proof > megapascal::new(200.0) && steel.least_ultimate >= steel.proof,
                    "{class:?} {size:?}"
                );
            }
        }
    }
}
