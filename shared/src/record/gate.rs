//! What must be over, and what must be in the record, before a task is ticked off.
//!
//! The engine has no clock: whoever asks says what time it is.

use super::board::Board;
use super::entry::{Entry, Kind, minutes_of};
use super::faults::Fault;
use crate::stages::schedule::Task;

/// What stands in the way of an entry at a moment (RFC 3339), each with when it ends and what that is counted from; empty when
/// nothing does. Only what ticks a task off can be too soon. An entry's own time counts where it is not later than now.
pub fn in_the_way(entry: &Entry, board: &Board<'_>, now: &str) -> Vec<Fault> {
    let Some(state) = board.task(&entry.task).filter(|_| entry.kind == Kind::Done) else {
        return Vec::new();
    };
    if board.decided(state.task.id) {
        return Vec::new();
    }
    let now = minutes_of(now);
    let made = entry.measured_at.as_deref().and_then(minutes_of);
    let at = made.into_iter().chain(now).min();
    let waits = waits(state.task, board);
    let mut found: Vec<Fault> = waits
        .iter()
        .filter_map(|wait| too_soon(state.task, wait, board, at))
        .collect();
    let needs: Vec<&str> = state.needs.iter().map(|item| item.title.as_str()).collect();
    if !needs.is_empty() {
        found.push(fault(format!(
            "“{}” is ticked off when this is in the record: {}.",
            state.task.title,
            needs.join("; ")
        )));
    }
    found
}

fn fault(said: String) -> Fault {
    Fault {
        field: "task",
        said,
    }
}

/// The waits that a task is, or that come before it, directly or by others between; the nearest first.
fn waits<'b>(task: &'b Task, board: &'b Board<'_>) -> Vec<&'b Task> {
    let mut open = vec![task];
    let mut seen: Vec<&str> = Vec::new();
    let mut waits = Vec::new();
    while let Some(next) = open.pop() {
        if seen.contains(&next.id) {
            continue;
        }
        seen.push(next.id);
        if next.wait {
            waits.push(next);
        }
        open.extend(
            next.after
                .iter()
                .filter_map(|id| board.task(id))
                .map(|state| state.task),
        );
    }
    waits
}

/// Why a task comes too soon after a wait; none when the wait is over, or somebody decided that it counts as over.
fn too_soon(task: &Task, wait: &Task, board: &Board<'_>, at: Option<i64>) -> Option<Fault> {
    if board.decided(wait.id) {
        return None;
    }
    let state = board.task(wait.id)?;
    let comes = if task.id == wait.id {
        format!("“{}”", wait.title)
    } else {
        format!("“{}” comes after “{}”, which", task.title, wait.title)
    };
    let from: Vec<&str> = wait
        .after
        .iter()
        .filter_map(|id| board.task(id))
        .map(|before| before.task.title.as_str())
        .collect();
    let from = from.join("”, “");
    let Some(over) = state.over_at.as_deref() else {
        // A wait that was ticked off before its beginning had to be in the record stays so.
        return state.ticked.is_none().then(|| {
            fault(format!(
                "{comes} counts from “{from}”, which is not in the record yet: tick that off first, with the time at which it was done."
            ))
        });
    };
    let is_over = minutes_of(over)
        .zip(at)
        .is_some_and(|(over, at)| at >= over);
    (!is_over).then(|| {
        fault(format!(
            "{comes} is over at {over} UTC: {:.1} hours, counted from “{from}”{}. Before that only a decision under the edit link lets \
             it be ticked off.",
            state.lasts_h,
            state
                .counted_at
                .as_deref()
                .map(|words| format!(", {words}"))
                .unwrap_or_default()
        ))
    })
}
