//! The observing floor.

use crate::figure::Unit;
use crate::site_plan::floor::FloorKind;
use crate::stages::floor::Floor;
use crate::units::metre;

use super::{Group, Job, List, pieces, up};

/// Spacing of joists, m, and their stock length, m.
const JOIST_M: f64 = 0.4;

pub(super) fn list(job: &Job, floor: &Floor) -> List {
    let mut list = List::of(Group::Floor);
    let said = &job.brief.floor;
    let (length, width) = (metre::get(said.length.value), metre::get(said.width.value));
    match said.kind.value {
        FloorKind::Ground => {
            list.buy(
                "floor-gravel",
                format!("Gravel of {}, or bark", job.about_mm(10.0)),
                (up(length * width * 0.05 * 1.1, 0.1), Unit::CubicMetre),
                "a dry place to stand",
                format!(
                    "{} thick, a tenth for settling; kept off the block's top",
                    job.about_mm(50.0)
                ),
            );
        }
        FloorKind::Slab => slab(job, length, width, &mut list),
        FloorKind::Deck => deck(job, floor, length, width, &mut list),
    }
    seal(job, &mut list);
    list
}

fn slab(job: &Job, length: f64, width: f64, list: &mut List) {
    let thick = metre::get(job.brief.floor.slab_thickness.value);
    let hole = metre::get(job.block.length) * metre::get(job.block.width);
    let area = (length * width - hole).max(0.0);
    list.buy(
        "slab-concrete",
        "Concrete for the slab",
        (up(area * thick * 1.1, 0.1), Unit::CubicMetre),
        "the floor, separate from the block",
        "a tenth for waste; never in one pour with the block",
    );
    list.buy(
        "slab-stone",
        "Crushed stone under the slab",
        (up(area * 0.1 * 1.2, 0.1), Unit::CubicMetre),
        "a firm drained bed",
        format!("{} rammed", job.about_mm(100.0)),
    );
    let around = 2.0 * metre::get(job.block.length + job.block.width);
    list.buy(
        "slab-foam",
        "Soft foam strip, as high as the slab",
        (up(around * 1.1, 0.5), Unit::Metre),
        "keeping the slab off the block",
        "taken out after the pour so that the gap stays open",
    );
}

fn deck(job: &Job, floor: &Floor, length: f64, width: f64, list: &mut List) {
    let spacing = job.stock().either(JOIST_M, 0.4064);
    let joists = (length / spacing).ceil() + 1.0;
    list.buy(
        "joists",
        format!(
            "Joists {}, lengths of {}",
            job.stock().either(
                format!("{} × {}", job.about_mm(50.0), job.about_mm(150.0)),
                "2\u{a0}×\u{a0}6".to_owned()
            ),
            job.sold("timber-length")
        ),
        pieces((joists * width + 2.0 * length) * 1.1 / job.good("timber-length")),
        "carrying the boards",
        format!(
            "every {}, a tenth for cutting; check the span with a span table",
            job.m(spacing)
        ),
    );
    list.buy(
        "deck-boards",
        "Deck boards",
        (up(length * width * 1.1, 1.0), Unit::SquareMetre),
        "standing on",
        "a tenth for cutting; grooved or sanded against slipping in dew",
    );
    let posts = if floor.supports.is_empty() {
        6.0
    } else {
        floor.supports.len() as f64
    };
    let note = if floor.supports.is_empty() {
        "none are stated: six are counted; keep them as far from the block as the joists allow"
    } else {
        "where the plan places them"
    };
    list.buy(
        "posts",
        "Post, pad and bracket",
        pieces(posts),
        "carrying the joists",
        note,
    );
    list.buy(
        "deck-screws",
        "Deck screws and joist hangers",
        pieces(1.0),
        "fixing",
        "one set",
    );
}

fn seal(job: &Job, list: &mut List) {
    let gap = metre::get(job.brief.floor.gap.value);
    if gap <= 0.0 {
        return;
    }
    let around = std::f64::consts::PI * (metre::get(job.pier.outside_diameter) + 2.0 * gap);
    list.buy(
        "gap-seal",
        "Brush or soft rubber strip",
        (up(around * 1.1, 0.1), Unit::Metre),
        "closing the gap round the pier",
        "it touches without carrying: a finger moves it",
    );
}
