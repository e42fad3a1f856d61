//! What is looked at when the remedy against frost is in place.

use super::Job;
use crate::record::item::{Answer, Asks, Item};
use crate::record::verdict::Verdict;
use crate::site_plan::block::FrostRemedy;
use crate::stages::schedule::frost::TASK;

pub(super) fn items(job: &Job, items: &mut Vec<Item>) {
    let (title, expected, how) = match job.design.block.side_frost.remedy {
        FrostRemedy::None => return,
        FrostRemedy::Insulation => (
            "Insulation against frost",
            "boards all round, close to the block, covered",
            "Look before the gravel goes on: no gap wider than a finger between boards, or between boards and block.",
        ),
        FrostRemedy::Sleeve => (
            "Sleeve against frost",
            "two greased layers all round, no folds",
            "Look before the pour; concrete finds every hole.",
        ),
        FrostRemedy::Gravel => (
            "Gravel against frost",
            "clean gravel all round, and it drains",
            "Pour a bucket of water into it: it must be gone within minutes.",
        ),
    };
    let mend = "mend it before the first frost; without it frozen ground may lift the block.";
    let answers = vec![
        Answer::fine("as_planned", "as planned, all round"),
        Answer::then(
            "gaps",
            "with gaps, or not all round",
            Verdict::outside(mend),
        ),
    ];
    items.push(
        Item::new(
            "frost_guard_in_place",
            TASK,
            title,
            expected,
            Asks::Choice(answers),
        )
        .how(how),
    );
}
