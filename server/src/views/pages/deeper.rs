//! What lies deeper than a step's figures: chapters of words and tables, the same beside the questions and on the plan.

mod codes;
mod flexure;
mod floor;
mod ground;
mod north;
mod star;
mod torque;

use stillground::figure::{UnitOf, Units};
use stillground::stages::motion::Motion;
use stillground::units::Spread;

use crate::forms::step::Step;
use crate::planned::Planned;

/// Something worth a closer look.
#[derive(Debug, Clone)]
pub struct Chapter {
    /// Heading.
    pub title: &'static str,
    /// What a step says beside its questions anyway, and what is said here only where the chapter stands alone.
    pub told: Vec<String>,
    /// Sentences before the table.
    pub words: Vec<String>,
    /// The figures; none where words say it all.
    pub table: Option<Table>,
    /// Sentences behind the table.
    pub after: Vec<String>,
}

/// Figures in rows, each row with its name.
#[derive(Debug, Clone)]
pub struct Table {
    /// What the names are.
    pub names: &'static str,
    /// Headings of the figures' columns.
    pub columns: Vec<String>,
    /// A row's name and figures.
    pub rows: Vec<(String, Vec<String>)>,
}

impl Table {
    /// Each figure of a row with the heading of its column.
    #[must_use]
    pub fn cells<'a>(&'a self, row: &'a (String, Vec<String>)) -> Vec<(&'a str, &'a str)> {
        self.columns
            .iter()
            .map(String::as_str)
            .zip(row.1.iter().map(String::as_str))
            .collect()
    }
}

/// The chapters of a step.
#[must_use]
pub fn of(step: Step, planned: &Planned) -> Vec<Chapter> {
    match step {
        Step::Floor => star(&planned.design.motion, planned.brief.units)
            .into_iter()
            .chain(people(planned))
            .collect(),
        Step::Anchors => [torque::chapters(planned), flexure::chapters(planned)].concat(),
        Step::Footing => ground::chapters(planned),
        Step::Site if planned.brief.site.stated.latitude_deg.is_some() => north::chapters(planned),
        Step::Site | Step::Excavation | Step::Pier | Step::Plan => Vec::new(),
    }
}

/// The chapters about the star.
#[must_use]
pub fn star(motion: &Motion, units: Units) -> Vec<Chapter> {
    star::chapters(motion, units)
}

/// The chapters about people on the floor.
#[must_use]
pub fn people(planned: &Planned) -> Vec<Chapter> {
    floor::chapters(planned)
}

/// The chapters about true north, whatever is known of the place.
#[must_use]
pub fn north(planned: &Planned) -> Vec<Chapter> {
    north::chapters(planned)
}

/// What a step explains in any case, open to the eye.
#[must_use]
pub fn shown(step: Step, planned: &Planned) -> Vec<Chapter> {
    match step {
        Step::Anchors => [torque::lesson(planned), codes::chapters(planned)].concat(),
        Step::Site | Step::Excavation | Step::Footing | Step::Pier | Step::Floor | Step::Plan => {
            Vec::new()
        }
    }
}

/// Figures in the softest ground considered likely, the typical and the stiffest.
fn by_ground<T>(spread: Option<Spread<T>>, unit: impl UnitOf<T>, units: Units) -> Vec<String> {
    match spread {
        Some(spread) => [spread.low, spread.typical, spread.high]
            .map(|one| units.say(one, unit))
            .to_vec(),
        None => vec!["not known".to_owned(); 3],
    }
}

/// Headings of what [`by_ground`] says.
fn grounds() -> Vec<String> {
    ["Soft ground", "Typical", "Stiff"]
        .map(str::to_owned)
        .to_vec()
}

#[cfg(test)]
mod tests {
    use stillground::halfspace::NoShelf;
    use stillground::site_plan::SitePlan;

    use super::*;

    fn planned(plan: &SitePlan) -> Planned {
        Planned::of(plan, &NoShelf).unwrap()
    }

    fn example() -> SitePlan {
        serde_json::from_str(include_str!("../../../../tests/examples/quarry-lane.json")).unwrap()
    }

    #[test]
    fn every_row_has_a_figure_for_every_column() {
        for plan in [SitePlan::unknown(), example()] {
            let planned = planned(&plan);
            for chapter in [Step::Footing, Step::Floor, Step::Anchors]
                .into_iter()
                .flat_map(|step| [of(step, &planned), shown(step, &planned)].concat())
            {
                let Some(table) = chapter.table else { continue };
                assert!(!table.rows.is_empty(), "{}", chapter.title);
                for (name, figures) in &table.rows {
                    assert_eq!(
                        figures.len(),
                        table.columns.len(),
                        "{}: {name}",
                        chapter.title
                    );
                    assert!(
                        figures.iter().all(|figure| !figure.is_empty()),
                        "{}: {name}",
                        chapter.title
                    );
                }
            }
        }
    }

    #[test]
    fn readers_in_imperial_units_meet_no_metric_torque_force_or_distance() {
        let planned = planned(&SitePlan {
            units: Some(Units::Imperial),
            ..example()
        });
        for chapter in [Step::Footing, Step::Floor, Step::Anchors]
            .into_iter()
            .flat_map(|step| [of(step, &planned), shown(step, &planned)].concat())
        {
            let table = chapter.table.iter().flat_map(|table| {
                table
                    .rows
                    .iter()
                    .flat_map(|row| row.1.iter())
                    .chain(&table.columns)
            });
            for said in table.chain(&chapter.words).chain(&chapter.after) {
                // The number in newton metres is one of the readings and stays.
                let said = said.replace('\u{a0}', " ").replace("180 N m", "");
                assert!(
                    ![" N m", " kN", " m/s", " mm", "MN m", "at 1 m"]
                        .iter()
                        .any(|unit| said.contains(unit)),
                    "{}: {said}",
                    chapter.title
                );
            }
        }
    }

    #[test]
    fn whatever_is_known_the_step_says_what_180_does_to_an_m16_and_why_180_kilograms_cannot_be() {
        for plan in [SitePlan::unknown(), example()] {
            let chapters = shown(Step::Anchors, &planned(&plan));
            let lesson = &chapters[0];
            let rows: Vec<&str> = lesson
                .table
                .as_ref()
                .unwrap()
                .rows
                .iter()
                .map(|row| row.0.as_str())
                .collect();
            assert_eq!(&rows[..3], ["180 N m", "180 lbf ft", "180 kgf m"]);
            assert!(rows[3].starts_with("This plan"), "{rows:?}");
            let said = lesson.after.join(" ").replace('\u{a0}', " ");
            assert!(
                said.contains("358 MPa")
                    && said.contains("62 %")
                    && said.contains("552 kN")
                    && said.contains("cannot be"),
                "{said}"
            );
            let codes = chapters[1].table.as_ref().unwrap();
            assert_eq!(
                codes.columns,
                ["By EN 1992-4", "By ACI 318-19", "What would raise it"]
            );
            assert!(
                chapters[1].words.iter().all(
                    |said| said.contains("fails first") && said.contains("To make it stronger")
                )
            );
        }
    }

    #[test]
    fn a_stated_torque_of_180_is_read_in_three_ways_and_the_one_in_kilograms_is_refused() {
        let mut plan = example();
        plan.anchors.torque_n_m = Some(180.0);
        let chapters = of(Step::Anchors, &planned(&plan));
        let kilos = chapters
            .iter()
            .find(|chapter| chapter.title.contains("kilos"))
            .unwrap();
        let said = kilos.told.join(" ").replace('\u{a0}', " ");
        assert!(
            said.contains("180 N m") && said.contains("180 kgf m") && said.contains("180 lbf ft"),
            "{said}"
        );
        assert!(said.contains("break"), "{said}");
    }
}
