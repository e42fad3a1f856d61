//! Motion: what the star does.

pub mod alone;
mod answers;
mod budget;
pub mod card;
mod check;
pub mod conduct;
mod feet;
pub mod figures;
mod followed;
pub mod footfall;
mod footsteps;
pub mod growth;
mod heat;
pub mod history;
pub mod improvement;
pub mod influence;
mod knock;
pub mod modes;
mod mount;
mod pace;
pub mod people;
mod present;
pub mod quiet;
pub mod rig;
pub mod season;
mod shape;
mod share;
pub mod stands;
mod steps;
mod summary;
pub mod system;
pub mod trail;
mod walk;
mod walk_notes;
mod walked;
mod wind;
mod workings;

use serde::Serialize;

use crate::brief::Brief;
use crate::notes::{Found, Notes};
use crate::stages::block::Block;
use crate::stages::floor::Floor;
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::GroundStiffness;
use crate::stages::pier::Pier;
use crate::units::{Frequency, Outcome, Spread, hertz};

pub use answers::{Answers, RigidLoad};
pub use budget::{Budget, Measure};
pub use conduct::Conduct;
pub use followed::{DeckSwing, StepImpulse};
pub use heat::Heat;
pub use knock::Knock;
pub use mount::Mount;
pub use pace::Paces;
pub use quiet::Quiet;
pub use season::Season;
pub use shape::ModeShape;
pub use share::{ALONE, Alone, Disturbance, StarWidth};
pub use walk::{Walk, peaks as walk_in_short};
pub use wind::{Housing, Wind};
pub use workings::stand_id;

use growth::{Cost, Exposure};
use influence::Influence;
use present::Present;
use system::Mounted;

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
    /// Growth of the star over one exposure in which somebody comes there, typical ground.
    pub star_growth_ratio: Option<f64>,
    /// Direction in which the top leans, clockwise from north.
    pub bearing_deg: Option<f64>,
}

/// What the star does.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Motion {
    /// First frequencies in typical ground.
    #[serde(rename = "frequencies_hz", with = "hertz::list")]
    pub frequencies: Vec<Frequency>,
    /// The same in the softest ground thought likely.
    #[serde(rename = "frequencies_low_hz", with = "hertz::list")]
    pub frequencies_low: Vec<Frequency>,
    /// The same in the stiffest.
    #[serde(rename = "frequencies_high_hz", with = "hertz::list")]
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
    /// Time for a tap to die to that swing.
    pub settle_s: Option<f64>,
    /// A bump by hand in full.
    pub bump: Option<Knock>,
    /// The stop of a slew.
    pub slew: Option<Knock>,
    /// The end of a flip across the meridian, when both axes stop together.
    pub flip: Option<Knock>,
    /// Lean of the polar axis in a year; null where the ground cannot be presumed.
    pub season: Option<Season>,
    /// What the pier does with its load bolted to it: the pier is judged by this.
    pub rigid_load: RigidLoad,
    /// What the star comes to with nobody there, on the pier alone; null where it is not known.
    pub left_alone: Option<Cost>,
    /// Growth that the mount's own softness adds to that.
    pub mount_adds_ratio: Option<Outcome<f64>>,
    /// Swing that widens the star by what is asked, the figure that the trade speaks of.
    pub budget_arcsec: f64,
    /// What is asked, in full.
    pub budget: Budget,
    /// Distance from the pier's axis beyond which a person who stands there costs the star less than is asked, in the
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
}

/// Finds what the star does. `influence` is what a weight on the ground does to the block, where that is solved.
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
    floor: &Floor,
    influence: Option<&dyn Influence>,
) -> Found<Motion> {
    let mut notes = Notes::default();
    let budget = budget::find(brief, &mut notes);
    let exposure = Exposure::of(brief);
    let system = |mounted| system::find(brief, ground, block, stiffness, pier, mounted);
    let (solved, rigid) = (system(Mounted::Softly), system(Mounted::Rigidly));
    let heat = heat::find(brief, pier, &mut notes);
    let season = season::find(brief, ground, block, &mut notes);
    let foot = block.upstand + pier.gap;
    let of_telescope = Answers::find(brief, pier, foot, solved.as_ref(), &budget, &mut notes);
    // The same sums with another spring: their lines of calculation would only say it twice.
    let mut unsaid = Notes::default();
    let of_pier = Answers::find(brief, pier, foot, rigid.as_ref(), &budget, &mut unsaid);
    let mount = mount::find(
        brief,
        pier,
        foot,
        |mount| system::typical(brief, ground, block, stiffness, pier, Mounted::On(mount)),
        &mut notes,
    );
    let present = Present::find(
        brief,
        floor,
        rigid.as_ref(),
        influence,
        &exposure,
        &budget,
        &mut notes,
    );
    let parts = |wind| share::Parts {
        brief,
        exposure,
        system: rigid.as_ref(),
        floor,
        influence,
        walk: present.walk.in_short.as_ref(),
        wind,
        heat: &heat,
        season,
        budget: &budget,
    };
    let disturbances = share::find(&parts(of_pier.wind.as_ref()));
    let left_alone = share::left_alone(&parts(of_pier.wind.as_ref()));
    let with_mount = share::left_alone(&parts(of_telescope.wind.as_ref()));
    let modes = solved.as_ref().map(shape::shapes).unwrap_or_default();
    let rigid_modes = rigid.as_ref().map(shape::shapes).unwrap_or_default();
    let conduct = conduct::find(&conduct::Parts {
        brief,
        exposure,
        budget: &budget,
        disturbances: &disturbances,
        bump: of_telescope.bump,
        planes: solved.as_ref().map(|system| &system.typical),
        quiet: present.quiet,
    });
    let where_to_stand = present.card(
        brief,
        rigid.as_ref(),
        floor,
        influence,
        &conduct,
        &of_telescope,
    );
    let told = summary::Parts {
        brief,
        disturbances: &disturbances,
        modes: &modes,
        heat: &heat,
        season,
        budget: &budget,
        step_ratio: present.step_ratio,
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
        stands: present.stands,
        walk: present.walk,
        wind_arcsec: of_telescope.wind.as_ref().map(|wind| wind.gust_arcsec),
        wind: of_telescope.wind,
        mount,
        thermal_arcsec: Some(heat.arcsec),
        thermal_difference_k: brief.load.thermal_difference_k.value,
        heat,
        settle_s: of_telescope.bump.and_then(|bump| bump.settle_s),
        bump: of_telescope.bump,
        slew: of_telescope.slew,
        flip: of_telescope.flip,
        season,
        rigid_load: RigidLoad {
            frequencies: shape::frequencies(rigid.as_ref().map(|system| &system.typical)),
            modes: rigid_modes,
            answers: of_pier,
        },
        budget_arcsec: budget.arcsec,
        mount_adds_ratio: left_alone
            .zip(with_mount)
            .map(|(pier, all)| conduct::added(&pier, &all)),
        left_alone,
        budget,
        quiet_distance_m: present.quiet[0].map(|quiet| quiet.distance_m),
        quiet: present.quiet[0],
        quiet_walking: present.quiet[1],
        step_ratio: present.step_ratio,
        on_ground: stands::OnGround::find(
            brief, ground, block, stiffness, pier, floor, first, &mut notes,
        ),
        conduct,
        star: share::star_width(&exposure, &disturbances),
        disturbances,
        where_to_stand,
        summary,
    };
    workings::write(brief, &value, &mut notes);
    check::write(brief, &value, &mut notes);
    Found { value, notes }
}

/// The disturbances alone and the time for a bump to die in the softest ground, for plans that are tried out: without
/// histories, words and notes.
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
    let system = |mounted| system::find(brief, ground, block, stiffness, pier, mounted);
    let (solved, rigid) = (system(Mounted::Softly), system(Mounted::Rigidly));
    let heat = heat::find(brief, pier, &mut notes);
    let season = season::find(brief, ground, block, &mut notes);
    let foot = block.upstand + pier.gap;
    let answers = Answers::find(brief, pier, foot, rigid.as_ref(), &budget, &mut notes);
    let bump = solved
        .as_ref()
        .map(|system| knock::bump(system, budget.arcsec, &mut notes));
    let walk = rigid
        .as_ref()
        .zip(influence)
        .and_then(|(system, influence)| walk::peaks(brief, floor, system, influence));
    let parts = share::Parts {
        brief,
        exposure: Exposure::of(brief),
        system: rigid.as_ref(),
        floor,
        influence,
        walk: walk.as_ref(),
        wind: answers.wind.as_ref(),
        heat: &heat,
        season,
        budget: &budget,
    };
    let settle = bump.and_then(|bump| bump.worst_settle_s);
    (share::find(&parts), settle)
}
