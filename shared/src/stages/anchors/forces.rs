//! Forces in the studs under an action: a plate on nuts shares pull and push among its studs; a plate on grout presses on
//! one side of its neutral axis, and the studs on the other side pull, with prying where the plate is thin.

use crate::rules::en_1993_1_1_2005::material;
use crate::rules::prying::{self, Strip};
use crate::rules::stud_group::{self, GroutedPlate};
use crate::stages::anchors::actions::Factored;
use crate::stages::anchors::layout::{Group, Stud};
use crate::stages::anchors::seat::Seat;
use crate::stages::anchors::situation::{Acting, Scope, Situation};
use crate::units::{Force, Length, Pressure, megapascal, millimetre, newton};

/// Share of the greatest pull below which a stud counts as not pulled.
const IDLE_RATIO: f64 = 1e-3;

/// Forces in the studs, pull positive, and what presses on the concrete.
#[derive(Debug, Clone, PartialEq)]
pub struct Forces {
    /// Pull in each stud.
    pub studs: Vec<Force>,
    /// Largest pressure under the plate.
    pub pressure: Option<Pressure>,
    /// Length of plate that presses.
    pub pressed: Option<Length>,
    /// Pull over the pull without prying.
    pub prying_factor: f64,
    /// Lever between the pulls' resultant and the pressure's, where the plate presses on the concrete.
    pub lever: Option<Length>,
}

/// Forces for a moment that leans the column towards −direction, so that studs along it are pulled.
pub fn forces(
    situation: &Situation,
    group: &Group,
    action: &Factored,
    direction: [f64; 2],
) -> Forces {
    let levers: Vec<Length> = group
        .studs
        .iter()
        .map(|stud| lever(stud, direction))
        .collect();
    match situation.seat {
        Seat::Nuts => on_nuts(&levers, action),
        Seat::Bedded => pressing(
            situation,
            levers,
            action,
            situation.brief.pier.plate_side.value,
        ),
        Seat::Dished => pressing(
            situation,
            levers,
            action,
            situation.brief.pier.outside_diameter.value,
        ),
    }
}

fn lever(stud: &Stud, direction: [f64; 2]) -> Length {
    stud.x * direction[0] + stud.y * direction[1]
}

fn on_nuts(levers: &[Length], action: &Factored) -> Forces {
    let studs = stud_group::stud_forces(-action.weight, action.moment, levers);
    Forces {
        studs,
        pressure: None,
        pressed: None,
        prying_factor: 1.0,
        lever: None,
    }
}

fn pressing(situation: &Situation, levers: Vec<Length>, action: &Factored, side: Length) -> Forces {
    let count = levers.len();
    let plate = GroutedPlate {
        length: side,
        width: side,
        levers,
        stud_area: situation.thread.stress_area,
        modular_ratio: material::E_MPA / megapascal::get(situation.concrete_modulus),
    };
    let Some(contact) = stud_group::grouted(&plate, action.weight, action.moment) else {
        let even = action.weight / (side * side);
        return Forces {
            studs: vec![newton::new(0.0); count],
            pressure: Some(even * 2.0),
            pressed: Some(side),
            prying_factor: 1.0,
            lever: None,
        };
    };
    let most = contact
        .tensions
        .iter()
        .copied()
        .fold(newton::new(0.0), |a, b| if b > a { b } else { a });
    let prying_factor = if situation.seat == Seat::Bedded {
        prying::factor(&strip(situation), most, strength(situation))
    } else {
        1.0
    };
    let lever = between(
        &plate.levers,
        &contact.tensions,
        side / 2.0 - contact.pressed / 3.0,
    );
    Forces {
        studs: contact
            .tensions
            .into_iter()
            .map(|tension| tension * prying_factor)
            .collect(),
        pressure: Some(contact.pressure),
        pressed: Some(contact.pressed),
        prying_factor,
        lever,
    }
}

/// From the pulls' resultant to the pressure's, which acts at `pressure` on the other side of the middle.
fn between(levers: &[Length], tensions: &[Force], pressure: Length) -> Option<Length> {
    let total: f64 = tensions.iter().map(|&tension| newton::get(tension)).sum();
    let turn: f64 = levers
        .iter()
        .zip(tensions)
        .map(|(&lever, &tension)| millimetre::get(lever) * newton::get(tension))
        .sum();
    (total > 0.0).then(|| millimetre::new(turn / total) + pressure)
}

/// Design strength of a stud's steel, as far as prying asks.
fn strength(situation: &Situation) -> Force {
    situation.thread.stress_area * situation.steel.yield_strength
}

/// The plate's strip at one stud.
pub fn strip(situation: &Situation) -> Strip {
    let (pier, thread) = (&situation.brief.pier, &situation.thread);
    let radius = situation.brief.anchors.circle_diameter.value / 2.0;
    let positive = |length: Length| millimetre::new(millimetre::get(length).max(1.0));
    let inner = positive(radius - pier.outside_diameter.value / 2.0 - pier.weld_leg.value);
    let outer = positive(pier.plate_side.value / 2.0 - radius * std::f64::consts::FRAC_1_SQRT_2);
    let capped = millimetre::new(millimetre::get(outer).min(1.25 * millimetre::get(inner)));
    let width = positive((inner + thread.diameter / 2.0) * 2.0);
    Strip {
        inner: positive(inner - thread.diameter / 2.0),
        outer: capped + thread.diameter / 2.0,
        width: millimetre::new(
            millimetre::get(width).max(1.5 * millimetre::get(thread.plate_hole)),
        ),
        hole: thread.plate_hole,
        thickness: pier.plate_thickness.value,
        ultimate: megapascal::new(360.0),
    }
}

impl Forces {
    /// Greatest pull of a stud.
    pub fn greatest(&self) -> Force {
        self.studs
            .iter()
            .copied()
            .fold(newton::new(0.0), |a, b| if b > a { b } else { a })
    }

    /// Greatest push on a stud.
    pub fn push(&self) -> Force {
        -self
            .studs
            .iter()
            .copied()
            .fold(newton::new(0.0), |a, b| if b < a { b } else { a })
    }

    /// Sum of the pulls.
    pub fn pull(&self) -> Force {
        newton::new(
            self.studs
                .iter()
                .map(|&force| newton::get(force).max(0.0))
                .sum(),
        )
    }

    /// The pulled studs, with the distance of their resultant from their middle; none where nothing is pulled.
    pub fn pulled(&self, group: &Group) -> Option<Acting> {
        let least = newton::get(self.greatest()) * IDLE_RATIO;
        let pulled: Vec<(Stud, f64)> = group
            .studs
            .iter()
            .zip(&self.studs)
            .map(|(&stud, &force)| (stud, newton::get(force)))
            .filter(|&(_, force)| force > least && force > 1e-6)
            .collect();
        let total: f64 = pulled.iter().map(|(_, force)| force).sum();
        if pulled.is_empty() || total <= 0.0 {
            return None;
        }
        let off = |read: fn(&Stud) -> Length| {
            let middle = pulled
                .iter()
                .map(|(stud, _)| millimetre::get(read(stud)))
                .sum::<f64>()
                / pulled.len() as f64;
            let resultant = pulled
                .iter()
                .map(|(stud, force)| millimetre::get(read(stud)) * force)
                .sum::<f64>()
                / total;
            millimetre::new((resultant - middle).abs())
        };
        let eccentricity = [off(|stud| stud.x), off(|stud| stud.y)];
        let studs = pulled.into_iter().map(|(stud, _)| stud).collect();
        let group = Group {
            studs,
            concrete: group.concrete,
        };
        Some(Acting {
            eccentricity,
            lever: self.lever,
            ..Acting::evenly(Scope::Pulled, group)
        })
    }
}
