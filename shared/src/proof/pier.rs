//! A pier that is to be fitted: what is unknown of it, with the plan's range, and what each measurement would be.

use std::sync::Arc;

use crate::brief::{Brief, Origin};
use crate::figure::Units;
use crate::halfspace::{Shelf, Solved};
use crate::proof::chance::{below, evenly, normal_at};
use crate::proof::ground::{Contact, Lean, Springs};
use crate::proof::measure::{Expected, Measure, Of, measures};
use crate::proof::reduced::{Mounted, Reduced, Trial};
use crate::site_plan::commissioning::Commissioning;
use crate::site_plan::pier::Fill;
use crate::stages::block::Block;
use crate::stages::floor::{Floor, Footprint};
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::GroundStiffness;
use crate::stages::motion::rig::{Axis, Rig};
use crate::stages::pier::Pier;
use crate::units::{ARCSEC_PER_RADIAN, kilogram, kilogram_square_metre, megapascal, metre};

/// Unknowns: modulus, contact, joint, column, mount, mass, its height, its radius of gyration.
pub const UNKNOWNS: usize = 8;
/// Unknowns in units of their prior's standard deviation.
pub type Point = [f64; UNKNOWNS];

/// The unknowns by name, in their order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "their words stand in `words`")]
pub enum Unknown {
    Ground,
    Contact,
    Joint,
    Column,
    Mount,
    Mass,
    Centre,
    Gyration,
}

impl Unknown {
    /// Those that are told of.
    pub const TOLD: [Self; 5] = [
        Self::Ground,
        Self::Contact,
        Self::Joint,
        Self::Column,
        Self::Mount,
    ];

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Ground => "the ground's stiffness",
            Self::Contact => "the side contact",
            Self::Joint => "the base joint's stiffness",
            Self::Column => "the column's stiffness with its fill",
            Self::Mount => "the mount's stiffness",
            Self::Mass => "the load's mass",
            Self::Centre => "the height of the load's centre",
            Self::Gyration => "how far the load's weights are apart",
        }
    }

    /// The answer of the plan that says it.
    pub fn field(self) -> &'static str {
        match self {
            Self::Ground => "site.shear_wave_speed_m_s",
            Self::Contact => "block.side_contact_from_m",
            Self::Joint => "pier.levelling",
            Self::Column => "pier.fill",
            Self::Mount => "load.mount_stiffness_n_m_per_rad",
            Self::Mass => "load.mass_kg",
            Self::Centre => "load.centre_above_pier_m",
            Self::Gyration => "load.inertia_kg_m2",
        }
    }
}

/// Middle and standard deviation of each unknown: logarithms, and for the contact the normal's places.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prior {
    /// Middle.
    pub middle: Point,
    /// Standard deviation.
    pub sd: Point,
}

/// The pier, ready to be tried.
#[derive(Debug, Clone)]
pub struct Standing {
    pub(super) planes: [Reduced; 2],
    is_square: bool,
    pub(super) contact: Contact,
    /// What the plan says of the unknowns.
    pub prior: Prior,
    /// What was measured.
    pub measures: Vec<Measure>,
    /// Units of what is said.
    pub(super) units: Units,
    load: [f64; 3],
    beside: Lean,
    lean_ratio: f64,
}

impl Standing {
    /// From the design's own stages; none where the ground is not known.
    #[allow(
        clippy::too_many_arguments,
        reason = "each stage names all that it depends on"
    )]
    pub fn of(
        brief: &Brief,
        said: &Commissioning,
        ground: &Ground,
        block: &Block,
        stiffness: &GroundStiffness,
        pier: &Pier,
        floor: &Floor,
        shelf: &dyn Shelf,
    ) -> Option<Self> {
        let rigs = [
            Rig::new(Axis::X, brief, ground, block, stiffness, pier)?,
            Rig::new(Axis::Y, brief, ground, block, stiffness, pier)?,
        ];
        let modulus = ground.shear_modulus?.map(|g| megapascal::get(g) * 1e6);
        let contact = Contact::find(
            stiffness,
            rigs.map(|rig| rig.ground),
            modulus.typical,
            shelf,
        )?;
        let prior = prior(
            brief,
            [modulus.low, modulus.typical, modulus.high],
            &contact,
            &rigs[0],
        );
        let load = [
            kilogram::get(brief.load.mass.value),
            metre::get(brief.load.centre_above_pier.value),
            kilogram_square_metre::get(brief.load.inertia.value),
        ];
        let lean_ratio = stiffness.uneven.typical.lean_ratio;
        let measures = measures(said, &contact, floor, lean_ratio);
        let beside = 0.5 * metre::get(block.length) + 0.3;
        let beside = contact.lean(floor, beside, 0.0, lean_ratio);
        Some(Self {
            units: brief.units,
            beside,
            lean_ratio,
            planes: [Reduced::of(&rigs[0])?, Reduced::of(&rigs[1])?],
            is_square: rigs[0] == rigs[1],
            contact,
            prior,
            measures,
            load,
        })
    }

    /// The value of an unknown at a point: SI, a share for the contact, a ratio for the column.
    pub fn value(&self, point: &Point, unknown: Unknown) -> f64 {
        let k = unknown as usize;
        let value = self.prior.middle[k] + self.prior.sd[k] * point[k];
        if unknown == Unknown::Contact {
            below(value)
        } else {
            value.exp()
        }
    }

    /// What is tried at a point in a plane.
    pub fn trial(&self, point: &Point, axis: Axis) -> Trial {
        let of = |unknown| self.value(point, unknown);
        let (modulus, contact) = (of(Unknown::Ground), of(Unknown::Contact));
        let mass = of(Unknown::Mass);
        let gyration = of(Unknown::Gyration);
        Trial {
            springs: self.contact.springs(axis, modulus, contact),
            speed_ratio: (modulus / self.prior.middle[0].exp()).sqrt(),
            contact,
            joint: of(Unknown::Joint),
            bending_ratio: of(Unknown::Column),
            mount: of(Unknown::Mount),
            load: self.load[0] * mass,
            centre: self.load[1] * of(Unknown::Centre),
            inertia: self.load[2] * mass * gyration * gyration,
        }
    }

    /// Springs of a plane.
    pub fn springs(&self, axis: Axis, modulus: f64, share: f64) -> Springs {
        self.contact.springs(axis, modulus, share)
    }

    /// Height of the pier's top above ground.
    pub fn top_m(&self) -> f64 {
        let rig = &self.planes[0].rig;
        rig.foot + rig.height - self.contact.depth()
    }

    /// Height of the load's centre over the top.
    pub fn centre_m(&self) -> f64 {
        self.load[1].max(0.1)
    }

    /// The lean under a newton beside the block.
    pub fn lean_beside(&self) -> Lean {
        self.beside.clone()
    }

    /// The lean under a newton that reaches the ground in these places.
    pub fn lean_of(&self, feet: &[Footprint]) -> Lean {
        self.contact.lean_of(feet, self.lean_ratio)
    }

    /// What was solved of the ground.
    pub(super) fn solved(&self) -> &[Arc<Solved>] {
        self.contact.solved()
    }

    pub(super) fn plane(&self, axis: Axis) -> &Reduced {
        &self.planes[usize::from(axis == Axis::Y && !self.is_square)]
    }

    /// The first swings with the load on.
    pub fn mounted(&self, point: &Point, axis: Axis) -> Option<Mounted> {
        self.plane(axis).mounted(&self.trial(point, axis))
    }

    /// What each measurement would be. None where a trial has no solution.
    pub fn expected(&self, point: &Point, of: &[&Of], rounds: usize) -> Option<Vec<Expected>> {
        let same = |axis: Axis| if self.is_square { Axis::X } else { axis };
        // The same swing may have been measured more than once, and is worked out once.
        let mut known: [[Option<Vec<Expected>>; 2]; 2] = Default::default();
        of.iter()
            .map(|of| match of {
                Of::Knock {
                    axis,
                    with_mount,
                    mode,
                } => {
                    let axis = same(*axis);
                    let place = &mut known[usize::from(axis == Axis::Y)][usize::from(*with_mount)];
                    if place.is_none() {
                        *place = Some(self.swings(point, axis, *with_mount, rounds)?);
                    }
                    let swings = place.as_ref()?;
                    Some(swings[(*mode).min(swings.len() - 1)])
                }
                Of::Lean { lean, newtons } => {
                    let turn = lean.at(self.value(point, Unknown::Contact));
                    let size =
                        turn[0].hypot(turn[1]) * newtons / self.value(point, Unknown::Ground);
                    positive(ARCSEC_PER_RADIAN * size)
                }
                Of::Pull {
                    axis,
                    height_m,
                    newtons,
                } => {
                    let trial = self.trial(point, *axis);
                    positive(
                        ARCSEC_PER_RADIAN
                            * self.plane(*axis).pulled(&trial, *height_m, *newtons).abs(),
                    )
                }
            })
            .collect()
    }

    fn swings(
        &self,
        point: &Point,
        axis: Axis,
        with_mount: bool,
        rounds: usize,
    ) -> Option<Vec<Expected>> {
        let trial = self.trial(point, axis);
        let plane = self.plane(axis);
        if with_mount {
            return Some(plane.mounted(&trial)?.hertz.map(Expected::one).to_vec());
        }
        let heard = plane.heard(&trial, rounds);
        match heard.as_slice() {
            [one] => Some(vec![Expected::one(one.hertz)]),
            [one, other] => Some(vec![
                Expected {
                    values: [one.hertz, other.hertz],
                    second: other.loudness / (one.loudness + other.loudness),
                },
                Expected {
                    values: [other.hertz, one.hertz],
                    second: 0.5,
                },
            ]),
            _ => None,
        }
    }

    /// A draw of the prior.
    pub fn drawn(place: usize) -> Point {
        evenly::<UNKNOWNS>(place).map(normal_at)
    }
}

fn positive(value: f64) -> Option<Expected> {
    (value > 0.0 && value.is_finite()).then(|| Expected::one(value))
}

/// What the plan says of each unknown; the standard deviations of joint, column, mount and load are judgement.
fn prior(brief: &Brief, [low, typical, high]: [f64; 3], contact: &Contact, rig: &Rig) -> Prior {
    // Nineteen of twenty on either side.
    let ground = ((high / low).ln() / 3.29).clamp(0.03, 1.2);
    let stated = brief.block.side_contact_from.is_some();
    let is_said = |origin: Origin| origin != Origin::Assumed;
    let column = if brief.pier.fill.value == Fill::None {
        0.03
    } else {
        0.15
    };
    let mount = if is_said(brief.load.mount_stiffness.origin) {
        0.5
    } else {
        0.7
    };
    let mass = if is_said(brief.load.mass.origin) {
        0.05
    } else {
        0.08
    };
    Prior {
        middle: [
            typical.ln(),
            normal_at(contact.typical),
            rig.joint.ln(),
            0.0,
            rig.mount.ln(),
            0.0,
            0.0,
            0.0,
        ],
        sd: [
            ground,
            if stated { 0.6 } else { 1.0 },
            0.5,
            column,
            mount,
            mass,
            0.12,
            0.15,
        ],
    }
}
