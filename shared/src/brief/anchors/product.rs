//! What comes from a product's sheet; without one the codes' least values, marked as placeholders.

use crate::brief::{Ask, Given, Taken, taken, usual};
use crate::field::NumberField;
use crate::path;
use crate::rules::aci_318_19::bond;
use crate::rules::resin::{self, Times};
use crate::rules::threads::Thread;
use crate::site_plan::anchors::sources::{EN_DEPTH, PLACEHOLDER};
use crate::site_plan::{Anchors as Said, Code, SitePlan};
use crate::source::Source;
use crate::stock::goods;
use crate::units::{
    DisplacementFactor, Length, Pressure, Time, Volume, hour, megapascal, millimetre,
};

/// What comes from a product's sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Product {
    /// Bond strength, cracked.
    pub bond_cracked: Given<Pressure>,
    /// Bond strength, uncracked.
    pub bond_uncracked: Given<Pressure>,
    /// Installation factor γ_inst.
    pub installation_factor: Given<f64>,
    /// Factor for sustained load ψ⁰_sus.
    pub sustained_factor: Given<f64>,
    /// Least embedment.
    pub min_embedment: Given<Length>,
    /// Greatest embedment.
    pub max_embedment: Given<Length>,
    /// Least edge distance.
    pub min_edge: Given<Length>,
    /// Least spacing.
    pub min_spacing: Given<Length>,
    /// Least thickness of the concrete.
    pub min_thickness: Given<Length>,
    /// Edge distance that rules out splitting.
    pub splitting_edge: Given<Length>,
    /// Displacement for short load.
    pub displacement_short: Given<DisplacementFactor>,
    /// Displacement for long load.
    pub displacement_long: Given<DisplacementFactor>,
    /// Working time at the concrete's temperature; none: outside the resin's range.
    pub gel_time: Given<Option<Time>>,
    /// Time before full load at the concrete's temperature, in a dry hole.
    pub cure_time: Given<Option<Time>>,
    /// Volume of one cartridge.
    pub cartridge: Given<Volume>,
    /// Resin thrown away at the start of each nozzle.
    pub purge: Given<Volume>,
}

impl Product {
    /// Whether a product's own bond strength was given.
    pub fn known(&self) -> bool {
        self.bond_cracked.origin != crate::brief::Origin::Assumed
    }
}

/// Time before full load in a dry hole at a temperature of the concrete, by the rule that the plan's own time came from: a stated
/// time stays as stated; the usual one follows the temperature, and has an end.
pub fn cure_at(brief: &crate::brief::Brief, temperature_c: f64) -> Option<Time> {
    let planned = &brief.anchors.product.cure_time;
    if planned.origin == crate::brief::Origin::Assumed {
        resin::generic::times(brief.anchors.stated.resin, temperature_c).map(|times| times.cure)
    } else {
        planned.value
    }
}

const ACI_DEPTH: Source = Source::from_memory("ACI 318", "19", "17.3.3");

/// Decides what the sheet would say.
pub fn resolve(
    plan: &SitePlan,
    thread: &Thread,
    embedment: Length,
    concrete_c: f64,
    ask: &mut Ask,
) -> Product {
    let said = &plan.anchors;
    let (bond_cracked, bond_uncracked) = bonds(plan, ask);
    let (gel_time, cure_time) = times(plan, concrete_c, ask);
    let (d, depth) = (millimetre::get(thread.diameter), millimetre::get(embedment));
    let hole = said
        .hole_diameter_mm
        .unwrap_or(millimetre::get(thread.drill));
    let installation_factor = usual!(ask, Said::installation_factor);
    let sustained_factor = taken!(
        ask,
        Said::sustained_factor,
        crate::rules::en_1992_4_2018::bond::SUSTAINED_DEFAULT_RATIO
    );
    // What must not be less goes up to a mark of the tape, what must not be more down to one.
    let (units, stock) = (ask.units, ask.stock);
    let up = |value| stock.mark_up_mm(value);
    let down = |value| stock.mark_down_mm(value);
    let (least, begins, depths) = match plan.code.unwrap_or(Code::Eurocode) {
        Code::Eurocode => (6.0 * d, "six diameters, where EN 1992-4 begins", EN_DEPTH),
        Code::Aci => (4.0 * d, "four diameters, where ACI 318 begins", ACI_DEPTH),
    };
    let min_embedment = ask.number(
        Said::min_embedment_mm,
        up(least),
        Taken::new(begins, "how shallow a stud may be", depths),
    );
    let max_embedment = ask.number(
        Said::max_embedment_mm,
        down(20.0 * d),
        Taken {
            source: depths,
            ..taken!(Said::max_embedment_mm)
        },
    );
    let min_edge = taken!(ask, Said::min_edge_mm, up(6.0 * d));
    let min_spacing = taken!(ask, Said::min_spacing_mm, up(6.0 * d));
    let min_thickness = ask.number(
        Said::min_thickness_mm,
        up((depth + 2.0 * hole).max(100.0)),
        Taken::new(
            units.either(
                "embedment and two holes, at least 100\u{a0}mm",
                "embedment and two holes, at least 4\u{a0}in",
            ),
            "how thin the concrete may be",
            PLACEHOLDER,
        ),
    );
    let splitting_edge = taken!(ask, Said::splitting_edge_mm, up(2.0 * depth));
    Product {
        bond_cracked,
        bond_uncracked,
        installation_factor,
        sustained_factor,
        min_embedment,
        max_embedment,
        min_edge,
        min_spacing,
        min_thickness,
        splitting_edge,
        displacement_short: usual!(ask, Said::displacement_short_mm_per_mpa),
        displacement_long: usual!(ask, Said::displacement_long_mm_per_mpa),
        gel_time,
        cure_time,
        cartridge: taken!(ask, Said::cartridge_ml, goods::size("cartridge", ask.stock)),
        purge: usual!(ask, Said::purge_ml),
    }
}

/// Bond strengths: the row for the warmest use, the single values, or the code's least.
fn bonds(plan: &SitePlan, ask: &mut Ask) -> (Given<Pressure>, Given<Pressure>) {
    let said = &plan.anchors;
    let warmest = usual!(ask, Said::service_temperature_c);
    let row = said
        .bond_by_temperature
        .iter()
        .flatten()
        .find(|row| row.up_to_c >= warmest.value);
    let mut bond = |row, said: Option<f64>, least: Pressure| {
        ask.number_from(
            row,
            said.map(megapascal::new),
            (100.0 * megapascal::get(least)).round() / 100.0,
            Taken::new(
                "the least value a code allows without a product's approval: a placeholder, not a promise",
                "resistance of the bond; a product's own is several times as high",
                bond::LEAST,
            ),
        )
    };
    let cracked = row.map(|row| row.cracked_mpa).or(said.bond_strength_mpa);
    let uncracked = row
        .map(|row| row.uncracked_mpa)
        .or(said.bond_strength_uncracked_mpa)
        .or(said.bond_strength_mpa);
    (
        bond(
            Said::bond_strength_mpa,
            cracked,
            bond::least_bond(true, true, false),
        ),
        bond(
            Said::bond_strength_uncracked_mpa,
            uncracked,
            bond::least_bond(true, false, false),
        ),
    )
}

/// Times: the single values, the product's table, or the generic one; none outside the table.
fn times(
    plan: &SitePlan,
    concrete_c: f64,
    ask: &mut Ask,
) -> (Given<Option<Time>>, Given<Option<Time>>) {
    let said = &plan.anchors;
    let rows = said.times_by_temperature.iter().flatten();
    let own: Vec<Times> = rows
        .map(|row| Times {
            temperature_c: row.concrete_c,
            working: hour::new(row.working_min / 60.0),
            cure: hour::new(row.cure_h),
        })
        .collect();
    let found = resin::times_at(&own, concrete_c);
    if said.resin.is_none() && found.is_none() {
        let why =
            "it was not said: the shorter working and the longer curing time of both kinds count";
        let value = "The slower of both kinds counts, and no bonding in the cold".to_owned();
        let taken = Taken::new(
            why,
            "when the nuts may be turned, and how cold it may be",
            resin::TIMES,
        );
        ask.note_text(path!(anchors.resin), value, taken);
    }
    let generic = resin::generic::times(said.resin, concrete_c);
    let mut time = |row: NumberField,
                    per_hour: f64,
                    own: Option<Time>,
                    generic: Option<Time>,
                    effect: &str| match ((row.get)(plan), own, generic) {
        (Some(said), ..) => Given::said(Some(hour::new(said / per_hour))),
        (None, Some(own), _) => Given::said(Some(own)),
        (None, None, None) => Given::assumed(None),
        (None, None, Some(generic)) => {
            let why = "the shortest working and the longest curing time of its kind at this temperature; the product's sheet rules";
            let value = (10.0 * hour::get(generic) * per_hour).round() / 10.0;
            ask.note_number(row, value, Taken::new(why, effect, resin::TIMES));
            Given::assumed(Some(generic))
        }
    };
    let short = |times: Option<Times>| times.map(|times| times.working);
    let full = |times: Option<Times>| times.map(|times| times.cure);
    (
        time(
            Said::gel_time_min.row,
            60.0,
            short(found),
            short(generic),
            "how fast a hole must be finished",
        ),
        time(
            Said::cure_time_h.row,
            1.0,
            full(found),
            full(generic),
            "when the nuts may be turned",
        ),
    )
}
