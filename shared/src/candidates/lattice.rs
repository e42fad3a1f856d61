//! The lattice: every pier that is looked at. What the person said stays; what was left open goes through its steps.

use crate::row;
use serde::Serialize;

use crate::brief::{Brief, resolve};
use crate::rules::tubes::{self, Tube};
use crate::site_plan::SitePlan;
use crate::site_plan::pier::{Fill, Levelling};
use crate::stages::motion::improvement::{NewField, NewValue};
use crate::stages::room::Room;
use crate::stock::Stock;
use crate::units::{Length, metre, millimetre};

/// Least depth that is looked at, m: a pit shallower than this is no footing.
const LEAST_DEPTH_M: f64 = 0.3;
/// Least side that is looked at, m: below it no plate of a tube in the table fits.
const LEAST_SIDE_M: f64 = 0.3;
/// Tubes are looked at up to so many times the diameter of the one that is chosen where nothing is said (judgement): wider
/// ones are not what anyone puts under this load.
const WIDEST_RATIO: f64 = 2.0;

/// The steps of each answer, for whoever wants to go through them by other means.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Lattice {
    /// Length and width of the block.
    pub sides_m: Vec<[f64; 2]>,
    /// Depth of its base.
    pub depths_m: Vec<f64>,
    /// Outside diameter and wall of the column.
    pub tubes_mm: Vec<[f64; 2]>,
    /// What the column is filled with.
    pub fills: Vec<Fill>,
    /// What the base plate stands on.
    pub levellings: Vec<Levelling>,
}

/// A block of the lattice.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// Length, width and depth.
    pub metres: [f64; 3],
}

/// A column of the lattice.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    /// Outside diameter and wall.
    pub tube_mm: [f64; 2],
    /// Fill.
    pub fill: Fill,
    /// What the plate stands on.
    pub levelling: Levelling,
}

impl Lattice {
    /// All that a plan leaves open within the room there is.
    pub fn of(plan: &SitePlan, brief: &Brief, room: &Room) -> Self {
        Self {
            sides_m: sides(plan, brief.stock.value, room),
            depths_m: depths(plan, brief.stock.value, room),
            tubes_mm: tubes_mm(plan, brief),
            fills: match plan.pier.fill {
                Some(fill) => vec![fill],
                None => Fill::ALL.to_vec(),
            },
            levellings: match plan.pier.levelling {
                Some(levelling) => vec![levelling],
                None => Levelling::ALL.to_vec(),
            },
        }
    }

    /// How many candidates it has.
    pub fn size(&self) -> usize {
        self.sides_m.len() * self.depths_m.len() * self.columns().count()
    }

    /// Every block.
    pub fn sizes(&self) -> impl Iterator<Item = Size> + '_ {
        self.sides_m.iter().flat_map(|&[length, width]| {
            self.depths_m.iter().map(move |&depth| Size {
                metres: [length, width, depth],
            })
        })
    }

    /// Every column.
    pub fn columns(&self) -> impl Iterator<Item = Column> + '_ {
        self.tubes_mm.iter().flat_map(move |&tube_mm| {
            self.fills.iter().flat_map(move |&fill| {
                self.levellings.iter().map(move |&levelling| Column {
                    tube_mm,
                    fill,
                    levelling,
                })
            })
        })
    }
}

impl Size {
    /// The plan with this block.
    pub fn put(&self, plan: &mut SitePlan) {
        let [length, width, depth] = self.metres;
        plan.block.length_m = Some(length);
        plan.block.width_m = Some(width);
        plan.block.depth_m = Some(depth);
    }
}

impl Column {
    /// The column of complete inputs.
    pub fn of(brief: &Brief) -> Self {
        let pier = &brief.pier;
        Self {
            tube_mm: [pier.outside_diameter.value, pier.wall.value].map(millimetre::get),
            fill: pier.fill.value,
            levelling: pier.levelling.value,
        }
    }

    /// The plan with this column.
    pub fn put(&self, plan: &mut SitePlan) {
        // A named tube says both by itself.
        if plan.pier.tube.is_none() {
            let [outside, wall] = self.tube_mm;
            plan.pier.outside_diameter_mm = Some(outside);
            plan.pier.wall_mm = Some(wall);
        }
        plan.pier.fill = Some(self.fill);
        plan.pier.levelling = Some(self.levelling);
    }
}

/// The plan with a block and a column, and its complete inputs; none where they contradict what was said.
pub fn tried(plan: &SitePlan, size: Option<&Size>, column: &Column) -> Option<(SitePlan, Brief)> {
    let mut plan = plan.clone();
    if let Some(size) = size {
        size.put(&mut plan);
    }
    column.put(&mut plan);
    let brief = resolve(&plan).ok()?;
    Some((plan, brief))
}

/// The answers that make one plan of another: those of sizes, fill, seat and studs in which they differ.
pub fn answers(said: &SitePlan, made: &SitePlan) -> Vec<NewField> {
    let numbers = SitePlan::numbers().filter_map(|number| {
        let value = (number.get)(made)?;
        ((number.get)(said) != Some(value)).then_some(NewField {
            field: number.path,
            value: NewValue::Number(value),
        })
    });
    let choices = [
        row!(pier.fill).row,
        row!(pier.levelling).row,
        row!(anchors.size).row,
    ];
    let choices = choices.into_iter().filter_map(|choice| {
        let key = (choice.key)(made)?;
        ((choice.key)(said) != Some(key)).then_some(NewField {
            field: choice.path,
            value: NewValue::Text(key.to_owned()),
        })
    });
    numbers.chain(choices).collect()
}

/// Equal until one meets the pit's limit, and then the other goes on alone.
fn sides(plan: &SitePlan, stock: Stock, room: &Room) -> Vec<[f64; 2]> {
    // The least depth leaves the most room where the pit's sides are battered; what does not fit deeper fails its check.
    let [long, wide] = room.at(metre::new(LEAST_DEPTH_M).min(room.depth));
    let (length, width) = (plan.block.length_m, plan.block.width_m);
    let steps = |most: Length| steps(stock, LEAST_SIDE_M, metre::get(most));
    match (length, width) {
        (Some(length), Some(width)) => vec![[length, width]],
        (Some(length), None) => steps(wide).map(|width| [length, width]).collect(),
        (None, Some(width)) => steps(long).map(|length| [length, width]).collect(),
        (None, None) => {
            let most = [long, wide].map(|side| last(stock, metre::get(side)));
            steps(if long > wide { long } else { wide })
                .map(|side| most.map(|most| side.min(most)))
                .collect()
        }
    }
}

fn depths(plan: &SitePlan, stock: Stock, room: &Room) -> Vec<f64> {
    match plan.block.depth_m {
        Some(depth) => vec![depth],
        None => steps(stock, LEAST_DEPTH_M, metre::get(room.depth)).collect(),
    }
}

/// Steps from the least to the last that is not beyond the most; the last alone where that is less.
fn steps(stock: Stock, least: f64, most: f64) -> impl Iterator<Item = f64> {
    let last = number(stock, last(stock, most));
    let first = number(stock, least).min(last);
    (first..=last).map(move |step| stock.steps_m(f64::from(step)))
}

/// The last step that is not beyond this; one step at least.
fn last(stock: Stock, most: f64) -> f64 {
    let steps = ((most / stock.step_m() + 1e-6).floor() as u32).max(1);
    stock.steps_m(f64::from(steps))
}

fn number(stock: Stock, metres: f64) -> u32 {
    (metres / stock.step_m()).round() as u32
}

/// Tubes of the stock table with what was said of the column, slimmest first.
fn tubes_mm(plan: &SitePlan, brief: &Brief) -> Vec<[f64; 2]> {
    let said = &plan.pier;
    let named = said.tube.as_deref().and_then(tubes::by_name);
    let outside = said
        .outside_diameter_mm
        .or(named.map(|tube| tube.outside_mm));
    let wall = said.wall_mm.or(named.map(|tube| tube.wall_mm));
    let own = [
        millimetre::get(brief.pier.outside_diameter.value),
        millimetre::get(brief.pier.wall.value),
    ];
    let mut found: Vec<[f64; 2]> = match (outside, wall) {
        (Some(_), Some(_)) => vec![own],
        (Some(outside), None) => tubes::stocked(brief.stock.value)
            .filter(|tube| (tube.outside_mm - outside).abs() < 1.0 && plan.yard.keeps_tube(tube))
            .map(|tube| [outside, tube.wall_mm])
            .collect(),
        (None, Some(wall)) => slim(brief.stock.value, own)
            .filter(|tube| plan.yard.keeps_tube(tube))
            .filter(|tube| wall < tube.outside_mm / 4.0)
            .map(|tube| [tube.outside_mm, wall])
            .collect(),
        (None, None) => slim(brief.stock.value, own)
            .filter(|tube| plan.yard.keeps_tube(tube))
            .map(|tube| [tube.outside_mm, tube.wall_mm])
            .collect(),
    };
    // What the planner itself chooses is always among them.
    if !found.contains(&own) {
        found.push(own);
    }
    found.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    found.dedup();
    found
}

fn slim(stock: Stock, [own, _]: [f64; 2]) -> impl Iterator<Item = Tube> {
    tubes::stocked(stock).filter(move |tube| tube.outside_mm <= WIDEST_RATIO * own + 0.5)
}
