//! What the planner chooses in made-up plans is a row of the catalogue, and holds what was asked of it.
//!
//! `STOCK_PLANS` says how many plans of each family; `tests/run slow` looks at 2000.

use stillground::brief::Brief;
use stillground::decided::{Decided, decide};
use stillground::design::Design;
use stillground::halfspace::SmallShelf;
use stillground::site_plan::SitePlan;
use stillground::site_plan::block::Mix;
use stillground::stock::Stock;
use stillground::units::{cubic_metre, kilogram, millimetre};
use stillground_tests::generated::plan;

/// Plans of each family where nobody says how many.
const FEW: u64 = 6;
/// Seeds that are tried for one plan: most contradict themselves.
const TRIES: u64 = 40;

#[test]
fn what_is_chosen_is_sold_and_holds_what_was_asked() {
    let wanted: u64 = std::env::var("STOCK_PLANS")
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(FEW);
    let shelf = SmallShelf::holding(64);
    for stock in [Stock::Metric, Stock::Inch] {
        let (mut looked_at, mut chosen, mut wrong) = (0, 0, Vec::new());
        for seed in 0..wanted * TRIES {
            if looked_at == wanted {
                break;
            }
            let mut plan = plan(seed);
            plan.stock = Some(stock);
            let Ok(Decided { brief, design, .. }) = decide(&plan, &shelf) else {
                continue;
            };
            looked_at += 1;
            chosen += sold(&plan, &design, seed, &mut wrong);
            wrong.extend(
                holds(&plan, &brief, &design)
                    .into_iter()
                    .map(|what| format!("{stock:?} {seed}: {what}")),
            );
        }
        assert_eq!(looked_at, wanted, "{stock:?}: too few plans could be made");
        assert!(chosen > looked_at, "{stock:?}: only {chosen} choices");
        assert!(wrong.is_empty(), "{stock:?}: {wrong:#?}");
    }
}

/// Every part that nobody stated is sold; how many there were.
fn sold(plan: &SitePlan, design: &Design, seed: u64, wrong: &mut Vec<String>) -> u64 {
    let mut chosen = 0;
    for part in &design.parts {
        if is_said(plan, &part.field) {
            continue;
        }
        chosen += 1;
        if !part.sold {
            wrong.push(format!(
                "{seed}: {} {} ({})",
                part.part, part.says, part.field
            ));
        }
    }
    chosen
}

/// Whether the person stated a part, or something that it has to follow.
fn is_said(plan: &SitePlan, field: &str) -> bool {
    let stated = |path: &str| {
        SitePlan::number(path).is_some_and(|row| (row.get)(plan).is_some())
            || SitePlan::other(path).is_some_and(|row| (row.key)(plan).is_some())
    };
    match field {
        "pier.outside_diameter_mm" => {
            plan.pier.tube.is_some() || stated(field) || stated("pier.wall_mm")
        }
        // A thread is made of steels of its own family.
        "anchors.strength_class" => stated(field) || stated("anchors.size"),
        "anchors.length_mm" => stated(field) || stated("anchors.embedment_mm"),
        field => stated(field),
    }
}

/// What was chosen is enough for what asked for it.
fn holds(plan: &SitePlan, brief: &Brief, design: &Design) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut at_least = |what: &str, found: f64, asked: f64| {
        if found < asked * (1.0 - 1e-9) {
            wrong.push(format!("{what}: {found} for {asked}"));
        }
    };
    let (anchors, block) = (&brief.anchors, &design.block);
    if plan.anchors.length_mm.is_none() {
        at_least(
            "length of a stud",
            millimetre::get(anchors.length.value),
            millimetre::get(design.anchors.setting.stud_length_needed),
        );
    }
    if plan.anchors.embedment_mm.is_none() {
        let least = 4.0 * millimetre::get(anchors.thread().diameter);
        at_least("embedment", millimetre::get(anchors.embedment.value), least);
    }
    let order = &block.concrete;
    at_least(
        "concrete to order",
        cubic_metre::get(order.volume),
        cubic_metre::get(block.volume),
    );
    if let (Mix::Bagged, Some(bags)) = (brief.block.mix.value, order.bags) {
        let in_bags = f64::from(bags) * kilogram::get(brief.block.bag.value);
        at_least("bags", in_bags, cubic_metre::get(block.volume) * 2000.0);
    }
    wrong
}
