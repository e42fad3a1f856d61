use super::*;
use crate::design::design;
use crate::halfspace::NoShelf;
use crate::site_plan::SitePlan;
use crate::stages::schedule::Task;

struct Site {
    brief: Brief,
    design: Design,
    items: Vec<Item>,
}

fn site() -> Site {
    let brief = crate::brief::resolve(&SitePlan::unknown()).unwrap();
    let design = design(&brief, &NoShelf);
    let items = items(&brief, &design);
    Site {
        brief,
        design,
        items,
    }
}

impl Site {
    fn judge(&self, task: &str, item: &str, value: f64) -> Verdict {
        judge(
            &Entry::measured("a", task, item, value),
            &self.brief,
            &self.design,
        )
        .unwrap()
    }

    fn board<'a>(&'a self, entries: &'a [Entry]) -> Board<'a> {
        board(
            entries,
            &self.design.schedule,
            &self.items,
            self.brief.units,
        )
    }

    fn tasks(&self) -> &[Task] {
        &self.design.schedule
    }
}

fn done(id: &str, task: &str) -> Entry {
    Entry::new(id, task, Kind::Done)
}

fn decided(id: &str, task: &str, stop: &str) -> Entry {
    Entry {
        decides: Some(stop.to_owned()),
        text: Some("pumped out, bottom rammed again".to_owned()),
        ..Entry::new(id, task, Kind::Decided)
    }
}

#[test]
fn every_item_belongs_to_a_task_and_has_its_own_name() {
    let site = site();
    let mut names: Vec<&str> = site.items.iter().map(|item| item.id.as_str()).collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), site.items.len());
    for task in [
        "services",
        "inspect",
        "pour",
        "cover",
        "cure",
        "drill",
        "bond",
        "resin_cures",
        "level",
        "torque",
        "torque_day",
        "torque_week",
        "measure",
    ] {
        assert!(
            site.items.iter().any(|item| item.task == task),
            "{task} has nothing to look at"
        );
    }
    for item in &site.items {
        let Asks::Number {
            least, most, bands, ..
        } = &item.asks
        else {
            continue;
        };
        assert!(
            least < most && bands.last().is_some_and(|band| band.up_to.is_none()),
            "{}",
            item.id
        );
        assert!(
            bands.windows(2).all(|pair| pair[1]
                .up_to
                .is_none_or(|next| pair[0].up_to.is_some_and(|limit| limit < next))),
            "{}",
            item.id
        );
        assert!(
            bands.iter().any(|band| band.verdict == Verdict::Within),
            "{}: nothing is ever right",
            item.id
        );
    }
}

#[test]
fn water_in_the_pit_stops_the_pour_and_says_whom_to_ask() {
    let site = site();
    let Verdict::Stop { why, ask, .. } = site.judge("inspect", "water_depth", 0.6) else {
        panic!("water at 0.6 m is no stop")
    };
    assert!(why.starts_with("Water at 0.6\u{a0}m: do not pour"), "{why}");
    assert_eq!(ask, "whoever made the plan");
    let dry = judge(
        &Entry::answered("a", "inspect", "water_depth", "none"),
        &site.brief,
        &site.design,
    );
    assert_eq!(dry, Some(Verdict::Within));
}

#[test]
fn figures_are_judged_at_their_limits() {
    let site = site();
    let depth = crate::units::metre::get(site.design.excavation.depth);
    for (value, stops) in [
        (depth, false),
        (depth - 0.02, false),
        (depth - 0.06, true),
        (depth + 0.1, false),
        (depth + 0.2, true),
    ] {
        assert_eq!(
            site.judge("inspect", "pit_depth", value).is_stop(),
            stops,
            "{value}"
        );
    }
    assert_eq!(site.judge("inspect", "pit_depth", depth), Verdict::Within);
    assert!(site.judge("pour", "air_temperature", -0.5).is_stop());
    assert!(matches!(
        site.judge("pour", "air_temperature", 3.0),
        Verdict::Outside { .. }
    ));
    assert_eq!(site.judge("pour", "air_temperature", 12.0), Verdict::Within);
    assert!(
        site.judge("pour", "slump", 40.0).is_stop() && site.judge("pour", "slump", 220.0).is_stop()
    );
    assert!(site.judge("pour", "concrete_temperature", 4.0).is_stop());
    let needed = crate::units::cubic_metre::get(site.design.block.volume);
    assert!(
        site.judge("pour", "concrete_delivered", needed * 0.9)
            .is_stop()
    );
    assert_eq!(
        site.judge("pour", "concrete_delivered", needed * 1.05),
        Verdict::Within
    );
}

#[test]
fn a_nut_over_the_limit_stops_until_somebody_decides() {
    let site = site();
    let high = crate::units::newton_metre::get(site.design.anchors.torque.high);
    let last = site.design.anchors.torque.passes.len();
    let item = format!("torque:{last}:1");
    let Verdict::Stop { lasting, .. } = site.judge("torque", &item, high * 1.2) else {
        panic!("over the limit is no stop")
    };
    assert!(lasting);
    let entries = [
        Entry::measured("a", "torque", &item, high * 1.2),
        Entry::measured("b", "torque", &item, high * 0.9),
    ];
    assert_eq!(
        site.board(&entries).stops().count(),
        1,
        "a lower reading does not mend a stud"
    );
    let entries = [entries[0].clone(), decided("c", "torque", "a")];
    assert_eq!(site.board(&entries).stops().count(), 0);
}

#[test]
fn a_stop_holds_its_task_and_all_that_follow_until_it_is_ended() {
    let site = site();
    let mut entries = vec![
        done("1", "services"),
        done("2", "set_out"),
        done("3", "dig"),
        Entry::measured("4", "inspect", "water_depth", 0.6),
    ];
    entries.push(done("5", "inspect"));
    let held = |entries: &[Entry], task: &str| {
        matches!(
            site.board(entries).task(task).unwrap().state,
            State::Held(_)
        )
    };
    for task in [
        "inspect",
        "steel_and_ducts",
        "pour",
        "drill",
        "torque",
        "measure",
    ] {
        assert!(held(&entries, task), "{task}");
    }
    assert!(!held(&entries, "dig") && !held(&entries, "order"));
    let mut better = entries.clone();
    better.push(Entry::answered("6", "inspect", "water_depth", "none"));
    assert_eq!(
        site.board(&better).task("inspect").unwrap().state,
        State::Done
    );
    assert!(!held(&better, "pour"));
    let mut ruled = entries.clone();
    ruled.push(decided("7", "inspect", "4"));
    assert!(!held(&ruled, "pour"));
    let mut corrected = entries;
    corrected.push(Entry {
        supersedes: Some("4".into()),
        ..Entry::measured("8", "inspect", "water_depth", 6.0)
    });
    assert!(!held(&corrected, "pour"));
}

#[test]
fn tasks_come_up_in_order_and_may_be_reopened() {
    let site = site();
    let state = |entries: &[Entry], task: &str| {
        format!("{:?}", site.board(entries).task(task).unwrap().state)
    };
    assert_eq!(state(&[], "services"), "Now");
    assert_eq!(state(&[], "dig"), "Later([\"set_out\"])");
    let entries = [
        done("1", "services"),
        done("2", "set_out"),
        Entry::new("3", "set_out", Kind::Reopened),
    ];
    assert_eq!(
        (state(&entries[..2], "dig"), state(&entries, "dig")),
        ("Now".to_owned(), "Later([\"set_out\"])".to_owned())
    );
    assert_eq!(
        (state(&entries[..2], "set_out"), state(&entries, "set_out")),
        ("Done".to_owned(), "Now".to_owned())
    );
}

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

#[test]
fn what_cannot_be_kept_is_said() {
    let site = site();
    let said = |entry: &Entry| {
        entry
            .faults(site.tasks(), &site.items, &site.design.materials)
            .iter()
            .map(|fault| fault.field)
            .collect::<Vec<_>>()
    };
    assert!(said(&done("1", "dig")).is_empty());
    assert_eq!(said(&done("1", "dance")), ["task"]);
    assert_eq!(said(&done("", "dig")), ["id"]);
    assert_eq!(
        said(&Entry {
            who: "x".repeat(500),
            ..done("1", "dig")
        }),
        ["who"]
    );
    assert_eq!(
        said(&Entry {
            who: "  ".into(),
            ..done("1", "dig")
        }),
        ["who"]
    );
    assert!(
        said(&Entry {
            who: "観測者 مرصد 🔭".into(),
            ..done("1", "dig")
        })
        .is_empty()
    );
    assert_eq!(
        said(&Entry::measured("1", "inspect", "colour", 1.0)),
        ["item"]
    );
    assert_eq!(
        said(&Entry::measured("1", "pour", "pit_depth", 1.0)),
        ["item"],
        "an item of another task"
    );
    assert_eq!(
        said(&Entry::measured("1", "inspect", "pit_depth", 900.0)),
        ["value"]
    );
    assert_eq!(
        said(&Entry::measured("1", "inspect", "pit_depth", f64::NAN)),
        ["value"]
    );
    assert_eq!(
        said(&Entry::answered("1", "inspect", "pit_depth", "none")),
        ["value"]
    );
    assert_eq!(
        said(&Entry::answered("1", "inspect", "soil_met", "custard")),
        ["text"]
    );
    assert_eq!(
        said(&Entry::answered("1", "bond", "set_at", "noon")),
        ["text"]
    );
    assert_eq!(
        said(&Entry::answered("1", "bond", "resin_use_by", "2027-02-30")),
        ["text"]
    );
    assert_eq!(
        said(&Entry {
            decides: Some("2".into()),
            ..Entry::new("1", "dig", Kind::Decided)
        }),
        ["text"]
    );
}

#[test]
fn a_plan_that_was_changed_judges_the_same_entry_anew() {
    let entry = Entry::answered("a", "inspect", "soil_met", "soft_clay");
    assert!(site().board(std::slice::from_ref(&entry)).stops().count() == 1);
    let mut plan = SitePlan::unknown();
    plan.site.soil = crate::site_plan::site::Soil::from_key("soft_clay");
    let brief = crate::brief::resolve(&plan).unwrap();
    let design = design(&brief, &NoShelf);
    assert_eq!(judge(&entry, &brief, &design), Some(Verdict::Within));
}
