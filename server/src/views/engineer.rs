//! The studs for the engineer who checks them: inputs, actions, every factor with its clause and standing, and a place to sign.
//! The page and the sheet of paper show the same.

mod codes;
mod inputs;
#[cfg(test)]
mod tests;
mod torque;
mod workings;

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Kilonewton, KilonewtonMetre, Megapascal, One, Unit, Units};
use stillground::site_plan::Code;
use stillground::stages::anchors::{Mode, Verdict};
use stillground::units::kilonewton;

pub use workings::of_the_studs;

/// A table of words.
#[derive(Debug, Clone)]
pub struct Listing {
    /// What it lists.
    pub title: String,
    /// Heads of its columns, each with its share of the width.
    pub heads: Vec<(&'static str, f64)>,
    /// Its rows.
    pub rows: Vec<Vec<String>>,
}

impl Listing {
    /// Each cell of a row with the head of its column.
    #[must_use]
    pub fn cells<'a>(&'a self, row: &'a [String]) -> Vec<(&'a str, &'a str)> {
        self.heads
            .iter()
            .map(|(head, _)| *head)
            .zip(row.iter().map(String::as_str))
            .collect()
    }
}

/// What a checking engineer reads.
#[derive(Debug, Clone)]
pub struct Checking {
    /// On what it rests.
    pub basis: Vec<String>,
    /// Both codes on one page: what is signed.
    pub summary: Listing,
    /// The tables, in the order of checking.
    pub listings: Vec<Listing>,
    /// What is confirmed by signing.
    pub statement: &'static str,
    /// What is filled in by hand.
    pub signature: [&'static str; 6],
}

/// One code's verdict.
#[derive(Debug, Clone, Copy)]
pub struct Judging<'a> {
    /// The code's name.
    pub name: &'static str,
    /// How its workings' names begin.
    pub prefix: &'static str,
    /// The code.
    pub code: Code,
    /// Whether it gives the plan's verdict.
    pub chosen: bool,
    /// The verdict.
    pub verdict: &'a Verdict,
}

impl Judging<'_> {
    /// Whether it is the European one.
    fn european(&self) -> bool {
        self.code == Code::Eurocode
    }

    /// Pull and shear together in the steel alone; none by ACI 318, which takes the worst of steel and concrete.
    #[must_use]
    pub fn in_steel(&self) -> Option<f64> {
        self.european().then_some(self.verdict.steel_interaction)
    }
}

/// Both codes' verdicts.
#[must_use]
pub fn verdicts<'a>(brief: &Brief, design: &'a Design) -> Vec<Judging<'a>> {
    let anchors = &design.anchors;
    [
        (
            "EN 1992-4",
            "anchors.eurocode.",
            Code::Eurocode,
            &anchors.eurocode,
        ),
        ("ACI 318-19", "anchors.aci.", Code::Aci, &anchors.aci),
    ]
    .into_iter()
    .filter_map(|(name, prefix, code, verdict)| {
        Some(Judging {
            name,
            prefix,
            code,
            chosen: brief.code.value == code,
            verdict: verdict.as_ref()?,
        })
    })
    .collect()
}

/// Whether there is anything for a checking engineer: studs that the chosen code has judged.
#[must_use]
pub fn has_checking(brief: &Brief, design: &Design) -> bool {
    verdicts(brief, design).iter().any(|judging| judging.chosen)
}

/// The page's content; none without studs.
#[must_use]
pub fn checking(brief: &Brief, design: &Design) -> Option<Checking> {
    if !has_checking(brief, design) {
        return None;
    }
    let both = verdicts(brief, design);
    let units = brief.units;
    let mut listings = vec![inputs::listing(brief, design), actions(design, units)];
    for judging in &both {
        listings.push(codes::studs(judging, design, units));
        listings.push(codes::modes(judging, units));
        listings.push(codes::factors(judging, design, units));
    }
    listings.extend([
        torque::listing(design, units),
        workings::foot(design, units),
    ]);
    listings.push(checks(design, units));
    listings.retain(|listing| !listing.rows.is_empty());
    Some(Checking {
        basis: basis(brief, &both, units),
        summary: codes::summary(&both, units),
        listings,
        statement: "I have checked inputs, actions, resistances and clauses above against the standards in force here and the product’s \
                    approval, and where I differ I have written it below.",
        signature: [
            "Name",
            "Registration or licence",
            "Checked against, edition",
            "Differs, or to be changed",
            "Date",
            "Signature",
        ],
    })
}

fn basis(brief: &Brief, both: &[Judging<'_>], units: Units) -> Vec<String> {
    let chosen = both
        .iter()
        .find(|judging| judging.chosen)
        .map_or("", |judging| judging.name);
    let mut worst: Vec<String> = both
        .iter()
        .map(|judging| judging.verdict.action.title.to_owned())
        .collect();
    worst.dedup();
    if worst.len() > 1 {
        worst = both
            .iter()
            .map(|judging| format!("by {} {}", judging.name, judging.verdict.action.title))
            .collect();
    }
    let mut basis = vec![
        format!(
            "Both codes are worked out; {chosen} gives the verdict. Every action is tried in every direction, with its partial factors, and each \
             way of failing stands under the action that is worst for it. Worst of all is {}.",
            worst.join(", ")
        ),
        "The plate is rigid: forces follow from a plane of strain. On grout the concrete presses on one side of a neutral axis, and a thin \
         plate pries; on nuts the studs pull and push. Holes in the plate leave play, so that shear at an edge falls on the row nearest to \
         it, straight at the edge, which is the worst direction. A force beside the axis twists the group; the stud that it loads most \
         stands for all."
            .to_owned(),
        "The standing of each source is said with it: read, quoted second-hand, or from memory. What was not read in the standard itself \
         has to be compared with it."
            .to_owned(),
    ];
    if !brief.anchors.product.known() {
        basis.push(format!(
            "No approval of a product was given: the bond strength of {} is a code’s least value, a placeholder.",
            units.say( brief.anchors.product.bond_cracked.value, Megapascal)
        ));
    }
    if brief.anchors.number() != 4 {
        basis.push("EN 1992-4 shows rectangles of up to nine fasteners; this ring is judged by the same areas and factors.".to_owned());
    }
    basis
}

fn actions(design: &Design, units: Units) -> Listing {
    let row = |action: &stillground::stages::anchors::Action| {
        let factored = action.factored(Code::Eurocode);
        let american = action.factored(Code::Aci);
        let kn = |force| units.say(force, Kilonewton);
        let knm = |moment| units.say(moment, KilonewtonMetre);
        let factor = |factored: f64, plain: f64| {
            if plain > 0.0 {
                units.say(factored / plain, One)
            } else {
                "–".to_owned()
            }
        };
        let plain = kilonewton::get(action.shear);
        vec![
            action.title.to_owned(),
            kn(action.weight),
            kn(action.shear),
            knm(action.moment),
            knm(action.torsion),
            format!(
                "{} / {}",
                factor(kilonewton::get(factored.shear), plain),
                factor(kilonewton::get(american.shear), plain)
            ),
            action.source.to_string(),
        ]
    };
    Listing {
        title: "Actions at the foot, characteristic; weight helps, and counts 1.0 by EN 1990, 0.9 by ACI 318".to_owned(),
        heads: vec![
            ("Action", 1.5),
            ("Weight", 0.7),
            ("Shear", 0.7),
            ("Moment", 0.8),
            ("Twist", 0.8),
            ("Factor EN / ACI", 0.8),
            ("Source", 1.7),
        ],
        rows: design.anchors.actions.iter().map(row).collect(),
    }
}

/// Whether a check of the anchorage is none of the ways of failing that stand in the codes' tables.
fn besides(id: &str) -> bool {
    let Some(name) = id.strip_prefix("anchors.") else {
        return false;
    };
    !name.starts_with("interaction") && Mode::ALL.iter().all(|mode| mode.key() != name)
}

fn checks(design: &Design, units: Units) -> Listing {
    let figure = |value: Option<f64>, unit| {
        value.map_or_else(|| "–".to_owned(), |value| units.say(value, unit))
    };
    let row = |check: &stillground::notes::Check| {
        vec![
            check.title.clone(),
            figure(check.demand, check.unit),
            figure(check.capacity, check.unit),
            figure(check.utilisation.map(|ratio| ratio * 100.0), Unit::PerCent),
            super::words::answer(check.verdict).to_owned(),
            check.source.to_string(),
        ]
    };
    Listing {
        title: "Checks of layout, plate, weld, foot and torque".to_owned(),
        heads: vec![
            ("What is checked", 2.0),
            ("Asked", 0.8),
            ("Can give", 0.8),
            ("Used", 0.5),
            ("Verdict", 0.7),
            ("Source", 1.7),
        ],
        rows: design
            .checks
            .iter()
            .filter(|check| besides(check.id))
            .map(row)
            .collect(),
    }
}
