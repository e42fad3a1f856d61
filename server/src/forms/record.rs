//! The record's forms: what was typed for a task becomes entries, and what cannot be read comes back with its box.

use stillground::figure::Units;
use stillground::record::{Asks, Entry, Item, Kind};

use super::sheet::Sheet;
use super::typed::{self, Typed};

/// Something to be put right in a form of the record.
#[derive(Debug, Clone, PartialEq)]
pub struct RecordFault {
    /// Name of the box.
    pub name: String,
    /// A whole sentence.
    pub said: String,
    /// Readings of an ambiguous text: what to write, and how it reads.
    pub readings: Vec<(String, String)>,
}

impl RecordFault {
    /// At a box.
    #[must_use]
    pub fn at(name: impl Into<String>, said: impl Into<String>) -> Self {
        Self {
            name: name.into(),
            said: said.into(),
            readings: Vec::new(),
        }
    }
}

/// What a form asks for.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Sent {
    /// The entries to keep, in their order.
    pub entries: Vec<Entry>,
    /// What has to be put right; nothing is kept then.
    pub faults: Vec<RecordFault>,
}

/// The box of an item.
#[must_use]
pub fn box_of(item: &str) -> String {
    format!("item~{item}")
}

/// Reads a form. Each entry is named by the form's own name and what it speaks of, so that a form sent twice is kept once.
#[must_use]
pub fn read(sheet: &Sheet, items: &[Item], units: Units) -> Sent {
    let mut sent = Sent::default();
    let text = |name: &str| sheet.text(name).unwrap_or_default().trim().to_owned();
    let (task, form) = (text("task"), text("form"));
    let plain = Entry {
        revision: text("revision").parse().unwrap_or(0),
        who: text("who"),
        measured_at: Some(text("at")).filter(|at| !at.is_empty()),
        ..Entry::new("", &task, Kind::Note)
    };
    let named = |what: &str, kind: Kind| Entry {
        id: format!("{form}.{what}"),
        kind,
        ..plain.clone()
    };
    for item in items.iter().filter(|item| item.task == task) {
        measured(
            &mut sent,
            sheet,
            item,
            units,
            named(&item.id, Kind::Measured),
        );
    }
    let note = text("note");
    if !note.is_empty() {
        sent.entries.push(Entry {
            text: Some(note),
            ..named("note", Kind::Note)
        });
    }
    let action = text("do");
    match action.as_str() {
        "done" => sent.entries.push(named("done", Kind::Done)),
        "reopen" => sent.entries.push(named("reopen", Kind::Reopened)),
        _ => {}
    }
    if let Some(stop) = action.strip_prefix("decide:") {
        let decision = Entry {
            decides: Some(stop.to_owned()),
            text: Some(text("decision")),
            ..named("decision", Kind::Decided)
        };
        sent.entries.push(decision);
    }
    if sent.entries.is_empty() && sent.faults.is_empty() {
        sent.faults.push(RecordFault::at(
            "note",
            "Nothing was entered: fill in a box, write a note, or tick the task off.",
        ));
    }
    if plain.who.is_empty() {
        sent.faults.push(RecordFault::at(
            "who",
            "Say who enters this: a name or initials.",
        ));
    }
    sent
}

/// The entry of an item, when its box was filled in.
fn measured(sent: &mut Sent, sheet: &Sheet, item: &Item, units: Units, plain: Entry) {
    let name = box_of(&item.id);
    let typed = sheet.text(&name).unwrap_or_default().trim();
    let chosen = sheet.text(&format!("{name}~reading")).filter(|_| {
        sheet
            .text(&format!("{name}~asked"))
            .is_some_and(|asked| asked.trim() == typed)
    });
    let typed = chosen.unwrap_or(typed);
    let corrects = sheet
        .text(&format!("{name}~corrects"))
        .filter(|name| !name.is_empty())
        .map(str::to_owned);
    let entry = Entry {
        item: Some(item.id.clone()),
        supersedes: corrects,
        ..plain
    };
    let (unit, none) = match &item.asks {
        Asks::Number { unit, none, .. } => (*unit, none),
        // It has a page of its own.
        Asks::Measurement { .. } => return,
        _ if typed.is_empty() => return,
        _ => {
            return sent.entries.push(Entry {
                text: Some(typed.to_owned()),
                ..entry
            });
        }
    };
    if let Some(none) = none
        .as_ref()
        .filter(|_| sheet.ticked(&format!("{name}~none")))
    {
        if typed.is_empty() {
            sent.entries.push(Entry {
                text: Some(none.key.to_owned()),
                ..entry
            });
        } else {
            let said = format!(
                "{}: there is a figure, and “{}” is ticked too. Take one of them away.",
                item.title, none.words
            );
            sent.faults.push(RecordFault::at(name, said));
        }
        return;
    }
    match typed::read(typed, unit, units) {
        Typed::NotKnown => {}
        Typed::Value(value) => sent.entries.push(Entry {
            value: Some(value),
            ..entry
        }),
        Typed::Bad(said) => sent.faults.push(RecordFault::at(name, said)),
        Typed::Ask(question) => {
            let readings = question
                .readings
                .into_iter()
                .map(|reading| (reading.entry, reading.words))
                .collect();
            sent.faults.push(RecordFault {
                name,
                said: question.why,
                readings,
            });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillground::brief::resolve;
    use stillground::design::design;
    use stillground::halfspace::NoShelf;
    use stillground::record::items;
    use stillground::site_plan::SitePlan;

    fn sent(pairs: &[(&str, &str)]) -> Sent {
        let brief = resolve(&SitePlan::unknown()).unwrap();
        let items = items(&brief, &design(&brief, &NoShelf));
        let pairs = pairs
            .iter()
            .map(|&(name, text)| (name.to_owned(), text.to_owned()))
            .collect();
        read(&Sheet::sent(pairs), &items, brief.units)
    }

    const HEAD: [(&str, &str); 4] = [
        ("task", "inspect"),
        ("form", "f"),
        ("revision", "3"),
        ("who", "A. Helper"),
    ];

    #[test]
    fn every_filled_box_is_an_entry_of_its_own_with_the_same_name_each_time() {
        let form = [
            &HEAD[..],
            &[
                ("item~pit_depth", "90 cm"),
                ("item~soil_met", "firm_clay"),
                ("note", "dry"),
                ("do", "done"),
            ],
        ]
        .concat();
        let read = sent(&form);
        let names: Vec<&str> = read.entries.iter().map(|entry| entry.id.as_str()).collect();
        assert_eq!(names, ["f.pit_depth", "f.soil_met", "f.note", "f.done"]);
        assert_eq!(
            (
                read.entries[0].value,
                read.entries[0].revision,
                read.faults.len()
            ),
            (Some(0.9), 3, 0)
        );
        assert_eq!(read, sent(&form));
    }

    #[test]
    fn what_cannot_be_read_comes_back_with_its_box() {
        let faults = |more: &[(&str, &str)]| {
            sent(&[&HEAD[..], more].concat())
                .faults
                .into_iter()
                .map(|fault| fault.name)
                .collect::<Vec<_>>()
        };
        assert_eq!(faults(&[("item~pit_depth", "deep")]), ["item~pit_depth"]);
        assert_eq!(faults(&[("item~pit_depth", "1,250 m")]), ["item~pit_depth"]);
        assert!(
            faults(&[
                ("item~pit_depth", "1,250 m"),
                ("item~pit_depth~asked", "1,250 m"),
                ("item~pit_depth~reading", "1.25 m")
            ])
            .is_empty()
        );
        assert_eq!(
            faults(&[
                ("item~water_depth", "2 m"),
                ("item~water_depth~none", "yes")
            ]),
            ["item~water_depth"]
        );
        assert!(faults(&[("item~water_depth~none", "yes")]).is_empty());
        assert_eq!(faults(&[]), ["note"]);
        assert_eq!(
            sent(&[("task", "inspect"), ("form", "f"), ("do", "done")]).faults[0].name,
            "who"
        );
    }
}
