//! The steel column.

use crate::figure::Unit;
use crate::rules::{thread_engagement, threads};
use crate::site_plan::anchors::Size;
use crate::site_plan::pier::Fill;
use crate::stock::words;
use crate::units::{kilogram, metre, millimetre};

use super::lengths::Offer;
use super::{Group, Job, List, pieces, up};

/// Whole lengths in which it is sold.
const TUBE_LENGTHS: Offer = Offer {
    metric: &[("tube-3m", 3.0), ("tube-6m", 6.0)],
    inch: &[("tube-10ft", 10.0), ("tube-20ft", 20.0)],
};
/// Saw cuts and squaring of the ends, m.
const CUT_M: f64 = 0.02;
/// Dry sand, kg/m³.
const SAND_KG_M3: f64 = 1600.0;
/// Paint, litres to a square metre and coat.
const PAINT_L_M2: f64 = 0.1;

pub(super) fn list(job: &Job) -> List {
    let mut list = List::of(Group::Column);
    steel(job, &mut list);
    fill(job, &mut list);
    finish(job, &mut list);
    lifting(job, &mut list);
    list
}

fn steel(job: &Job, list: &mut List) {
    let (pier, brief) = (job.pier, &job.brief.pier);
    let mm = |length| job.mm(millimetre::get(length));
    let (of_tube, grade) = (brief.steel.value.of_tube(), brief.steel.value.of_plate());
    let size = words::tube(job.stock(), job.units, pier.outside_diameter, pier.wall)
        .unwrap_or_else(|| format!("tube {} × {}", mm(pier.outside_diameter), mm(pier.wall)));
    let length = job.good("tube-length");
    let tube = metre::get(pier.height - pier.plate_thickness - brief.top_plate_thickness.value)
        .max(0.05)
        + CUT_M;
    list.buy(
        "tube",
        format!("Steel {size}, {of_tube}"),
        (up(tube, 0.01), Unit::Metre),
        "the column",
        format!(
            "with {} for squaring; tube is sold in lengths of {}, so {} of them",
            job.cut(CUT_M),
            job.sold("tube-length"),
            (tube / length).ceil()
        ),
    );
    list.or_in_lengths(TUBE_LENGTHS.of(job.stock(), job.units, &[(tube, 1.0)]));
    list.buy(
        "base-plate",
        format!("Base plate {} square, {} thick, {grade}", mm(pier.plate_side), mm(pier.plate_thickness)),
        pieces(1.0),
        "the column's foot",
        format!(
            "drilled by the paper template, with a middle hole of {} for the ducts; flattened after welding",
            mm(job.block.ducts.plate_hole)
        ),
    );
    list.buy(
        "top-plate",
        format!(
            "Top plate {} square, {} thick, {grade}",
            mm(brief.top_plate_side.value),
            mm(brief.top_plate_thickness.value)
        ),
        pieces(1.0),
        "the mount's seat",
        format!(
            "holes on a circle of {} from the mount in hand{}",
            mm(brief.top_bolt_circle.value),
            tapped(job)
        ),
    );
    list.buy(
        "ribs",
        format!("Stiffening ribs, {grade}"),
        pieces(brief.stiffener_count.value),
        "between column and base plate",
        "",
    );
    list.buy(
        "welding",
        "Welding of column and plates",
        pieces(1.0),
        "one piece of steel",
        format!(
            "fillet of {} leg all round, by a qualified welder",
            mm(brief.weld_leg.value)
        ),
    );
    list.buy(
        "mount-bolts",
        "Bolts, nuts and washers for the mount",
        pieces(1.0),
        "fixing the mount",
        "one set to the mount's own drawing; stainless with paste",
    );
}

/// The thickest bolt of what is sold that the top plate may be tapped for; nothing where it is too thin for all of them.
fn tapped(job: &Job) -> String {
    let most = thread_engagement::thickest_tapped(job.brief.pier.top_plate_thickness.value);
    Size::of(job.stock())
        .filter(|size| threads::thread(*size).diameter <= most)
        .last()
        .map_or_else(String::new, |size| {
            let size = size.said();
            format!("; where they are tapped, for bolts of {size} at most")
        })
}

fn fill(job: &Job, list: &mut List) {
    let bore = metre::get(job.pier.outside_diameter - job.pier.wall * 2.0).max(0.0);
    let volume = std::f64::consts::FRAC_PI_4 * bore * bore * metre::get(job.pier.height);
    match job.brief.pier.fill.value {
        Fill::None => {}
        Fill::Sand => list.buy(
            "fill-sand",
            "Kiln-dried sand",
            (up(volume * SAND_KG_M3 * 1.1, 5.0), Unit::Kilogram),
            "filling the column",
            "a tenth for settling; round the ducts, through a hole that is closed again",
        ),
        Fill::Concrete => list.buy(
            "fill-concrete",
            "Flowing concrete or grout",
            (up(volume * 1.1, 0.005), Unit::CubicMetre),
            "filling the column",
            "a tenth for waste; leave the ducts and a drain clear",
        ),
    }
}

fn finish(job: &Job, list: &mut List) {
    let area =
        std::f64::consts::PI * metre::get(job.pier.outside_diameter) * metre::get(job.pier.height)
            + 2.0 * metre::get(job.pier.plate_side).powi(2);
    list.buy(
        "coating",
        "Galvanising, or zinc primer and top coat",
        (up(area * PAINT_L_M2 * 3.0, 0.25), Unit::Litre),
        "keeping rust away",
        "the quantity is for one primer and two coats; a galvaniser needs holes at both ends, or the closed tube bursts in the bath; a pale top coat keeps the sun's heat off",
    );
}

fn lifting(job: &Job, list: &mut List) {
    // It is filled only where it stands, so the empty column is what the hoist lifts.
    let mass = kilogram::get(job.pier.lifted_mass);
    if mass <= crate::stages::pier::TWO_PEOPLE_KG {
        return;
    }
    let said = job.say(mass, Unit::Kilogram);
    list.hire(
        "hoist",
        "Engine crane, gantry or tripod hoist",
        (1.0, Unit::Day),
        "setting the column over the studs",
        format!("for {said} with as much again to spare; on firm boards"),
    );
    list.hire(
        "slings",
        format!(
            "Lifting slings for {}",
            job.stock()
                .either(job.say(1.0, Unit::Tonne), job.say(1000.0, Unit::Kilogram))
        ),
        pieces(2.0),
        "lifting the column",
        "looked over before use; never round a sharp plate's edge",
    );
}
