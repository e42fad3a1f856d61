//! Form, steel, ducts, concrete and its care.

use crate::figure::{Day, Kilogram, One, PerCent, Unit};
use crate::site_plan::block::{Mix, Reinforcement};
use crate::units::{cubic_metre, metre, millimetre};

use crate::stages::block::CEMENT_BAG_KG;

use super::lengths::{Offer, needed};
use super::{Group, Job, List, SHEET_M, pieces, up};

/// Stock length of timber, m.
const TIMBER_M: f64 = 3.6;
/// Area of a plywood sheet, m².
const SHEET_M2: f64 = SHEET_M.0 * SHEET_M.1;
/// Stock length of reinforcing bar and of duct, m.
const BAR_M: f64 = 6.0;
const DUCT_M: f64 = 3.0;
/// Other lengths in which bar is sold.
const BAR_LENGTHS: Offer = Offer {
    metric: &[("rebar-3m", 3.0), ("rebar-12m", 12.0)],
    imperial: &[("rebar-10ft", 10.0), ("rebar-40ft", 40.0)],
};
/// Stock sheet of welded mesh, m.
const MESH_M: (f64, f64) = (4.8, 2.4);
/// Temperature below which an insulating blanket is laid, °C.
const COOL_C: f64 = 10.0;

pub(super) fn list(job: &Job) -> List {
    let mut list = List::of(Group::Concrete);
    form(job, &mut list);
    steel(job, &mut list);
    ducts(job, &mut list);
    concrete(job, &mut list);
    care(job, &mut list);
    list
}

fn form(job: &Job, list: &mut List) {
    let block = job.block;
    let around = 2.0 * metre::get(block.length + block.width);
    if !job.excavation.cast_against_ground {
        let area = around * metre::get(block.depth + block.upstand) * 1.1;
        list.buy(
            "form-plywood",
            job.sheet(18.0),
            pieces(area / SHEET_M2),
            "the block's four sides",
            "a tenth for cutting",
        );
        let verticals = (around / 0.5).ceil() * metre::get(block.depth + block.upstand);
        list.buy(
            "form-timber",
            format!(
                "Timber {} × {}, lengths of {}",
                job.mm(50.0),
                job.mm(75.0),
                job.stock(TIMBER_M)
            ),
            pieces((verticals + 3.0 * around) * 1.1 / TIMBER_M),
            "stiffening the form",
            format!("uprights every {} and three walings", job.m(0.5)),
        );
    } else if metre::get(block.upstand) > 0.0 {
        let height = up(millimetre::get(block.upstand) + 50.0, 25.0);
        list.buy(
            "form-board",
            format!(
                "Planed board, {} high, lengths of {}",
                job.mm(height),
                job.stock(TIMBER_M)
            ),
            pieces((around + 0.6) / TIMBER_M),
            "a form for the part above ground",
            "pegged level; its top edge is the block's top",
        );
    }
    if !job.excavation.cast_against_ground || metre::get(block.upstand) > 0.0 {
        list.buy(
            "form-fixings",
            "Stakes, screws and form oil",
            pieces(1.0),
            "holding the form true",
            "one set; oil keeps concrete from sticking",
        );
    }
}

fn steel(job: &Job, list: &mut List) {
    let Some(option) = job.block.reinforcement.iter().find(|option| option.chosen) else {
        return;
    };
    let (Some(bar), Some(length), Some(spacing)) =
        (option.bar_mm, option.bars_m, option.spacing_mm)
    else {
        return;
    };
    let cuts: Vec<(f64, f64)> = option
        .bars
        .iter()
        .map(|bars| (bars.length_m, bars.count))
        .collect();
    list.buy(
        "rebar",
        format!(
            "Reinforcing bar {}, ribbed, lengths of {}",
            job.mm(bar),
            job.stock(BAR_M)
        ),
        pieces((length * 1.1 / BAR_M).max(f64::from(needed(BAR_M, &cuts).unwrap_or_default()))),
        if job.brief.block.reinforcement.value == Reinforcement::Cage {
            "a cage on all faces"
        } else {
            "a mesh under the top"
        },
        format!(
            "{} in all at {} both ways, a tenth for cutting; {}",
            job.say(length, Unit::Metre),
            job.mm(spacing),
            mesh(job)
        ),
    );
    list.or_in_lengths(BAR_LENGTHS.of(job.units, &cuts));
    let area = metre::get(job.block.length) * metre::get(job.block.width);
    list.buy(
        "bar-spacers",
        "Bar spacers or chairs",
        pieces((area * 4.0).max(4.0)),
        "keeping concrete over the bars",
        format!(
            "{} high, four to a square {}",
            job.mm(50.0),
            job.units.either("metre", "yard")
        ),
    );
    list.buy(
        "tying-wire",
        "Tying wire",
        (1.0, Unit::Kilogram),
        "tying the bars",
        "",
    );
}

/// The same as welded sheets.
fn mesh(job: &Job) -> String {
    let nets = if job.brief.block.reinforcement.value == Reinforcement::Cage {
        6.0
    } else {
        1.0
    };
    let sheets = (nets * metre::get(job.block.length) * metre::get(job.block.width)
        / (MESH_M.0 * MESH_M.1))
        .ceil();
    let (long, wide) = (job.stock(MESH_M.0), job.stock(MESH_M.1));
    format!(
        "or welded mesh with as much steel, about {sheets} of the stock sheets of {long} × {wide}"
    )
}

fn ducts(job: &Job, list: &mut List) {
    let ducts = &job.block.ducts;
    let count = f64::from(ducts.count);
    let each = metre::get(ducts.each);
    let size = job.mm(millimetre::get(ducts.inside_diameter));
    list.buy(
        "duct",
        format!("Duct, {size} bore, lengths of {}", job.stock(DUCT_M)),
        pieces(count * each * 1.1 / DUCT_M),
        "power and data through the block",
        "only as far as a stride outside the block; the trench to the house comes on top",
    );
    list.buy(
        "duct-bend",
        format!(
            "Sweep bend, {size} bore, radius {} or more",
            job.mm(millimetre::get(ducts.bend_radius))
        ),
        pieces(count),
        "turning up under the column",
        "no tight elbows",
    );
    list.buy(
        "draw-cord",
        "Draw cord",
        (up(count * (each + 2.0), 5.0), Unit::Metre),
        "pulling the cables later",
        "one left in each duct",
    );
    list.buy(
        "duct-caps",
        "Duct tape and end caps",
        pieces(2.0 * count),
        "keeping concrete out of the ducts",
        "a cap for each end",
    );
    if ducts.count > 0 {
        list.buy(
            "drain-gravel",
            format!("Clean gravel, {} to {}", job.mm(10.0), job.mm(20.0)),
            (0.05, Unit::CubicMetre),
            "a drain under the ducts' lower end",
            "a pocket the size of two buckets",
        );
    }
}

fn concrete(job: &Job, list: &mut List) {
    let order = &job.block.concrete;
    let volume = cubic_metre::get(order.volume);
    let class = job.brief.block.concrete.value.key();
    let waste = job.say(100.0 * order.waste_ratio, PerCent);
    match job.brief.block.mix.value {
        Mix::Ready => list.buy(
            "concrete-ready",
            format!("Ready-mixed concrete {class}"),
            (volume, Unit::CubicMetre),
            "the block",
            format!("{waste} for waste; consistence S3, {} stone", job.mm(20.0)),
        ),
        Mix::Bagged => list.buy(
            "concrete-bagged",
            format!(
                "Dry concrete in bags of {}",
                job.say(job.brief.block.bag.value, Kilogram)
            ),
            pieces(f64::from(order.bags.unwrap_or_default())),
            "the block",
            format!("{waste} for waste; a product that states {class} or better"),
        ),
        Mix::Site => parts(job, &waste, list),
    }
    if job.brief.block.mix.value != Mix::Ready {
        list.buy(
            "water",
            "Clean water",
            (up(order.water_l.unwrap_or_default(), 5.0), Unit::Litre),
            "mixing",
            "less what damp sand brings; more for washing",
        );
        list.hire(
            "mixer",
            format!("Concrete mixer, {}", job.say(130.0, Unit::Litre)),
            (1.0, Unit::Day),
            "mixing",
            if volume > 1.0 {
                "two of them pour faster"
            } else {
                ""
            },
        );
    }
}

fn parts(job: &Job, waste: &str, list: &mut List) {
    let order = &job.block.concrete;
    let ratio = job.say(order.water_cement_ratio, One);
    list.buy(
        "cement",
        format!(
            "Cement in bags of {}",
            job.say(CEMENT_BAG_KG, Unit::Kilogram)
        ),
        pieces(f64::from(order.cement_bags.unwrap_or_default())),
        "the block",
        format!("{waste} for waste; water to cement {ratio} by mass"),
    );
    list.buy(
        "sand",
        "Sharp sand",
        (up(order.sand_kg.unwrap_or_default(), 25.0), Unit::Kilogram),
        "the block",
        "weighed surface-dry",
    );
    list.buy(
        "gravel",
        format!("Gravel, up to {}", job.mm(20.0)),
        (
            up(order.gravel_kg.unwrap_or_default(), 25.0),
            Unit::Kilogram,
        ),
        "the block",
        "clean and hard",
    );
}

fn care(job: &Job, list: &mut List) {
    let block = job.block;
    let (length, width) = (metre::get(block.length), metre::get(block.width));
    list.buy(
        "polythene",
        "Polythene sheet",
        (up((length + 1.0) * (width + 1.0), 1.0), Unit::SquareMetre),
        "keeping the concrete damp",
        "laid at once, weighted at the edges",
    );
    let days = job.say(block.curing, Day);
    list.buy(
        "hessian",
        "Hessian",
        (up(length * width * 1.2, 0.5), Unit::SquareMetre),
        "kept wet on the top",
        format!("for {days}"),
    );
    if job.brief.work.temperature_c.value < COOL_C {
        list.buy(
            "blanket",
            "Insulating blanket or foam boards",
            (up((length + 0.5) * (width + 0.5), 0.5), Unit::SquareMetre),
            "keeping the block's own warmth in",
            "the more so the colder it is",
        );
    }
}
