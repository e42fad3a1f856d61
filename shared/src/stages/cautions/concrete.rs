//! The block and its concrete: strength, heat, weather, and what waits for it.

use crate::brief::Brief;
use crate::figure::{Celsius, Kelvin, Unit};
use crate::notes::{Check, Notes, Stage, Verdict, When};
use crate::rules::aci_207_2r_07::adiabatic_rise;
use crate::rules::aci_318_19::exposure as aci_exposure;
use crate::rules::en_206_1_2000::exposure;
use crate::site_plan::block::{Cement, Concrete, Mix};
use crate::source::Source;
use crate::stages::block::Block;
use crate::stages::block::age::{DRILL_STRENGTH_MPA, LEAST_AGE_D, LEAST_AGE_SOURCE};
use crate::stages::block::concrete::BY_HAND_M3;
use crate::stages::block::exposure::FROST_M;
use crate::stages::block::weather::{COLDEST_C, MILD_C, WARM_C};
use crate::units::{cubic_metre, day, metre};

/// Thickness from which the middle stays warm while the face cools, m, and weather in which that matters, °C.
const THICK_M: f64 = 0.8;
const COOL_C: f64 = 12.0;
/// Checks of the block's stage that say nothing of its size: weather and ducts.
const APART: [&str; 3] = ["block.cold", "block.hot", "block.ducts"];

pub(super) fn list(
    brief: &Brief,
    block: &Block,
    frost_depth_m: f64,
    checks: &[Check],
    notes: &mut Notes,
) {
    does_not_work(checks, notes);
    say_days(brief, block, notes);
    weather(brief, notes);
    mixed(brief, cubic_metre::get(block.order_volume), notes);
    heat(brief, block, notes);
    if block.ducts.count > 0 {
        ducts(notes);
    }
    if frost_depth_m > FROST_M && block.exposure.iter().any(|row| !row.met) {
        weak(brief, notes);
    }
}

fn does_not_work(checks: &[Check], notes: &mut Notes) {
    let failed: Vec<&str> = checks
        .iter()
        .filter(|check| check.stage() == Stage::Block && !APART.contains(&check.id))
        .filter(|check| check.verdict == Verdict::Fails)
        .map(|check| check.title.as_str())
        .collect();
    if failed.is_empty() {
        return;
    }
    notes.caution(
        "block.does_not_work",
        When::Planning,
        format!(
            "The block fails a check: change the plan before you dig. Answered with no: {}",
            failed.join(" ")
        ),
        Source::judgement("a failed check stops the work"),
    );
}

fn say_days(brief: &Brief, block: &Block, notes: &mut Notes) {
    let [drill, load] = [block.drill_after, block.load_after].map(day::get);
    let temperature = brief.work.temperature_c.value;
    let at = brief.units.say(temperature, Celsius);
    let at = format!("at {at}");
    let strength = brief.units.say(DRILL_STRENGTH_MPA, Unit::Megapascal);
    notes.caution(
        "block.drill_not_before",
        When::Drilling,
        format!(
            "Do not drill before the concrete is {drill} days old, and do not load the pier fully before day {load}: {at} it \
             takes that long. Holes for bonded studs wait for {LEAST_AGE_D} days and a characteristic strength of \
             {strength}, whichever is later; the resin's own sheet may ask for more. A cold spell puts both days later."
        ),
        LEAST_AGE_SOURCE,
    );
}

fn weather(brief: &Brief, notes: &mut Notes) {
    let celsius = brief.work.temperature_c.value;
    let say = |value| brief.units.say(value, Celsius);
    if celsius < MILD_C {
        notes.caution(
            "block.cold_pour",
            When::Pouring,
            format!(
                "Do not pour on frozen ground, in falling frost, or below {}. Keep the block covered and insulated, and \
                 heated if need be, until it has at least {}; better, wait for a milder week.",
                say(COLDEST_C),
                brief.units.say(5.0, Unit::Megapascal)
            ),
            Source::from_memory("EN 13670", "2009", "8.5"),
        );
    }
    if celsius > WARM_C {
        notes.caution(
        "block.hot_pour",
        When::Pouring,
        "In this heat concrete stiffens within the hour and dries at its face. Pour early in the morning, wet the pit's sides, \
         cover the top at once and keep it wet.",
        Source::common_practice("pouring in heat"),
    );
    }
}

fn mixed(brief: &Brief, volume: f64, notes: &mut Notes) {
    if brief.block.mix.value == Mix::Site
        && matches!(
            brief.block.concrete.value,
            Concrete::C35 | Concrete::C40 | Concrete::Psi5000
        )
    {
        notes.caution(
            "block.site_mix_strength",
            When::Planning,
            format!(
                "A site mix does not reach so strong a class reliably without tests. Order it delivered, or plan with {}.",
                brief.stock.value.either(Concrete::C25, Concrete::Psi4000).said()
            ),
            Source::judgement("a site has no laboratory"),
        );
    }
    if brief.block.mix.value != Mix::Ready && volume > 2.0 * BY_HAND_M3 {
        notes.caution(
            "block.pour_in_one_go",
            When::Pouring,
            format!(
                "The block has to be poured in one go. More than about {} mixed by hand sets at the bottom before the top is in, which \
                 leaves a cold joint; find more hands and a second mixer, or have it delivered.",
                brief.units.either("a cubic metre", "a cubic yard")
            ),
            Source::common_practice("a block without a joint"),
        );
    }
}

fn heat(brief: &Brief, block: &Block, notes: &mut Notes) {
    let rise = block.concrete.heat_rise_k;
    let height = block.depth + block.upstand;
    let thick = metre::get(block.length.min(block.width).min(height));
    if thick >= THICK_M
        && (brief.work.temperature_c.value < COOL_C || brief.block.cement.value == Cement::Rapid)
    {
        notes.caution(
            "block.heat",
            When::Pouring,
            format!(
                "Hardening warms the middle of a block {} thick by {} to {}. If the face is cold meanwhile, it cracks: lay \
                 an insulating blanket over the top at once, leave blanket and shuttering on for three days, and pour no \
                 cold water on warm concrete.",
                brief.units.say(thick, Unit::Metre),
                brief.units.say( 0.5 * rise, Kelvin),
                brief.units.say( 0.75 * rise, Kelvin)
            ),
            adiabatic_rise::SOURCE,
        );
    }
}

fn ducts(notes: &mut Notes) {
    notes.caution(
        "block.ducts_and_drill",
        When::Drilling,
        "Draw no cable into the ducts before the holes are drilled, and mark on the template where the ducts rise.",
        Source::judgement("a drill finds what is drawn in"),
    );
}

fn weak(brief: &Brief, notes: &mut Notes) {
    notes.caution(
            "block.frost_and_concrete",
            When::Planning,
            format!(
                "The chosen concrete is weaker than the exposure table asks for where frost reaches wet concrete: its top may scale over \
                 the years. Ask the plant for {} with entrained air, or keep the top dry under the floor and sloped to drain.",
                brief.stock.value.either(Concrete::C30, Concrete::Psi4500).said()
            ),
            brief.stock.value.either(exposure::SOURCE, aci_exposure::SOURCE),
        );
}
