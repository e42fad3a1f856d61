//! Form, steel, ducts, concrete and its care.

use crate::figure::Unit;
use crate::site_plan::block::{Mix, Reinforcement};
use crate::units::{cubic_metre, kilogram, metre, millimetre};

use super::{Group, Job, List, pieces, up};

/// Stock length of timber, m.
const TIMBER_M: f64 = 3.6;
/// Area of a plywood sheet, m².
const SHEET_M2: f64 = 2.44 * 1.22;
/// Stock length of reinforcing bar and of duct, m.
const BAR_M: f64 = 6.0;
const DUCT_M: f64 = 3.0;
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
            "Plywood for the form, 18 mm, sheets of 2.44 × 1.22 m",
            pieces(area / SHEET_M2),
            "the block's four sides",
            "a tenth for cutting",
        );
        let verticals = (around / 0.5).ceil() * metre::get(block.depth + block.upstand);
        list.buy(
            "Timber 50 × 75 mm, lengths of 3.6 m",
            pieces((verticals + 3.0 * around) * 1.1 / TIMBER_M),
            "stiffening the form",
            "uprights every 0.5 m and three walings",
        );
    } else if metre::get(block.upstand) > 0.0 {
        let height = up(millimetre::get(block.upstand) + 50.0, 25.0);
        list.buy(
            format!("Planed board, {} high, lengths of 3.6 m", job.say(height, Unit::Millimetre)),
            pieces((around + 0.6) / TIMBER_M),
            "a form for the part above ground",
            "pegged level; its top edge is the block's top",
        );
    }
    list.buy("Stakes, screws and form oil", pieces(1.0), "holding the form true", "one set; oil keeps concrete from sticking");
}

fn steel(job: &Job, list: &mut List) {
    let Some(option) = job.block.reinforcement.iter().find(|option| option.chosen) else { return };
    let (Some(bar), Some(length), Some(spacing)) = (option.bar_mm, option.bars_m, option.spacing_mm) else { return };
    list.buy(
        format!("Reinforcing bar {}, ribbed, lengths of 6 m", job.say(bar, Unit::Millimetre)),
        pieces(length * 1.1 / BAR_M),
        if job.brief.block.reinforcement.value == Reinforcement::Cage { "a cage on all faces" } else { "a mesh under the top" },
        format!(
            "{} in all at {} both ways, a tenth for cutting; or welded mesh of the same bars, cut to size",
            job.say(length, Unit::Metre),
            job.say(spacing, Unit::Millimetre)
        ),
    );
    let area = metre::get(job.block.length) * metre::get(job.block.width);
    list.buy("Bar spacers or chairs", pieces((area * 4.0).max(4.0)), "keeping 50 mm of concrete over the bars", "four to a square metre");
    list.buy("Tying wire", (1.0, Unit::Kilogram), "tying the bars", "");
}

fn ducts(job: &Job, list: &mut List) {
    let ducts = &job.block.ducts;
    let count = f64::from(ducts.count);
    let each = metre::get(ducts.each);
    let size = job.say(millimetre::get(ducts.inside_diameter), Unit::Millimetre);
    list.buy(
        format!("Duct, {size} bore, lengths of 3 m"),
        pieces(count * each * 1.1 / DUCT_M),
        "power and data through the block",
        "only as far as a metre outside the block; the trench to the house comes on top",
    );
    list.buy(
        format!("Sweep bend, {size} bore, radius {} or more", job.say(millimetre::get(ducts.bend_radius), Unit::Millimetre)),
        pieces(count),
        "turning up under the column",
        "no tight elbows",
    );
    list.buy("Draw cord", (up(count * (each + 2.0), 5.0), Unit::Metre), "pulling the cables later", "one left in each duct");
    list.buy("Duct tape and end caps", pieces(2.0 * count), "keeping concrete out of the ducts", "a cap for each end");
    if ducts.count > 0 {
        list.buy(
            "Clean gravel, 10 to 20 mm",
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
    let waste = job.say(100.0 * order.waste_ratio, Unit::PerCent);
    match job.brief.block.mix.value {
        Mix::Ready => list.buy(
            format!("Ready-mixed concrete {class}"),
            (volume, Unit::CubicMetre),
            "the block",
            format!("{waste} for waste; consistence S3, 20 mm stone"),
        ),
        Mix::Bagged => list.buy(
            format!("Dry concrete in bags of {}", job.say(kilogram::get(job.brief.block.bag.value), Unit::Kilogram)),
            pieces(f64::from(order.bags.unwrap_or_default())),
            "the block",
            format!("{waste} for waste; a product that states {class} or better"),
        ),
        Mix::Site => parts(job, &waste, list),
    }
    if job.brief.block.mix.value != Mix::Ready {
        list.buy(
            "Clean water",
            (up(order.water_l.unwrap_or_default(), 5.0), Unit::Litre),
            "mixing",
            "less what damp sand brings; more for washing",
        );
        list.hire("Concrete mixer, 130 l", (1.0, Unit::Day), "mixing", if volume > 1.0 { "two of them pour faster" } else { "" });
    }
}

fn parts(job: &Job, waste: &str, list: &mut List) {
    let order = &job.block.concrete;
    let ratio = job.say(order.water_cement_ratio, Unit::One);
    list.buy(
        "Cement in bags of 25 kg",
        pieces(f64::from(order.cement_bags.unwrap_or_default())),
        "the block",
        format!("{waste} for waste; water to cement {ratio} by mass"),
    );
    list.buy("Sharp sand", (up(order.sand_kg.unwrap_or_default(), 25.0), Unit::Kilogram), "the block", "weighed surface-dry");
    list.buy("Gravel, up to 20 mm", (up(order.gravel_kg.unwrap_or_default(), 25.0), Unit::Kilogram), "the block", "clean and hard");
}

fn care(job: &Job, list: &mut List) {
    let block = job.block;
    let (length, width) = (metre::get(block.length), metre::get(block.width));
    list.buy(
        "Polythene sheet",
        (up((length + 1.0) * (width + 1.0), 1.0), Unit::SquareMetre),
        "keeping the concrete damp",
        "laid at once, weighted at the edges",
    );
    let days = job.say(crate::units::day::get(block.curing), Unit::Day);
    list.buy("Hessian", (up(length * width * 1.2, 0.5), Unit::SquareMetre), "kept wet on the top", format!("for {days}"));
    if job.brief.work.temperature_c.value < COOL_C {
        list.buy(
            "Insulating blanket or foam boards",
            (up((length + 0.5) * (width + 0.5), 0.5), Unit::SquareMetre),
            "keeping the block's own warmth in",
            "the more so the colder it is",
        );
    }
}
