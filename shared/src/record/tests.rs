mod faults;
mod nuts;
mod waits;

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
    site_of(&SitePlan::unknown())
}

fn site_of(plan: &SitePlan) -> Site {
    let brief = crate::brief::resolve(plan).unwrap();
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
        board(entries, &self.design.schedule, &self.items, &self.brief)
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
fn a_plan_that_was_changed_judges_the_same_entry_anew() {
    let entry = Entry::answered("a", "inspect", "soil_met", "soft_clay");
    assert!(site().board(std::slice::from_ref(&entry)).stops().count() == 1);
    let mut plan = SitePlan::unknown();
    plan.site.soil = crate::site_plan::site::Soil::from_key("soft_clay");
    let brief = crate::brief::resolve(&plan).unwrap();
    let design = design(&brief, &NoShelf);
    assert_eq!(judge(&entry, &brief, &design), Some(Verdict::Within));
}
