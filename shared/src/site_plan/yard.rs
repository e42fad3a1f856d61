//! The yard: which rows of the catalogue are kept where the parts come from. A house puts it into the plan that new plans start
//! from; without one, every row of the family is chosen from.

use serde::{Deserialize, Serialize};

use crate::field::Problem;
use crate::figure::Unit;
use crate::rules::tubes::{self, Family, Tube};
use crate::site_plan::SitePlan;
use crate::site_plan::anchors::Size;
use crate::stock::goods::{self, PLATES};

/// Most rows of one kind.
pub const MOST_ROWS: usize = 60;

/// What a yard keeps. A list that is left out keeps the whole family.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Yard {
    /// Tubes by the names of their rows, `CHS 219.1 x 8` or `NPS 8 Sch 40`.
    pub tubes: Vec<String>,
    /// Plates by the names of their rows, `20 mm` or `3/4 in`.
    pub plates: Vec<String>,
    /// Threads of rod.
    pub sizes: Vec<Size>,
    /// Longest rod, m.
    pub longest_rod_m: Option<f64>,
}

impl Yard {
    /// Whether nothing was said.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// Whether a tube is kept.
    pub fn keeps_tube(&self, tube: &Tube) -> bool {
        self.tubes.is_empty()
            || self
                .tubes
                .iter()
                .any(|name| tubes::by_name(name).is_some_and(|kept| kept.name == tube.name))
    }

    /// Whether a plate is kept, by the name of its row.
    pub fn keeps_plate(&self, row: &str) -> bool {
        self.plates.is_empty() || self.plates.iter().any(|kept| kept == row)
    }

    /// Whether rod of a thread is kept.
    pub fn keeps_size(&self, size: Size) -> bool {
        self.sizes.is_empty() || self.sizes.contains(&size)
    }
}

/// What is wrong with a plan's yard: rows that the catalogue does not have, or not in the family that is sold.
pub fn problems(plan: &SitePlan) -> Vec<Problem> {
    let (yard, stock) = (&plan.yard, plan.family());
    let mut problems = Vec::new();
    let mut wrong = |field: String, value, said| {
        problems.push(Problem {
            fields: vec![field],
            value,
            said,
        });
    };
    for (i, name) in yard.tubes.iter().enumerate() {
        let field = format!("yard.tubes[{i}]");
        match tubes::by_name(name) {
            None => wrong(
                field,
                None,
                format!("“{}” is no row of the catalogue’s tubes.", short(name)),
            ),
            Some(tube) if tube.family != Family::of(stock) => wrong(
                field,
                None,
                format!(
                    "{} is not of the {} parts that this plan is made of.",
                    tube.name,
                    stock.key()
                ),
            ),
            Some(_) => {}
        }
    }
    for (i, name) in yard.plates.iter().enumerate() {
        if goods::rows(&PLATES, stock).all(|row| row.name() != name) {
            wrong(
                format!("yard.plates[{i}]"),
                None,
                format!(
                    "“{}” is no row of the catalogue’s {} plates.",
                    short(name),
                    stock.key()
                ),
            );
        }
    }
    for (i, size) in yard.sizes.iter().enumerate() {
        if size.stock() != stock {
            wrong(
                format!("yard.sizes[{i}]"),
                None,
                format!(
                    "{} is not of the {} parts that this plan is made of.",
                    size.said(),
                    stock.key()
                ),
            );
        }
    }
    for (list, rows) in [
        ("yard.tubes", yard.tubes.len()),
        ("yard.plates", yard.plates.len()),
        ("yard.sizes", yard.sizes.len()),
    ] {
        if rows > MOST_ROWS {
            wrong(
                list.to_owned(),
                Some(rows as f64),
                format!("{rows} rows are more than the {MOST_ROWS} that are taken."),
            );
        }
    }
    if let Some(rod) = yard.longest_rod_m
        && !(0.1..=12.0).contains(&rod)
    {
        let units = plan.units.unwrap_or_default();
        let say = |metres: f64| units.say(metres, Unit::Metre);
        wrong(
            "yard.longest_rod_m".to_owned(),
            rod.is_finite().then_some(rod),
            format!(
                "{} is outside the range of {} to {}: no rod is sold shorter or longer.",
                say(rod),
                say(0.1),
                say(12.0)
            ),
        );
    }
    problems
}

/// A name that somebody wrote, no longer than fits a sentence.
fn short(name: &str) -> String {
    name.chars().filter(|c| !c.is_control()).take(40).collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;
    use crate::stock::Stock;

    fn wrong(yard: Yard) -> Vec<(String, String)> {
        let plan = SitePlan {
            stock: Some(Stock::Inch),
            yard,
            ..SitePlan::unknown()
        };
        problems(&plan)
            .into_iter()
            .map(|problem| (problem.fields.join(","), problem.said))
            .collect()
    }

    #[test]
    fn a_row_that_is_none_is_named_with_its_field() {
        let yard = Yard {
            tubes: vec![
                "NPS 8 Sch 40".into(),
                "NPS 9 Sch 40".into(),
                "CHS 219.1 x 8".into(),
            ],
            plates: vec!["3/4 in".into(), "13/17 in".into()],
            sizes: vec![Size::Unc5_8, Size::M16],
            longest_rod_m: Some(40.0),
        };
        let found = wrong(yard);
        let fields: Vec<&str> = found.iter().map(|(field, _)| field.as_str()).collect();
        assert_eq!(
            fields,
            [
                "yard.tubes[1]",
                "yard.tubes[2]",
                "yard.plates[1]",
                "yard.sizes[1]",
                "yard.longest_rod_m"
            ]
        );
        assert!(found[0].1.contains("NPS 9 Sch 40"), "{found:?}");
        assert!(found[1].1.contains("inch"), "{found:?}");
        assert!(wrong(Yard::default()).is_empty());
    }

    #[test]
    fn a_yard_narrows_what_is_chosen() {
        let mut plan = SitePlan {
            stock: Some(Stock::Inch),
            ..SitePlan::unknown()
        };
        plan.yard.tubes = vec!["NPS 10 Sch 40".into()];
        plan.yard.plates = vec!["1 in".into()];
        plan.yard.sizes = vec![Size::Unc3_4];
        let brief = crate::brief::resolve(&plan).unwrap();
        let mm = crate::units::millimetre::get;
        assert_eq!(mm(brief.pier.outside_diameter.value), 273.0);
        assert!((mm(brief.pier.plate_thickness.value) - 25.4).abs() < 1e-9);
        assert_eq!(brief.anchors.size.value, Size::Unc3_4);
    }
}
