//! Column and base joint: fill, a stiffer tube, ribs, grout, tighter nuts.

use super::{After, Offered, Situation, choice, number};
use crate::figure::Millimetre;
use crate::path;
use crate::proof::changed::Changed;
use crate::proof::moments::thirds;
use crate::proof::pier::Unknown;
use crate::rules::ribbed_plate::{self, Ribs};
use crate::rules::tubes;
use crate::rules::vdi_2230_2015::loss;
use crate::site_plan::pier::{Fill, Levelling};
use crate::stages::anchors::seat::Seat;
use crate::stages::joint;
use crate::stages::motion::improvement::{NewField, NewValue};
use crate::units::{millimetre, newton_per_metre};

/// A stiffer tube has at least so many times the bending stiffness: a step up of one size is lost in what is not known.
const STIFFER: f64 = 1.8;
/// Most ribs that the plan writes down.
const MOST_RIBS: usize = 12;
/// Thickness and height of a rib, mm: a plate that a welder has, as high as most base plates stand out and more.
const RIB_MM: [f64; 2] = [10.0, 100.0];
/// From one rib of a pair to the other, in diameters of the stud between them: room for nut, washer and spanner.
const RIBS_APART: f64 = 4.0;

/// The base joint is softer than said where its middle lies so many standard deviations of the plan's range below the plan's:
/// judgement.
const SOFTER: f64 = -0.5;

pub(super) fn offered(situation: &Situation) -> Vec<Offered> {
    [
        filled(situation),
        stiffer_tube(situation),
        grout(situation),
        ribs(situation),
        tighter_nuts(situation),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn filled(situation: &Situation) -> Option<Offered> {
    if situation.planned.brief.pier.fill.value == Fill::Concrete {
        return None;
    }
    let fields = situation.on_this_block(vec![choice(path!(pier.fill), Fill::Concrete.key())]);
    Some(Offered {
        id: "fill_concrete",
        says: "Fill the column with concrete, vibrated or rodded from the top so that no hollow is left.".to_owned(),
        after: situation.remade(&fields)?,
        fields,
        not_in_plan: None,
    })
}

/// The least tube of the table that is as slim as can be and stiff enough.
fn stiffer_tube(situation: &Situation) -> Option<Offered> {
    let brief = situation.planned.brief;
    let (outside, wall) = (
        millimetre::get(brief.pier.outside_diameter.value),
        millimetre::get(brief.pier.wall.value),
    );
    let bending = |outside: f64, wall: f64| outside.powi(4) - (outside - 2.0 * wall).powi(4);
    let mut tube = tubes::larger(brief.stock.value, outside, wall)?;
    while bending(tube.outside_mm, tube.wall_mm) < STIFFER * bending(outside, wall) {
        tube = tubes::larger(brief.stock.value, tube.outside_mm, tube.wall_mm)?;
    }
    let more = tube.outside_mm - outside;
    let mut fields = vec![
        NewField {
            field: path!(pier.tube),
            value: NewValue::Nothing,
        },
        number(path!(pier.outside_diameter_mm), tube.outside_mm),
        number(path!(pier.wall_mm), tube.wall_mm),
    ];
    if let Some(side) = situation.planned.plan.pier.plate_side_mm {
        fields.push(number(
            path!(pier.plate_side_mm),
            brief.stock.value.side_up_mm(side + more),
        ));
    }
    let fields = situation.on_this_block(fields);
    let say = |value| brief.units.to_measure(value);
    Some(Offered {
        id: "stiffer_tube",
        says: format!(
            "Put a tube of {} with a wall of {} in the place of this one, with a base plate and studs that fit it.",
            say(tube.outside_mm),
            say(tube.wall_mm)
        ),
        after: situation.remade(&fields)?,
        fields,
        not_in_plan: None,
    })
}

fn grout(situation: &Situation) -> Option<Offered> {
    if situation.planned.brief.pier.levelling.value != Levelling::Nuts {
        return None;
    }
    let fields =
        situation.on_this_block(vec![choice(path!(pier.levelling), Levelling::Grout.key())]);
    Some(Offered {
        id: "grout",
        says: "Pack grout under the base plate, so that it no longer stands on nuts alone, and tighten the nuts when it is hard."
            .to_owned(),
        after: situation.remade(&fields)?,
        fields,
        not_in_plan: None,
    })
}

/// On nuts the plate between wall and studs is one of the springs behind each other; ribs make it stiffer. On grout they do
/// little.
fn ribs(situation: &Situation) -> Option<Offered> {
    let planned = situation.planned;
    let brief = planned.brief;
    let studs = brief.anchors.number();
    if brief.pier.stiffener_count.value > 0.0
        || Seat::of(brief) != Seat::Nuts
        || 2 * studs > MOST_RIBS
    {
        return None;
    }
    let [thickness, height] = RIB_MM.map(millimetre::new);
    let ribs = Ribs {
        thickness,
        height,
        apart: RIBS_APART * brief.anchors.thread().diameter,
    };
    let now = joint::base_joint(brief, planned.block);
    let ribbed = ribbed_plate::stiffness_per_stud(&joint::plate(brief), &ribs, studs);
    let stud =
        |plate| newton_per_metre::get(loss::in_series(loss::in_series(now.bond, now.bar), plate));
    let say = |length| brief.units.say(length, Millimetre);
    let count = 2 * studs;
    Some(Offered {
        id: "ribs",
        says: format!(
            "Have {count} ribs welded between column and base plate, {} thick and {} high, one on either side of each stud and clear of its \
             nut: worked out with the plate as a strip from rib to rib.",
            say(thickness),
            say(height)
        ),
        fields: vec![number(path!(pier.stiffener_count), count as f64)],
        not_in_plan: Some(
            "The plan writes the ribs down and counts none of their stiffness, to be on the safe side. How high and how far apart they \
             are here is judgement.",
        ),
        after: situation.same(Changed {
            joint: stud(ribbed) / stud(now.plate),
            ..Changed::NOTHING
        }),
    })
}

/// Nuts that are tight again bring the base joint back to what the plan says of it, where it is softer.
fn tighter_nuts(situation: &Situation) -> Option<Offered> {
    let standing = situation.standing;
    let middle = thirds(
        situation
            .draws
            .iter()
            .map(|draw| draw.at[Unknown::Joint as usize]),
    )?[1];
    (middle < SOFTER).then(|| Offered {
        id: "tighter_nuts",
        says: "Tighten the nuts of the base plate again, to the torque of the studs' sheet and crosswise, and mark them: worked out with \
               the base joint as stiff as the plan has it."
            .to_owned(),
        fields: Vec::new(),
        not_in_plan: Some("It is done on the pier; the plan counts its nuts as tight."),
        after: After::Swing(Box::new((
            standing.clone(),
            Changed {
                joint_at_least: standing.prior.middle[Unknown::Joint as usize].exp(),
                ..Changed::NOTHING
            },
        ))),
    })
}
