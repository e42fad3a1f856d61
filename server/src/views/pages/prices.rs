//! The page on which prices are typed.

use askama::Template;
use stillground::stages::materials::{Material, Supply};

use super::frame::Frame;
use crate::forms::prices::{PriceFault, box_of, each, units};
use crate::forms::sheet::Sheet;
use crate::planned::Planned;
use crate::views::money;

/// The page.
#[derive(Template)]
#[template(path = "pages/prices.html")]
pub struct PricesPage {
    /// The frame.
    pub frame: Frame,
    /// Where the plan's pages stand.
    pub root: String,
    /// What has to be put right: place on the page, and the sentence.
    pub faults: Vec<PriceFault>,
    /// The currency: typed, as it was shown, and what is wrong with it.
    pub currency: BoxView,
    /// The parts of the work and their boxes.
    pub groups: Vec<(&'static str, Vec<BoxView>)>,
}

/// A box.
pub struct BoxView {
    /// Name of what it prices.
    pub id: String,
    /// What it prices.
    pub label: String,
    /// How much of it is needed.
    pub quantity: String,
    /// What is typed.
    pub typed: String,
    /// What the box held when the form was first shown, and its unit.
    pub was: (String, String),
    /// Units to choose from, and whether each is chosen.
    pub units: Vec<(&'static str, String, bool)>,
    /// What it was quoted for, where that is something else now.
    pub quoted_for: Option<String>,
    /// What is wrong with it.
    pub error: Option<String>,
}

/// What a box is filled with: what stands now, and what was sent, if anything was.
pub struct Filled<'a> {
    /// What the plan has.
    pub saved: &'a Sheet,
    /// What a form brought.
    pub sent: Option<&'a Sheet>,
    /// What is wrong with it.
    pub faults: &'a [PriceFault],
}

impl Filled<'_> {
    fn shown(&self, name: &str) -> String {
        let sent = self.sent.and_then(|sheet| sheet.text(name));
        sent.or_else(|| self.saved.text(name))
            .unwrap_or_default()
            .to_owned()
    }

    fn now(&self, name: &str) -> String {
        self.saved.text(name).unwrap_or_default().to_owned()
    }

    fn error(&self, name: &str) -> Option<String> {
        self.faults
            .iter()
            .find(|(at, _)| at == name)
            .map(|(_, said)| said.clone())
    }

    /// The currency's box.
    #[must_use]
    pub fn currency(&self) -> BoxView {
        BoxView {
            id: "currency".to_owned(),
            label: "Currency".to_owned(),
            quantity: String::new(),
            typed: self.shown("currency"),
            was: (self.now("currency"), String::new()),
            units: Vec::new(),
            quoted_for: None,
            error: self.error("currency"),
        }
    }

    /// The boxes of a plan's lines and of the lengths in which they can be had, by part of the work.
    #[must_use]
    pub fn groups(&self, planned: &Planned) -> Vec<(&'static str, Vec<BoxView>)> {
        let mut groups: Vec<(&'static str, Vec<BoxView>)> = Vec::new();
        for line in &planned.design.materials {
            let heading = line.group.heading();
            let boxes = self.boxes(planned, line);
            match groups.iter_mut().find(|(known, _)| *known == heading) {
                Some((_, all)) => all.extend(boxes),
                None => groups.push((heading, boxes)),
            }
        }
        groups
    }

    fn boxes(&self, planned: &Planned, line: &Material) -> Vec<BoxView> {
        let costs = &planned.design.costs;
        let quoted_for = |id: &str| {
            let offer = costs
                .line(line.id)?
                .offers
                .iter()
                .find(|offer| offer.id == id)?;
            offer.quoted_for.clone()
        };
        let have = if line.supply == Supply::Buy {
            String::new()
        } else {
            format!(" ({})", line.supply.word())
        };
        let own = self.one(
            line.id,
            format!("{}{have}", line.item),
            money::quantity(costs, line, planned.brief.units),
            planned,
        );
        let stock = line.stock.iter().map(|stock| {
            let what = stillground::site_plan::prices::lines::line(stock.id)
                .map_or(stock.id, |line| line.what);
            let label = format!("{what}, instead");
            (stock.id, label, stock.pieces.to_string())
        });
        let stock: Vec<BoxView> = stock
            .map(|(id, label, pieces)| self.one(id, label, pieces, planned))
            .collect();
        let known = |view: BoxView| BoxView {
            quoted_for: quoted_for(&view.id),
            ..view
        };
        std::iter::once(own).chain(stock).map(known).collect()
    }

    fn one(&self, id: &str, label: String, quantity: String, planned: &Planned) -> BoxView {
        let (name, per) = (box_of(id), format!("per~{id}"));
        let all = units(id);
        let mine = stillground::site_plan::prices::lines::line(id)
            .map(|line| stillground::site_plan::prices::per(line.unit, planned.brief.units));
        let chosen = Some(self.shown(&per))
            .filter(|per| !per.is_empty())
            .or(mine.map(str::to_owned))
            .unwrap_or_default();
        BoxView {
            id: id.to_owned(),
            label,
            quantity,
            typed: self.shown(&name),
            was: (self.now(&name), self.now(&per)),
            units: all
                .into_iter()
                .map(|unit| (unit, each(unit), unit == chosen))
                .collect(),
            quoted_for: None,
            error: self.error(&name),
        }
    }
}
