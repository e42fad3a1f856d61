//! Concrete: what to order, or what to mix.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Kelvin, KilogramPerCubicMetre, One, Unit};
use crate::notes::{Notes, Working};
use crate::rules::aci_207_2r_07::adiabatic_rise;
use crate::rules::aci_211_1_91::absolute_volume;
use crate::rules::en_1991_1_1_2002::concrete::density;
use crate::site_plan::block::{Concrete, Mix};
use crate::site_plan::excavation::Sides;
use crate::source::Source;
use crate::stock::goods;
use crate::units::{Volume, cubic_metre, kilogram, kilogram_per_cubic_metre};

use super::age::row;
use super::outline::Outline;

/// Waste where concrete is poured against rough ground.
const WASTE_IN_GROUND_RATIO: f64 = 0.10;
/// Waste in a form.
const WASTE_IN_FORM_RATIO: f64 = 0.05;
/// Dry mass of bagged concrete in a cubic metre, kg.
const DRY_KG_M3: f64 = 2215.0;
/// Grains of sand and gravel, kg/m³.
const GRAIN_KG_M3: f64 = 2650.0;
/// Sand's share of the aggregate.
const SAND_RATIO: f64 = 0.38;
/// Largest stone, mm.
const STONE_MM: f64 = 20.0;
/// Volume above which mixing by hand is advised against.
pub const BY_HAND_M3: f64 = 0.5;

/// What to order or mix, waste included.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Order {
    /// Volume with waste.
    #[serde(rename = "volume_m3", with = "cubic_metre")]
    pub volume: Volume,
    /// Waste as a share of the volume in place.
    pub waste_ratio: f64,
    /// Bags of dry concrete, where it is mixed from bags.
    pub bags: Option<u32>,
    /// Bags of cement, where it is mixed from its parts.
    pub cement_bags: Option<u32>,
    /// Mass of cement, kg, where it is mixed from its parts.
    pub cement_kg: Option<f64>,
    /// Mixing water, litres, where it is mixed on site.
    pub water_l: Option<f64>,
    /// Sand, kg, where it is mixed from its parts.
    pub sand_kg: Option<f64>,
    /// Gravel, kg, where it is mixed from its parts.
    pub gravel_kg: Option<f64>,
    /// Ratio of water to cement that the mix aims at.
    pub water_cement_ratio: f64,
    /// Cement in a cubic metre, kg; it also sets the heat.
    pub cement_kg_m3: f64,
    /// How much warmer it would get if it lost no heat, K; a metre of block keeps a half to three quarters of it.
    pub heat_rise_k: f64,
    /// Delivered or mixed, and why.
    pub advice: String,
}

/// What a cubic metre takes.
struct Recipe {
    water_cement_ratio: f64,
    water: f64,
    cement: f64,
    sand: f64,
    gravel: f64,
}

/// Finds what to order.
pub(super) fn order(brief: &Brief, outline: &Outline, notes: &mut Notes) -> Order {
    let formed = brief.excavation.sides.value == Sides::Sloped;
    let waste_ratio = if formed {
        WASTE_IN_FORM_RATIO
    } else {
        WASTE_IN_GROUND_RATIO
    };
    let net = cubic_metre::get(outline.volume());
    let stock = brief.stock.value;
    let ready = brief.block.mix.value == Mix::Ready;
    let exact = net * (1.0 + waste_ratio);
    let volume = if ready {
        let in_a_unit = 1.0 / goods::size("load-step", stock);
        (exact * in_a_unit).ceil() / in_a_unit
    } else {
        exact
    };
    let recipe = recipe(brief.block.concrete.value);
    workings(net, waste_ratio, volume, notes);
    let site = brief.block.mix.value == Mix::Site;
    let bags = (brief.block.mix.value == Mix::Bagged)
        .then(|| whole(volume * DRY_KG_M3 / kilogram::get(brief.block.bag.value)));
    Order {
        volume: cubic_metre::new(volume),
        waste_ratio,
        bags,
        cement_bags: site.then(|| whole(volume * recipe.cement / goods::size("cement-bag", stock))),
        cement_kg: site.then_some(volume * recipe.cement),
        water_l: (!ready).then_some(
            volume
                * if site {
                    recipe.water
                } else {
                    kilogram_per_cubic_metre::get(density()) - DRY_KG_M3
                },
        ),
        sand_kg: site.then_some(volume * recipe.sand),
        gravel_kg: site.then_some(volume * recipe.gravel),
        water_cement_ratio: recipe.water_cement_ratio,
        cement_kg_m3: recipe.cement,
        heat_rise_k: heat(recipe.cement, notes),
        advice: advice(brief, volume, bags),
    }
}

/// A whole number of things, at least as many as needed.
fn whole(number: f64) -> u32 {
    number.ceil().clamp(0.0, 1e9) as u32
}

/// A recipe on the rich side of EN 206's limits, since a site has no laboratory.
fn recipe(class: Concrete) -> Recipe {
    let [water_cement_ratio, water] =
        ["water_cement_ratio", "water_kg_m3"].map(|column| row(class, column));
    let cement = water / water_cement_ratio;
    let kg = kilogram_per_cubic_metre::new;
    let aggregate = kilogram_per_cubic_metre::get(absolute_volume::aggregate(
        kg(cement),
        kg(water),
        0.0,
        kg(GRAIN_KG_M3),
    ));
    Recipe {
        water_cement_ratio,
        water,
        cement,
        sand: aggregate * SAND_RATIO,
        gravel: aggregate * (1.0 - SAND_RATIO),
    }
}

/// The rise without loss.
fn heat(cement: f64, notes: &mut Notes) -> f64 {
    let rise = adiabatic_rise::rise_k(kilogram_per_cubic_metre::new(cement), density());
    notes.working(
        Working::new(
            "block.heat_rise",
            "Warming of the concrete if no heat were lost",
            "ΔT = C Q / (ρ c)",
            adiabatic_rise::SOURCE,
        )
        .with("C", cement, Unit::KilogramPerCubicMetre)
        .with("ρ", density(), KilogramPerCubicMetre)
        .gives("ΔT", rise, Kelvin),
    );
    rise
}

fn workings(net: f64, waste_ratio: f64, volume: f64, notes: &mut Notes) {
    notes.working(
        Working::new(
            "block.order_volume",
            "Concrete to order",
            "V_order = V (1 + w)",
            Source::common_practice("waste of a pour"),
        )
        .with("V", net, Unit::CubicMetre)
        .with("w", waste_ratio, One)
        .gives("V_order", volume, Unit::CubicMetre),
    );
}

fn advice(brief: &Brief, volume: f64, bags: Option<u32>) -> String {
    let said = brief.units.say(volume, Unit::CubicMetre);
    let lifted = brief.units.say(volume * 2.4, Unit::Tonne);
    let stone = brief.units.about(STONE_MM, Unit::Millimetre);
    match brief.block.mix.value {
        Mix::Ready => format!(
            "{said} delivered. Ask the plant for the class, the exposure class, a consistence that flows round steel (S3) and stone \
             of {stone}; ask for the charge on a small load, how far the chute or the pump reaches, and how long the lorry waits. {}",
            if volume < BY_HAND_M3 {
                "So little can also be mixed from bags in a morning."
            } else {
                "By hand it would be a hard day."
            }
        ),
        Mix::Site => format!(
            "{said} mixed on site means moving {lifted} by hand. Weigh the parts if you can; take the water that damp sand brings off \
             the mixing water, and do not thin the mix to make it flow. {}",
            by_hand(volume)
        ),
        Mix::Bagged => format!(
            "{said} from {} bags means lifting {lifted}. Use the water the bag names and no more. {}",
            bags.unwrap_or_default(),
            by_hand(volume)
        ),
    }
}

fn by_hand(volume: f64) -> &'static str {
    if volume > BY_HAND_M3 {
        "At this volume a delivery is usually cheaper, sooner done and more even."
    } else {
        "At this volume a delivery's charge for a small load seldom pays."
    }
}
