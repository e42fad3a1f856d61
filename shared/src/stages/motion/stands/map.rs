//! The floor as a map of arcseconds.

use serde::Serialize;

use super::{PERSON_KG, arcsec, lean, rounded};
use crate::figure::{Arcsecond, Megapascal, One, Unit};
use crate::halfspace::Solved;
use crate::notes::{Notes, Working};
use crate::site_plan::floor::FloorKind;
use crate::source::Source;
use crate::stages::floor::{Floor, footprints};
use crate::stages::ground::Ground;
use crate::stages::ground_stiffness::SOURCE;
use crate::stages::ground_stiffness::uneven::Factors;
use crate::stages::motion::growth::Exposure;
use crate::units::{
    Frequency, Pressure, STANDARD_GRAVITY_M_S2, Spread, hertz, metre, metre_per_second, pascal,
};

/// Lines of the map each way; odd, so that the axis has its own.
const LINES: usize = 41;

/// Phase ωr/V_s up to which the ground follows as if at rest: its slope is then a sixth larger (Lamb 1904, computed).
const AT_REST_PHASE: f64 = 0.5;

/// Where steps reach in frequency.
const STEP_SOURCE: Source = Source::second_hand(
    "J. Acoust. Soc. Am. 120, 762",
    "2006",
    "footsteps in the ground at 20 to 90 Hz, abstract; a wave's length over 2π is mechanics",
);

/// Lean of the pier when a person stands anywhere on the floor, in typical ground.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TiltMap {
    /// Mass of the person.
    pub mass_kg: f64,
    /// East of the axis, one for each column.
    pub x_m: Vec<f64>,
    /// North of the axis, one for each row.
    pub y_m: Vec<f64>,
    /// Lean of the block, row by row from the south.
    pub tilt_arcsec: Vec<Vec<f64>>,
    /// What a person who comes there once in an exposure costs the star, at round leans within the map.
    pub costs: Vec<LeanCost>,
    /// Times this in the softest ground thought likely.
    pub soft_ground_factor: f64,
    /// Times this in the stiffest.
    pub stiff_ground_factor: f64,
    /// Within this distance the ground follows a weight that comes or goes as if at rest, at the pier's first frequency too;
    /// farther out what a step excites there arrives as a wave, and the map is an estimate. Nought where no frequency is known.
    pub at_rest_within_m: f64,
}

/// What a lean costs the star.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct LeanCost {
    /// The lean.
    pub tilt_arcsec: f64,
    /// Growth of the star over one exposure into which it comes once.
    pub star_growth_ratio: f64,
}

/// Figures of a round lean.
const ROUND: [f64; 16] = [
    1.0, 1.2, 1.4, 1.5, 1.6, 1.8, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0,
];
/// Leans that are so many times smaller than the largest one have no line of their own.
const SMALLEST_RATIO: f64 = 0.02;

/// The costs of all round leans within the map.
fn costs(exposure: &Exposure, tilts: &[Vec<f64>]) -> Vec<LeanCost> {
    let most = tilts.iter().flatten().copied().fold(0.0, f64::max);
    let round = (-6..5).flat_map(|power| ROUND.map(|digit| digit * 10f64.powi(power)));
    round
        .filter(|lean| *lean < most && *lean > SMALLEST_RATIO * most)
        .map(|lean| LeanCost {
            tilt_arcsec: lean,
            star_growth_ratio: exposure.step_growth_ratio([lean, 0.0]),
        })
        .collect()
}

#[allow(
    clippy::too_many_arguments,
    reason = "the map names all that it depends on"
)]
pub fn find(
    solved: &Solved,
    exposure: &Exposure,
    ground: &Ground,
    floor: &Floor,
    g: Spread<Pressure>,
    uneven: Spread<Factors>,
    first: Option<Frequency>,
    notes: &mut Notes,
) -> TiltMap {
    let newtons = PERSON_KG * STANDARD_GRAVITY_M_S2;
    let half = [floor.length, floor.width].map(|side| 0.5 * metre::get(side));
    let leans = Leans::new(solved, &uneven.typical, floor, half);
    let line = |half: f64, i: usize| half * (2.0 * i as f64 / (LINES - 1) as f64 - 1.0);
    let [xs, ys] = half.map(|half| {
        (0..LINES)
            .map(|i| rounded(line(half, i)))
            .collect::<Vec<f64>>()
    });
    let row = |y: &f64| {
        xs.iter()
            .map(|x| rounded(arcsec(leans.at(floor, *x, *y), newtons, g.typical)))
            .collect()
    };
    let tilt_arcsec: Vec<Vec<f64>> = ys.iter().map(row).collect();
    note(solved, &uneven.typical, newtons, g, notes);
    TiltMap {
        mass_kg: PERSON_KG,
        costs: costs(exposure, &tilt_arcsec),
        tilt_arcsec,
        x_m: xs,
        y_m: ys,
        soft_ground_factor: pascal::get(g.typical) / pascal::get(g.low) * uneven.low.lean_ratio
            / uneven.typical.lean_ratio,
        stiff_ground_factor: pascal::get(g.typical) / pascal::get(g.high) * uneven.high.lean_ratio
            / uneven.typical.lean_ratio,
        at_rest_within_m: at_rest_within(ground, first, notes),
    }
}

/// The length of a shear wave at the pier's first frequency over 2π. A step's blow reaches to 20 and 90 Hz (measured ground
/// velocities), so that it excites the pier at its own frequency whatever the pace.
fn at_rest_within(ground: &Ground, first: Option<Frequency>, notes: &mut Notes) -> f64 {
    let Some((speed, first)) = ground
        .shear_wave_speed
        .zip(first.map(hertz::get).filter(|first| *first > 0.0))
    else {
        return 0.0;
    };
    let speed = metre_per_second::get(speed.typical);
    let within = AT_REST_PHASE * speed / (2.0 * std::f64::consts::PI * first);
    notes.working(
        Working::new(
            "motion.at_rest_within",
            "Distance within which the ground follows a step as if at rest",
            "r = φ Vs/(2π f₁)",
            STEP_SOURCE,
        )
        .with("φ", AT_REST_PHASE, One)
        .with("Vs", speed, Unit::MetrePerSecond)
        .with("f₁", first, Unit::Hertz)
        .gives("r", within, Unit::Metre),
    );
    within
}

/// One line of calculation for the map's figures: a metre east of the axis.
fn note(solved: &Solved, uneven: &Factors, newtons: f64, g: Spread<Pressure>, notes: &mut Notes) {
    let lean = lean(solved, uneven, 1.0, 0.0);
    notes.working(
        Working::new(
            "motion.tilt_map",
            "Lean of the block for a person a metre east of the axis; each figure of the map is found so",
            "θ = W λ(x, y)/G, λ the turn of the block times G under a newton, by Betti's theorem, with layers",
            SOURCE,
        )
        .with("W", newtons, Unit::Newton)
        .with("λ", lean[0], One)
        .with("G", g.typical, Megapascal)
        .gives("θ", arcsec(lean, newtons, g.typical), Arcsecond),
    );
}

/// Leans at the ground's points that the floor needs: a quarter of a grid, and each post.
struct Leans {
    step: [f64; 2],
    quarter: Vec<[f64; 2]>,
    posts: Vec<([f64; 2], [f64; 2])>,
}

const QUARTER_LINES: usize = LINES / 2 + 1;

impl Leans {
    fn new(solved: &Solved, uneven: &Factors, floor: &Floor, half: [f64; 2]) -> Self {
        let lean = |x: f64, y: f64| lean(solved, uneven, x, y);
        let step = half.map(|half| half / (QUARTER_LINES - 1) as f64);
        let places =
            (0..QUARTER_LINES * QUARTER_LINES).map(|at| [at % QUARTER_LINES, at / QUARTER_LINES]);
        let on_posts = floor.kind == FloorKind::Deck;
        let quarter = if on_posts {
            Vec::new()
        } else {
            places
                .map(|[i, j]| lean(step[0] * i as f64, step[1] * j as f64))
                .collect()
        };
        let posts = if on_posts {
            floor
                .supports
                .iter()
                .map(|&post| (post, lean(post[0], post[1])))
                .collect()
        } else {
            Vec::new()
        };
        Self {
            step,
            quarter,
            posts,
        }
    }

    /// Lean for a newton on the floor, by way of where it reaches the ground.
    fn at(&self, floor: &Floor, x: f64, y: f64) -> [f64; 2] {
        let mut sum = [0.0; 2];
        for foot in footprints(floor, x, y) {
            let lean = self.on_ground(foot.x_m, foot.y_m);
            (0..2).for_each(|i| sum[i] += foot.share_ratio * lean[i]);
        }
        sum
    }

    fn on_ground(&self, x: f64, y: f64) -> [f64; 2] {
        let nearest = |place: &[f64; 2]| (place[0] - x).hypot(place[1] - y);
        if let Some((_, lean)) = self
            .posts
            .iter()
            .min_by(|a, b| nearest(&a.0).total_cmp(&nearest(&b.0)))
        {
            return *lean;
        }
        let place = |value: f64, step: f64| {
            let at = (value.abs() / step).min((QUARTER_LINES - 1) as f64);
            let cell = (at.floor() as usize).min(QUARTER_LINES - 2);
            (cell, at - cell as f64)
        };
        let ((i, s), (j, t)) = (place(x, self.step[0]), place(y, self.step[1]));
        let corner = |i: usize, j: usize, axis: usize| {
            self.quarter
                .get(j * QUARTER_LINES + i)
                .map_or(0.0, |lean| lean[axis])
        };
        let between = |axis: usize| {
            let low = (1.0 - s) * corner(i, j, axis) + s * corner(i + 1, j, axis);
            let high = (1.0 - s) * corner(i, j + 1, axis) + s * corner(i + 1, j + 1, axis);
            (1.0 - t) * low + t * high
        };
        // A place mirrored across an axis leans the block the mirrored way.
        [
            between(0).copysign(x * between(0)),
            between(1).copysign(y * between(1)),
        ]
    }
}
