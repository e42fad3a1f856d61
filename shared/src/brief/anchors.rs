//! Anchors, decided.

pub(crate) mod product;
mod sizes;

use crate::brief::pier::Pier;
use crate::brief::{Ask, Given, Taken, taken, usual};
use crate::rules::threads::{self, Thread};
use crate::site_plan::anchors::{Coating, Hole, LowerNuts, Lubrication, Size, StrengthClass, Tool};
use crate::site_plan::pier::Levelling;
use crate::site_plan::{Anchors as Said, HOUSE, SitePlan};
use crate::units::{Length, Moment, millimetre, newton_metre};

pub use product::Product;
pub use sizes::{above_concrete, usual_class, usual_size};

/// Complete answers about the studs.
#[derive(Debug, Clone, PartialEq)]
pub struct Anchors {
    /// Number of studs.
    pub count: Given<f64>,
    /// Thread size.
    pub size: Given<Size>,
    /// Length of a stud.
    pub length: Given<Length>,
    /// Embedment.
    pub embedment: Given<Length>,
    /// Circle.
    pub circle_diameter: Given<Length>,
    /// Strength class.
    pub strength_class: Given<StrengthClass>,
    /// Hole.
    pub hole_diameter: Given<Length>,
    /// The nuts under the plate.
    pub lower_nuts: Given<LowerNuts>,
    /// What comes from a product's sheet.
    pub product: Product,
    /// The product's largest torque; none: not known.
    pub max_torque: Option<Moment>,
    /// Torque that is meant; none: recommend one.
    pub torque: Option<Moment>,
    /// Temperature of the concrete, °C.
    pub concrete_temperature_c: Given<f64>,
    /// Whether the concrete may be cracked.
    pub cracked: Given<bool>,
    /// State of the thread.
    pub lubrication: Given<Lubrication>,
    /// What tightens.
    pub tool: Given<Tool>,
    /// Coating.
    pub coating: Given<Coating>,
    /// Hole wet or dry.
    pub hole: Given<Hole>,
    /// Friction in thread and under the nut, where both are known.
    pub frictions: Option<(f64, f64)>,
    /// Share of the preload lost in each tenfold of hours.
    pub relaxation_ratio: Given<f64>,
    /// The person's own figures.
    pub stated: crate::site_plan::Anchors,
}

impl Anchors {
    /// The row of the thread.
    pub fn thread(&self) -> Thread {
        threads::thread(self.size.value)
    }

    /// Number of studs, a whole number.
    pub fn number(&self) -> usize {
        self.count.value.round().max(1.0) as usize
    }
}

/// Decides the studs' unknowns.
pub fn resolve(plan: &SitePlan, pier: &Pier, ask: &mut Ask) -> Anchors {
    let said = &plan.anchors;
    let count = usual!(ask, Said::count);
    let size = taken!(ask, Said::size, sizes::usual_size(plan, ask.stock));
    let thread = threads::thread(size.value);
    let sizes = sizes::Usual::find(plan, pier, count.value, &thread, ask.stock);
    let embedment = taken!(ask, Said::embedment_mm, sizes.embedment_mm);
    let length = taken!(ask, Said::length_mm, sizes.length_mm);
    let circle_diameter = taken!(ask, Said::circle_diameter_mm, sizes.circle_mm);
    let hole_diameter = taken!(ask, Said::hole_diameter_mm, sizes.hole_mm);
    let concrete_temperature_c = concrete_temperature(plan, ask);
    let hole = usual!(ask, Said::hole);
    Anchors {
        count,
        size,
        length,
        embedment,
        circle_diameter,
        hole_diameter,
        concrete_temperature_c,
        hole,
        product: product::resolve(
            plan,
            &thread,
            embedment.value,
            concrete_temperature_c.value,
            ask,
        ),
        max_torque: said.max_torque_n_m.map(newton_metre::new),
        torque: said.torque_n_m.map(newton_metre::new),
        lower_nuts: lower_nuts(pier, ask),
        strength_class: taken!(ask, Said::strength_class, usual_class(size.value)),
        cracked: usual!(ask, Said::cracked),
        lubrication: usual!(ask, Said::lubrication),
        tool: usual!(ask, Said::tool),
        coating: usual!(ask, Said::coating),
        stated: said.clone(),
        frictions: said.thread_friction.zip(said.under_head_friction),
        relaxation_ratio: usual!(ask, Said::relaxation_factor),
    }
}

/// As warm as the work is, where that was said.
fn concrete_temperature(plan: &SitePlan, ask: &mut Ask) -> Given<f64> {
    let at_work = plan.work.temperature_c;
    let why = if at_work.is_some() {
        "the temperature of the work; measure in a hole on the day, and count the night's if it is \
         colder"
    } else {
        "a cool spring day"
    };
    let taken = Taken::new(why, "time before the nuts may be turned", HOUSE);
    ask.number(Said::concrete_temperature_c, at_work.unwrap_or(10.0), taken)
}

fn lower_nuts(pier: &Pier, ask: &mut Ask) -> Given<LowerNuts> {
    let (usual, why) = match pier.levelling.value {
        Levelling::Nuts if millimetre::get(pier.gap.value) > 0.0 => {
            (LowerNuts::Tight, "the plate stands on its nuts")
        }
        Levelling::Nuts => (LowerNuts::None, "the plate lies on the concrete"),
        Levelling::Grout => (LowerNuts::BackedOff, "so that the grout carries the plate"),
    };
    ask.choice(
        Said::lower_nuts,
        usual,
        Taken::new(
            why,
            "where the preload goes, and which torque is right",
            HOUSE,
        ),
    )
}
