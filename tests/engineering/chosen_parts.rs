//! What the planner chooses in made-up plans is a row of the catalogue, and resists what is asked of it; where nothing that is sold
//! does, the plan says so.
//!
//! `STOCK_PLANS` says how many plans of each family; `tests/run slow` looks at 2000.

use std::collections::BTreeMap;

use stillground::brief::{Brief, resolve};
use stillground::decided::{Decided, decide};
use stillground::design::{Design, design};
use stillground::field::Path;
use stillground::halfspace::SmallShelf;
use stillground::notes::{Check, Question, Verdict};
use stillground::path;
use stillground::rules::tubes;
use stillground::site_plan::SitePlan;
use stillground::site_plan::anchors::{Size, StrengthClass};
use stillground::site_plan::block::{Concrete, Mix};
use stillground::stock::{Stock, goods};
use stillground::units::{cubic_metre, kilogram, metre, millimetre, square_millimetre};
use stillground::verdict::Says;
use stillground_tests::generated::plan;

/// Plans of each family where nobody says how many.
const FEW: u64 = 6;
/// Thinnest block that is chosen where there is room for it: 4 in, and more than the 100 mm of the other family.
const THINNEST_M: f64 = 0.1016;
/// Seeds that are tried for one plan: most contradict themselves.
const TRIES: u64 = 40;

#[test]
fn what_is_chosen_is_sold_and_holds_what_was_asked() {
    let wanted: u64 = std::env::var("STOCK_PLANS")
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(FEW);
    let shelf = SmallShelf::holding(64);
    let mut wrong = Vec::new();
    for stock in [Stock::Metric, Stock::Inch] {
        let mut seen = Seen::default();
        for seed in 0..wanted * TRIES {
            if seen.plans == wanted {
                break;
            }
            let mut plan = plan(seed);
            plan.stock = Some(stock);
            let Ok(decided) = decide(&plan, &shelf) else {
                continue;
            };
            seen.look(&plan, &decided, &shelf, &format!("{stock:?} {seed}"));
            if seen.plans % 100 == 0 {
                eprintln!("{stock:?}: {seen:?}");
            }
        }
        let Seen {
            plans,
            parts,
            checks,
            ..
        } = seen;
        assert_eq!(plans, wanted, "{stock:?}: too few plans could be made");
        assert!(parts > plans && checks > plans, "{stock:?}: {seen:?}");
        wrong.extend(seen.wrong);
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// What was looked at.
#[derive(Debug, Default)]
struct Seen {
    plans: u64,
    /// Parts that nobody stated.
    parts: u64,
    /// Checks that one of them moves.
    checks: u64,
    /// Of these, checks that fail, how often each; their plans say so.
    told: BTreeMap<&'static str, u64>,
    wrong: Vec<String>,
}

impl Seen {
    fn look(&mut self, plan: &SitePlan, decided: &Decided, shelf: &SmallShelf, name: &str) {
        let Decided { brief, design, .. } = decided;
        self.plans += 1;
        let mut wrong = Vec::new();
        self.parts += sold(plan, design, &mut wrong);
        for check in moved_by_chosen(plan, design) {
            self.checks += 1;
            wrong.extend(resists(check, design));
            if check.verdict == Verdict::Fails {
                *self.told.entry(check.id).or_default() += 1;
            }
        }
        if design.verdict.build.says == Says::No {
            wrong.extend(another_row(plan, decided, shelf));
        }
        wrong.extend(is_its_row(plan, brief, design));
        wrong.extend(holds(plan, brief, design));
        for what in &wrong {
            eprintln!("{name}: {what}");
        }
        self.wrong
            .extend(wrong.into_iter().map(|what| format!("{name}: {what}")));
    }
}

/// Checks of building that a part moves which nobody stated.
fn moved_by_chosen<'a>(plan: &SitePlan, design: &'a Design) -> Vec<&'a Check> {
    let chosen: Vec<_> = design
        .parts
        .iter()
        .map(|part| part.field)
        .filter(|field| !is_said(plan, design, field))
        .collect();
    let of = |check: &&Check| {
        check.question == Question::Build && check.fields.iter().any(|field| chosen.contains(field))
    };
    design.checks.iter().filter(of).collect()
}

/// The resistance with the chosen row is at least what is asked; else the plan may not be built, and says which check fails, and
/// why.
fn resists(check: &Check, design: &Design) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut must = |holds: bool, what: &str| {
        if !holds {
            let found = format!("{:?} of {:?}", check.demand, check.capacity);
            wrong.push(format!("{}, {found}: {what}", check.id));
        }
    };
    let enough = match (check.demand, check.capacity) {
        (Some(demand), Some(capacity)) => {
            Some(demand <= capacity + 1e-9 * demand.abs().max(capacity.abs()))
        }
        _ => None,
    };
    let build = &design.verdict.build;
    match check.verdict {
        Verdict::Holds | Verdict::Close => must(enough == Some(true), "said to hold"),
        Verdict::Fails => {
            must(enough == Some(false), "said to fail");
            must(build.says == Says::No, "fails, and the plan may be built");
            must(build.because.contains(&check.id), "is not named");
            must(!check.note.is_empty(), "does not say why");
        }
        Verdict::Unknown => {
            must(
                build.says != Says::Yes,
                "is not known, and the plan may be built",
            );
            must(!check.note.is_empty(), "does not say whom to ask");
        }
    }
    wrong
}

/// The plan with one part of another row, where nobody stated it.
type Trial = (Path, SitePlan);

/// The plan with each other row of each part that nobody stated, one part at a time.
fn trials(plan: &SitePlan, decided: &Decided) -> Vec<Trial> {
    let (stock, now) = (decided.brief.stock.value, &decided.plan);
    let mut trials = Vec::new();
    let mut with = |part, change: &dyn Fn(&mut SitePlan)| {
        let mut changed = now.clone();
        change(&mut changed);
        trials.push((part, changed));
    };
    if plan.pier.plate_thickness_mm.is_none() {
        for row in goods::rows(&goods::PLATES, stock) {
            let thickness = row.value("thickness_mm");
            with(path!(pier.plate_thickness_mm), &|plan| {
                plan.pier.plate_thickness_mm = Some(thickness)
            });
        }
    }
    if plan.anchors.strength_class.is_none() {
        for class in StrengthClass::ALL
            .iter()
            .filter(|class| class.stock() == stock)
        {
            with(path!(anchors.strength_class), &|plan| {
                plan.anchors.strength_class = Some(*class)
            });
        }
    }
    if plan.anchors.size.is_none() {
        for size in Size::of(stock) {
            with(path!(anchors.size), &|plan| plan.anchors.size = Some(size));
        }
    }
    if plan.block.concrete.is_none() {
        for class in Concrete::ALL.iter().filter(|class| class.stock() == stock) {
            with(path!(block.concrete), &|plan| {
                plan.block.concrete = Some(*class)
            });
        }
    }
    let said = &plan.pier;
    if said.tube.is_none() && said.outside_diameter_mm.is_none() && said.wall_mm.is_none() {
        // Sizing tries no column beyond 2.0 times the width that the rules choose.
        let widest_mm = 2.0 * millimetre::get(decided.brief.pier.outside_diameter.value) + 0.5;
        for tube in tubes::usual(stock).filter(|tube| tube.outside_mm <= widest_mm) {
            with(path!(pier.outside_diameter_mm), &|plan| {
                plan.pier.outside_diameter_mm = Some(tube.outside_mm);
                plan.pier.wall_mm = Some(tube.wall_mm);
            });
        }
    }
    trials
}

/// Parts of which another row would do where the plan may not be built with the chosen one. Only a part that each check that fails
/// names as what moves it: others may help by a way round, as a wider column does that spreads the studs.
fn another_row(plan: &SitePlan, decided: &Decided, shelf: &SmallShelf) -> Vec<String> {
    let fails: Vec<&Check> = (decided.design.checks.iter())
        .filter(|check| check.question == Question::Build && check.verdict == Verdict::Fails)
        .collect();
    let mut told = Vec::new();
    for (part, changed) in trials(plan, decided) {
        if told.contains(&part) || !fails.iter().all(|check| check.fields.contains(&part)) {
            continue;
        }
        // The block stays: another block is no other row. A plan that contradicts itself with it is no way to build.
        let Ok(brief) = resolve(&with_block(changed, &decided.design)) else {
            continue;
        };
        if design(&brief, shelf).verdict.build.says != Says::No {
            told.push(part);
        }
    }
    let fails: Vec<&str> = fails.iter().map(|check| check.id).collect();
    let fails = fails.join(", ");
    told.into_iter()
        .map(|part| format!("{fails}: another row of {part} would do"))
        .collect()
}

/// The plan with its block as it was designed.
fn with_block(mut plan: SitePlan, design: &Design) -> SitePlan {
    let block = &design.block;
    let [length, width, depth] = [block.length, block.width, block.depth].map(metre::get);
    (plan.block.length_m, plan.block.width_m) = (Some(length), Some(width));
    plan.block.depth_m = Some(depth);
    plan
}

/// A number of a table's row, read here by itself; the columns that are asked for stand before any text with commas.
fn cell(table: &str, row: &str, column: &str) -> Option<f64> {
    let at = table
        .lines()
        .next()?
        .split(',')
        .position(|name| name == column)?;
    let line = table.lines().find(|line| {
        line.strip_prefix(row)
            .is_some_and(|rest| rest.starts_with(','))
    })?;
    line.split(',').nth(at)?.parse().ok()
}

/// Resistances are worked with the sizes of the row that is named.
fn is_its_row(plan: &SitePlan, brief: &Brief, design: &Design) -> Vec<String> {
    const TUBES: &str = include_str!("../../shared/data/tubes.csv");
    const PLATES: &str = include_str!("../../shared/data/plates.csv");
    const THREADS: &str = include_str!("../../shared/data/threads.csv");
    let (pier, anchors) = (&brief.pier, &brief.anchors);
    let mut wrong = Vec::new();
    let mut same = |part: &str, found: f64, row: Option<f64>| {
        if row.is_none_or(|row| (found - row).abs() > 1e-6) {
            wrong.push(format!("{part}: {found}, its row has {row:?}"));
        }
    };
    for part in design
        .parts
        .iter()
        .filter(|part| !is_said(plan, design, &part.field))
    {
        let Some(row) = part.stock_row else { continue };
        match part.part {
            "column" => {
                let [outside, wall] =
                    [pier.outside_diameter.value, pier.wall.value].map(millimetre::get);
                same("column", outside, cell(TUBES, row, "outside_diameter_mm"));
                same("wall", wall, cell(TUBES, row, "wall_mm"));
            }
            "base plate" => {
                let thickness = millimetre::get(pier.plate_thickness.value);
                same(part.part, thickness, cell(PLATES, row, "thickness_mm"));
            }
            "top plate" => {
                let thickness = millimetre::get(pier.top_plate_thickness.value);
                same(part.part, thickness, cell(PLATES, row, "thickness_mm"));
            }
            "studs" => {
                let area = square_millimetre::get(anchors.thread().stress_area);
                same(part.part, area, cell(THREADS, row, "stress_area_mm2"));
            }
            _ => {}
        }
    }
    wrong
}

/// Every part that nobody stated is sold; how many there were.
fn sold(plan: &SitePlan, design: &Design, wrong: &mut Vec<String>) -> u64 {
    let mut chosen = 0;
    for part in &design.parts {
        if is_said(plan, design, &part.field) {
            continue;
        }
        chosen += 1;
        if !part.sold {
            wrong.push(format!("{} {} ({})", part.part, part.says, part.field));
        }
    }
    chosen
}

/// Whether the person stated a part, or something that it has to follow.
fn is_said(plan: &SitePlan, design: &Design, field: &str) -> bool {
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
        // A block is as deep as its pit where that is less than the thinnest block; the plan may not be built, and says so.
        "block.depth_m" => {
            stated(field)
                || (metre::get(design.excavation.room_depth) < THINNEST_M
                    && design.verdict.build.says == Says::No)
        }
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
