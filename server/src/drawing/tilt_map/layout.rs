//! What the map shows.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Arcsecond, One, PerCent, Unit, Units};
use stillground::stages::motion::stands::LeanCost;

use crate::drawing::floor;

/// Growth below which nothing shows: a thousandth.
const SHOWS_RATIO: f64 = 0.001;
/// Most levels that are drawn.
const MOST_LEVELS: usize = 8;

/// What the map shows, in metres and arcseconds.
#[derive(Debug, Clone)]
pub struct Layout {
    pub(super) title: &'static str,
    pub(super) units: Units,
    pub(super) floor: floor::Layout,
    pub(super) xs: Vec<f64>,
    pub(super) ys: Vec<f64>,
    pub(super) tilts: Vec<Vec<f64>>,
    /// Levels, and whether each is the budget.
    pub(super) levels: Vec<(f64, bool)>,
    pub(super) budget: f64,
    /// Tilt and bearing for each stand.
    pub(super) leans: Vec<Option<(f64, f64)>>,
    /// Growth of the star for each round lean, and for each stand.
    costs: Vec<LeanCost>,
    grown: Vec<Option<f64>>,
    mass_kg: f64,
    soft: f64,
    at_rest_within: f64,
    /// What a deck's own swing makes of a walk, and at worst; none on other floors.
    deck_swing: Option<[f64; 2]>,
}

/// Takes it out of the design; none where the ground is not solved.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let motion = &design.motion;
    let map = motion.on_ground.tilt_map.as_ref()?;
    let mut floor = floor::layout(brief, design);
    floor.without_walk();
    let leans = motion
        .stands
        .iter()
        .map(|stand| stand.tilt_arcsec.zip(stand.bearing_deg))
        .collect();
    let levels = levels(&map.tilt_arcsec, motion.budget_arcsec);
    (!levels.is_empty()).then(|| Layout {
        title: super::TITLE,
        units: brief.units,
        floor,
        xs: map.x_m.clone(),
        ys: map.y_m.clone(),
        tilts: map.tilt_arcsec.clone(),
        levels,
        budget: motion.budget_arcsec,
        leans,
        costs: map.costs.clone(),
        grown: motion
            .stands
            .iter()
            .map(|stand| stand.star_growth_ratio)
            .collect(),
        mass_kg: map.mass_kg,
        soft: map.soft_ground_factor,
        at_rest_within: map.at_rest_within_m,
        deck_swing: motion
            .walk
            .deck_swing
            .map(|swing| [swing.peak_ratio, swing.tuned_peak_ratio]),
    })
}

/// Steps between levels, coarse to fine: the first that gives enough lines is taken.
const SERIES: [&[f64]; 3] = [
    &[1.0, 2.0, 5.0],
    &[1.0, 1.5, 2.0, 3.0, 5.0, 7.0],
    &[
        1.0, 1.2, 1.4, 1.6, 1.8, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0,
    ],
];
/// Fewest levels that show the lie of the land.
const ENOUGH: usize = 6;

/// Round values within the map's, the largest of them, and the budget among them.
fn levels(tilts: &[Vec<f64>], budget: f64) -> Vec<(f64, bool)> {
    let (low, high) = tilts
        .iter()
        .flatten()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), &v| {
            (low.min(v), high.max(v))
        });
    let between = |level: &f64| *level > low && *level < high;
    let of = |series: &[f64]| -> Vec<(f64, bool)> {
        let round =
            (-6..5).flat_map(|power| series.iter().map(move |digit| digit * 10f64.powi(power)));
        round
            .filter(between)
            .filter(|level| (level / budget - 1.0).abs() > 0.1)
            .map(|level| (level, false))
            .collect()
    };
    // Near the axis every map runs to nought in lines that lie on each other: only those farther out count.
    let shows = |levels: &Vec<(f64, bool)>| {
        levels
            .iter()
            .filter(|(level, _)| *level > high / 8.0)
            .count()
            >= ENOUGH
    };
    let mut levels = SERIES
        .iter()
        .map(|series| of(series))
        .find(shows)
        .unwrap_or_else(|| of(SERIES[2]));
    levels.reverse();
    levels.truncate(MOST_LEVELS);
    levels.extend(Some(budget).filter(between).map(|level| (level, true)));
    levels.sort_by(|a, b| b.1.cmp(&a.1).then(a.0.total_cmp(&b.0)));
    levels
}

impl Layout {
    pub(super) fn say(&self, arcsec: f64) -> String {
        self.units.say(arcsec, Arcsecond)
    }

    /// What the lines mean.
    pub(super) fn words(&self) -> Vec<String> {
        let mut words = vec![format!(
            "Lines of equal lean of the block, a person of {}, typical ground.",
            self.units.say(self.mass_kg, Unit::Kilogram)
        )];
        if self.floor.on_posts() {
            words.push("The deck hands the weight to its posts: lines bend where joists and beams rest on them.".to_owned());
        }
        if let Some([usual, tuned]) = self.deck_swing {
            words.push(format!(
                "Its own swing makes a walk {} times as large, {} times where it keeps time with the pier.",
                self.units.say( usual, One),
                self.units.say( tuned, One)
            ));
        }
        if self.soft > 1.05 {
            words.push(format!(
                "In the softest ground thought likely {} times as much.",
                self.units.say(self.soft, One)
            ));
        }
        if self.at_rest_within > 0.0 {
            words.push(format!(
                "Beyond {} a heel’s blow arrives as a wave and tilts the ground farther than a weight at rest.",
                self.units.say(self.at_rest_within, Unit::Metre)
            ));
        }
        words.push(self.cost_words());
        words.push("Arrows: the way the top leans.".to_owned());
        words
    }

    /// What the lines cost a star.
    fn cost_words(&self) -> String {
        let drawn = |cost: &&LeanCost| {
            let near = |(level, _): &(f64, bool)| (level / cost.tilt_arcsec - 1.0).abs() < 1e-6;
            cost.star_growth_ratio >= SHOWS_RATIO && self.levels.iter().any(near)
        };
        let costs: Vec<String> = self
            .costs
            .iter()
            .filter(drawn)
            .map(|cost| {
                let tilt = self.say(cost.tilt_arcsec);
                format!("{tilt} {}", self.wider(cost.star_growth_ratio))
            })
            .collect();
        if costs.is_empty() {
            return "Somebody who comes to any of these lines once in an exposure makes the star less than a thousandth wider."
                .to_owned();
        }
        format!(
            "Somebody who comes once in an exposure makes the star wider by: {}.",
            costs.join(", ")
        )
    }

    fn wider(&self, ratio: f64) -> String {
        self.units.say(100.0 * ratio, PerCent)
    }

    /// What each stand does.
    pub(super) fn stand_words(&self) -> Vec<String> {
        let lines = self.floor.stands.iter().zip(&self.leans).zip(&self.grown);
        lines
            .map(|((stand, lean), grown)| match (lean, grown) {
                (Some((tilt, _)), Some(grown)) if *grown >= SHOWS_RATIO => format!(
                    "{}: {}, star {} wider",
                    stand.name,
                    self.say(*tilt),
                    self.wider(*grown)
                ),
                (Some((tilt, _)), _) => format!("{}: {}", stand.name, self.say(*tilt)),
                (None, _) => format!("{}: not known", stand.name),
            })
            .collect()
    }

    pub(super) fn description(&self) -> String {
        let values: Vec<String> = self
            .levels
            .iter()
            .map(|(level, _)| self.say(*level))
            .collect();
        format!(
            "{} Lines are drawn at {}. The limit of a swing all through an exposure is {}. Stands: {}.",
            self.words().join(" "),
            values.join(", "),
            self.say(self.budget),
            self.stand_words().join("; ")
        )
    }
}
