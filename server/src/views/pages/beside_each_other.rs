//! Two revisions of a plan side by side, as the three ways are.

use askama::Template;
use stillground::options::Point;
use stillground::site_plan::SitePlan;

use super::frame::Frame;
use super::printed::{Change, answers};
use super::ways::{Row, rows};
use crate::drawing::way;
use crate::views::svg;

/// The page.
#[derive(Template)]
#[template(path = "pages/ways-with.html")]
pub struct BesidePage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages stand.
    pub root: String,
    /// Title and section of each.
    pub sides: Vec<(String, String)>,
    /// A line of figures for each thing that is compared.
    pub rows: Vec<Row>,
    /// Answers in which they differ.
    pub answers: Vec<Change>,
}

impl BesidePage {
    /// The page of two revisions, the one that stands last.
    #[must_use]
    pub fn of(
        frame: Frame,
        root: &str,
        revisions: [u32; 2],
        plans: [&SitePlan; 2],
        points: &[Point; 2],
    ) -> Self {
        let units = plans[1].units.unwrap_or_default();
        let extent = way::Extent::of(points.iter());
        let names = ["way-before", "way-now"];
        let titles = [
            format!("Revision {}", revisions[0]),
            format!("Revision {}, which stands", revisions[1]),
        ];
        let sides = titles
            .into_iter()
            .zip(names)
            .zip(points)
            .map(|((title, name), point)| {
                let drawing = way::draw(name, point, extent, units);
                (title, svg::write(&drawing))
            });
        Self {
            frame,
            root: root.to_owned(),
            sides: sides.collect(),
            rows: rows(&[&points[0], &points[1]], units),
            answers: answers(plans[0], plans[1]),
        }
    }
}
