//! Waits: when they are over by the record, and what may not be ticked off before.

use super::*;

#[test]
fn a_wait_that_was_ticked_off_too_soon_is_told() {
    let site = site();
    let at = |id: &str, task: &str, moment: &str| Entry {
        measured_at: Some(moment.into()),
        ..done(id, task)
    };
    let entries = [
        at("1", "cover", "2027-04-20T16:00:00Z"),
        at("2", "harden", "2027-04-27T16:00:00Z"),
    ];
    let board = site.board(&entries);
    let harden = board.task("harden").unwrap();
    let hours = harden.task.lasts_h;
    assert_eq!(harden.too_soon_h, Some(hours - 7.0 * 24.0));
    assert!(
        harden
            .over_at
            .as_deref()
            .is_some_and(|over| over >= "2027-05-11"),
        "{:?}",
        harden.over_at
    );
    let late = [
        entries[0].clone(),
        at("2", "harden", "2027-09-01T08:00:00Z"),
    ];
    assert_eq!(site.board(&late).task("harden").unwrap().too_soon_h, None);
    assert_eq!(
        site.board(&entries[1..]).task("harden").unwrap().over_at,
        None,
        "what it waits for is open"
    );
}

#[test]
fn moments_and_days_are_held_against_each_other() {
    let site = site();
    let set = Entry::answered("1", "bond", "set_at", "2027-05-20T10:00");
    let soon = Entry::answered("2", "resin_cures", "cured_at", "2027-05-20T14:00");
    let late = Entry::answered("3", "resin_cures", "cured_at", "2027-05-30 10:00");
    let stands = |entries: &[Entry]| site.board(entries).stops().count();
    assert_eq!(
        (
            stands(&[set.clone(), soon.clone()]),
            stands(&[set.clone(), late.clone()]),
            stands(&[set, soon, late])
        ),
        (1, 0, 0)
    );
    let used = |day: &str| Entry {
        measured_at: Some("2027-05-20T09:00:00Z".into()),
        ..Entry::answered("4", "bond", "resin_use_by", day)
    };
    assert_eq!(
        (stands(&[used("2027-05-19")]), stands(&[used("2027-05-20")])),
        (1, 0)
    );
}

fn at(id: &str, task: &str, moment: &str) -> Entry {
    Entry {
        measured_at: Some(moment.into()),
        ..done(id, task)
    }
}

/// Why a task may not be ticked off at a moment, in one text.
fn refused(site: &Site, entries: &[Entry], task: &str, now: &str) -> String {
    let board = site.board(entries);
    let said: Vec<String> = in_the_way(&done("x", task), &board, now)
        .into_iter()
        .map(|fault| fault.said)
        .collect();
    said.join(" ")
}

/// Everything up to the covered block, at four in the afternoon of the 20th of April; the air at so many degrees.
fn poured(air: f64) -> Vec<Entry> {
    let moment = "2027-04-20T16:00:00Z";
    let mut entries: Vec<Entry> = ["services", "set_out", "dig", "inspect", "steel_and_ducts"]
        .map(|task| at(task, task, moment))
        .to_vec();
    entries.push(Entry::measured("air", "pour", "air_temperature", air));
    entries.push(Entry::measured(
        "fresh",
        "pour",
        "concrete_temperature",
        15.0,
    ));
    entries.extend(["pour", "cover"].map(|task| at(task, task, moment)));
    entries
}

/// A minute before the concrete has hardened the tick is refused with the time and what it counts from; a minute after it is taken.
#[test]
fn hardening_is_over_at_its_minute_and_not_before() {
    let site = site();
    let entries = poured(site.brief.work.temperature_c.value);
    let days = crate::units::day::get(site.design.block.drill_after);
    assert_eq!(days, 21.0, "ACI 318-19, 17.2.2, from memory");
    let said = refused(&site, &entries, "harden", "2027-05-11T15:59:00Z");
    for part in [
        "2027-05-11 16:00",
        "counted from",
        "504.0 hours",
        "recorded",
    ] {
        assert!(said.contains(part), "{part}: {said}");
    }
    assert_eq!(
        refused(&site, &entries, "harden", "2027-05-11T16:01:00Z"),
        ""
    );
    // What follows the wait is refused for the same reason.
    let drill = refused(&site, &entries, "drill", "2027-05-11T15:59:00Z");
    assert!(drill.contains("2027-05-11 16:00"), "{drill}");
    let later = refused(&site, &entries, "drill", "2027-05-11T16:01:00Z");
    assert!(
        !later.contains("2027-05-11 16:00") && later.contains("Hole 1: depth"),
        "{later}"
    );
}

/// Nothing in the record: there is nothing to count from.
#[test]
fn a_wait_whose_beginning_is_not_recorded_is_not_over() {
    let site = site();
    for task in [
        "harden",
        "full_strength",
        "resin_cures",
        "relax_day",
        "relax_week",
        "drill",
        "stand",
        "torque_week",
    ] {
        let said = refused(&site, &[], task, "2040-01-01T00:00:00Z");
        assert!(said.contains("not in the record yet"), "{task}: {said}");
    }
}

/// A colder pour moves the time by the plan's own rule.
#[test]
fn a_recorded_temperature_moves_the_wait() {
    let site = site();
    let over = |air: f64| {
        let entries = poured(air);
        let board = site.board(&entries);
        board
            .task("full_strength")
            .unwrap()
            .over_at
            .clone()
            .unwrap()
    };
    assert!(over(6.0) > over(10.0) && over(10.0) > over(20.0));
    let hours = crate::stages::schedule::wait_hours(&site.brief, "full_strength", 6.0).unwrap();
    let entries = poured(6.0);
    assert_eq!(
        site.board(&entries).task("full_strength").unwrap().lasts_h,
        hours
    );
}

/// A decision lets it be ticked off, and stays in the record.
#[test]
fn a_decision_ends_a_wait() {
    let site = site();
    let mut entries = poured(10.0);
    entries.push(Entry {
        measured_at: Some("2027-04-27T08:00:00Z".into()),
        ..decided("d", "harden", "task:harden")
    });
    assert_eq!(
        refused(&site, &entries, "harden", "2027-04-27T09:00:00Z"),
        ""
    );
    let drill = refused(&site, &entries, "drill", "2027-04-27T09:00:00Z");
    assert!(!drill.contains("is over at"), "{drill}");
}

/// What must be measured is named when it is missing.
#[test]
fn a_task_without_its_measurements_is_not_ticked_off() {
    let site = site();
    let entries = poured(10.0);
    let without: Vec<Entry> = entries
        .iter()
        .filter(|entry| !["fresh", "pour", "cover"].contains(&entry.id.as_str()))
        .cloned()
        .collect();
    let said = refused(&site, &without, "pour", "2027-04-20T16:00:00Z");
    assert!(said.contains("Temperature of the fresh concrete"), "{said}");
    for (task, item) in [
        ("bond", "Resin: product and batch"),
        ("bond", "Temperature of the concrete"),
        ("torque", "Nut 1, last pass"),
        ("torque", "Largest torque on the resin's sheet"),
        ("torque_day", "Nut 1 after a day"),
    ] {
        let said = refused(&site, &[], task, "2027-04-20T16:00:00Z");
        assert!(said.contains(item), "{task}: {said}");
    }
}
