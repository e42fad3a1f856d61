//! A reader of feet and pounds meets no metric unit in any text of a design.
//!
//! Left out: sizes that a shop names in millimetres, with their inches behind them (`18 mm (0.709 in)`), the trade's two
//! rules by their names, the three readings of a torque in "kilos", names of fields, sources and formulas.
#![allow(missing_docs, clippy::unwrap_used, reason = "a test")]

use serde_json::{Value, json};
use stillground::decided::design_plan;
use stillground::halfspace::NoShelf;
use stillground::site_plan::SitePlan;

const UNITS: &[&str] = &[
    "mm",
    "cm",
    "m",
    "km",
    "m²",
    "m³",
    "kg",
    "t",
    "N",
    "kN",
    "MPa",
    "kPa",
    "GPa",
    "l",
    "ml",
    "°C",
    "K",
    "metre",
    "metres",
    "centimetre",
    "centimetres",
    "millimetre",
    "millimetres",
    "kilogram",
    "kilograms",
    "litre",
    "litres",
    "tonne",
    "tonnes",
    "newton",
    "newtons",
    "kilonewtons",
];
/// Keys whose texts are no words for a reader, or are workings in the source's own units.
const NOT_WORDS: &[&str] = &[
    "unit",
    "field",
    "fields",
    "source",
    "formula",
    "symbol",
    "id",
    "after",
    "kilos_readings",
    "stock_row",
    "utc",
    "clock",
];
const NAMES: &[&str] = &[
    "metre cube",
    "metre (3.28 ft)",
    "a tonne (1.1 short tons)",
    "About a tonne",
    "A tonne of concrete",
    "a tonne of concrete",
    "what the tonne does",
    "Take the tonne",
    "A tonne is a cube",
    "or a metre, is what",
    "newton metres, kilogram-force metres",
    "in newton metres, before",
    "M10",
    "CEM I 42.5 N, CEM II 32.5 R or 42.5 N",
    "CEM II 32.5 N",
    "on a metre",
    "a metre deep, leave",
    "a metre east of the axis",
    "reading: 180 N m",
    "reading: 180 kgf m",
    "180 N m is",
    "180 kgf m is",
    "180 kgf m cannot",
    "Pull of 180 N m on",
    "Pull of 180 kgf m on",
];

fn words(key: &str, value: &Value, found: &mut Vec<String>) {
    match value {
        Value::Object(map) => map
            .iter()
            .filter(|(key, _)| !NOT_WORDS.contains(&key.as_str()))
            .for_each(|(key, value)| words(key, value, found)),
        Value::Array(list) => list.iter().for_each(|value| words(key, value, found)),
        Value::String(text) => found.push(format!("{key}: {text}")),
        _ => {}
    }
}

/// The text without the product sizes that are followed by their inches, and without the rules' names.
fn plain(text: &str) -> String {
    let mut text = text.replace('\u{a0}', " ");
    for size in ["mm (", "mm² (", " m (", " kg (", " l (", "(300 ml"] {
        while let Some(at) = text.find(size) {
            let end = text[at..].find(')').map_or(text.len(), |end| at + end + 1);
            text.replace_range(at..end, "");
        }
    }
    NAMES.iter().fold(text, |text, name| text.replace(name, ""))
}

fn metric(text: &str) -> Option<String> {
    let plain = plain(text);
    let pieces: Vec<&str> = plain
        .split(|c: char| !(c.is_alphanumeric() || c == '°'))
        .filter(|word| !word.is_empty())
        .collect();
    let word = pieces.iter().find(|word| {
        UNITS.contains(word)
            || UNITS.iter().any(|unit| {
                word.strip_suffix(unit).is_some_and(|digits| {
                    !digits.is_empty() && digits.bytes().all(|b| b.is_ascii_digit())
                })
            })
    })?;
    Some((*word).to_owned())
}

const EXAMPLES: [&str; 6] = [
    include_str!("../../tests/examples/club-on-shallow-rock.json"),
    include_str!("../../tests/examples/everything-unknown.json"),
    include_str!("../../tests/examples/firm-clay-garden.json"),
    include_str!("../../tests/examples/inch-garden.json"),
    include_str!("../../tests/examples/quarry-lane.json"),
    include_str!("../../tests/examples/sandy-water.json"),
];

fn plans() -> Vec<Value> {
    let mut plans: Vec<Value> = EXAMPLES
        .iter()
        .map(|text| serde_json::from_str(text).unwrap())
        .collect();
    plans.extend([
        json!({"floor": {"kind": "deck"}, "site": {"soil": "stiff_clay"}}),
        json!({"floor": {"kind": "slab"}, "site": {"soil": "rock"}, "use": "planetary"}),
        json!({"site": {"soil": "peat"}, "block": {"mix": "site", "reinforcement": "cage"}}),
        json!({"site": {"soil": "shrinking_clay", "tree_distance_m": 4.0}, "block": {"mix": "bagged"}}),
        json!({"code": "aci", "site": {"soil": "medium_sand", "groundwater_depth_m": 0.3, "slope_deg": 12.0, "tree_distance_m": 3.0,
            "drain_distance_m": 1.5, "building_distance_m": 2.0, "freezing_index_c_days": 800.0, "frost_depth_m": 0.2,
            "rock_depth_m": 0.8, "topsoil_depth_m": 0.3}}),
        json!({"stock": "metric", "pier": {"levelling": "grout", "fill": "concrete"}, "anchors": {"count": 12, "torque_n_m": 180.0}}),
        json!({"pier": {"fill": "sand", "height_m": 2.5}, "anchors": {"size": "M20", "torque_n_m": 300.0, "max_torque_n_m": 100.0, "hole": "wet"}}),
        json!({"excavation": {"method": "machine", "sides": "sloped", "max_depth_m": 1.5}, "work": {"start_date": "2027-01-19",
            "temperature_c": 2.0}, "site": {"latitude_deg": 45.0, "longitude_deg": 10.0}}),
        json!({"block": {"length_m": 0.5, "width_m": 0.5, "depth_m": 0.3}, "excavation": {"max_depth_m": 0.3}, "use": "visual"}),
        json!({"floor": {"stands": [], "walk": []}, "load": {"mass_kg": 400.0, "focal_length_mm": 8000.0, "wind_area_m2": 3.0}}),
    ]);
    plans
}

#[test]
fn no_metric_unit_is_left_in_the_words_of_an_imperial_design() {
    let mut left = Vec::new();
    // What is sold is another matter than what is read: both families, unless a plan says.
    let both = plans().into_iter().flat_map(|plan| {
        ["metric", "inch"].map(|stock| {
            let mut plan = plan.clone();
            if plan.get("stock").is_none() {
                plan["stock"] = json!(stock);
            }
            plan
        })
    });
    for mut plan in both {
        plan["schema_version"] = json!(1);
        plan["units"] = json!("imperial");
        let plan: SitePlan = serde_json::from_value(plan).unwrap();
        let design = serde_json::to_value(design_plan(&plan, &NoShelf).unwrap()).unwrap();
        let mut texts = Vec::new();
        words("design", &design, &mut texts);
        left.extend(
            texts
                .iter()
                .filter_map(|text| Some(format!("{}  ← {text}", metric(text)?))),
        );
    }
    left.sort();
    left.dedup();
    assert!(left.is_empty(), "{}", left.join("\n"));
}

#[test]
fn the_search_finds_what_it_is_for() {
    for text in [
        "at least 20 mm thick",
        "a cubic metre",
        "5\u{a0}°C",
        "180\u{a0}N\u{a0}m",
        "3m away",
    ] {
        assert!(metric(text).is_some(), "{text}");
    }
    for text in [
        "18\u{a0}mm (0.709\u{a0}in) plywood",
        "stud M20",
        "A metre cube weighs",
        "12\u{a0}ft",
        "M 3",
    ] {
        assert!(metric(text).is_none(), "{text}");
    }
}
