//! The column's tube: named, stated, or the slimmest usual one that the load may stand on.

use crate::brief::load::Load;
use crate::brief::{Ask, Given, Taken};
use crate::field::Number;
use crate::figure::{Millimetre, Unit};
use crate::rules::aisc_360_16::wall;
use crate::rules::en_1993_1_1_2005::material;
use crate::rules::en_10210_2_2006::section;
use crate::rules::tubes::{self, Tube};
use crate::site_plan::pier::Steel;
use crate::site_plan::{Pier as Said, SitePlan};
use crate::stock::Stock;
use crate::units::{
    Length, SecondMoment, kilogram, kilogram_per_metre, metre, millimetre, millimetre_to_the_fourth,
};

/// Frequency of the column alone with its load, foot held, that a column is chosen by, Hz: block, joint and mount take it
/// down by half and more, and it should stay above what walking excites.
pub const WANTED_HZ: f64 = 35.0;

/// Outside diameter and wall.
pub fn resolve(
    plan: &SitePlan,
    load: &Load,
    height: Length,
    ask: &mut Ask,
) -> (Given<Length>, Given<Length>) {
    let said = &plan.pier;
    let named = said.tube.as_deref().and_then(tubes::by_name);
    let outside = said
        .outside_diameter_mm
        .or(named.map(|tube| tube.outside_mm));
    let wall = said.wall_mm.or(named.map(|tube| tube.wall_mm));
    match (outside, wall) {
        (Some(outside), Some(wall)) => (
            Given::said(millimetre::new(outside)),
            Given::said(millimetre::new(wall)),
        ),
        (Some(outside), None) => {
            // A wall that leaves a bore, whatever the diameter.
            let usual = tubes::usual_wall_mm(ask.stock, outside).min(outside / 4.0);
            (
                Given::said(millimetre::new(outside)),
                assume(
                    ask,
                    Said::wall_mm,
                    usual,
                    "the wall that is usual for such a tube".into(),
                ),
            )
        }
        (None, wall) => {
            let steel = steel(plan, ask.stock);
            let tube = choose(plan, load, height, wall, steel, ask.stock);
            let why = format!(
                "{}: the slimmest usual tube that swings above {} with this load on it, its foot held fast",
                tube.name,
                ask.units.say(WANTED_HZ, Unit::Hertz)
            );
            let outside = assume(ask, Said::outside_diameter_mm, tube.outside_mm, why.clone());
            let wall = match wall {
                Some(wall) => Given::said(millimetre::new(wall)),
                None => assume(ask, Said::wall_mm, tube.wall_mm, why),
            };
            (outside, wall)
        }
    }
}

/// The steel that was stated, or the least grade that is sold.
pub fn steel(plan: &SitePlan, stock: Stock) -> Steel {
    plan.pier
        .steel
        .unwrap_or(stock.either(Steel::S235, Steel::A53))
}

fn assume(ask: &mut Ask, row: Number<Millimetre>, value: f64, why: String) -> Given<Length> {
    let taken = Taken {
        why,
        effect: "stiffness of the column, and how far warmth on one side bends it".into(),
        source: tubes::SOURCE,
    };
    ask.note_number(row.row, value, taken);
    Given::assumed(millimetre::new(value))
}

/// The slimmest usual tube that is stiff enough and stands on a stated plate; the stiffest that does when none is enough.
fn choose(
    plan: &SitePlan,
    load: &Load,
    height: Length,
    wall_mm: Option<f64>,
    steel: Steel,
    stock: Stock,
) -> Tube {
    let fits = |tube: &Tube| {
        plan.pier
            .plate_side_mm
            .is_none_or(|side| tube.outside_mm <= side)
            && wall_mm.is_none_or(|wall| wall < tube.outside_mm / 4.0)
            && plan.yard.keeps_tube(tube)
    };
    let with_wall = |tube: Tube| Tube {
        wall_mm: wall_mm.unwrap_or(tube.wall_mm),
        ..tube
    };
    // A yard may keep walls that are not the usual ones.
    let usual: Vec<Tube> = if tubes::usual(stock).any(|tube| plan.yard.keeps_tube(&tube)) {
        tubes::usual(stock).collect()
    } else {
        tubes::stocked(stock).collect()
    };
    let mut last = usual
        .iter()
        .copied()
        .find(|tube| plan.yard.keeps_tube(tube))
        .map_or(Tube::own(88.9, wall_mm.unwrap_or(5.0)), with_wall);
    for tube in usual.into_iter().filter(fits).map(with_wall) {
        last = tube;
        if held_frequency_hz(&tube, steel, load, height) >= WANTED_HZ {
            break;
        }
    }
    last
}

/// Second moment that counts of a tube of a steel.
pub fn second_moment(tube: &Tube, steel: Steel) -> SecondMoment {
    section::second_moment(tube.outside(), wall::counted(steel, tube.wall()))
}

/// Frequency of a held column with its load, Rayleigh's: f = √(1/(M c))/2π, M = m + 33/140 μL, c the compliance at the load's centre.
pub fn held_frequency_hz(tube: &Tube, steel: Steel, load: &Load, height: Length) -> f64 {
    let (l, e) = (metre::get(height), metre::get(load.centre_above_pier.value));
    let inertia = millimetre_to_the_fourth::get(second_moment(tube, steel)) * 1e-12;
    let bending = material::E_MPA * 1e6 * inertia;
    let compliance = (l.powi(3) / 3.0 + e * l * l + e * e * l) / bending;
    let shaft = kilogram_per_metre::get(section::mass_per_length(tube.outside(), tube.wall())) * l;
    let mass = kilogram::get(load.mass.value) + 33.0 / 140.0 * shaft;
    (mass * compliance).sqrt().recip() / (2.0 * std::f64::consts::PI)
}
