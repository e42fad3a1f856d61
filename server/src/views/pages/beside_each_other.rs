//! Two revisions of a plan, or two plans, side by side, as the three ways are.

use askama::Template;
use stillground::options::Point;
use stillground::site_plan::SitePlan;

use super::frame::Frame;
use super::printed::{Change, answers};
use super::ways::{Row, rows};
use crate::drawing::way;
use crate::views::svg;

/// What stands beside what, each with its title, the plan of the page last.
pub enum Compared {
    /// Two revisions of one plan.
    Revisions([String; 2]),
    /// Two plans.
    Plans([String; 2]),
}

impl Compared {
    /// What the page is called.
    #[must_use]
    pub const fn heading(&self) -> &'static str {
        match self {
            Self::Revisions(_) => "Two revisions side by side",
            Self::Plans(_) => "Two plans side by side",
        }
    }
}

/// The page.
#[derive(Template)]
#[template(path = "pages/ways-with.html")]
pub struct BesidePage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages stand.
    pub root: String,
    /// What the page is called.
    pub heading: &'static str,
    /// Whether both are revisions of this plan.
    pub of_revisions: bool,
    /// What is said where no answer differs.
    pub same: &'static str,
    /// Heads of the two columns of answers.
    pub heads: [&'static str; 2],
    /// Title and section of each.
    pub sides: Vec<(String, String)>,
    /// A line of figures for each thing that is compared.
    pub rows: Vec<Row>,
    /// Answers in which they differ.
    pub answers: Vec<Change>,
}

impl BesidePage {
    /// The page of two of them, the plan of the page last.
    #[must_use]
    pub fn of(
        frame: Frame,
        root: &str,
        compared: Compared,
        plans: [&SitePlan; 2],
        points: &[Point; 2],
    ) -> Self {
        let units = plans[1].units.unwrap_or_default();
        let extent = way::Extent::of(points.iter());
        let names = ["way-before", "way-now"];
        let heading = compared.heading();
        let of_revisions = matches!(compared, Compared::Revisions(_));
        let (titles, same, heads) = match compared {
            Compared::Revisions(titles) => (
                titles,
                "No answer differs: it was saved again as it was.",
                ["Before", "Now"],
            ),
            Compared::Plans(titles) => (
                titles,
                "No answer differs.",
                ["The other plan", "This plan"],
            ),
        };
        let sides = titles
            .into_iter()
            .zip(names)
            .zip(points)
            .map(|((title, name), point)| {
                let drawing = way::draw(name, point, extent, units);
                (title, svg::write(&drawing))
            });
        let [ours, theirs] = [0, 1].map(|side: usize| plans[side].prices.currency.as_deref());
        let currency = ours.filter(|_| ours == theirs);
        Self {
            frame,
            root: root.to_owned(),
            heading,
            of_revisions,
            same,
            heads,
            sides: sides.collect(),
            rows: rows(&[&points[0], &points[1]], units, currency),
            answers: answers(plans[0], plans[1]),
        }
    }
}
