//! How each measurement is made, and its boxes.

use crate::forms::commissioning::{KNOCK, LEAN, PULL, Wrong, range};
use crate::forms::sheet::Sheet;

/// A box.
pub struct BoxView {
    /// Its name.
    pub name: &'static str,
    /// Its label.
    pub label: &'static str,
    /// What may stand in it.
    pub hint: String,
    /// What stands in it.
    pub typed: String,
    /// What is wrong with it.
    pub error: Option<String>,
}

/// A way to measure.
pub struct FormView {
    /// Its name.
    pub what: &'static str,
    /// Its title.
    pub title: &'static str,
    /// What it tells, and how long it takes.
    pub tells: &'static str,
    /// How it is done.
    pub steps: &'static [&'static str],
    /// What can go wrong.
    pub wrong: &'static str,
    /// What can hurt.
    pub caution: &'static str,
    /// Whether a file may be sent.
    pub takes_file: bool,
    /// Whether it has a direction.
    pub has_direction: bool,
    /// Its boxes.
    pub boxes: Vec<BoxView>,
    /// Whether it was sent just now.
    pub is_open: bool,
}

/// The ways to measure, the one that was sent filled in.
pub(super) fn forms(sheet: &Sheet, faults: &[Wrong]) -> Vec<FormView> {
    let what = sheet.text("what").unwrap_or_default();
    let boxes = |form: &'static str, all: &[(&'static str, &'static str, bool)]| {
        all.iter()
            .map(|(name, label, needed)| BoxView {
                name,
                label,
                hint: format!(
                    "{}{}",
                    range(form, name).unwrap_or_default(),
                    if *needed { "" } else { "; may be left out" }
                ),
                typed: if what == form {
                    sheet.text(name).unwrap_or_default().to_owned()
                } else {
                    String::new()
                },
                error: faults
                    .iter()
                    .find(|(at, _)| what == form && at == name)
                    .map(|(_, said)| said.clone()),
            })
            .collect::<Vec<_>>()
    };
    vec![
        FormView {
            what: "knock",
            title: "A knock",
            tells: "Ten minutes. With mount and telescope on, it tells how the whole swings; with nothing on the pier, it tells the joint apart from the mount.",
            steps: &[
                "Lay a telephone flat on the pier’s top and hold it there with a strip of tape; start an app that writes its accelerometer to a file, as fast as it can.",
                "Wait ten seconds, knock once with the heel of the hand at the top, sideways along east and west, and wait ten seconds. Knock three times so. Then do the same along north and south.",
                "Take mount and telescope off for a second record, where that is easily done.",
            ],
            wrong: "A lorry, the wind, a telephone that slides, a second knock too soon. A record that is cut off, short or noisy is answered for what it is, or refused.",
            caution: "Nobody stands on a ladder to knock, and no hammer goes near glass or a camera. Two people lift the mount.",
            takes_file: true,
            has_direction: true,
            boxes: boxes("knock", &KNOCK),
            is_open: what == "knock",
        },
        FormView {
            what: "lean",
            title: "A lean",
            tells: "Twenty minutes on a clear night. It tells the ground.",
            steps: &[
                "Mark a place beside the block and measure how far east and north of the pier’s axis it is.",
                "Follow a star high in the sky with guiding off and tracking on, and write its place each second.",
                "A person whose weight is known stands away for half a minute, on the place for half a minute, and so three times. Write “on” and “off” beside the rows, or the times.",
            ],
            wrong: "Guiding that takes the step back, a star near the horizon, wind, a step that is smaller than the seeing. Two persons, or a nearer place, are better than more visits.",
            caution: "It is dark: the place and the way to it are marked and free of cables.",
            takes_file: true,
            has_direction: false,
            boxes: boxes("lean", &LEAN),
            is_open: what == "lean",
        },
        FormView {
            what: "pull",
            title: "A pull",
            tells: "Ten minutes. At the pier’s top it tells the joint and the column; at the telescope, the mount.",
            steps: &[
                "Put a strap round the pier at its top and hook a luggage scale to it.",
                "Pull level and slowly, along east and west, to 100 or 200 N (10 or 20 kg on the scale), and hold for ten seconds while somebody reads how far the star, or a dial gauge, moves.",
                "Let go slowly. The star has to come back; if it does not, something slipped: stop, and look at the nuts.",
            ],
            wrong: "A pull that is not level, a strap that slips up, a clutch of the mount that gives way.",
            caution: "Never pull harder than 200 N at the top or 50 N at the telescope; stand where nothing can fall on you, with the clutches locked and the load balanced. Nobody pulls from a ladder.",
            takes_file: false,
            has_direction: true,
            boxes: boxes("pull", &PULL),
            is_open: what == "pull",
        },
    ]
}
