//! Motion: what the star does.

mod budget;
mod card;
mod check;
pub mod conduct;
mod feet;
pub mod footfall;
mod heat;
pub mod history;
pub mod improvement;
pub mod influence;
mod knock;
pub mod modes;
mod mount;
mod pace;
pub mod people;
pub mod quiet;
pub mod rig;
mod season;
mod shape;
mod share;
pub mod stands;
mod steps;
mod summary;
pub mod system;
pub mod trail;
mod walk;
mod walk_notes;
mod wind;
mod workings;

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::stages::anchors::Anchors;
use crate::stages::block::Block;
use crate::stages::floor::Floor;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::uneven::Factors;
use crate::stages::ground_stiffness::{GroundStiffness, Stiffness};
use crate::stages::pier::Pier;
use crate::units::{
    Frequency, RotationalStiffness, Spread, hertz, megapascal, newton_metre_per_radian,
};

pub use budget::Budget;
pub use conduct::Conduct;
pub use heat::Heat;
pub use knock::Knock;
pub use mount::Mount;
pub use pace::Paces;
pub use quiet::Quiet;
pub use season::Season;
pub use shape::ModeShape;
pub use share::{Disturbance, StarWidth};
pub use walk::{DeckSwing, Histories, StepImpulse, Walk};
pub use wind::{Housing, Wind};
pub use workings::{frequency_id, stand_id};

use improvement::Improvement;
use influence::Influence;
use rig::{Axis, Rig};
use system::{Planes, System};

/// Tilt from somebody standing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StandTilt {
    /// Where.
    pub name: String,
    /// Turn of the pier's top; null when unknown.
    pub tilt_arcsec: Option<f64>,
    /// The block's share.
    pub block_tilt_arcsec: Option<f64>,
    /// The block's share by ground: low is the softest thought likely, high the stiffest.
    pub block_tilt_by_ground_arcsec: Option<Spread<f64>>,
    /// Direction in which the top leans, clockwise from north.
    pub bearing_deg: Option<f64>,
}

/// What the star does.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Motion {
    /// First frequencies in typical ground.
    #[serde(rename = "frequencies_hz", serialize_with = "hertz::list::serialize")]
    pub frequencies: Vec<Frequency>,
    /// The same in the softest ground thought likely.
    #[serde(
        rename = "frequencies_low_hz",
        serialize_with = "hertz::list::serialize"
    )]
    pub frequencies_low: Vec<Frequency>,
    /// The same in the stiffest.
    #[serde(
        rename = "frequencies_high_hz",
        serialize_with = "hertz::list::serialize"
    )]
    pub frequencies_high: Vec<Frequency>,
    /// Natural swings, slowest first.
    pub modes: Vec<ModeShape>,
    /// Tilt from each stand.
    pub stands: Vec<StandTilt>,
    /// The star during the walk.
    pub walk: Walk,
    /// Wind: the peak above the mean in ten minutes.
    pub wind_arcsec: Option<f64>,
    /// Wind in full.
    pub wind: Option<Wind>,
    /// The mount's own softness, which never fails the pier; null where the ground is not known.
    pub mount: Option<Mount>,
    /// Temperature difference across the column.
    pub thermal_arcsec: Option<f64>,
    /// The difference it is for.
    pub thermal_difference_k: f64,
    /// Warmth in full.
    #[serde(rename = "thermal")]
    pub heat: Heat,
    /// Time for a tap to die to the budget.
    pub settle_s: Option<f64>,
    /// A bump by hand in full.
    pub bump: Option<Knock>,
    /// The stop of a slew.
    pub slew: Option<Knock>,
    /// The end of a flip across the meridian, when both axes stop together.
    pub flip: Option<Knock>,
    /// Lean of the polar axis in a year; null where the ground cannot be presumed.
    pub season: Option<Season>,
    /// Largest movement that is acceptable.
    pub budget_arcsec: f64,
    /// The budget in full.
    pub budget: Budget,
    /// Distance from the pier's axis beyond which a person who stands still moves the star by less than the budget, in the
    /// softest ground; the same as in `quiet`. Null when there is none within 20 m.
    pub quiet_distance_m: Option<f64>,
    /// The same, and whether it holds anywhere on the floor.
    pub quiet: Option<Quiet>,
    /// The same for somebody who walks.
    pub quiet_walking: Option<Quiet>,
    /// How many times as far as somebody who stands a step moves the star; null when unknown.
    pub step_ratio: Option<f64>,
    /// What the solved ground says of weights on the floor: map, linings, practice.
    #[serde(flatten)]
    pub on_ground: stands::OnGround,
    /// Who moves the star, largest first.
    pub disturbances: Vec<Disturbance>,
    /// What people do while the telescope exposes, what each of it costs the star, and its rule, the dearest first.
    pub conduct: Vec<Conduct>,
    /// The star's width when everything happens within one exposure; null where nothing is known.
    pub star: Option<StarWidth>,
    /// Where to stand and walk during exposures: a card for the wall.
    pub where_to_stand: Vec<String>,
    /// What moves the star, in words with this plan's own figures, the largest mover first.
    pub summary: Vec<String>,
    /// What would help most, most first; empty where only the stages ran.
    pub improvements: Vec<Improvement>,
}

/// Finds what the star does. `influence` is what a weight on the ground does to the block, where that is solved.
#[must_use]
#[allow(
    clippy::too_many_arguments,
    reason = "each stage names all that it depends on"
)]
pub fn stage(
    brief: &Brief,
    ground: &Ground,
    block: &Block,
    stiffness: &GroundStiffness,
    pier: &Pier,
    _anchors: &Anchors,
    floor: &Floor,
    influence: Option<&dyn Influence>,
) -> Found<Motion> {
    let mut notes = Notes::default();
    let budget = budget::find(brief, &mut notes);
    let solved = system(brief, ground, block, stiffness, pier);
    let heat = heat::find(brief, pier, &mut notes);
    let bump = solved
        .as_ref()
        .map(|system| knock::bump(system, budget.arcsec, &mut notes));
    let wind = solved
        .as_ref()
        .map(|system| wind::find(brief, pier, block.upstand + pier.gap, system, &mut notes));
    let mount = mount::find(
        brief,
        pier,
        block.upstand + pier.gap,
        |mount| {
            system_on_mount(brief, ground, block, stiffness, pier, mount)
                .map(|system| system.typical)
        },
        &mut notes,
    );
    let slew = solved
        .as_ref()
        .map(|system| knock::slew(brief, system, budget.arcsec, &mut notes));
    let flip = solved
        .as_ref()
        .map(|system| knock::flip(brief, system, budget.arcsec));
    let people = People::find(
        brief,
        floor,
        solved.as_ref(),
        influence,
        &budget,
        [bump, slew, flip],
        &mut notes,
    );
    let parts = share::Parts {
        brief,
        system: solved.as_ref(),
        floor,
        influence,
        walk: people.walk.in_short,
        wind: wind.as_ref(),
        heat: &heat,
        budget_arcsec: budget.arcsec,
    };
    let disturbances = share::find(&parts);
    let modes = solved.as_ref().map(shape::shapes).unwrap_or_default();
    let season = season::find(brief, ground, block, &mut notes);
    let conduct = conduct::find(&conduct::Parts {
        brief,
        disturbances: &disturbances,
        bump,
        modes: &modes,
        quiet: people.quiet,
    });
    let told = summary::Parts {
        brief,
        disturbances: &disturbances,
        modes: &modes,
        heat: &heat,
        season,
        budget_arcsec: budget.arcsec,
        step_ratio: people.step_ratio,
    };
    let summary = summary::sentences(&told);
    let first = shape::frequencies(solved.as_ref().map(|system| &system.typical))
        .first()
        .copied();
    let value = Motion {
        frequencies: shape::frequencies(solved.as_ref().map(|system| &system.typical)),
        frequencies_low: shape::frequencies(solved.as_ref().map(|system| &system.low)),
        frequencies_high: shape::frequencies(solved.as_ref().map(|system| &system.high)),
        modes,
        stands: people.stands,
        walk: people.walk,
        wind_arcsec: wind.as_ref().map(|wind| wind.gust_arcsec),
        wind,
        mount,
        thermal_arcsec: Some(heat.arcsec),
        thermal_difference_k: brief.load.thermal_difference_k.value,
        heat,
        settle_s: bump.and_then(|bump| bump.settle_s),
        bump,
        slew,
        flip,
        season,
        budget_arcsec: budget.arcsec,
        budget,
        quiet_distance_m: people.quiet[0].map(|quiet| quiet.distance_m),
        quiet: people.quiet[0],
        quiet_walking: people.quiet[1],
        step_ratio: people.step_ratio,
        on_ground: stands::OnGround::find(
            brief, ground, block, stiffness, pier, floor, first, &mut notes,
        ),
        conduct,
        star: share::star_width(brief, &disturbances),
        disturbances,
        where_to_stand: people.where_to_stand,
        summary,
        improvements: Vec::new(),
    };
    workings::write(brief, &value, &mut notes);
    check::write(brief, &value, &mut notes);
    Found { value, notes }
}

/// The disturbances alone and the time for a bump to die in the softest ground, for plans that are tried out: without
/// histories, words and notes.
#[must_use]
pub fn disturbances(
    brief: &Brief,
    ground: &Ground,
    block: &Block,
    stiffness: &GroundStiffness,
    pier: &Pier,
    floor: &Floor,
) -> (Vec<Disturbance>, Option<f64>) {
    let mut notes = Notes::default();
    let influence = stiffness.influence();
    let budget = budget::find(brief, &mut notes);
    let solved = system(brief, ground, block, stiffness, pier);
    let heat = heat::find(brief, pier, &mut notes);
    let wind = solved
        .as_ref()
        .map(|system| wind::find(brief, pier, block.upstand + pier.gap, system, &mut notes));
    let walk = solved
        .as_ref()
        .zip(influence)
        .and_then(|(system, influence)| walk::peaks(brief, floor, system, influence));
    let settle = solved
        .as_ref()
        .and_then(|system| knock::bump(system, budget.arcsec, &mut notes).worst_settle_s);
    let parts = share::Parts {
        brief,
        system: solved.as_ref(),
        floor,
        influence,
        walk,
        wind: wind.as_ref(),
        heat: &heat,
        budget_arcsec: budget.arcsec,
    };
    (share::find(&parts), settle)
}

/// What people do to the star.
struct People {
    stands: Vec<StandTilt>,
    walk: Walk,
    /// Of somebody who stands, and of somebody who walks.
    quiet: [Option<Quiet>; 2],
    step_ratio: Option<f64>,
    where_to_stand: Vec<String>,
}

const NOT_SOLVED: &str = "What a weight on the ground does to the block asks for the three-dimensional solution, which is not there.";

impl People {
    fn find(
        brief: &Brief,
        floor: &Floor,
        system: Option<&System>,
        influence: Option<&dyn Influence>,
        budget: &Budget,
        knocks: [Option<Knock>; 3],
        notes: &mut Notes,
    ) -> Self {
        let (Some(system), Some(influence)) = (system, influence) else {
            return Self {
                stands: unknown_stands(brief),
                walk: walk::unknown(NOT_SOLVED),
                quiet: [None; 2],
                step_ratio: None,
                where_to_stand: Vec::new(),
            };
        };
        let ground = people::Ground { floor, influence };
        let step_ratio = walk::step_ratio(brief, floor, &system.low);
        let quiet = [1.0, step_ratio]
            .map(|times| quiet::find(brief, system, &ground, budget.arcsec, times));
        // The longest of the knocks that the card names.
        let wait_s = knocks.into_iter().try_fold(0.0_f64, |most, knock| {
            knock?.worst_settle_s.map(|s| most.max(s))
        });
        let walk = walk::find(brief, floor, system, influence, notes);
        let walking_arcsec = walk.in_short.map(|peaks| peaks.map(|peaks| peaks.worst));
        let card = card::Parts {
            brief,
            system,
            ground,
            budget_arcsec: budget.arcsec,
            quiet,
            step_ratio,
            wait_s,
            walking_arcsec,
        };
        Self {
            stands: stands(brief, system, &ground),
            walk,
            quiet,
            step_ratio: Some(step_ratio),
            where_to_stand: card::words(&card),
        }
    }
}

fn unknown_stands(brief: &Brief) -> Vec<StandTilt> {
    let unknown = |name: &str| StandTilt {
        name: name.to_owned(),
        tilt_arcsec: None,
        block_tilt_arcsec: None,
        block_tilt_by_ground_arcsec: None,
        bearing_deg: None,
    };
    brief
        .floor
        .stands
        .value
        .iter()
        .map(|stand| unknown(&stand.name))
        .collect()
}

fn stands(brief: &Brief, system: &System, ground: &people::Ground<'_>) -> Vec<StandTilt> {
    let tilt = |stand: &crate::site_plan::floor::Stand| {
        let [x, y] = ground.under(&system.typical, stand.mass_kg, [stand.x_m, stand.y_m]);
        let tilt = x.hypot(y);
        let in_ground = |planes| {
            let [x, y] = ground.under(planes, stand.mass_kg, [stand.x_m, stand.y_m]);
            x.hypot(y)
        };
        // Nothing pushes the column: joint and column carry the block's turn up as it is.
        StandTilt {
            name: stand.name.clone(),
            tilt_arcsec: Some(tilt),
            block_tilt_arcsec: Some(tilt),
            block_tilt_by_ground_arcsec: Some(Spread {
                low: in_ground(&system.low),
                typical: tilt,
                high: in_ground(&system.high),
            }),
            bearing_deg: (tilt > 0.0).then(|| x.atan2(y).to_degrees().rem_euclid(360.0)),
        }
    };
    brief.floor.stands.value.iter().map(tilt).collect()
}

/// The modes in low, typical and high ground; none where the ground is not known.
#[must_use]
pub fn system(
    brief: &Brief,
    ground: &Ground,
    block: &Block,
    stiffness: &GroundStiffness,
    pier: &Pier,
) -> Option<System> {
    let mount = brief.load.mount_stiffness.value;
    system_on_mount(brief, ground, block, stiffness, pier, mount)
}

/// The same on a mount of another stiffness: a rigid one shows what is the pier's own.
#[must_use]
pub fn system_on_mount(
    brief: &Brief,
    ground: &Ground,
    block: &Block,
    stiffness: &GroundStiffness,
    pier: &Pier,
    mount: RotationalStiffness,
) -> Option<System> {
    let rig = |axis| {
        Some(Rig {
            mount: newton_metre_per_radian::get(mount),
            ..Rig::new(axis, brief, ground, block, stiffness, pier)?
        })
    };
    let rigs = [rig(Axis::X)?, rig(Axis::Y)?];
    let solved = stiffness.solved.as_deref()?;
    let modulus = ground.shear_modulus?.map(megapascal::get);
    let damping = brief.load.damping_ratio;
    let one = |held: &Stiffness, factors: &Factors, g: f64| {
        let ratio = g / modulus.typical;
        let held = [
            rigs[0].held(Axis::X, held, ratio)?,
            rigs[1].held(Axis::Y, held, ratio)?,
        ];
        Some(Planes::solve(
            &held,
            [
                factors.carried(solved, [0, 4]),
                factors.carried(solved, [1, 3]),
            ],
            damping,
        ))
    };
    let Spread { low, typical, high } = stiffness.uneven;
    Some(Spread {
        low: one(&stiffness.low, &low, modulus.low)?,
        typical: one(&stiffness.typical, &typical, modulus.typical)?,
        high: one(&stiffness.high, &high, modulus.high)?,
    })
}
