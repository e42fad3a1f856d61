//! What of a design is held against its neighbour's, each figure with the size below which nobody asks how it moves.

use stillground::design::Design;
use stillground::notes::{self, AssumedValue, Check};
use stillground::stages::anchors::{Borne, Verdict};
use stillground::stages::ground_stiffness::Stiffness;
use stillground::stages::motion::Wind;
use stillground::units::{
    Outcome, hertz, hour, kilonewton, kilopascal, megapascal, metre, newton_metre,
};

/// A figure under its name.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Where it stands, for instance `check block.bearing`.
    pub name: String,
    /// Its value, in the unit that its name says.
    pub value: f64,
    /// Smaller than this it is as good as nothing.
    pub idle: f64,
}

/// What a rule takes as one of a few kinds, each with the rule: where a kind changes, figures step with it.
pub type Kinds = Vec<(&'static str, String)>;

/// A use beyond which nobody asks how far a check is from holding.
const HOPELESS: f64 = 10.0;
/// Below this use nobody looks.
const IDLE_USE: f64 = 0.05;
/// Growth of a star that nobody sees.
const IDLE_GROWTH: f64 = 0.005;
/// A star that keeps less of its peak was thrown out of its own image for a while. The least-squares fit of one Gaussian then holds
/// either the brighter image or all of it, and steps from one to the other.
const FITTED_AS_ONE: f64 = 0.9;
/// A turn that nobody measures, arcseconds.
const IDLE_ARCSEC: f64 = 0.05;
/// A settling that nobody waits for, seconds.
const IDLE_S: f64 = 0.5;

/// How much of a check's capacity is used: past all hope where it has none, none where somebody has to look.
#[must_use]
pub fn usage(check: &Check) -> Option<f64> {
    match (check.utilisation, check.verdict) {
        (Some(used), _) => Some(used),
        (None, notes::Verdict::Fails) => Some(f64::INFINITY),
        (None, _) => None,
    }
}

/// The stiffnesses of an end of the ground, SI.
#[must_use]
pub fn stiffnesses(held: &Stiffness) -> Vec<(&'static str, f64)> {
    [
        ("rocking_x", held.rocking_x.map(|k| k.value)),
        ("rocking_y", held.rocking_y.map(|k| k.value)),
        ("horizontal_x", held.horizontal_x.map(|k| k.value)),
        ("horizontal_y", held.horizontal_y.map(|k| k.value)),
        ("vertical", held.vertical.map(|k| k.value)),
        ("torsion", held.torsion.map(|k| k.value)),
    ]
    .into_iter()
    .filter_map(|(name, k)| Some((name, k?)))
    .collect()
}

/// Sizes that the engine chooses where the plan leaves them open.
#[must_use]
pub fn sizes(design: &Design) -> Vec<Figure> {
    let mut all = Gathered::default();
    for (name, size) in [
        ("block.length_m", design.block.length),
        ("block.width_m", design.block.width),
        ("block.depth_m", design.block.depth),
        ("block.upstand_m", design.block.upstand),
    ] {
        // Sizes are chosen in steps of 50 mm.
        all.put(name, metre::get(size), 0.501);
    }
    all.0
}

/// Figures that follow from a plan whose sizes are said.
#[must_use]
pub fn figures(design: &Design) -> Vec<Figure> {
    let mut all = Gathered::default();
    for check in &design.checks {
        if let Some(used) = usage(check) {
            all.put(format!("check {}", check.id), used.min(HOPELESS), IDLE_USE);
        }
    }
    ground(design, &mut all);
    column(design, &mut all);
    motion(design, &mut all);
    for task in &design.schedule {
        all.put(
            format!("done {}", task.id),
            task.done_h,
            // A task that no longer fits into a day is done the next.
            240.0,
        );
    }
    all.0
}

/// Which studs each code takes as pulled, as a group and at an edge.
#[must_use]
pub fn studs_that_are_pulled(design: &Design) -> String {
    let code = |found: &Option<Verdict>| {
        found.as_ref().map(|found| {
            let pulled = |borne: &Borne| kilonewton::get(borne.pull) > 0.0;
            let edge = found
                .edge
                .as_ref()
                .map(|edge| (edge.side, edge.studs.clone()));
            let each: Vec<bool> = found.each.iter().map(pulled).collect();
            (each, found.cone.studs.clone(), edge)
        })
    };
    let anchors = &design.anchors;
    format!("{:?} {:?}", code(&anchors.eurocode), code(&anchors.aci))
}

/// The kinds of this design.
#[must_use]
pub fn kinds(design: &Design) -> Kinds {
    let (torque, motion) = (&design.anchors.torque, &design.motion);
    let ceiling = torque
        .limits
        .iter()
        .find(|limit| limit.what.starts_with("the least that published sheets"));
    let opening = design
        .floor
        .opening
        .map(|hole| (hole.round, hole.is_circle));
    vec![
        (
            "EN 1992-4 7.2.1 and 7.2.2.5, ACI 318-19 17.5.1: the studs that are pulled are one group, those nearest to an edge one row",
            studs_that_are_pulled(design),
        ),
        (
            "a stated torque above the ceiling gives way to the recommended one",
            format!(
                "{}",
                newton_metre::get(torque.used) > newton_metre::get(torque.high)
            ),
        ),
        (
            "a stud within five diameters of an edge has half the ceiling of torque until the product's sheet is there",
            format!("{:?}", ceiling.map(|limit| newton_metre::get(limit.torque))),
        ),
        (
            "a torque is a figure that a wrench shows: fives above 50 N m, whole ones above 10, tenths below",
            format!("{:?} {:?}", torque.high, torque.recommended),
        ),
        (
            "a guider corrects within an exposure that is longer than its interval",
            format!("{:?}", design.motion.wind.as_ref().map(is_guided)),
        ),
        (
            "the circle of studs is chosen in whole tens of millimetres inside the plate",
            format!("{:?}", taken(design, "anchors.circle_diameter_mm")),
        ),
        (
            "a deck stands on a whole number of posts",
            format!("{}", design.floor.supports.len()),
        ),
        (
            "a wall's edge that lies within the beam's own radius leaves no sight below the zenith",
            format!("{:?}", unseen(design)),
        ),
        (
            "on a floor the movement rises and falls with the distance: the farthest place that shows is another, or none",
            format!(
                "{:?}",
                [&motion.quiet, &motion.quiet_walking].map(|quiet| quiet.map(|q| q.anywhere))
            ),
        ),
        (
            "a block that reaches the rock stands on it, held by dowels",
            format!("{}", design.block.dowels.is_some()),
        ),
        (
            "no footing stands on topsoil: where it reaches the base, no better ground is counted on",
            format!(
                "{:?}",
                used(design, "excavation.topsoil").map(|used| used > 1.0)
            ),
        ),
        (
            "EN 1992-4 7.2.1.7: far enough from an edge there is nothing to split",
            format!(
                "{:?}",
                used(design, "anchors.splitting").map(|used| used > 0.0)
            ),
        ),
        (
            "a pit's sides slope by the type of the soil, which is another where water is near",
            format!("{}", design.excavation.slope_deg),
        ),
        (
            "a base in the ground that freezes moves with the frost, one below it hardly",
            format!("{}", design.block.depth < design.ground.frost_depth),
        ),
        (
            "EN 1993-1-8 Table 6.2: a plate's edge pries until its studs stretch too far",
            format!(
                "{:?}",
                design
                    .workings
                    .iter()
                    .find(|line| line.id == "anchors.plate")
                    .map(|line| line.formula.contains("4 M_pl"))
            ),
        ),
        (
            "no face stands that water seeps from",
            format!(
                "{:?}",
                design
                    .ground
                    .groundwater_depth
                    .map(|water| water < design.excavation.depth)
            ),
        ),
        (
            "the hole in the floor goes round the block, the base plate or the column, by the height of the floor",
            format!("{opening:?}"),
        ),
    ]
}

/// Whether a guider changes what the wind does within an exposure.
fn is_guided(wind: &Wind) -> bool {
    wind.guided_rms_arcsec.to_bits() != wind.rms_arcsec.to_bits()
}

/// The walls over which nothing is seen below the zenith.
fn unseen(design: &Design) -> Vec<&str> {
    let sights = design
        .checks
        .iter()
        .filter(|check| check.id.starts_with("pier.sight_"));
    let hidden = sights.filter(|check| check.demand == Some(90.0));
    hidden.map(|check| check.id).collect()
}

/// How much of a check's capacity is used; none where the design has no such check.
fn used(design: &Design, id: &str) -> Option<f64> {
    usage(design.checks.iter().find(|check| check.id == id)?)
}

/// What was taken for an answer that the plan leaves open.
fn taken<'a>(design: &'a Design, field: &str) -> Option<&'a AssumedValue> {
    let mut all = design.assumptions.iter();
    let found = all.find(|assumption| *assumption.field == *field)?;
    Some(&found.value)
}

fn ground(design: &Design, all: &mut Gathered) {
    let found = &design.ground_stiffness;
    for (end, held) in [
        ("low", &found.low),
        ("typical", &found.typical),
        ("high", &found.high),
    ] {
        for (name, value) in stiffnesses(held) {
            all.put(format!("stiffness {name} {end}"), value, 0.0);
        }
    }
    if let Some(range) = design.ground.presumed_bearing_range {
        all.put("bearing low kPa", kilopascal::get(range.low), 0.0);
        all.put("bearing high kPa", kilopascal::get(range.high), 0.0);
    }
    if let Some(range) = design.ground.shear_modulus {
        all.put("modulus low MPa", megapascal::get(range.low), 0.0);
        all.put("modulus typical MPa", megapascal::get(range.typical), 0.0);
        all.put("modulus high MPa", megapascal::get(range.high), 0.0);
    }
    let frost = &design.block.side_frost;
    all.put("frost lift kN", kilonewton::get(frost.lift), 1.0);
    all.put("frost hold kN", kilonewton::get(frost.resistance), 1.0);
}

fn column(design: &Design, all: &mut Gathered) {
    let joint = &design.anchors.joint.stiffness;
    all.put("joint low N m/rad", joint.low.value, 0.0);
    all.put("joint typical N m/rad", joint.typical.value, 0.0);
    all.put("joint high N m/rad", joint.high.value, 0.0);
    all.put("top stiffness N/m", design.pier.top_stiffness.value, 0.0);
    all.put(
        "torque N m",
        newton_metre::get(design.anchors.torque.set),
        0.0,
    );
    for load in &design.loads.all {
        all.put(
            format!("load {} N m", load.id),
            newton_metre::get(load.moment),
            10.0,
        );
    }
    if let Some(cure) = design.anchors.setting.cure_time {
        all.put("resin cures h", hour::get(cure), 0.0);
    }
}

fn motion(design: &Design, all: &mut Gathered) {
    let motion = &design.motion;
    for (end, found) in [
        ("low", &motion.frequencies_low),
        ("typical", &motion.frequencies),
    ] {
        if let Some(&lowest) = found.first() {
            all.put(format!("frequency {end} Hz"), hertz::get(lowest), 0.0);
        }
    }
    let mut growth = |name: String, found: Option<Outcome<f64>>| {
        if let Some(found) = found {
            all.put(format!("{name} expected"), found.expected, IDLE_GROWTH);
            all.put(format!("{name} worst"), found.worst, IDLE_GROWTH);
        }
    };
    growth(
        "star growth".to_owned(),
        motion
            .left_alone
            .as_ref()
            .map(|cost| cost.star_growth_ratio),
    );
    growth("mount adds".to_owned(), motion.mount_adds_ratio);
    for rule in &motion.conduct {
        let Some(light) = rule.peak_left_ratio else {
            continue;
        };
        if light.worst >= FITTED_AS_ONE {
            growth(format!("conduct {}", rule.id), rule.star_growth_ratio);
        }
    }
    for (place, stand) in motion.stands.iter().enumerate() {
        if let Some(tilt) = stand.tilt_arcsec {
            all.put(format!("stand {place} arcsec"), tilt, IDLE_ARCSEC);
        }
    }
    for (name, arcsec) in [
        ("walk peak arcsec", motion.walk.peak_arcsec),
        ("walk worst peak arcsec", motion.walk.worst_peak_arcsec),
        ("walk rms arcsec", motion.walk.rms_arcsec),
        ("wind arcsec", motion.wind_arcsec),
        (
            "wind worst arcsec",
            motion.wind.as_ref().map(|wind| wind.worst_arcsec),
        ),
        ("heat arcsec", motion.thermal_arcsec),
    ] {
        if let Some(arcsec) = arcsec {
            all.put(name, arcsec, IDLE_ARCSEC);
        }
    }
    if let Some(wait) = motion.settle_s {
        all.put("settles s", wait, IDLE_S);
    }
    if let Some(quiet) = motion.quiet_distance_m {
        all.put("quiet at m", quiet, 1.0);
    }
}

#[derive(Default)]
struct Gathered(Vec<Figure>);

impl Gathered {
    fn put(&mut self, name: impl Into<String>, value: f64, idle: f64) {
        self.0.push(Figure {
            name: name.into(),
            value,
            idle,
        });
    }
}
