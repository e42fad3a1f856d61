//! The floor: cut free of the pier, and its feet or the people's farther away. Both are for steps, and change no swing.

use super::{After, Offered, Situation};
use crate::brief::{Brief, Given};
use crate::figure::Unit;
use crate::improve::change::stands_farther_out;
use crate::path;
use crate::proof::moments::thirds;
use crate::proof::pier::Unknown;
use crate::site_plan::floor::{FloorKind, Stand};
use crate::stages::floor::{self, Floor, Footprint, footprints};
use crate::stages::motion::improvement::{NewField, NewValue};
use crate::units::customary::INCH_MM;
use crate::units::{ARCSEC_PER_RADIAN, STANDARD_GRAVITY_M_S2, metre, millimetre};

/// A gap that no floor bridges, of metric and of inch parts.
const FREE_MM: (f64, f64) = (20.0, 0.75 * INCH_MM);
/// How much farther out posts go, m.
const OUT_M: f64 = 0.5;

pub(super) fn offered(situation: &Situation) -> Vec<Offered> {
    [cut_free(situation), feet_moved(situation)]
        .into_iter()
        .flatten()
        .collect()
}

/// The middle of the tilt under a person whose weight reaches the ground there.
fn tilt(situation: &Situation, feet: &[Footprint], mass_kg: f64) -> Option<f64> {
    let standing = situation.standing;
    let lean = standing.lean_of(feet);
    thirds(situation.draws.iter().map(|draw| {
        let turn = lean.at(standing.value(&draw.at, Unknown::Contact));
        let modulus = standing.value(&draw.at, Unknown::Ground);
        ARCSEC_PER_RADIAN * turn[0].hypot(turn[1]) * mass_kg * STANDARD_GRAVITY_M_S2 / modulus
    }))
    .map(|found| found[1])
}

/// The largest tilt of those who stand there.
fn worst(situation: &Situation, floor: &Floor, stands: &[Stand]) -> Option<f64> {
    stands
        .iter()
        .filter_map(|stand| {
            tilt(
                situation,
                &footprints(floor, stand.x_m, stand.y_m),
                stand.mass_kg,
            )
        })
        .reduce(f64::max)
}

/// A floor that touches carries a person onto the block's edge, at worst with all of the weight.
fn cut_free(situation: &Situation) -> Option<Offered> {
    let planned = situation.planned;
    let brief = planned.brief;
    let gap = millimetre::get(brief.floor.gap.value);
    let free = brief.stock.value.either(FREE_MM.0, FREE_MM.1);
    let is_narrow = gap < free;
    let trembles = situation.said.symptoms.at_steps == Some(true);
    if brief.floor.kind.value == FloorKind::Ground || !(is_narrow || trembles) {
        return None;
    }
    let stands = &brief.floor.stands.value;
    let after = worst(situation, planned.floor, stands)?;
    let edge = [Footprint {
        x_m: 0.5 * metre::get(planned.block.length) - 0.02,
        y_m: 0.0,
        share_ratio: 1.0,
    }];
    let heaviest = stands.iter().map(|stand| stand.mass_kg).reduce(f64::max)?;
    let before = tilt(situation, &edge, heaviest)?;
    let fields = if is_narrow {
        vec![NewField {
            field: path!(floor.gap_mm),
            value: NewValue::Number(free),
        }]
    } else {
        Vec::new()
    };
    Some(Offered {
        id: "floor_free",
        says: format!(
            "Cut the floor free of column and block, {} all round, and leave nothing stiff in the gap: a floor that touches brings a \
             person's weight onto the block, at worst all of it.",
            brief.units.say(free, Unit::Millimetre)
        ),
        fields,
        not_in_plan: (!is_narrow)
            .then_some("It is done on the pier; the plan has a gap that is wide enough."),
        after: After::Tilt([before, after]),
    })
}

/// A deck's posts farther from the block; on a slab or on the ground the people.
fn feet_moved(situation: &Situation) -> Option<Offered> {
    let planned = situation.planned;
    let brief = planned.brief;
    let stands = &brief.floor.stands.value;
    let before = worst(situation, planned.floor, stands)?;
    let out = brief.units.about(OUT_M, Unit::Metre);
    if brief.floor.kind.value == FloorKind::Deck {
        let posts: Vec<[f64; 2]> = planned
            .floor
            .supports
            .iter()
            .map(|post| farther(*post))
            .collect();
        let mut changed: Brief = brief.clone();
        changed.floor.supports = posts.clone();
        let other = floor::stage(&changed, planned.ground, planned.block, planned.pier).value;
        return Some(Offered {
            id: "feet_moved",
            says: format!("Set the deck's posts {out} farther from the pier."),
            fields: vec![NewField {
                field: path!(floor.supports),
                value: NewValue::Path(posts),
            }],
            not_in_plan: None,
            after: After::Tilt([before, worst(situation, &other, stands)?]),
        });
    }
    let moved = stands_farther_out(brief)?;
    let mut changed: Brief = brief.clone();
    changed.floor.stands = Given::said(moved.clone());
    let other = floor::stage(&changed, planned.ground, planned.block, planned.pier).value;
    Some(Offered {
        id: "feet_moved",
        says: format!("Let everybody stand {out} farther from the pier, where the floor goes on."),
        after: After::Tilt([before, worst(situation, &other, &moved)?]),
        fields: vec![NewField {
            field: path!(floor.stands),
            value: NewValue::Stands(moved),
        }],
        not_in_plan: None,
    })
}

fn farther(post: [f64; 2]) -> [f64; 2] {
    let distance = post[0].hypot(post[1]);
    let scale = if distance > 0.0 {
        (distance + OUT_M) / distance
    } else {
        1.0
    };
    post.map(|value| (value * scale * 1e3).round() / 1e3)
}
