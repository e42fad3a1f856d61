//! The studs for the engineer who checks them: inputs, actions, every factor with its clause and standing, and a place to sign.
//! The page and the sheet of paper show the same.

mod inputs;
mod torque;

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Unit, Units};
use stillground::notes::Working;
use stillground::site_plan::Code;
use stillground::stages::anchors::{Mode, Verdict};
use stillground::units::{kilonewton, kilonewton_metre, millimetre};

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

/// The page's content; none without studs.
#[must_use]
pub fn checking(brief: &Brief, design: &Design) -> Option<Checking> {
    let both = verdicts(brief, design);
    both.iter().find(|judging| judging.chosen)?;
    let units = brief.units;
    let mut listings = vec![inputs::listing(brief, design), actions(design, units)];
    for judging in &both {
        listings.push(studs(judging, design, units));
        listings.push(modes(judging, units));
        listings.push(factors(judging, design, units));
    }
    listings.extend([torque::listing(design, units), foot(design, units)]);
    listings.push(checks(design, units));
    listings.retain(|listing| !listing.rows.is_empty());
    Some(Checking {
        basis: basis(brief, &both, units),
        summary: summary(&both, units),
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
            units.say(stillground::units::megapascal::get(brief.anchors.product.bond_cracked.value), Unit::Megapascal)
        ));
    }
    if brief.anchors.number() != 4 {
        basis.push("EN 1992-4 shows rectangles of up to nine fasteners; this ring is judged by the same areas and factors.".to_owned());
    }
    basis
}

/// Way by way, both codes in one row.
fn summary(both: &[Judging<'_>], units: Units) -> Listing {
    let kn = |force| units.say(kilonewton::get(force), Unit::Kilonewton);
    let cells = |judging: &Judging<'_>, mode: Mode| match judging.verdict.of(mode) {
        Some(judged) => {
            let used = units.say(judged.utilisation * 100.0, Unit::PerCent);
            let used = if judged.governs {
                format!("{used}, first")
            } else {
                used
            };
            [
                format!("{} of {}", kn(judged.demand), kn(judged.capacity)),
                used,
                judged.clause(judging.code),
            ]
        }
        None => ["–".to_owned(), "–".to_owned(), "–".to_owned()],
    };
    let row = |mode: Mode| {
        std::iter::once(mode.words().to_owned())
            .chain(both.iter().flat_map(|judging| cells(judging, mode)))
            .collect()
    };
    let together =
        |what: &str, of: fn(&Judging<'_>) -> Option<f64>, clause: [&str; 2]| -> Vec<String> {
            let cells = both
                .iter()
                .zip(clause)
                .flat_map(|(judging, clause)| match of(judging) {
                    Some(ratio) => [
                        "together".to_owned(),
                        units.say(ratio * 100.0, Unit::PerCent),
                        clause.to_owned(),
                    ],
                    None => ["in the next".to_owned(), "–".to_owned(), clause.to_owned()],
                });
            std::iter::once(what.to_owned()).chain(cells).collect()
        };
    let mut rows: Vec<Vec<String>> = Mode::ALL.into_iter().map(row).collect();
    rows.push(together(
        "pull and shear, steel",
        |judging| judging.in_steel(),
        ["Table 7.3", "17.8"],
    ));
    rows.push(together(
        "pull and shear, concrete; by ACI the worst of both",
        |judging| Some(judging.verdict.concrete_interaction),
        ["Table 7.3", "17.8"],
    ));
    let mut heads = vec![("Way of failing", 1.5)];
    for judging in both {
        heads.extend([(judging.name, 1.1), ("Used", 0.6), ("Clause", 0.8)]);
    }
    Listing {
        title: "Both codes: asked, of what can be given".to_owned(),
        heads,
        rows,
    }
}

fn actions(design: &Design, units: Units) -> Listing {
    let row = |action: &stillground::stages::anchors::Action| {
        let factored = action.factored(Code::Eurocode);
        let american = action.factored(Code::Aci);
        let kn = |force| units.say(kilonewton::get(force), Unit::Kilonewton);
        let knm = |moment| units.say(kilonewton_metre::get(moment), Unit::KilonewtonMetre);
        let factor = |factored: f64, plain: f64| {
            if plain > 0.0 {
                units.say(factored / plain, Unit::One)
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

fn studs(judging: &Judging<'_>, design: &Design, units: Units) -> Listing {
    let mm = |length| units.say(millimetre::get(length), Unit::Millimetre);
    let kn = |force| units.say(kilonewton::get(force), Unit::Kilonewton);
    let row = |(i, (stud, borne)): (
        usize,
        (
            &stillground::stages::anchors::Stud,
            &stillground::stages::anchors::Borne,
        ),
    )| {
        vec![
            (i + 1).to_string(),
            mm(stud.x),
            mm(stud.y),
            kn(borne.pull),
            kn(borne.shear),
            units.say(borne.utilisation * 100.0, Unit::PerCent),
        ]
    };
    Listing {
        title: format!(
            "Force in each stud by {}, under {} with its factors",
            judging.name, judging.verdict.action.title
        ),
        heads: vec![
            ("Stud", 0.5),
            ("East", 1.0),
            ("North", 1.0),
            ("Pull (− push)", 1.0),
            ("Shear", 1.0),
            ("Used, stud alone", 1.0),
        ],
        rows: design
            .anchors
            .studs
            .iter()
            .zip(&judging.verdict.each)
            .enumerate()
            .map(row)
            .collect(),
    }
}

fn modes(judging: &Judging<'_>, units: Units) -> Listing {
    let kn = |force| units.say(kilonewton::get(force), Unit::Kilonewton);
    let row = |mode: Mode| match judging.verdict.of(mode) {
        Some(judged) => vec![
            format!(
                "{}{}",
                judged.words,
                if judged.governs { ", fails first" } else { "" }
            ),
            kn(judged.demand),
            kn(judged.characteristic),
            units.say(judged.reduction_factor, Unit::One),
            kn(judged.capacity),
            units.say(judged.utilisation * 100.0, Unit::PerCent),
            judged.under.to_owned(),
            judged.source.to_string(),
        ],
        None => {
            vec![
                mode.words().to_owned(),
                "–".into(),
                "–".into(),
                "–".into(),
                "–".into(),
                "–".into(),
                "–".into(),
                mode.spared(judging.code).to_owned(),
            ]
        }
    };
    let mut rows: Vec<Vec<String>> = Mode::ALL.into_iter().map(row).collect();
    let mut together = |what: &str, ratio: f64| {
        let blank = || "–".to_owned();
        let used = units.say(ratio * 100.0, Unit::PerCent);
        rows.push(vec![
            what.to_owned(),
            blank(),
            blank(),
            blank(),
            blank(),
            used,
            blank(),
            "the two ratios by the code’s rule".to_owned(),
        ]);
    };
    if let Some(ratio) = judging.in_steel() {
        together("steel, pull and shear together", ratio);
    }
    let what = if judging.european() {
        "concrete, pull and shear together"
    } else {
        "pull and shear together, the worst of each"
    };
    together(what, judging.verdict.concrete_interaction);
    Listing {
        title: format!("Every way of failing by {}", judging.name),
        heads: vec![
            ("Way of failing", 1.5),
            ("Asked", 0.7),
            (
                if judging.european() {
                    "Characteristic"
                } else {
                    "Nominal"
                },
                1.05,
            ),
            (if judging.european() { "1/γ" } else { "φ" }, 0.5),
            ("Design", 0.7),
            ("Used", 0.5),
            ("Worst under", 1.1),
            ("Clause and standing", 1.4),
        ],
        rows,
    }
}

fn factors(judging: &Judging<'_>, design: &Design, units: Units) -> Listing {
    calculations(
        format!("Every factor by {}", judging.name),
        design
            .workings
            .iter()
            .filter(|working| working.id.starts_with(judging.prefix)),
        units,
    )
}

/// Whether a calculation stands on the checking engineer's page.
#[must_use]
pub fn of_the_studs(working: &Working) -> bool {
    ["anchors.", "joint."]
        .iter()
        .any(|prefix| working.id.starts_with(prefix))
        || working.id == "pier.base_joint_stiffness"
}

/// What is neither by one code nor by the other: actions, torque, plate, weld, flexure, stiffness.
fn foot(design: &Design, units: Units) -> Listing {
    let common = |working: &&Working| {
        of_the_studs(working)
            && !["anchors.eurocode.", "anchors.aci."]
                .iter()
                .any(|prefix| working.id.starts_with(prefix))
    };
    calculations(
        "Actions, torque, plate, weld and joint".to_owned(),
        design.workings.iter().filter(common),
        units,
    )
}

fn calculations<'a>(
    title: String,
    workings: impl Iterator<Item = &'a Working>,
    units: Units,
) -> Listing {
    let row = |working: &Working| {
        let inputs: Vec<String> = working
            .inputs
            .iter()
            .map(|input| {
                format!(
                    "{}\u{a0}=\u{a0}{}",
                    input.symbol,
                    units.say(input.value, input.unit)
                )
            })
            .collect();
        vec![
            working.title.clone(),
            working.formula.to_owned(),
            if inputs.is_empty() {
                "–".to_owned()
            } else {
                inputs.join(", ")
            },
            format!(
                "{}\u{a0}=\u{a0}{}",
                working.symbol,
                units.say(working.value, working.unit)
            ),
            working.source.to_string(),
        ]
    };
    Listing {
        title,
        heads: vec![
            ("What is found", 1.3),
            ("Formula", 1.7),
            ("With", 1.8),
            ("Result", 1.1),
            ("Clause and standing", 1.3),
        ],
        rows: workings.map(row).collect(),
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
            super::words::mark(check.verdict).to_owned(),
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

#[cfg(test)]
mod tests {
    use super::*;
    use stillground::brief::resolve;
    use stillground::design::design;
    use stillground::halfspace::NoShelf;
    use stillground::site_plan::SitePlan;

    fn checked(change: impl FnOnce(&mut SitePlan)) -> Checking {
        let mut plan = SitePlan::unknown();
        change(&mut plan);
        let brief = resolve(&plan).unwrap();
        checking(&brief, &design(&brief, &NoShelf)).unwrap()
    }

    #[test]
    fn every_row_fills_its_columns_and_both_codes_have_every_way_of_failing() {
        for checking in [
            checked(|_| ()),
            checked(|plan| {
                plan.pier.levelling = Some(stillground::site_plan::pier::Levelling::Grout)
            }),
        ] {
            for listing in checking.listings.iter().chain([&checking.summary]) {
                assert!(!listing.rows.is_empty());
                for row in &listing.rows {
                    assert_eq!(row.len(), listing.heads.len(), "{}", listing.title);
                    assert!(
                        row.iter()
                            .all(|cell| !cell.is_empty() && !cell.contains("not known")),
                        "{}: {row:?}",
                        listing.title
                    );
                }
            }
            for name in ["EN 1992-4", "ACI 318-19"] {
                let modes = checking
                    .listings
                    .iter()
                    .find(|listing| listing.title == format!("Every way of failing by {name}"))
                    .unwrap();
                // Pull and shear together: two rules by EN 1992-4, one by ACI 318.
                assert_eq!(
                    modes.rows.len(),
                    Mode::ALL.len() + if name.starts_with("EN") { 2 } else { 1 }
                );
                assert_eq!(
                    modes
                        .rows
                        .iter()
                        .filter(|row| row[0].ends_with("fails first"))
                        .count(),
                    1,
                    "{name}"
                );
                let factors = checking
                    .listings
                    .iter()
                    .find(|listing| listing.title == format!("Every factor by {name}"))
                    .unwrap();
                assert!(
                    factors
                        .rows
                        .iter()
                        .all(|row| row[4].contains("EN 1992-4") || row[4].contains("ACI 318")),
                    "{name}"
                );
            }
        }
    }

    #[test]
    fn a_reader_in_imperial_units_meets_no_metric_one() {
        let checking = checked(|plan| plan.units = Some(Units::Imperial));
        for cell in checking
            .listings
            .iter()
            .flat_map(|listing| listing.rows.iter().flatten())
        {
            let cell = cell.replace('\u{a0}', " ");
            for unit in [" kN", " N m", " mm,", " MPa", " mm²"] {
                assert!(
                    !cell.ends_with(unit.trim_end_matches(','))
                        && !cell.contains(&format!("{unit},")),
                    "{cell}"
                );
            }
        }
    }
}
