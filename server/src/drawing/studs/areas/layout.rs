//! What the drawing of the areas shows: taken out of the design, in metres and in words.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{PerCent, SquareMillimetre, Units};
use stillground::site_plan::Code;
use stillground::stages::anchors::{Mode, Verdict};
use stillground::units::{Area, Length, kilonewton, metre, millimetre};

use crate::drawing::furniture::dimension_text;

/// What the drawing shows, in metres.
#[derive(Debug, Clone)]
pub struct Layout {
    pub(super) units: Units,
    pub(super) studs: Vec<(f64, f64)>,
    pub(super) pulled: Vec<usize>,
    pub(super) reach: f64,
    pub(super) block: (f64, f64),
    pub(super) thickness: f64,
    pub(super) edge: Option<Edge>,
    pub(super) cone_words: String,
    pub(super) edge_words: String,
}

/// What breaks off a side.
#[derive(Debug, Clone)]
pub(super) struct Edge {
    pub(super) side: &'static str,
    pub(super) row: Vec<usize>,
    pub(super) distance: f64,
    pub(super) depth: f64,
    /// Beyond the row's ends: towards the positive end of the side first.
    pub(super) spread: [f64; 2],
}

/// The verdict of the code that gives the plan's.
pub(in crate::drawing::studs) fn chosen<'a>(
    brief: &Brief,
    design: &'a Design,
) -> Option<&'a Verdict> {
    match brief.code.value {
        Code::Eurocode => design.anchors.eurocode.as_ref(),
        Code::Aci => design.anchors.aci.as_ref(),
    }
}

/// Takes it out of the design.
#[must_use]
pub fn layout(brief: &Brief, design: &Design) -> Option<Layout> {
    let verdict = chosen(brief, design)?;
    let m = |length: Length| metre::get(length);
    let block = &design.block;
    Some(Layout {
        units: brief.units,
        studs: design
            .anchors
            .studs
            .iter()
            .map(|stud| (m(stud.x), m(stud.y)))
            .collect(),
        pulled: verdict.cone.studs.clone(),
        reach: m(verdict.cone.reach),
        block: (m(block.length), m(block.width)),
        thickness: m(block.depth + block.upstand),
        edge: verdict.edge.as_ref().map(|edge| Edge {
            side: edge.side,
            row: edge.studs.clone(),
            distance: m(edge.distance),
            depth: m(edge.depth),
            spread: edge.spread.map(m),
        }),
        cone_words: cone_words(brief.units, verdict),
        edge_words: edge_words(brief.units, verdict),
    })
}

pub(super) fn used(units: Units, verdict: &Verdict, mode: Mode) -> String {
    verdict.of(mode).map_or_else(
        || "not looked at".to_owned(),
        |judged| {
            let used = units.say(judged.utilisation * 100.0, PerCent);
            if judged.action == verdict.action.id {
                used
            } else {
                format!("{used} (by {})", judged.under)
            }
        },
    )
}

pub(super) fn mm2(units: Units, area: Area) -> String {
    units.say(area, SquareMillimetre)
}

/// Studs by their numbers.
pub(super) fn named(studs: &[usize]) -> String {
    let listed: Vec<String> = studs.iter().map(ToString::to_string).collect();
    format!(
        "{} {}",
        if studs.len() == 1 { "Stud" } else { "Studs" },
        listed.join(", ")
    )
}

/// Which studs the worst action pulls.
pub(super) fn pulled_words(verdict: &Verdict) -> String {
    if verdict
        .each
        .iter()
        .any(|borne| kilonewton::get(borne.pull) > 0.0)
    {
        format!(
            "{} pulled under {}",
            named(&verdict.cone.studs),
            verdict.action.title
        )
    } else {
        "Nothing pulls a stud; if all were pulled".to_owned()
    }
}

pub(super) fn cone_words(units: Units, verdict: &Verdict) -> String {
    let cone = &verdict.cone;
    format!(
        "{}: area {}, overlaps counted once and cut at the edges, against {} of one stud. Cone used {}, bond {}.",
        pulled_words(verdict),
        mm2(units, cone.area),
        mm2(units, cone.single),
        used(units, verdict, Mode::Cone),
        used(units, verdict, Mode::Bond)
    )
}

pub(super) fn edge_words(units: Units, verdict: &Verdict) -> String {
    let Some(edge) = &verdict.edge else {
        return "Every side is so far from the studs that none breaks off.".to_owned();
    };
    format!(
        "{} pushed to the {}: area {} on the side, against {} of one stud; of the distance {} count. Edge used {}.",
        named(&edge.studs),
        edge.side,
        mm2(units, edge.area),
        mm2(units, edge.single),
        units.to_measure(millimetre::get(edge.counted)),
        used(units, verdict, Mode::Edge)
    )
}

impl Layout {
    /// Both areas in words.
    pub(super) fn description(&self) -> String {
        format!("Cones: {} Side: {}", self.cone_words, self.edge_words)
    }

    pub(super) fn number(&self, length_m: f64) -> String {
        dimension_text(self.units, length_m * 1000.0)
    }

    /// The square about a stud within the block: west, east, south, north.
    pub(super) fn square(&self, number: usize) -> [f64; 4] {
        let (x, y) = self.studs[number - 1];
        let (hx, hy) = (self.block.0 / 2.0, self.block.1 / 2.0);
        [
            (x - self.reach).max(-hx),
            (x + self.reach).min(hx),
            (y - self.reach).max(-hy),
            (y + self.reach).min(hy),
        ]
    }

    /// The squares' union as strips along y, none over another.
    pub(super) fn strips(&self) -> Vec<[f64; 4]> {
        let squares: Vec<[f64; 4]> = self
            .pulled
            .iter()
            .map(|&number| self.square(number))
            .collect();
        let mut xs: Vec<f64> = squares
            .iter()
            .flat_map(|square| [square[0], square[1]])
            .collect();
        xs.sort_by(f64::total_cmp);
        xs.windows(2)
            .filter(|pair| pair[1] - pair[0] > 1e-6)
            .flat_map(|pair| covered(&squares, pair[0], pair[1]))
            .collect()
    }
}

/// Parts of a strip that any square covers, joined where they meet.
pub(super) fn covered(squares: &[[f64; 4]], from: f64, to: f64) -> Vec<[f64; 4]> {
    let middle = (from + to) / 2.0;
    let mut spans: Vec<(f64, f64)> = squares
        .iter()
        .filter(|square| square[0] < middle && middle < square[1])
        .map(|square| (square[2], square[3]))
        .collect();
    spans.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut joined: Vec<[f64; 4]> = Vec::new();
    for (south, north) in spans {
        match joined.last_mut() {
            Some(last) if south <= last[3] => last[3] = last[3].max(north),
            _ => joined.push([from, to, south, north]),
        }
    }
    joined
}
