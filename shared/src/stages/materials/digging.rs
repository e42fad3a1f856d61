//! Setting out and digging.

use crate::figure::{CubicMetre, Litre, Unit, significant};
use crate::site_plan::excavation::Method;
use crate::site_plan::site::Soil;
use crate::units::customary::FOOT_M;
use crate::units::{cubic_metre, litre, metre};

use super::{Group, Job, List, dowels, frost, pieces, up};

/// Width of face that a trench sheet covers, m, and how far it stands above the edge.
const SHEET_COVER_M: f64 = 0.33;
const ABOVE_EDGE_M: f64 = 0.2;
/// A frame of struts at least every so far down, m.
const FRAME_M: f64 = 0.6;
/// Litres in a cubic foot, in which barrows are sold.
const LITRES_IN_A_CUBIC_FOOT: f64 = 28.316_846_592;
/// Hours of a working day.
pub(super) const DAY_H: f64 = 8.0;
/// Spare area of a sheet that is laid over or under something.
const LAP_RATIO: f64 = 1.2;
/// Length of a fence panel, m, and clear space between the fence and the pit, m.
const PANEL_M: f64 = 2.0;
const CLEAR_M: f64 = 1.0;

pub(super) fn list(job: &Job) -> List {
    let mut list = List::of(Group::Digging);
    setting_out(job, &mut list);
    digging(job, &mut list);
    spoil(job, &mut list);
    water(job, &mut list);
    dowels::list(job, &mut list);
    frost::list(job, &mut list);
    fence(job, &mut list);
    list
}

fn setting_out(job: &Job, list: &mut List) {
    let pit = &job.excavation;
    let around = 2.0 * metre::get(pit.length + pit.width);
    list.buy(
        "pegs",
        format!("Setting-out pegs, {} square", job.about_mm(50.0)),
        pieces(8.0),
        "the pit's corners and their offsets",
        "two at each corner, outside the dig",
    );
    list.buy(
        "line",
        "Mason's line",
        (up(2.0 * around + 10.0, 10.0), Unit::Metre),
        "sides and diagonals of the pit",
        "twice round and both diagonals",
    );
    list.buy(
        "marking",
        "Marking paint or lime",
        pieces(1.0),
        "the pit's outline on the ground",
        "",
    );
}

fn digging(job: &Job, list: &mut List) {
    let pit = &job.excavation;
    let days = (pit.digging_h / DAY_H).ceil().max(1.0);
    if job.brief.excavation.method.value == Method::Machine {
        list.hire(
            "digger",
            "Mini digger with a toothed and a grading bucket",
            (days, Unit::Day),
            "digging",
            format!("with a driver who is trained on it; trim the last {} by hand so that the base stays undisturbed", job.about_mm(100.0)),
        );
    }
    list.have(
        "spades",
        "Spade, shovel and digging bar",
        pieces(job.people()),
        "digging and trimming",
        "one set for each person",
    );
    if matches!(job.brief.site.soil.value, Soil::WeatheredRock | Soil::Rock) {
        list.hire(
            "breaker",
            "Breaker, electric",
            (days, Unit::Day),
            "loosening rock",
            "with ear defenders; its dust holds silica",
        );
    }
    if pit.protection {
        list.hire(
            "shoring",
            "Shoring or a trench box, designed for this pit",
            pieces(1.0),
            "holding the sides before anyone enters",
            "chosen by a competent person",
        );
    }
    if pit.shuttered && !pit.protection {
        lining(job, list);
    }
    if pit.way_out {
        list.have(
            "ladder",
            "Ladder",
            pieces(1.0),
            "a way out of the pit",
            job.units.either(
                "reaches a metre above the edge and is tied",
                "reaches three feet above the edge and is tied",
            ),
        );
    }
}

/// Boards are cut to half feet where they are sold in feet, m.
const HALF_A_FOOT_M: f64 = FOOT_M / 2.0;

/// Boards and struts for faces that will not stand by themselves.
fn lining(job: &Job, list: &mut List) {
    let pit = &job.excavation;
    let depth = metre::get(pit.depth);
    let around = 2.0 * metre::get(pit.length + pit.width);
    let frames = (depth / FRAME_M).ceil().max(1.0);
    list.hire(
        "trench-sheets",
        format!(
            "Trench sheets or stout boards, {} long",
            job.m(up(
                depth + ABOVE_EDGE_M,
                job.stock().either(0.1, HALF_A_FOOT_M)
            ))
        ),
        pieces(around / SHEET_COVER_M),
        "lining the pit's faces as it is dug",
        format!(
            "each covers about {}; they are drawn up as the concrete rises",
            job.about_mm(1000.0 * SHEET_COVER_M)
        ),
    );
    list.hire(
        "pit-struts",
        "Timber frame or screw struts with walings",
        pieces(frames),
        "holding the sheets apart",
        format!(
            "one round the inside at the top and one for each further {}; set from above",
            job.about_m(FRAME_M)
        ),
    );
}

fn spoil(job: &Job, list: &mut List) {
    let pit = &job.excavation;
    let barrow = job.brief.excavation.barrow.value;
    let barrow = job.stock().either(
        job.say(barrow, Litre),
        format!(
            "{} cubic feet",
            significant(litre::get(barrow) / LITRES_IN_A_CUBIC_FOOT, 2)
        ),
    );
    list.have(
        "barrow",
        "Wheelbarrow",
        pieces((job.people() / 2.0).ceil()),
        "spoil and concrete",
        format!("about {} loads of {barrow}", pit.barrow_loads),
    );
    list.have(
        "run-boards",
        "Scaffold boards",
        pieces(4.0),
        "a barrow run that does not cut up the lawn",
        "and to spread the load at the pit's edge",
    );
    let heap = metre::get(pit.heap_width) * metre::get(pit.width);
    list.buy(
        "spoil-sheet",
        "Sheet under the spoil",
        (up(heap * LAP_RATIO, 1.0), Unit::SquareMetre),
        "keeping the grass",
        format!("at least {} wide", job.about_m(4.0)),
    );
    let skip = job.say(job.brief.excavation.skip.value, CubicMetre);
    list.hire(
        "skip",
        format!("{} of {skip}", job.stock().either("Skip", "Dumpster")),
        pieces(f64::from(pit.skips)),
        "spoil that does not go back",
        format!(
            "{} of loosened spoil; {} on a road needs a permit",
            job.say(pit.away_volume, CubicMetre),
            job.stock().either("a skip", "one")
        ),
    );
}

fn water(job: &Job, list: &mut List) {
    let pit = &job.excavation;
    let base = metre::get(pit.bottom_length) * metre::get(pit.bottom_width);
    if pit.dewatering {
        list.hire(
            "pump",
            "Sump pump with hose",
            (3.0, Unit::Day),
            "keeping the pit dry until the concrete has set",
            "with a residual-current device",
        );
        list.buy(
            "geotextile",
            "Geotextile",
            (up(base * 1.5, 0.5), Unit::SquareMetre),
            "under the blinding, so that wet ground does not mix into it",
            format!("laps {} up the sides", job.about_m(0.5)),
        );
    }
    if pit.dewatering || !pit.cast_against_ground {
        let volume = up(base * 0.05 * 1.2, 0.01);
        list.buy(
            "blinding",
            "Lean concrete or crushed stone for blinding",
            (volume, Unit::CubicMetre),
            "a clean level base",
            format!("{} thick, a fifth for waste", job.about_mm(50.0)),
        );
    }
    if cubic_metre::get(pit.backfill_volume) > 0.0 {
        list.hire(
            "rammer",
            "Trench rammer",
            (1.0, Unit::Day),
            "ramming the fill",
            format!(
                "in layers of {}; the spoil goes back round the block",
                job.about_mm(150.0)
            ),
        );
    }
}

fn fence(job: &Job, list: &mut List) {
    let pit = &job.excavation;
    let (length, width) = (metre::get(pit.length), metre::get(pit.width));
    let around = 2.0 * (length + width + 4.0 * CLEAR_M);
    let panel = job.stock().either(PANEL_M, 1.8288);
    list.hire(
        "fence",
        format!("Fence panels of {} with feet", job.m(panel)),
        pieces(around / panel),
        "keeping people and animals out of the open pit",
        "a stride clear of the edge all round",
    );
    let sheets = (length + 0.6) * (width + 0.6) / job.sheet_m2();
    list.buy(
        "pit-cover",
        job.sheet(),
        pieces(sheets),
        "covering the pit overnight",
        "with battens so that it cannot slide; no cover carries a person",
    );
}
