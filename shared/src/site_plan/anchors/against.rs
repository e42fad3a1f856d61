//! Answers about the studs that contradict each other, the plate, the column or the block.

use crate::brief::anchors::{usual_class, usual_size};
use crate::field::Problem;
use crate::figure::{Kilonewton, NewtonMetre, Unit, Units};
use crate::rules::threads::{self, Thread};
use crate::rules::vdi_2230_2015 as tightening;
use crate::site_plan::SitePlan;
use crate::site_plan::anchors::{Coating, Lubrication};
use crate::units::{millimetre, newton_metre};
use crate::{path, paths};

/// Answers about the studs that contradict each other, the plate or the block.
pub fn contradictions(plan: &SitePlan) -> Vec<Problem> {
    let say = Say {
        units: plan.units.unwrap_or_default(),
    };
    let thread = plan.anchors.size.map(threads::thread);
    let mut problems = circle_and_block(plan, &say);
    problems.extend(circle_and_plate(plan, &say));
    problems.extend(circle_and_column(plan, &say));
    problems.extend(embedment_and_length(plan, &say));
    problems.extend(embedment_and_block(plan, &say));
    problems.extend(embedment_and_product(plan, &say));
    problems.extend(resin_range(plan, &say));
    problems.extend(torque_and_proof(plan, &say));
    if let Some(thread) = thread {
        problems.extend(hole_and_stud(plan, &thread, &say));
        problems.extend(embedment_and_diameter(plan, &thread, &say));
    }
    problems.extend(studs_overlap(plan, &say));
    problems
}

/// Figures in the reader's units.
struct Say {
    units: Units,
}

impl Say {
    fn mm(&self, value: f64) -> String {
        self.units.say(value, Unit::Millimetre)
    }
}

/// Place of the stud that stands farthest along x or y, as a share of the circle's radius.
fn farthest_ratio(count: Option<u32>) -> f64 {
    if count == Some(4) {
        std::f64::consts::FRAC_1_SQRT_2
    } else {
        1.0
    }
}

fn circle_and_plate(plan: &SitePlan, say: &Say) -> Option<Problem> {
    let (circle, side) = (plan.anchors.circle_diameter_mm?, plan.pier.plate_side_mm?);
    let count = plan.anchors.count.or(Some(4));
    let hole = plan.anchors.size.map_or(0.0, |size| {
        millimetre::get(threads::thread(size).plate_hole)
    });
    let reach = circle * farthest_ratio(count) + 2.0 * 1.2 * hole;
    (reach > side).then(|| {
        Problem::between(
            paths![anchors.circle_diameter_mm, pier.plate_side_mm, anchors.count, anchors.size],
            format!(
                "On a circle of {} the holes, with the least edge of 1.2 hole diameters round them, need a plate of {}; this one is {}.",
                say.mm(circle),
                say.mm(reach.ceil()),
                say.mm(side)
            ),
        )
    })
}

fn circle_and_column(plan: &SitePlan, say: &Say) -> Option<Problem> {
    let (circle, column) = (
        plan.anchors.circle_diameter_mm?,
        plan.pier.outside_diameter_mm?,
    );
    let washer = plan.anchors.size.map_or(0.0, |size| {
        millimetre::get(threads::thread(size).washer_diameter)
    });
    let needed = column + washer;
    (circle < needed).then(|| {
        Problem::between(
            paths![anchors.circle_diameter_mm, pier.outside_diameter_mm, anchors.size],
            format!(
                "The nuts cannot be reached: a column of {} needs a circle of at least {} for washers outside it, and this one is {}.",
                say.mm(column),
                say.mm(needed),
                say.mm(circle)
            ),
        )
    })
}

fn circle_and_block(plan: &SitePlan, say: &Say) -> Vec<Problem> {
    let Some(circle) = plan.anchors.circle_diameter_mm else {
        return Vec::new();
    };
    let reach = circle * farthest_ratio(plan.anchors.count.or(Some(4)));
    [
        (path!(block.length_m), plan.block.length_m),
        (path!(block.width_m), plan.block.width_m),
    ]
    .into_iter()
    .filter_map(|(field, side)| Some((field, 1000.0 * side?)))
    .filter(|&(_, side)| reach >= side)
    .map(|(field, side)| {
        Problem::between(
            &[path!(anchors.circle_diameter_mm), field],
            format!(
                "The studs reach {} across and would stand outside the block of {}.",
                say.mm(reach),
                say.mm(side)
            ),
        )
    })
    .collect()
}

fn embedment_and_length(plan: &SitePlan, say: &Say) -> Option<Problem> {
    let (depth, length) = (plan.anchors.embedment_mm?, plan.anchors.length_mm?);
    (depth >= length).then(|| {
        Problem::between(
            paths![anchors.embedment_mm, anchors.length_mm],
            format!(
                "A stud of {} cannot stand {} deep and still carry plate and nut.",
                say.mm(length),
                say.mm(depth)
            ),
        )
    })
}

fn embedment_and_block(plan: &SitePlan, say: &Say) -> Option<Problem> {
    let (depth, block) = (
        plan.anchors.embedment_mm?,
        1000.0 * (plan.block.depth_m? + plan.block.upstand_m.unwrap_or(0.0)),
    );
    (depth >= block).then(|| {
        Problem::between(
            paths![anchors.embedment_mm, block.depth_m, block.upstand_m],
            format!(
                "A hole {} deep would go through the block, which is {} thick.",
                say.mm(depth),
                say.mm(block)
            ),
        )
    })
}

/// The depths that the product's approval allows, and a depth outside them.
fn embedment_and_product(plan: &SitePlan, say: &Say) -> Option<Problem> {
    let said = &plan.anchors;
    let (least, most) = (
        said.min_embedment_mm.unwrap_or(0.0),
        said.max_embedment_mm.unwrap_or(f64::INFINITY),
    );
    if least > most {
        return Some(Problem::between(
            paths![anchors.min_embedment_mm, anchors.max_embedment_mm],
            format!(
                "No depth is at least {} and at most {}: the two limits are the wrong way round.",
                say.mm(least),
                say.mm(most)
            ),
        ));
    }
    let depth = said.embedment_mm?;
    let (field, which, limit) = match depth {
        depth if depth < least => (path!(anchors.min_embedment_mm), "least", least),
        depth if depth > most => (path!(anchors.max_embedment_mm), "greatest", most),
        _ => return None,
    };
    Some(Problem::between(
        &[path!(anchors.embedment_mm), field],
        format!(
            "{} is outside what the product allows: the {which} embedment stated for it is {}.",
            say.mm(depth),
            say.mm(limit)
        ),
    ))
}

fn hole_and_stud(plan: &SitePlan, thread: &Thread, say: &Say) -> Option<Problem> {
    let (hole, stud) = (
        plan.anchors.hole_diameter_mm?,
        millimetre::get(thread.diameter),
    );
    (hole <= stud).then(|| {
        Problem::between(
            paths![anchors.hole_diameter_mm, anchors.size],
            format!("A hole of {} does not take a stud of {} with resin round it; the hole must be wider.", say.mm(hole), say.mm(stud)),
        )
    })
}

fn embedment_and_diameter(plan: &SitePlan, thread: &Thread, say: &Say) -> Option<Problem> {
    let (depth, stud) = (plan.anchors.embedment_mm?, millimetre::get(thread.diameter));
    (!(4.0 * stud..=20.0 * stud).contains(&depth)).then(|| {
        Problem::between(
            paths![anchors.embedment_mm, anchors.size],
            format!(
                "The codes' bond model holds from four to twenty diameters, {} to {} for this size; {} is outside it.",
                say.mm(4.0 * stud),
                say.mm(20.0 * stud),
                say.mm(depth)
            ),
        )
    })
}

fn studs_overlap(plan: &SitePlan, say: &Say) -> Option<Problem> {
    let (circle, count) = (
        plan.anchors.circle_diameter_mm?,
        plan.anchors.count.unwrap_or(4),
    );
    let thread = threads::thread(
        plan.anchors
            .size
            .unwrap_or_else(|| usual_size(plan, plan.family())),
    );
    let spacing = circle * (std::f64::consts::PI / f64::from(count)).sin();
    let needed = plan
        .anchors
        .hole_diameter_mm
        .unwrap_or(0.0)
        .max(millimetre::get(thread.washer_diameter));
    (spacing <= needed).then(|| {
        Problem::between(
            paths![anchors.count, anchors.circle_diameter_mm, anchors.size],
            format!(
                "{count} studs on a circle of {} stand {} apart: holes and washers of {} overlap. They need a circle of more than {}.",
                say.mm(circle),
                say.mm(spacing),
                say.mm(needed),
                say.mm((needed / (std::f64::consts::PI / f64::from(count)).sin()).ceil())
            ),
        )
    })
}

fn resin_range(plan: &SitePlan, say: &Say) -> Option<Problem> {
    let said = &plan.anchors;
    let temperature = said.concrete_temperature_c?;
    if said.gel_time_min.is_some() && said.cure_time_h.is_some() {
        return None;
    }
    let own = said.times_by_temperature.as_deref()?;
    let (low, high) = (own.first()?.concrete_c, own.last()?.concrete_c);
    let celsius = |value| say.units.say(value, Unit::Celsius);
    (!(low..=high).contains(&temperature)).then(|| {
        Problem::between(
            paths![anchors.concrete_temperature_c, anchors.times_by_temperature, anchors.gel_time_min, anchors.cure_time_h],
            format!(
                "Concrete at {} is outside this resin's range of {} to {}, and times are never stretched beyond a table: wait for other \
                 weather, or give the times that the product's sheet states for it.",
                celsius(temperature),
                celsius(low),
                celsius(high)
            ),
        )
    })
}

/// A torque that stretches a typical stud for good: size, class and thread as stated, else as they would be taken.
fn torque_and_proof(plan: &SitePlan, say: &Say) -> Option<Problem> {
    let said = &plan.anchors;
    let torque = newton_metre::new(said.torque_n_m?);
    let (size, class) = (
        said.size.unwrap_or_else(|| usual_size(plan, plan.family())),
        said.strength_class,
    );
    let class = class.unwrap_or_else(|| usual_class(size));
    let (thread, steel) = (threads::thread(size), threads::steel(class, size));
    let nut_factor = match said.thread_friction.zip(said.under_head_friction) {
        Some((in_thread, under_head)) => tightening::nut_factor(&thread, in_thread, under_head),
        None => {
            let (lubrication, coating) = (
                said.lubrication.unwrap_or(Lubrication::Oiled),
                said.coating.unwrap_or(Coating::Zinc),
            );
            tightening::scatter::nut_factor(lubrication, coating, steel.stainless).typical
        }
    };
    let (pull, proof) = (
        tightening::preload(torque, nut_factor, thread.diameter),
        thread.stress_area * steel.proof,
    );
    let most = tightening::torque_by_nut_factor(proof, nut_factor, thread.diameter);
    let kn = |force| say.units.say(force, Kilonewton);
    let nm = |torque| say.units.say(torque, NewtonMetre);
    (torque > most).then(|| {
        Problem::between(
            paths![anchors.torque_n_m, anchors.size, anchors.strength_class],
            format!(
                "{} would pull {} {} of {} with {}, more than its proof load of {}: it would stretch for good. The limit is {}, and the \
                 plan's own torque lies well below it. If the figure was handed on in “kilos”, ask which unit was meant.",
                nm(torque),
                size.stock().either("an", "a"),
                size.said(),
                class.named(),
                kn(pull),
                kn(proof),
                nm(most)
            ),
        )
    })
}
