//! Form, steel, ducts, concrete and its care.

use crate::figure::{Day, One, PerCent, Unit};
use crate::site_plan::block::{Mix, Reinforcement};
use crate::stages::block::exposure;
use crate::units::customary::INCH_MM;
use crate::units::{cubic_metre, metre, millimetre};

use super::lengths::{Offer, needed};
use crate::stock::{Stock, goods};

use super::{Group, Job, List, pieces, up};

/// Other lengths in which bar is sold.
const BAR_LENGTHS: Offer = Offer {
    metric: &[("rebar-3m", 3.0), ("rebar-12m", 12.0)],
    inch: &[("rebar-10ft", 10.0), ("rebar-40ft", 40.0)],
};
/// Nobody lays more sheets of mesh than this upon each other in the place of bars.
const MOST_LAYERS: f64 = 2.0;
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
            job.sheet(),
            pieces(area / job.sheet_m2()),
            "the block's four sides",
            "a tenth for cutting",
        );
        let verticals = (around / 0.5).ceil() * metre::get(block.depth + block.upstand);
        list.buy(
            "form-timber",
            format!(
                "Timber {}, lengths of {}",
                job.stock().either(
                    format!("{} × {}", job.mm(50.0), job.mm(75.0)),
                    job.sold("timber")
                ),
                job.sold("timber-length")
            ),
            pieces((verticals + 3.0 * around) * 1.1 / job.good("timber-length")),
            "stiffening the form",
            format!(
                "uprights every {} and three walings",
                job.m(job.stock().either(0.5, 0.5080))
            ),
        );
    } else if metre::get(block.upstand) > 0.0 {
        let height = job.stock().either(
            up(millimetre::get(block.upstand) + 50.0, 25.0),
            up(millimetre::get(block.upstand) + 50.0, INCH_MM),
        );
        list.buy(
            "form-board",
            format!(
                "Planed board, {} high, lengths of {}",
                job.mm(height),
                job.sold("timber-length")
            ),
            pieces((around + 0.6) / job.good("timber-length")),
            "shuttering for the part above ground",
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
    let stick = job.good("bar-length");
    list.buy(
        "rebar",
        format!(
            "Reinforcing bar {}, lengths of {}",
            match (job.stock(), option.bar) {
                (Stock::Inch, Some(bar)) => format!("{bar}, grade 60, deformed"),
                _ => format!("{}, ribbed", job.mm(bar)),
            },
            job.sold("bar-length")
        ),
        pieces((length * 1.1 / stick).max(f64::from(needed(stick, &cuts).unwrap_or_default()))),
        if job.brief.block.reinforcement.value == Reinforcement::Cage {
            "a cage on all faces"
        } else {
            "a mesh under the top"
        },
        format!(
            "{} in all at {} both ways, a tenth for cutting{}",
            job.say(length, Unit::Metre),
            job.mm(spacing),
            mesh(
                job,
                std::f64::consts::FRAC_PI_4 * bar * bar * 1000.0 / spacing
            )
        ),
    );
    list.or_in_lengths(BAR_LENGTHS.of(job.stock(), job.units, &cuts));
    let area = metre::get(job.block.length) * metre::get(job.block.width);
    list.buy(
        "bar-spacers",
        "Bar spacers or chairs",
        pieces((area * 4.0).max(4.0)),
        "keeping concrete over the bars",
        format!(
            "{} high, four to a square {}",
            job.mm(job.stock().either(50.0, 2.0 * INCH_MM)),
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
fn mesh(job: &Job, area_mm2_m: f64) -> String {
    let nets = if job.brief.block.reinforcement.value == Reinforcement::Cage {
        6.0
    } else {
        1.0
    };
    let sheets = (nets * metre::get(job.block.length) * metre::get(job.block.width)
        / (job.good("mesh-long") * job.good("mesh-wide")))
    .ceil();
    let (long, wide) = (job.sold("mesh-long"), job.sold("mesh-wide"));
    let Some((row, layers)) = goods::mesh_at_least(job.stock(), area_mm2_m) else {
        return String::new();
    };
    if layers > MOST_LAYERS {
        return String::new();
    }
    let sheets = sheets * layers;
    let layers = if layers > 1.0 {
        format!("{layers} layers of welded mesh")
    } else {
        "welded mesh".to_owned()
    };
    format!(
        "; or {layers} {} with as much steel, about {sheets} stock sheets of {long} × {wide}",
        row.name()
    )
}

fn ducts(job: &Job, list: &mut List) {
    let ducts = &job.block.ducts;
    let count = f64::from(ducts.count);
    let each = metre::get(ducts.each);
    let size = job.mm(millimetre::get(ducts.inside_diameter));
    list.buy(
        "duct",
        format!(
            "{}, {size} bore, lengths of {}",
            job.stock().either("Duct", "Schedule 40 PVC conduit"),
            job.sold("duct-length")
        ),
        pieces(count * each * 1.1 / job.good("duct-length")),
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
            format!("Clean gravel, {} to {}", job.stone(10.0), job.stone(20.0)),
            (0.05, Unit::CubicMetre),
            "a drain under the ducts' lower end",
            job.stock().either(
                "a pocket the size of two buckets",
                "a pocket the size of two buckets, or four bags of half a cubic foot",
            ),
        );
    }
}

fn concrete(job: &Job, list: &mut List) {
    let order = &job.block.concrete;
    let volume = cubic_metre::get(order.volume);
    let class = job.brief.block.concrete.value.said();
    let waste = job.say(100.0 * order.waste_ratio, PerCent);
    let air = exposure::air_per_cent(&job.block.exposure);
    match job.brief.block.mix.value {
        Mix::Ready => list.buy(
            "concrete-ready",
            match air {
                Some(_) => format!("Ready-mixed concrete {class}, air-entrained"),
                None => format!("Ready-mixed concrete {class}"),
            },
            (volume, Unit::CubicMetre),
            "the block",
            format!(
                "{waste} for waste; {}, {} stone{}",
                job.stock().either("consistence S3", "slump 4 to 6\u{2033}"),
                job.stone(20.0),
                air.map_or_else(String::new, |air| format!(
                    "; {} of air in it, since its top is wet when it freezes",
                    job.say(air, PerCent)
                ))
            ),
        ),
        Mix::Bagged => list.buy(
            "concrete-bagged",
            format!("Dry concrete in bags of {}", job.bag()),
            pieces(f64::from(order.bags.unwrap_or_default())),
            "the block",
            format!(
                "{waste} for waste; a product that states {class} or better{}",
                air.map_or("", |_| ", and that it stands frost")
            ),
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
            format!("Concrete mixer, {}", job.sold("mixer")),
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
            "Cement {}, in bags of {}",
            goods::cement(job.stock(), job.brief.block.cement.value.key())
                .map_or("", |row| row.text("says")),
            job.sold("cement-bag")
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
        format!("Gravel, up to {}", job.stone(20.0)),
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
        job.stock().either("Polythene sheet", "Polyethylene sheet"),
        (up((length + 1.0) * (width + 1.0), 1.0), Unit::SquareMetre),
        "keeping the concrete damp",
        "laid at once, weighted at the edges",
    );
    let days = job.say(block.curing, Day);
    list.buy(
        "hessian",
        job.stock().either("Hessian", "Burlap"),
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
