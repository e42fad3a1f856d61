//! The nuts: how tight, why, in which order, and what a torque in "kilos" would do.

use stillground::figure::{
    Kilonewton, Megapascal, NewtonMetre, PerCent, SquareMillimetre, Unit, Units,
};
use stillground::stages::anchors::{Anchors, Torque};
use stillground::units::Moment;

use super::{Chapter, Table};
use crate::planned::Planned;
use crate::views::words;

/// The chapters about torque.
pub fn chapters(planned: &Planned) -> Vec<Chapter> {
    let (anchors, units) = (&planned.design.anchors, planned.brief.units);
    vec![
        tightening(&anchors.torque, units),
        limits(&anchors.torque, units),
        seats(anchors, units),
        kilos(&anchors.torque, units),
        preload_loss(anchors, units),
    ]
}

fn say(torque: Moment, units: Units) -> String {
    units.say(torque, NewtonMetre)
}

fn tightening(torque: &Torque, units: Units) -> Chapter {
    let order: Vec<String> = torque.order.iter().map(ToString::to_string).collect();
    let row = |(i, pass): (usize, &stillground::stages::anchors::torque::Pass)| {
        (
            format!("Pass {}", i + 1),
            vec![say(pass.torque, units), pass.says.to_owned()],
        )
    };
    Chapter {
        title: "How tight, and in which order",
        told: Vec::new(),
        words: vec![
            torque.says.clone(),
            format!(
                "Go crosswise, by the numbers on the drawing: {}.",
                order.join(", ")
            ),
        ],
        table: Some(Table {
            names: "Pass",
            columns: vec!["Torque".to_owned(), "How".to_owned()],
            rows: torque.passes.iter().enumerate().map(row).collect(),
        }),
        after: Vec::new(),
    }
}

fn limits(torque: &Torque, units: Units) -> Chapter {
    let row = |limit: &stillground::stages::anchors::torque::Limit| {
        let which = if limit.governs {
            "decides"
        } else {
            "leaves room"
        };
        (
            words::sentence(limit.what).trim_end_matches('.').to_owned(),
            vec![say(limit.torque, units), which.to_owned()],
        )
    };
    Chapter {
        title: "Why not less, why not more",
        told: vec![torque.below.clone(), torque.above.clone()],
        words: Vec::new(),
        table: Some(Table {
            names: "What sets a ceiling",
            columns: vec!["At most".to_owned(), "Verdict".to_owned()],
            rows: torque.limits.iter().map(row).collect(),
        }),
        after: Vec::new(),
    }
}

fn seats(anchors: &Anchors, units: Units) -> Chapter {
    let (built, others): (Vec<_>, Vec<_>) =
        anchors.torque.cases.iter().partition(|case| case.built);
    let row = |case: &stillground::stages::anchors::torque::Case| {
        let name = if case.built {
            format!("{}, as built here", case.name)
        } else {
            case.name.to_owned()
        };
        (
            name,
            vec![
                say(case.high, units),
                words::sentence(case.what).trim_end_matches('.').to_owned(),
            ],
        )
    };
    Chapter {
        title: "Where the preload goes",
        told: Vec::new(),
        words: built
            .iter()
            .map(|case| format!("Built here. {}", case.words))
            .collect(),
        table: Some(Table {
            names: "How the plate stands",
            columns: vec![
                "Torque at most".to_owned(),
                "What would suffer first".to_owned(),
            ],
            rows: anchors.torque.cases.iter().map(row).collect(),
        }),
        after: others
            .iter()
            .map(|case| format!("Not built here. {}", case.words))
            .collect(),
    }
}

fn kilos(torque: &Torque, units: Units) -> Chapter {
    let row = |reading: &stillground::stages::anchors::torque::Reading| {
        let pull = units.say(reading.preload, Kilonewton);
        (
            reading.reading.clone(),
            vec![say(reading.torque, units), pull],
        )
    };
    Chapter {
        title: "If somebody says the torque in “kilos”",
        told: torque.kilos_readings.iter().map(|reading| reading.says.clone()).collect(),
        words: vec!["One number can be three torques. Ask which is meant before anyone takes up the wrench.".to_owned()],
        table: Some(Table {
            names: "Read as",
            columns: vec!["Torque".to_owned(), "Pull in the stud".to_owned()],
            rows: torque.kilos_readings.iter().map(row).collect(),
        }),
        after: Vec::new(),
    }
}

/// The number and the stud of common practice beside the plan's own.
pub fn lesson(planned: &Planned) -> Vec<Chapter> {
    let (lesson, units) = (&planned.design.anchors.torque.lesson, planned.brief.units);
    let row = |name: String, reading: &stillground::stages::anchors::torque::Reading| {
        let figures = vec![
            say(reading.torque, units),
            units.say(reading.preload, Kilonewton),
            units.say(reading.stress, Megapascal),
            units.say(reading.proof_ratio * 100.0, PerCent),
            units.say(reading.breaking_ratio * 100.0, PerCent),
        ];
        (name, figures)
    };
    let mut rows: Vec<_> = lesson
        .readings
        .iter()
        .map(|reading| row(reading.reading.clone(), reading))
        .collect();
    rows.push(row(format!("This plan’s {}", lesson.own_stud), &lesson.own));
    let columns = [
        "Torque",
        "Pull in the stud",
        "Stress",
        "Of the proof load",
        "Of what breaks it",
    ];
    vec![Chapter {
        title: planned.brief.anchors.size.value.stock().either(
            "180 N m on an M16 of class 8.8, and why 180 kgf m cannot be",
            "180 N m on a 5/8\u{2033}-11 rod of A193 B7, and why 180 kgf m cannot be",
        ),
        told: Vec::new(),
        words: vec![format!(
            "The {} has {} of stress area: it is proved with {}, {}, and breaks at {} or more. “180 kilos” on its nut can be \
             read in three ways.",
            lesson.stud,
            units.say(lesson.stress_area, SquareMillimetre),
            units.say(lesson.proof, Kilonewton),
            units.say(lesson.proof_stress, Megapascal),
            units.say(lesson.breaking, Kilonewton)
        )],
        table: Some(Table {
            names: "Read as",
            columns: columns.map(str::to_owned).to_vec(),
            rows,
        }),
        after: lesson
            .says
            .iter()
            .chain([&lesson.own.says])
            .cloned()
            .collect(),
    }]
}

fn preload_loss(anchors: &Anchors, units: Units) -> Chapter {
    let preload_loss = &anchors.preload_loss;
    let force = |force| vec![units.say(force, Kilonewton)];
    let mut rows = Vec::new();
    rows.extend(
        anchors
            .preload
            .map(|preload| ("When tightened".to_owned(), force(preload.typical))),
    );
    rows.push(("After a day".to_owned(), force(preload_loss.after_a_day)));
    rows.push(("After a week".to_owned(), force(preload_loss.after_a_week)));
    rows.push((
        "After ten years".to_owned(),
        force(preload_loss.after_ten_years),
    ));
    let [first, second] = preload_loss
        .check_again_d
        .map(|days| units.say(days, Unit::Day));
    Chapter {
        title: "What the studs keep",
        told: Vec::new(),
        words: vec![format!(
            "Check the torque again {first} and {second} after tightening."
        )],
        table: Some(Table {
            names: "When",
            columns: vec!["Pull in each stud".to_owned()],
            rows,
        }),
        after: Vec::new(),
    }
}
