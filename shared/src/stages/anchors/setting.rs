//! Setting the studs: holes, resin, cartridges, times, lengths.

use crate::paths;
use serde::Serialize;

mod warmth;

use crate::brief::anchors::above_concrete;
use crate::brief::{Brief, Origin};
use crate::figure::{Celsius, Count, Hour, Millilitre, Millimetre, SquareMillimetre, Unit};
use crate::notes::{Check, Notes, Working};
use crate::rules::{resin, thread_engagement, threads};
use crate::site_plan::anchors::Hole;
use crate::source::Source;
use crate::units::customary::INCH_MM;
use crate::units::{Length, Time, Volume, hour, millilitre, millimetre};

/// Drilled deeper than the embedment by this, mm, for the dust that stays.
fn dust_mm(brief: &Brief) -> f64 {
    brief.stock.value.either(5.0, INCH_MM / 4.0)
}
/// Time from one injected hole to the next, min.
const MINUTES_PER_HOLE: f64 = 3.0;
/// Shortest pause before a nut may be run down by hand.
const SNUG_AFTER_GEL_FACTOR: f64 = 4.0;

/// How the studs are set.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Setting {
    /// Resin to inject in each hole.
    #[serde(rename = "resin_per_hole_ml", with = "millilitre")]
    pub resin_per_hole: Volume,
    /// Cartridges to buy.
    pub cartridges: u32,
    /// Mixing nozzles: one for each cartridge and each pause, and a spare.
    pub nozzles: u32,
    /// Holes that can be finished within the working time.
    pub holes_per_nozzle: u32,
    /// Working time at the concrete's temperature; null outside the resin's range.
    #[serde(rename = "gel_time_h", with = "hour::option")]
    pub gel_time: Option<Time>,
    /// After this a nut may be run down by hand.
    #[serde(rename = "snug_after_h", with = "hour::option")]
    pub snug_after: Option<Time>,
    /// After this the full torque may be put on, wet holes allowed for.
    #[serde(rename = "cure_time_h", with = "hour::option")]
    pub cure_time: Option<Time>,
    /// Shortest stud that does.
    #[serde(rename = "stud_length_needed_mm", with = "millimetre")]
    pub stud_length_needed: Length,
    /// Diameter of the brush.
    #[serde(rename = "brush_diameter_mm", with = "millimetre")]
    pub brush: Length,
    /// Rounds of blowing, brushing and blowing.
    pub cleaning_rounds: u32,
}

/// Depth to drill.
pub fn hole_depth(brief: &Brief) -> Length {
    brief.anchors.embedment.value + millimetre::new(dust_mm(brief))
}

/// Time before full load in the plan's holes: twice as long in wet ones as in dry.
pub fn cure_in_hole(brief: &Brief, dry: Time) -> Time {
    if brief.anchors.hole.value == Hole::Wet {
        dry * 2.0
    } else {
        dry
    }
}

/// Finds how the studs are set.
pub fn find(brief: &Brief) -> Setting {
    let anchors = &brief.anchors;
    let (thread, product) = (anchors.thread(), &anchors.product);
    let resin_per_hole = resin::volume_to_inject(
        anchors.hole_diameter.value,
        thread.stress_area,
        anchors.embedment.value,
    );
    let gel = product.gel_time.value;
    let holes_per_nozzle = gel.map_or(1.0, |gel| {
        (hour::get(gel) * 60.0 / MINUTES_PER_HOLE)
            .floor()
            .clamp(1.0, 100.0)
    }) as u32;
    let runs = u32::try_from(anchors.number())
        .unwrap_or(1)
        .div_ceil(holes_per_nozzle);
    let cartridges = resin::cartridges(
        resin_per_hole * anchors.count.value,
        runs,
        product.purge.value,
        product.cartridge.value,
    );
    let cure_time = product
        .cure_time
        .value
        .map(|cure| cure_in_hole(brief, cure));
    let snug = gel.zip(cure_time).map(|(gel, cure)| {
        hour::new((hour::get(gel) * SNUG_AFTER_GEL_FACTOR).min(hour::get(cure)))
    });
    Setting {
        resin_per_hole,
        cartridges,
        nozzles: runs.max(cartridges) + 1,
        holes_per_nozzle,
        gel_time: gel,
        snug_after: snug,
        cure_time,
        stud_length_needed: brief.stock.value.up_to_a_mark(
            anchors.embedment.value
                + above_concrete(
                    &thread,
                    brief.pier.gap.value,
                    brief.pier.plate_thickness.value,
                ),
        ),
        brush: anchors.hole_diameter.value
            + millimetre::new(brief.stock.value.either(2.0, INCH_MM / 16.0)),
        cleaning_rounds: 4,
    }
}

/// The checks and lines of calculation of the setting.
pub fn notes(brief: &Brief, setting: &Setting, notes: &mut Notes) {
    warmth::check(brief, setting, notes);
    let anchors = &brief.anchors;
    let thread = anchors.thread();
    notes.check(
        Check::at_least(
            "anchors.stud_length",
            "Are the studs long enough?", anchors.length.value, setting.stud_length_needed, Millimetre,
            Source::derived("embedment, gap, plate, washer, nut and two threads, one behind the other"),
        )
        .note("If they are too short, the nut or the embedment lacks length: use longer studs or a smaller gap.")
        .moved_by(paths![anchors.length_mm, anchors.embedment_mm, pier.gap_mm, pier.plate_thickness_mm]),
    );
    engagement(brief, notes);
    holes(brief, notes);
    notes.working(
        Working::new(
            "anchors.resin_per_hole",
            "Resin in one hole",
            "V = max(2/3 · π/4 d₀² h, 1.5 (π/4 d₀² − A_s) h)",
            resin::TWO_THIRDS,
        )
        .with("d₀", anchors.hole_diameter.value, Millimetre)
        .with("h", anchors.embedment.value, Millimetre)
        .with("A_s", thread.stress_area, SquareMillimetre)
        .gives("V", setting.resin_per_hole, Millilitre),
    );
    notes.working(
        Working::new(
            "anchors.resin_volume",
            "Resin for all holes",
            "V = n V₁",
            resin::VOLUME,
        )
        .with("n", anchors.count.value, Count)
        .with("V₁", setting.resin_per_hole, Millilitre)
        .gives(
            "V",
            setting.resin_per_hole * anchors.count.value,
            Millilitre,
        ),
    );
    if let Some(cure) = setting.cure_time {
        notes.working(
            Working::new(
                "anchors.cure_time",
                "Time before full torque",
                "the resin's table by its step of temperature, or the product's; twice that in wet holes",
                resin::TIMES,
            )
            .with("T", anchors.concrete_temperature_c.value, Celsius)
            .gives("t", cure, Hour),
        );
    }
}

/// How much of the stud's thread the upper nut has hold of, and how much it needs.
fn engagement(brief: &Brief, notes: &mut Notes) {
    let (anchors, pier) = (&brief.anchors, &brief.pier);
    let thread = anchors.thread();
    let needed = thread_engagement::in_a_nut(&thread);
    let below = anchors.embedment.value
        + pier.gap.value
        + pier.plate_thickness.value
        + thread.washer_thickness;
    let beyond = (anchors.length.value - below).max(millimetre::new(0.0));
    let engaged = beyond.min(thread.nut_height);
    notes.check(
        Check::at_least(
            "anchors.thread_engaged",
            "Do the nuts hold enough thread?",
            engaged,
            needed,
            Millimetre,
            thread_engagement::SOURCE,
        )
        .note(
            "With less the thread strips before the stud breaks. A nut of the stud's own class holds enough when the stud stands out \
             of it; take longer studs, and never a thin nut.",
        )
        .moved_by(paths![
            anchors.length_mm,
            anchors.embedment_mm,
            pier.gap_mm,
            pier.plate_thickness_mm,
            anchors.size
        ]),
    );
    notes.working(
        Working::new(
            "anchors.thread_needed",
            "Thread that a nut needs to be as strong as the stud",
            "L_e = 2 A_s/{π K_n [1/2 + 0.577 35 (E_s − K_n)/P]}",
            thread_engagement::SOURCE,
        )
        .with("A_s", thread.stress_area, SquareMillimetre)
        .with("K_n", thread.inner_minor, Millimetre)
        .with("E_s", thread.outer_pitch, Millimetre)
        .with("P", thread.pitch, Millimetre)
        .with("height of the nut", thread.nut_height, Millimetre)
        .gives("L_e", needed, Millimetre),
    );
}

/// The lines behind embedment and holes; what was stated needs none.
fn holes(brief: &Brief, notes: &mut Notes) {
    let anchors = &brief.anchors;
    let thread = anchors.thread();
    if anchors.embedment.origin == Origin::Assumed {
        notes.working(
            Working::new(
                "anchors.embedment",
                "Embedment of a stud",
                "h_ef = the usual depth for the size, less where a stated stud or block is too short, at least 4 d",
                threads::DRILL,
            )
            .with("usual", thread.usual_embedment, Millimetre)
            .with("d", thread.diameter, Millimetre)
            .gives("h_ef", anchors.embedment.value, Millimetre),
        );
    }
    notes.working(
        Working::new(
            "anchors.hole_depth",
            "Depth of a hole",
            "h₀ = h_ef + a, a for the dust that stays",
            Source::common_practice("a few millimetres deeper than the embedment"),
        )
        .with("h_ef", anchors.embedment.value, Millimetre)
        .with("a", dust_mm(brief), Unit::Millimetre)
        .gives("h₀", hole_depth(brief), Millimetre),
    );
    if anchors.hole_diameter.origin == Origin::Assumed {
        notes.working(
            Working::new(
                "anchors.hole_diameter",
                "Diameter of a hole",
                "d₀ = the usual drill for the size d",
                threads::DRILL,
            )
            .with("d", thread.diameter, Millimetre)
            .gives("d₀", anchors.hole_diameter.value, Millimetre),
        );
    }
}
