//! From the first peg to the hardened block.

use crate::figure::{CubicMetre, Day, PerCent, Unit};
use crate::notes::When;
use crate::site_plan::block::{Mix, Reinforcement};
use crate::site_plan::excavation::Method;
use crate::units::{cubic_metre, day, metre, square_metre};

use super::{Job, Plan, dowels, frost};

/// Task that lines the pit's faces, where they will not stand by themselves.
const LINING: &str = "line_faces";
/// Person-hours to line and strut a square metre of face: judgement.
const LINING_H_M2: f64 = 0.5;
/// Days before a form is struck.
const STRIKE_D: f64 = 3.0;

pub(super) fn tasks(job: &Job, plan: &mut Plan) {
    digging(job, plan);
    dowels::tasks(job, plan);
    preparing(job, plan);
    frost::before_the_pour(job, plan);
    pouring(job, plan);
    hardening(job, plan);
    frost::after_the_pour(job, plan);
}

fn digging(job: &Job, plan: &mut Plan) {
    let pit = job.excavation;
    plan.work(
        When::Planning,
        "order",
        "Order, hire and confirm",
        &[],
        1.0,
        "Long before day 1: a concrete plant, a galvaniser and a skip ask for days or weeks of notice. On day 1 only confirm.",
    );
    plan.work(
        When::Digging,
        "services",
        "Find buried services",
        &[],
        1.0,
        "Before the first spade: the owners' plans in hand, the ground swept with a locator, and every find marked.",
    );
    plan.work(
        When::Digging,
        "set_out",
        "Set out, fence and lay boards",
        &["services"],
        1.5,
        "Corners, diagonals, north, and a fence before there is a hole.",
    );
    let machine = if pit.protection {
        "; the sides are supported before anyone enters"
    } else {
        ""
    };
    let whose = if job.brief.excavation.method.value == Method::Hand {
        " The hours are those of labourers who dig every day; somebody who seldom does takes half as long again."
    } else {
        ""
    };
    plan.work(
        When::Digging,
        "dig",
        "Dig the pit",
        &["set_out"],
        pit.digging_h,
        format!(
            "{} out of the ground, {} barrow loads{machine}.{whose}",
            job.brief.units.say(pit.volume, CubicMetre),
            pit.barrow_loads
        ),
    );
    if pit.shuttered {
        lining(job, plan);
    }
    plan.work(
        When::Digging,
        "inspect",
        "Trim the bottom and check the soil",
        &["dig", LINING],
        0.5,
        "The last of it by hand, so that the base stays undisturbed. Compare the soil with what the plan says; if it is softer, or wet, \
         stop and change the plan.",
    );
}

/// Boards go down with the digging; the task beside it is their time, and nothing that follows starts before they stand.
fn lining(job: &Job, plan: &mut Plan) {
    let pit = job.excavation;
    let face = 2.0 * metre::get(pit.length + pit.width) * metre::get(pit.depth);
    plan.work(
        When::Digging,
        LINING,
        "Line and strut the pit's faces",
        &["dig"],
        job.shared(0.5 + LINING_H_M2 * face),
        "As you dig, not afterwards: these faces will not stand by themselves. From the edge, a frame at the top first, the sheets ahead \
         of the digging. At the pour the struts come out from below as the concrete reaches them, and the sheets are drawn with it.",
    );
}

fn preparing(job: &Job, plan: &mut Plan) {
    let (pit, block) = (job.excavation, job.block);
    if pit.dewatering || !pit.cast_against_ground {
        plan.work(
            When::Pouring,
            "blinding",
            "Blind the base",
            &["inspect"],
            job.shared(2.0),
            format!("A clean, level, dry base {} thick.", job.about_mm(50.0)),
        );
        plan.wait(
            When::Pouring,
            "blinding_sets",
            "Wait: the blinding sets",
            &["blinding"],
            16.0,
            "Overnight, so that it can be walked on.",
        );
    }
    let around = 2.0 * metre::get(block.length + block.width);
    let height = form_height(job);
    if height > 0.0 {
        plan.work(
            When::Pouring,
            "form",
            "Build the shuttering and level its edge",
            &["inspect", "blinding_sets"],
            job.shared(1.0 + 1.2 * around * height),
            "Its top edge is the block's top: level it with care, it saves hours at the plate.",
        );
    }
    let per_metre = match job.brief.block.reinforcement.value {
        Reinforcement::Plain => 0.0,
        Reinforcement::TopMesh | Reinforcement::Cage => 0.08,
    };
    let bars = block
        .reinforcement
        .iter()
        .find(|option| option.chosen)
        .and_then(|option| option.bars_m)
        .unwrap_or(0.0);
    plan.work(
        When::Pouring,
        "steel_and_ducts",
        "Place steel, ducts and earthing tail",
        &["inspect", "blinding_sets", "form", dowels::LAST],
        job.shared(1.0 + per_metre * bars + 0.5 * f64::from(block.ducts.count)),
        format!(
            "Bars kept {} clear of where the drill goes, ducts capped, draw cords in, all photographed with a rule beside it.",
            job.about_mm(25.0)
        ),
    );
}

fn pouring(job: &Job, plan: &mut Plan) {
    let volume = cubic_metre::get(job.block.order_volume);
    let (hours, how) = match job.brief.block.mix.value {
        Mix::Ready => (1.0 + 0.75 * volume, "delivered"),
        Mix::Site | Mix::Bagged => (
            job.shared(6.0 * volume).max(1.0),
            job.brief.units.either(
                "mixed on site, about six person-hours to the cubic metre",
                "mixed on site, about five person-hours to the cubic yard",
            ),
        ),
    };
    plan.work(
        When::Pouring,
        "pour",
        "Pour and compact",
        &["steel_and_ducts", frost::TASK],
        hours,
        format!(
            "{} {how}, in one go and in layers of {}, each driven into the last.",
            job.brief.units.say(volume, Unit::CubicMetre),
            job.about_mm(300.0)
        ),
    );
    let top = square_metre::get(job.block.length * job.block.width);
    plan.work(
        When::Pouring,
        "cover",
        "Float the top and cover it",
        &["pour"],
        0.5 + 0.25 * top,
        "Flat where the plate will stand, and damp from the first hour.",
    );
}

fn hardening(job: &Job, plan: &mut Plan) {
    let block = job.block;
    let at = job.celsius(job.brief.work.temperature_c.value);
    let days = |time| job.brief.units.say(time, Day);
    let why = format!(
        "{} at {at}: concrete that dries early stays weak and dusty at its face.",
        days(block.curing)
    );
    plan.wait(
        When::Pouring,
        "cure",
        "Keep the block damp and covered",
        &["cover"],
        24.0 * day::get(block.curing),
        why,
    );
    striking(job, plan);
    let strength = job.brief.units.say(20.0, Unit::Megapascal);
    let why = format!(
        "{} at {at}: 21 days at least, and a characteristic strength of {strength}.",
        days(block.drill_after)
    );
    plan.wait(
        When::Drilling,
        "harden",
        "Wait: the concrete hardens",
        &["cover"],
        24.0 * day::get(block.drill_after),
        why,
    );
    let reference = job.celsius(20.0);
    let why = format!(
        "{} at {at}: the studs' resistances are calculated with the strength at 28 days and {reference}.",
        days(block.load_after)
    );
    let why = format!(
        "{why} Before that, part of the full load may be put on: {}.",
        shares(job)
    );
    let title = "Wait: the concrete reaches full strength";
    plan.wait(
        When::Observing,
        "full_strength",
        title,
        &["cover"],
        24.0 * day::get(block.load_after),
        why,
    );
}

/// Which share of the full load may come on which day, from the day of drilling.
fn shares(job: &Job) -> String {
    let rows = job.block.strength_by_day.iter();
    let said: Vec<String> = rows
        .filter(|row| row.load_ratio > 0.0 && row.day < day::get(job.block.load_after))
        .map(|row| {
            let share = job
                .brief
                .units
                .say((100.0 * row.load_ratio).floor(), PerCent);
            format!("on day {:.0} {share}", row.day)
        })
        .collect();
    match said.as_slice() {
        [] => "none sooner".to_owned(),
        said => said.join(", "),
    }
}

/// The form comes off, and the ground goes back where the pit was battered.
fn striking(job: &Job, plan: &mut Plan) {
    if form_height(job) > 0.0 {
        let why = "Three days keep the warmth even and the edges whole.";
        plan.wait(
            When::Pouring,
            "form_waits",
            "Leave the shuttering on",
            &["cover"],
            24.0 * STRIKE_D,
            why,
        );
        let why = "Gently, so that no edge breaks; cover the block again at once.";
        plan.work(
            When::Pouring,
            "strike",
            "Strike the shuttering",
            &["form_waits"],
            job.shared(1.0),
            why,
        );
    }
    let fill = cubic_metre::get(job.excavation.backfill_volume);
    if fill > 0.0 {
        let why = format!(
            "In layers of {}, each rammed before the next.",
            job.about_mm(150.0)
        );
        plan.work(
            When::Digging,
            "backfill",
            "Fill and ram round the block",
            &["strike"],
            job.shared(3.0 * fill),
            why,
        );
    }
}

/// Height of the form: only what stands above ground where the concrete is poured against the ground.
fn form_height(job: &Job) -> f64 {
    let block = job.block;
    metre::get(if job.excavation.cast_against_ground {
        block.upstand
    } else {
        block.depth + block.upstand
    })
}
