//! From a sheet of texts to a plan: good answers are taken, the others come back as faults with what was typed kept.

use stillground::field::{NumberField, Problem};
use stillground::figure::{Unit, Units};
use stillground::path;
use stillground::site_plan::{SitePlan, Stand};

use super::question::{Kind, Question};
use super::questions;
use super::sheet::Sheet;
use super::step::Step;
use super::table;
use super::typed::{self, Reading, Typed};
use crate::lookup::source::forged;

/// Something to be put right: at which fields, in which words, and the readings to choose from where a text has several.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// Paths of the fields.
    pub fields: Vec<String>,
    /// A whole sentence.
    pub said: String,
    /// Readings of an ambiguous text.
    pub readings: Vec<Reading>,
}

impl Fault {
    fn at(field: impl Into<String>, said: impl Into<String>) -> Self {
        Self {
            fields: vec![field.into()],
            said: said.into(),
            readings: Vec::new(),
        }
    }
}

impl From<Problem> for Fault {
    fn from(problem: Problem) -> Self {
        Self {
            fields: problem.fields,
            said: problem.said,
            readings: Vec::new(),
        }
    }
}

/// A plan with a step's good answers, and the faults of the others.
#[derive(Debug)]
pub struct Outcome {
    /// The plan.
    pub plan: SitePlan,
    /// What has to be put right.
    pub faults: Vec<Fault>,
}

/// Puts a step's answers into a plan. A field that the sheet does not have stays as it is.
#[must_use]
pub fn read(step: Step, base: &SitePlan, sheet: &Sheet) -> Outcome {
    let units = match sheet.text("shown_in") {
        Some("imperial") => Units::Imperial,
        Some("metric") => Units::Metric,
        _ => base.units.unwrap_or_default(),
    };
    let shown = Sheet::of(
        step,
        &SitePlan {
            units: Some(units),
            ..base.clone()
        },
    );
    let mut reader = Reader {
        sheet,
        shown,
        units,
        plan: base.clone(),
        faults: Vec::new(),
    };
    for question in questions::of(step) {
        reader.question(question);
    }
    let Reader {
        mut plan,
        mut faults,
        ..
    } = reader;
    plan.keep_chosen(base);
    if let Err(problems) = plan.validate() {
        for problem in problems.0 {
            if !problem
                .fields
                .iter()
                .any(|field| faults.iter().any(|fault| fault.fields.contains(field)))
            {
                faults.push(Fault::from(problem));
            }
        }
    }
    if let Some(problem) = forged(Some(base), &plan) {
        faults.push(Fault::from(problem));
    }
    Outcome { plan, faults }
}

/// Reads one question after another.
struct Reader<'a> {
    sheet: &'a Sheet,
    shown: Sheet,
    units: Units,
    plan: SitePlan,
    faults: Vec<Fault>,
}

impl Reader<'_> {
    fn question(&mut self, question: &'static Question) {
        match &question.kind {
            Kind::Number => {
                if let Some(field) = question.number() {
                    self.number(field);
                }
            }
            Kind::Choice { set, .. } => {
                if let Some(text) = self.sheet.text(&question.path) {
                    let key = Some(text).filter(|text| !text.is_empty());
                    if !set(&mut self.plan, key) {
                        let said = "Choose one of the answers listed.";
                        self.faults.push(Fault::at(question.path, said));
                    }
                }
            }
            Kind::Text { set, .. } => {
                if let Some(text) = self.sheet.text(&question.path) {
                    let text = text.trim();
                    set(&mut self.plan, (!text.is_empty()).then(|| text.to_owned()));
                }
            }
            Kind::Table { set, .. } => match self.sheet.text(&question.path).map(|text| (text.trim().is_empty(), table::read(text))) {
                Some((true, _)) => set(&mut self.plan, None),
                Some((_, Some(rows))) => set(&mut self.plan, Some(rows)),
                Some((_, None)) => self.faults.push(Fault::at(
                    question.path,
                    "This line cannot be read; write rows like 40: 7 / 10 with a semicolon between them, temperatures in °C.",
                )),
                None => {}
            },
            Kind::Stands => self.stands(),
            Kind::Points { set, .. } => {
                if let Some(points) = self.points(&question.path) {
                    set(&mut self.plan, points);
                }
            }
        }
    }

    fn number(&mut self, field: &'static NumberField) {
        let Some(text) = self.sheet.text(&field.path) else {
            return;
        };
        // A figure that comes back as it was shown is the saved one, to the last digit.
        if self.shown.text(&field.path) == Some(text) {
            return;
        }
        match self.typed(&field.path, field.unit) {
            Ok(value)
                if field.unit == Unit::Count && value.is_some_and(|value| value.fract() != 0.0) =>
            {
                self.faults.push(Fault::at(
                    field.path,
                    "This counts things; write a whole number.",
                ));
            }
            Ok(value) => match value.and_then(|value| field.out_of_range(value, self.units)) {
                Some(problem) => self.faults.push(problem.into()),
                None => (field.set)(&mut self.plan, value),
            },
            Err(fault) => self.faults.push(fault),
        }
    }

    /// What a box holds, or the reading of it that was chosen.
    fn typed(&self, path: &str, unit: Unit) -> Result<Option<f64>, Fault> {
        let text = self.sheet.text(path).unwrap_or_default();
        let chosen = self
            .sheet
            .text(&format!("{path}~reading"))
            .filter(|_| self.sheet.text(&format!("{path}~asked")) == Some(text));
        match typed::read(
            signed_by_compass(path, chosen.unwrap_or(text)).as_ref(),
            unit,
            self.units,
        ) {
            Typed::NotKnown => Ok(None),
            Typed::Value(value) => Ok(Some(value)),
            Typed::Bad(said) => Err(Fault::at(path, said)),
            Typed::Ask(question) => Err(Fault {
                fields: vec![path.to_owned()],
                said: question.why,
                readings: question.readings,
            }),
        }
    }

    fn stands(&mut self) {
        let list: &str = &path!(floor.stands);
        let rows = self.sheet.rows(list);
        if !self.has_list(list, rows) {
            return;
        }
        let mut stands = Vec::new();
        for i in 0..rows {
            let part = |field: &str| format!("{list}[{i}].{field}");
            let name = self
                .sheet
                .text(&part("name"))
                .unwrap_or_default()
                .trim()
                .to_owned();
            let boxes = [
                (part("x_m"), Unit::Metre),
                (part("y_m"), Unit::Metre),
                (part("mass_kg"), Unit::Kilogram),
            ];
            if name.is_empty() && self.all_empty(&boxes) {
                continue;
            }
            let Some(values) = self.row(&boxes) else {
                continue;
            };
            let name = if name.is_empty() {
                format!("Stand {}", i + 1)
            } else {
                name
            };
            stands.push(Stand {
                name,
                x_m: values[0],
                y_m: values[1],
                mass_kg: values[2],
            });
        }
        self.plan.floor.stands = if stands.is_empty() {
            self.none(list)
        } else {
            Some(stands)
        };
    }

    fn points(&mut self, list: &str) -> Option<Option<Vec<[f64; 2]>>> {
        let rows = self.sheet.rows(list);
        self.has_list(list, rows).then_some(())?;
        let mut points = Vec::new();
        for i in 0..rows {
            let boxes = [
                (format!("{list}[{i}][0]"), Unit::Metre),
                (format!("{list}[{i}][1]"), Unit::Metre),
            ];
            if self.all_empty(&boxes) {
                continue;
            }
            if let Some(values) = self.row(&boxes) {
                points.push([values[0], values[1]]);
            }
        }
        Some(if points.is_empty() {
            self.none(list)
        } else {
            Some(points)
        })
    }

    fn has_list(&self, list: &str, rows: usize) -> bool {
        rows > 0 || self.sheet.text(&format!("{list}~list")).is_some()
    }

    /// No rows: either there are none, or it is not known.
    fn none<T>(&self, list: &str) -> Option<Vec<T>> {
        self.sheet.ticked(&format!("{list}~none")).then(Vec::new)
    }

    fn all_empty(&self, boxes: &[(String, Unit)]) -> bool {
        boxes.iter().all(|(path, _)| {
            self.sheet
                .text(path)
                .is_none_or(|text| text.trim().is_empty())
        })
    }

    /// The figures of a row; each one that is missing or wrong is a fault.
    fn row(&mut self, boxes: &[(String, Unit)]) -> Option<Vec<f64>> {
        let mut values = Vec::new();
        for (path, unit) in boxes {
            match self.row_figure(path, *unit) {
                Ok(value) => values.push(value),
                Err(fault) => self.faults.push(fault),
            }
        }
        (values.len() == boxes.len()).then_some(values)
    }

    fn row_figure(&self, path: &str, unit: Unit) -> Result<f64, Fault> {
        if let (Some(text), Some(saved)) = (self.sheet.text(path), saved_figure(&self.plan, path))
            && self.units.entry(saved, unit) == text
        {
            return Ok(saved);
        }
        self.typed(path, unit)?.ok_or_else(|| {
            Fault::at(
                path,
                "This figure is missing; fill it in, or remove the row.",
            )
        })
    }
}

/// A stand's or point's figure in the saved plan.
fn saved_figure(plan: &SitePlan, path: &str) -> Option<f64> {
    let (list, rest) = path.split_once('[')?;
    let (row, part) = rest.split_once(']')?;
    let row: usize = row.parse().ok()?;
    let point = |points: &Option<Vec<[f64; 2]>>| {
        points
            .as_ref()?
            .get(row)?
            .get(usize::from(part == "[1]"))
            .copied()
    };
    if path!(floor.stands) == list {
        let stand = plan.floor.stands.as_ref()?.get(row)?;
        return Some(match part {
            ".x_m" => stand.x_m,
            ".y_m" => stand.y_m,
            _ => stand.mass_kg,
        });
    }
    point(if path!(floor.walk) == list {
        &plan.floor.walk
    } else {
        &plan.floor.supports
    })
}

/// `33.9 S` and `2.4 W` as figures with a sign.
fn signed_by_compass<'a>(path: &str, text: &'a str) -> std::borrow::Cow<'a, str> {
    let letters = if path!(site.latitude_deg) == path {
        ['N', 'S']
    } else if path!(site.longitude_deg) == path {
        ['E', 'W']
    } else {
        return text.into();
    };
    let trimmed = text.trim();
    match trimmed
        .chars()
        .next_back()
        .map(|last| last.to_ascii_uppercase())
    {
        Some(last) if last == letters[0] => trimmed[..trimmed.len() - 1].trim_end().into(),
        Some(last) if last == letters[1] => {
            format!("-{}", trimmed[..trimmed.len() - 1].trim_end()).into()
        }
        _ => text.into(),
    }
}

#[cfg(test)]
mod tests;
