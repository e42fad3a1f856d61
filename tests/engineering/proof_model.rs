//! The model that a fit tries, held against the design's own modes and against values computed apart for one bench pier: a block
//! of 1 × 1 × 0.9 m in ground of 135 m/s, a column CHS 219.1 × 6.3 × 1200 on nuts, a mount of 60 kg.

use serde_json::{Value, json};
use stillground::brief::{Brief, resolve};
use stillground::cast::Cast;
use stillground::halfspace::NoShelf;
use stillground::proof::measure::Of;
use stillground::proof::pier::{Standing, UNKNOWNS, Unknown};
use stillground::site_plan::SitePlan;
use stillground::stages::ground_stiffness::{self, GroundStiffness};
use stillground::stages::motion::rig::Axis;
use stillground::stages::motion::system::{self, Mounted};
use stillground_tests::close;

/// The bench pier with so much of its sides held.
pub fn bench(speed: f64, held: f64) -> Value {
    json!({
        "schema_version": 1,
        "site": { "soil": "firm_clay", "shear_wave_speed_m_s": speed, "unit_weight_kn_m3": 18, "poisson_ratio": 0.33 },
        "block": { "length_m": 1, "width_m": 1, "depth_m": 0.9, "upstand_m": 0.05,
                   "side_contact_from_m": 0.9 * (1.0 - held), "side_contact_to_m": 0.9 },
        "pier": { "height_m": 1.2, "outside_diameter_mm": 219.1, "wall_mm": 6.3, "fill": "none", "levelling": "nuts" },
        "load": { "mass_kg": 60, "centre_above_pier_m": 0.3, "inertia_kg_m2": 3.75, "mount_stiffness_n_m_per_rad": 200_000 },
        "floor": { "kind": "ground" }
    })
}

/// What the plan itself foresees: a knock with the mount and one without, Hz, and the lean of 80 kg at 0.8 m, arcsec.
pub fn foreseen(plan: &Value) -> [f64; 3] {
    let mut plan = plan.clone();
    plan["commissioning"] = json!({
        "knocks": [{ "direction": "x", "with_mount": true, "frequency_hz": 16 }, { "direction": "x", "with_mount": false, "frequency_hz": 50 }],
        "leans": [{ "x_m": 0.8, "y_m": 0, "mass_kg": 80, "tilt_arcsec": 0.384 }]
    });
    let found = standing(plan).standing;
    let of: Vec<&Of> = found.measures.iter().map(|measure| &measure.of).collect();
    let expected = found.expected(&MIDDLE, &of, 2).unwrap();
    [0, 1, 2].map(|i| expected[i].nearer(found.measures[i].value))
}

struct Bench {
    brief: Brief,
    cast: Cast,
    stiffness: GroundStiffness,
    standing: Standing,
}

fn standing(plan: Value) -> Bench {
    let plan: SitePlan = serde_json::from_value(plan).unwrap();
    let brief = resolve(&plan).unwrap();
    let cast = Cast::of(&brief);
    let stiffness =
        ground_stiffness::stage(&brief, &cast.ground.value, &cast.block.value, &NoShelf).value;
    let standing = Standing::of(
        &brief,
        &plan.commissioning,
        &cast.ground.value,
        &cast.block.value,
        &stiffness,
        &cast.pier.value,
        &cast.floor.value,
        &NoShelf,
    )
    .unwrap();
    Bench {
        brief,
        cast,
        stiffness,
        standing,
    }
}

const MIDDLE: [f64; UNKNOWNS] = [0.0; UNKNOWNS];

/// The basis' joint, 4.21 MN m/rad: its plates and studs are not said there, so that the design's own comes out otherwise.
fn as_there(standing: &Standing) -> [f64; UNKNOWNS] {
    let joint = Unknown::Joint as usize;
    let mut at = MIDDLE;
    at[joint] = (4.21e6_f64.ln() - standing.prior.middle[joint]) / standing.prior.sd[joint];
    at
}

/// Against the design's own first mode, which has eleven unknowns more.
#[test]
fn few_shapes_of_the_column_swing_as_the_whole_one() {
    for (speed, held) in [(135.0, 0.75), (80.0, 0.5), (220.0, 1.0)] {
        let Bench {
            brief,
            cast,
            stiffness,
            standing,
        } = standing(bench(speed, held));
        let planes = system::typical(
            &brief,
            &cast.ground.value,
            &cast.block.value,
            &stiffness,
            &cast.pier.value,
            Mounted::Softly,
        )
        .unwrap();
        for (axis, modes) in [(Axis::X, &planes.x), (Axis::Y, &planes.y)] {
            let few = standing.mounted(&MIDDLE, axis).unwrap();
            let hertz = |mode: usize| modes[mode].omega / std::f64::consts::TAU;
            close("first swing, Hz", few.hertz[0], hertz(0), 1e-3);
            close("second swing, Hz", few.hertz[1], hertz(1), 1e-2);
            for (few, whole) in few.shares.iter().zip(modes[0].shares) {
                assert!((few - whole).abs() < 0.01, "{few} {whole}");
            }
        }
    }
}

/// Computed apart on the damped rig (the basis' 3.2): 50.86 Hz and ζ .045 with the sides held, 59.5 half, 54.4 and .051 free;
/// in ground of 80 m/s 58.8 in all three, in 220 m/s 52.3 and .010. Its dashpots and the pole are this model's own, written a
/// second time; an impulse response there agreed within 2 %.
#[test]
fn a_bare_pier_is_heard_at_its_damped_pole() {
    let mut told = Vec::new();
    for (speed, held, hertz) in [
        (135.0, 1.0, 50.86),
        (135.0, 0.5, 59.5),
        (135.0, 0.0, 54.4),
        (80.0, 1.0, 58.8),
        (80.0, 0.5, 58.8),
        (220.0, 1.0, 52.3),
    ] {
        let bench = standing(bench(speed, held));
        let knock = Of::Knock {
            axis: Axis::X,
            with_mount: false,
            mode: 0,
        };
        let found = bench
            .standing
            .expected(&as_there(&bench.standing), &[&knock], 3)
            .unwrap()[0];
        told.push(format!(
            "{speed} m/s, {held}: {hertz} Hz, here {:.2} or {:.2}",
            found.values[0], found.values[1]
        ));
        if (found.nearer(hertz) / hertz - 1.0).abs() > 0.03 {
            told.push("  off".to_owned());
        }
    }
    println!("{}", told.join("\n"));
    assert!(
        !told.iter().any(|line| line == "  off"),
        "{}",
        told.join("\n")
    );
}

/// The basis' 3.2, computed apart: 200 N at the top turn the star by 18.35″, 50 N at the telescope's centre by 21.56″; 80 kg at
/// 0.8 m lean it by 0.384″, at 1.2 m by 0.255″. Its joint is 4.21 MN m/rad.
#[test]
fn a_pull_and_a_lean_are_those_of_the_basis() {
    let bench = standing(bench(135.0, 0.75));
    let top = bench.standing.top_m();
    let pull = |height_m: f64, newtons: f64| Of::Pull {
        axis: Axis::X,
        height_m,
        newtons,
    };
    let at = as_there(&bench.standing);
    let expected = |of: &Of| bench.standing.expected(&at, &[of], 2).unwrap()[0].values[0];
    close(
        "pull at the top, arcsec",
        expected(&pull(top, 200.0)),
        18.35,
        0.03,
    );
    close(
        "pull at the telescope, arcsec",
        expected(&pull(top + 0.3, 50.0)),
        21.56,
        0.03,
    );
}
