//! Five example plans before and after the star's width became the measure: the table in `docs/motion-validation.md`. The sixth is
//! younger than that change.
//!
//! `reference/star_before.json` is what the version before that change said of them (commit 8da3f8b, its own stages run once).
//! What this version says is worked out here and held against the page.

use std::fmt::Write as _;

use serde_json::Value;
use stillground::brief::resolve;
use stillground::design::{Design, design};
use stillground::halfspace::NoShelf;
use stillground::site_plan::SitePlan;
use stillground::stages::motion::Disturbance;
use stillground::stages::motion::conduct::ALONE;
use stillground::units::metre;

const EXAMPLES: [(&str, &str); 5] = [
    (
        "everything-unknown",
        include_str!("../examples/everything-unknown.json"),
    ),
    (
        "firm-clay-garden",
        include_str!("../examples/firm-clay-garden.json"),
    ),
    ("quarry-lane", include_str!("../examples/quarry-lane.json")),
    ("sandy-water", include_str!("../examples/sandy-water.json")),
    (
        "club-on-shallow-rock",
        include_str!("../examples/club-on-shallow-rock.json"),
    ),
];
const PAGE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../docs/motion-validation.md");
const BEGINS: &str = "<!-- before and after: begins -->\n";
const ENDS: &str = "<!-- before and after: ends -->\n";

/// Why a line is another one now; the same in every plan.
fn why(id: &str) -> &'static str {
    match id {
        "wind" => {
            "under a rigid load, the mount told apart; the guider's own response; at worst also the drag and, behind walls, the shelter"
        }
        "thermal" => "counted between two corrections; at worst twice the middle",
        "season" => "was told, but in no sum",
        "walk" => {
            "counts while it lasts, not all through the exposure; heel, fourth harmonic, push sideways, uneven steps at the pace in the middle; sides held in part"
        }
        "second_person" => "as the walk",
        "standing" | "sitting" => {
            "counts until the guider takes it out; sides held in part; at worst ground and weight as squares"
        }
        "shifting" => "half of it here and half there all through; sides held in part",
        "door" => {
            "a blow across its wall at a metre's height, 15 ms, from where the door is, as a wave; counts once in the exposure"
        }
        _ => "",
    }
}

/// Two digits.
fn two(value: f64) -> String {
    if value.abs() < 1e-4 {
        return "0".to_owned();
    }
    let places = (1 - value.abs().log10().floor() as i32).max(0);
    format!("{value:.*}", places as usize)
}

fn per_cent(ratio: f64) -> String {
    let value = 100.0 * ratio;
    if value < 0.005 {
        "0".to_owned()
    } else {
        format!("{value:.2}")
    }
}

fn row(before: &Value, one: &Disturbance, asked: f64) -> String {
    let old = &before[one.id];
    let number = |key: &str| old[key].as_f64();
    let was = match (
        number("arcsec"),
        number("worst_arcsec"),
        number("star_growth_ratio"),
    ) {
        (Some(arcsec), Some(worst), Some(growth)) => format!(
            "{}, {}; {} | {}",
            two(arcsec),
            two(worst),
            per_cent(growth),
            old["verdict"].as_str().unwrap()
        ),
        _ => "– | –".to_owned(),
    };
    let (growth, left) = (one.star_growth_ratio.unwrap(), one.peak_left_ratio.unwrap());
    let says = match (ALONE.contains(&one.id), growth.worst <= asked) {
        (true, true) => "within",
        (true, false) => "over",
        (false, _) => "has its rule",
    };
    format!(
        "| {} | {was} | {}; {}, {}; {} | {says} | {} |\n",
        one.title,
        two(one.arcsec.unwrap()),
        per_cent(growth.expected),
        per_cent(growth.worst),
        per_cent(1.0 - left.worst),
        why(one.id)
    )
}

fn sides(design: &Design) -> String {
    let block = &design.block;
    [block.length, block.width, block.depth]
        .map(|side| format!("{:.2}", metre::get(side)))
        .join(" × ")
}

fn tables() -> String {
    let before: Value = serde_json::from_str(include_str!("reference/star_before.json")).unwrap();
    let mut page = String::new();
    for (name, plan) in EXAMPLES {
        let plan: SitePlan = serde_json::from_str(plan).unwrap();
        let now = design(&resolve(&plan).unwrap(), &NoShelf);
        let old = &before[name];
        let was: Vec<String> = old["block_m"]
            .as_array()
            .unwrap()
            .iter()
            .map(|side| format!("{:.2}", side.as_f64().unwrap()))
            .collect();
        let asked = now.motion.budget.asked_growth_ratio;
        write!(
            page,
            "\n**{name}.** Block {} m, now {} m; budget {}″, now {} % wider.\n\n\
             | what happens | before: moves, at worst (″); wider (%) | verdict | now: moves (″); wider, at worst (%); peak lost at worst (%) | says | why |\n\
             |---|---|---|---|---|---|\n",
            was.join(" × "),
            sides(&now),
            two(old["budget_arcsec"].as_f64().unwrap()),
            two(100.0 * asked)
        )
        .unwrap();
        for one in &now.motion.disturbances {
            page.push_str(&row(&old["lines"], one, asked));
        }
        let still = &now.verdict.still;
        if let Some(grown) = still.star_growth_ratio {
            writeln!(
                page,
                "\nWith nobody there: {} % wider, at worst {} %.",
                per_cent(grown.expected),
                per_cent(grown.worst)
            )
            .unwrap();
        }
    }
    page.push('\n');
    page
}

/// Written anew with `STILLGROUND_BLESS=1`.
#[test]
fn the_page_shows_the_examples_before_and_after() {
    let page = std::fs::read_to_string(PAGE).unwrap();
    let (head, rest) = page.split_once(BEGINS).unwrap();
    let (kept, tail) = rest.split_once(ENDS).unwrap();
    let now = tables();
    if std::env::var_os("STILLGROUND_BLESS").is_some() {
        std::fs::write(PAGE, format!("{head}{BEGINS}{now}{ENDS}{tail}")).unwrap();
        return;
    }
    assert!(
        kept == now,
        "docs/motion-validation.md is not what this version says of the examples. If that is right: \
         STILLGROUND_BLESS=1 cargo test --workspace --test engineering before_and_after"
    );
}
