//! The materials as a page to tick: by part of the work, with prices and totals where there are any.

use askama::Template;
use stillground::record::{Board, Entry};
use stillground::stages::materials::{Group, Material, Supply};

use super::frame::Frame;
use crate::planned::Planned;
use crate::views::{money, words};

/// The page.
#[derive(Template)]
#[template(path = "pages/materials.html")]
pub struct MaterialsPage {
    /// The frame.
    pub frame: Frame,
    /// Where the plan's pages stand.
    pub root: String,
    /// The plan's name in the store; empty for the example.
    pub plan_id: String,
    /// Revision that is shown.
    pub revision: u32,
    /// Whether it is the built-in example, whose ticks are kept nowhere.
    pub example: bool,
    /// Whether this link ticks.
    pub may_record: bool,
    /// Whether this link changes the plan, and with it the prices.
    pub may_edit: bool,
    /// Who ticked last in this browser.
    pub who: String,
    /// Name of the form.
    pub form: String,
    /// What was kept.
    pub notice: Option<String>,
    /// What has to be put right.
    pub faults: Vec<String>,
    /// The order; none while the plan contradicts itself.
    pub order: Option<Order>,
}

/// The order.
pub struct Order {
    /// Why nothing is to be ordered yet.
    pub judge_first: Option<&'static str>,
    /// The parts of the work.
    pub groups: Vec<GroupView>,
    /// Lines.
    pub count: usize,
    /// Lines that are there.
    pub here: usize,
    /// What all of it comes to; none without a price.
    pub total: Option<String>,
    /// The lines without a price where there are too many for a sentence.
    pub unpriced: Vec<&'static str>,
    /// What has to be said beside the total.
    pub remarks: Vec<String>,
}

/// The lines of a part of the work.
pub struct GroupView {
    /// Heading.
    pub heading: &'static str,
    /// Name on the page.
    pub id: String,
    /// Its lines that are there.
    pub here: usize,
    /// What it comes to, and how many of its lines have no price; none without a price.
    pub total: Option<(String, usize)>,
    /// The lines.
    pub lines: Vec<LineView>,
}

/// A line.
pub struct LineView {
    /// Its name.
    pub id: &'static str,
    /// What.
    pub item: String,
    /// How much.
    pub quantity: String,
    /// Said where it is not bought.
    pub supply: Option<&'static str>,
    /// What for, and what to look for.
    pub said: String,
    /// The whole lengths in which it can be had.
    pub stock: String,
    /// Price and amount; none without a price.
    pub cost: Option<CostView>,
    /// Whether its box is ticked.
    pub ticked: bool,
    /// Whether it was there when the page was written.
    pub here: bool,
    /// By whom and when it was ticked.
    pub by: Option<String>,
    /// What was ticked, where the line is something else now.
    pub ticked_as: Option<String>,
}

/// A line's price.
pub struct CostView {
    /// Price and quantity.
    pub how: String,
    /// What it comes to.
    pub total: String,
    /// What it was quoted for, where that is something else now.
    pub quoted_for: Option<String>,
}

impl Order {
    /// The order of a plan as its record leaves it; `ticked` says of a line whether a form that came back had it ticked.
    #[must_use]
    pub fn of(planned: &Planned, board: &Board<'_>, ticked: &dyn Fn(&str) -> Option<bool>) -> Self {
        let design = &planned.design;
        let mut groups: Vec<GroupView> = Vec::new();
        for line in &design.materials {
            let view = LineView::of(planned, line, board.here(line.id), ticked(line.id));
            let heading = line.group.heading();
            match groups.iter_mut().find(|group| group.heading == heading) {
                Some(group) => group.lines.push(view),
                None => groups.push(GroupView {
                    lines: vec![view],
                    ..GroupView::of(planned, line.group)
                }),
            }
        }
        for group in &mut groups {
            group.here = group.lines.iter().filter(|line| line.here).count();
        }
        let many = !design.costs.is_empty() && design.costs.unpriced.len() > money::MOST_NAMES;
        Self {
            judge_first: design
                .ground
                .ask_an_engineer
                .is_some()
                .then_some(words::JUDGE_FIRST),
            count: design.materials.len(),
            here: groups.iter().map(|group| group.here).sum(),
            groups,
            total: (!design.costs.is_empty())
                .then(|| money::amount(&design.costs, design.costs.total)),
            unpriced: if many {
                money::unpriced(&design.costs)
            } else {
                Vec::new()
            },
            remarks: money::remarks(design),
        }
    }
}

impl GroupView {
    fn of(planned: &Planned, group: Group) -> Self {
        let costs = &planned.design.costs;
        let cost = costs.groups.iter().find(|cost| cost.group == group);
        let heading = group.heading();
        Self {
            heading,
            id: heading.to_lowercase().replace(", ", "-").replace(' ', "-"),
            total: cost.map(|cost| (money::amount(costs, cost.total), cost.unpriced)),
            here: 0,
            lines: Vec::new(),
        }
    }
}

impl LineView {
    fn of(planned: &Planned, line: &Material, entry: Option<&Entry>, ticked: Option<bool>) -> Self {
        let costs = &planned.design.costs;
        Self {
            id: line.id,
            item: line.item.clone(),
            quantity: money::quantity(costs, line, planned.brief.units),
            supply: (line.supply != Supply::Buy).then(|| line.supply.word()),
            said: [&line.purpose, &line.note]
                .map(|said| words::sentence(said))
                .join(" ")
                .trim()
                .to_owned(),
            stock: money::lengths_sentence(costs, line),
            cost: cost(planned, line),
            ticked: ticked.unwrap_or(entry.is_some()),
            here: entry.is_some(),
            by: entry.map(by),
            ticked_as: entry
                .and_then(|entry| entry.text.clone())
                .filter(|was| *was != line.item && *was != line.other_words),
        }
    }
}

fn by(entry: &Entry) -> String {
    let at = entry
        .measured_at
        .as_deref()
        .and_then(|at| at.parse().ok())
        .map(words::moment);
    [Some(entry.who.clone()), at]
        .into_iter()
        .flatten()
        .collect::<Vec<_>>()
        .join(", ")
}

fn cost(planned: &Planned, line: &Material) -> Option<CostView> {
    let costs = &planned.design.costs;
    let cost = costs.line(line.id)?;
    let offer = cost.offer()?;
    Some(CostView {
        how: format!(
            "{} × {}",
            money::counted(offer),
            money::per_unit(costs, offer)
        ),
        total: money::amount(costs, cost.total),
        quoted_for: offer.quoted_for.clone(),
    })
}
