//! The boxes of a task: what is asked, what the plan expects, what was found so far.

use stillground::record::{Asks, Item};

use super::desk::Desk;
use super::log::verdict;
use super::means::{self, Meaning};
use crate::forms::record::box_of;
use crate::forms::sheet::Sheet;

/// A box.
#[derive(Debug, Clone)]
pub struct BoxView {
    /// Its name in the form.
    pub name: String,
    /// Its name on the page.
    pub id: String,
    /// What is measured.
    pub title: String,
    /// What the plan expects.
    pub expected: String,
    /// How to look; empty where the box before says the same.
    pub how: String,
    /// What each finding would mean; empty where the box before says the same.
    pub means: Vec<Meaning>,
    /// `number`, `choice`, `text`, `date` or `datetime-local`; `page` where it is entered on a page of its own.
    pub kind: &'static str,
    /// The page on which it is entered; empty where it is entered here.
    pub way: &'static str,
    /// Unit of a bare figure.
    pub unit: &'static str,
    /// Answers to choose from: name, words, whether it is chosen.
    pub options: Vec<(&'static str, String, bool)>,
    /// The answer in place of a figure, and whether it is ticked.
    pub none: Option<(String, bool)>,
    /// What is typed.
    pub typed: String,
    /// What is wrong with it.
    pub error: Option<String>,
    /// Readings of an ambiguous text: what to write, and how it reads.
    pub readings: Vec<(String, String)>,
    /// What was found so far, the last one last.
    pub found: Vec<FoundView>,
    /// Name of the last entry, which a correction supersedes.
    pub last: Option<String>,
}

/// What was found.
#[derive(Debug, Clone)]
pub struct FoundView {
    /// The figure or answer.
    pub found: String,
    /// What follows, in words.
    pub verdict: &'static str,
    /// By whom and when.
    pub by: String,
}

/// The same measured at each of several parts: what is said of all stands once, above a box for each.
#[derive(Debug, Clone)]
pub struct EachView {
    /// What is measured at each.
    pub legend: String,
    /// Its name on the page.
    pub id: String,
    /// What the plan expects of each.
    pub expected: String,
    /// How to look.
    pub how: String,
    /// What each finding would mean.
    pub means: Vec<Meaning>,
    /// The boxes, each with its part's name and the rest of its title.
    pub boxes: Vec<(String, String, BoxView)>,
}

/// What a task asks.
#[derive(Debug, Clone)]
pub enum Asked {
    /// One thing.
    One(Box<BoxView>),
    /// The same thing at each part.
    Each(EachView),
}

/// What a task asks, in the order of the work.
pub(super) fn asked(desk: &Desk<'_>, task: &str, sheet: Option<&Sheet>) -> Vec<Asked> {
    let mut all: Vec<Asked> = Vec::new();
    let of_task = |item: &&Item| item.task == task && item.asked;
    for item in desk.record.items.iter().filter(of_task) {
        let view = one(desk, item, sheet);
        let Some((part, rest)) = part(&item.id, &view.title) else {
            all.push(Asked::One(Box::new(view)));
            continue;
        };
        let legend = part.each(&rest);
        let named = (format!("{} {}", part.kind, part.number), rest);
        let same = all.iter_mut().find_map(|one| match one {
            Asked::Each(each)
                if each.legend == legend
                    && each.expected == view.expected
                    && each.how == view.how
                    && each.means == view.means =>
            {
                Some(each)
            }
            _ => None,
        });
        match same {
            Some(each) => each.boxes.push((named.0, named.1, view)),
            None => all.push(Asked::Each(EachView {
                legend,
                id: format!("{}-each", view.id),
                expected: view.expected.clone(),
                how: view.how.clone(),
                means: view.means.clone(),
                boxes: vec![(named.0, named.1, view)],
            })),
        }
    }
    // Figures stand beside each other in pairs; what takes the whole width comes after them.
    all.sort_by_key(|one| matches!(one, Asked::One(item) if item.kind != "number"));
    all
}

/// One of several alike: what they are called, and which of them it is.
struct Part<'a> {
    kind: &'a str,
    number: &'a str,
}

impl Part<'_> {
    /// The same said of each of them.
    fn each(&self, rest: &str) -> String {
        format!("Each {}{rest}", self.kind.to_lowercase())
    }
}

/// What an item is called where all of its kind are meant.
pub(super) fn each_or_one(id: &str, title: &str) -> String {
    part(id, title).map_or_else(|| title.to_owned(), |(part, rest)| part.each(&rest))
}

/// The part of which an item speaks, and what its title says beside it: of `hole_depth:2`, “Hole 2: depth”, the second hole
/// and “: depth”.
fn part<'a>(id: &'a str, title: &'a str) -> Option<(Part<'a>, String)> {
    let (_, number) = id.rsplit_once(':')?;
    let (kind, rest) = title.split_once(&format!(" {number}"))?;
    let is_whole = !rest.starts_with(|next: char| next.is_ascii_digit());
    (is_whole && !kind.contains(' ')).then(|| (Part { kind, number }, rest.to_owned()))
}

fn one(desk: &Desk<'_>, item: &Item, sheet: Option<&Sheet>) -> BoxView {
    let name = box_of(&item.id);
    let typed = sheet
        .and_then(|sheet| sheet.text(&name))
        .unwrap_or_default()
        .to_owned();
    let fault = sheet.and_then(|_| desk.typed.faults.iter().find(|fault| fault.name == name));
    let units = desk.record.planned.brief.units;
    let (kind, unit, options, none) = match &item.asks {
        Asks::Number { unit, none, .. } => {
            let ticked = sheet.is_some_and(|sheet| sheet.ticked(&format!("{name}~none")));
            (
                "number",
                units.convert(1.0, *unit).1,
                Vec::new(),
                none.as_ref().map(|none| (none.words.clone(), ticked)),
            )
        }
        Asks::Choice(answers) => {
            let option = |answer: &stillground::record::Answer| {
                (answer.key, answer.words.clone(), answer.key == typed)
            };
            ("choice", "", answers.iter().map(option).collect(), None)
        }
        Asks::Text => ("text", "", Vec::new(), None),
        Asks::Day { .. } => ("date", "", Vec::new(), None),
        Asks::Moment(_) => ("datetime-local", "", Vec::new(), None),
        Asks::Measurement { .. } => ("page", "", Vec::new(), None),
    };
    let found = found(desk, item);
    BoxView {
        id: format!("{}-{}", item.task, item.id.replace(':', "-")),
        title: item.title.clone(),
        expected: item.expected.clone(),
        how: item.how.clone(),
        means: means::of(item, units),
        error: fault.map(|fault| fault.said.clone()),
        readings: fault
            .map(|fault| fault.readings.clone())
            .unwrap_or_default(),
        last: desk
            .board
            .readings
            .iter()
            .rev()
            .find(|reading| reading.counts() && speaks(reading, item))
            .map(|reading| reading.entry.id.clone()),
        name,
        way: match &item.asks {
            Asks::Measurement { kind, .. } => kind.key(),
            _ => "",
        },
        kind,
        unit,
        options,
        none,
        typed,
        found,
    }
}

fn found(desk: &Desk<'_>, item: &Item) -> Vec<FoundView> {
    let units = desk.record.planned.brief.units;
    let readings = desk
        .board
        .readings
        .iter()
        .filter(|reading| reading.counts() && speaks(reading, item));
    let view = |reading: &stillground::record::Reading<'_>| FoundView {
        found: item.found(reading.entry, units),
        verdict: verdict(reading.verdict.as_ref(), reading.ended_by.is_some()),
        by: desk.by(&reading.entry.id, &reading.entry.who),
    };
    readings.map(view).collect()
}

fn speaks(reading: &stillground::record::Reading<'_>, item: &Item) -> bool {
    reading
        .item
        .is_some_and(|known| known.id == item.id && known.task == item.task)
}

#[cfg(test)]
mod tests {
    use super::part;

    #[test]
    fn a_title_says_which_part_it_speaks_of() {
        let said = |id, title| part(id, title).map(|(part, rest)| (part.kind, part.number, rest));
        assert_eq!(
            said("hole_depth:2", "Hole 2: depth"),
            Some(("Hole", "2", ": depth".to_owned()))
        );
        assert_eq!(
            said("torque:1:12", "Nut 12, pass 1"),
            Some(("Nut", "12", ", pass 1".to_owned()))
        );
        assert_eq!(said("pit_depth", "Depth of the pit"), None);
        assert_eq!(said("torque:1:1", "Nut 12, pass 1"), None);
    }
}
