//! Studs: steel, coating, setting and tightening.

use crate::brief::Brief;
use crate::figure::Unit;
use crate::notes::{Notes, When};
use crate::rules::threads;
use crate::site_plan::anchors::{Coating, Hole, Lubrication, StrengthClass};
use crate::site_plan::block::Reinforcement;
use crate::source::Source;
use crate::stages::anchors::seat::Seat;

/// Galvanised threads.
const GALVANISED: Source = Source::second_hand("ISO 10684", "2004", "Annex A and clause 6");
/// Dissimilar metals.
const CONTACT: Source =
    Source::from_memory("EN ISO 14713-1", "2017", "6.9, contact with other metals");
/// Setting of bonded studs.
const SETTING: Source =
    Source::common_practice("setting of bonded studs; the product's own instructions rule");

/// The cautions about steel, coating and setting.
pub(super) fn list(brief: &Brief, seat: Seat, notes: &mut Notes) {
    tightening(brief, seat, notes);
    pattern(brief, notes);
    ribs(brief, notes);
    steel(brief, notes);
    contact(brief, notes);
    setting_cautions(brief, notes);
}

fn tightening(brief: &Brief, seat: Seat, notes: &mut Notes) {
    if seat == Seat::Nuts {
        // 50 and 60 lbf ft of a rod of 5/8 in.
        let (usual, from, to) = brief.anchors.size.value.stock().either(
            ("an M16", 80.0, 120.0),
            ("a rod of 5/8\u{2033}", 67.8, 81.35),
        );
        notes.caution(
            "anchors.hold_lower_nut",
            When::Tightening,
            format!(
                "Hold the lower nut with a spanner whenever the upper one is turned. Without that about half of the torque twists the stud in \
                 its resin, and products allow {} some {} to {} there; a stud that has turned in its hole no longer \
                  holds, though nothing shows.",
                usual,
                brief.units.say(from, Unit::NewtonMetre),
                brief.units.say(to, Unit::NewtonMetre)
            ),
            Source::from_memory("Assessments of bonded anchors", "", "largest installation torque"),
        );
    }
    if brief.anchors.max_torque.is_none() {
        notes.caution(
            "anchors.torque_unit",
            When::Tightening,
            "The resin's maximum torque was not given. Look it up on its sheet and enter it before you set a wrench: do not \
             tighten the nuts until it is there.",
            SETTING,
        );
    }
}

/// The code's figures show rectangles of up to nine fasteners; other rings are judged here by the same areas.
fn pattern(brief: &Brief, notes: &mut Notes) {
    if brief.anchors.number() != 4 {
        notes.caution(
            "anchors.pattern",
            When::Planning,
            "EN 1992-4 shows rectangles of up to nine fasteners. A ring of another number is calculated here by the same areas and factors, with \
             overlaps counted once; that is a judgement, which a checking engineer should share.",
            Source::from_memory("EN 1992-4", "2018", "Figures 1.1 and 1.2"),
        );
    }
}

/// Ribs between column and plate: what they do, and what here is said without them.
fn ribs(brief: &Brief, notes: &mut Notes) {
    let count = brief.pier.stiffener_count.value;
    if count < 0.5 {
        return;
    }
    notes.caution(
        "anchors.ribs",
        When::Planning,
        format!(
            "{count:.0} ribs between column and plate are counted neither in the plate's strength nor in the foot's stiffness, so that both are \
             on the safe side. A plate as thick as the studs does without them and is easier to weld flat. With ribs the plate bends less \
             when nuts are tightened, the wall bends at the ribs' tops instead of at the plate, and what is said of its spring does not \
             hold: set a rib on either side of a stud, never across its nut, cope its corner clear of the welds and weld it all round."
        ),
        Source::common_practice("ribs of column bases; EN 1993-1-8 has effective lengths for rows beside a stiffener, which are not used here"),
    );
}

fn steel(brief: &Brief, notes: &mut Notes) {
    let anchors = &brief.anchors;
    let stainless = threads::steel(anchors.strength_class.value, anchors.size.value).stainless;
    if stainless && anchors.lubrication.value != Lubrication::Paste {
        notes.caution(
            "anchors.galling",
            When::Tightening,
            "Stainless threads seize without warning when they are tightened without paste, and then neither close nor open. Use anti-seize \
             paste on thread and nut face, turn slowly, and say so in the plan: the same torque then pulls harder.",
            SETTING,
        );
    }
    if anchors.strength_class.value == StrengthClass::C10_9 {
        let zinc = if anchors.coating.value == Coating::Plain {
            ""
        } else {
            " Zinc from a bath adds hydrogen, which makes them brittle."
        };
        notes.caution(
            "anchors.high_strength",
            When::Planning,
            format!("Studs of 10.9 break without much stretch and can crack when they are damp and loaded for years.{zinc} A pier gains nothing from them: 8.8 is ample."),
            Source::common_practice("high-strength bolts out of doors"),
        );
    }
    if anchors.coating.value == Coating::Galvanised && !stainless {
        notes.caution(
            "anchors.galvanised",
            When::Planning,
            "Hot-dip galvanised studs need nuts tapped oversize for them; never recut the stud's own thread. The zinc raises friction: oil or wax \
             the nuts, or less preload comes from the same torque.",
            GALVANISED,
        );
    }
    if !stainless && matches!(anchors.coating.value, Coating::Plain | Coating::Zinc) {
        notes.caution(
            "anchors.corrosion",
            When::Planning,
            format!(
                "Out of doors, plain studs rust within a season and a thin electroplated coat within a few years; where water stands round \
                 them, or they are buried, sooner. Take hot-dip galvanised or {} studs, slope the block's top so that water runs off, and \
                 grease what shows.",
                brief.stock.value.either("A4", "316 stainless")
            ),
            CONTACT,
        );
    }
}

fn contact(brief: &Brief, notes: &mut Notes) {
    let anchors = &brief.anchors;
    if threads::steel(anchors.strength_class.value, anchors.size.value).stainless {
        notes.caution(
            "anchors.contact",
            When::Planning,
            "Where it stays wet, stainless studs make a bare or zinc-coated plate corrode. Isolate them with plastic washers \
             and sleeves that bear the pressure, or paint plate and washers well; in a dry observatory it matters less.",
            CONTACT,
        );
    }
}

fn setting_cautions(brief: &Brief, notes: &mut Notes) {
    let anchors = &brief.anchors;
    if anchors.hole.value == Hole::Wet {
        notes.caution(
            "anchors.wet_hole",
            When::Bonding,
            "Not every resin may go into a wet hole: the product's sheet must say so, and its curing time is then about \
             twice as long. Blow and \
             suck standing water out first.",
            SETTING,
        );
    }
    if brief.block.reinforcement.value != Reinforcement::Plain {
        notes.caution(
            "anchors.bars",
            When::Drilling,
            "Bars run through this block. Tie them clear of the template's holes before the pour and note where they are; a cut bar weakens the \
             block, and a hole that was given up is filled with mortar before another is drilled at least two hole depths away.",
            SETTING,
        );
    }
    if !anchors.product.known() {
        notes.caution(
            "anchors.product",
            When::Planning,
            "No product's approval was given. Bond strength, distances, largest torque and times are the codes' least values or assumptions: fill \
             them in from the sheet of the resin that will be used before anyone drills. Where the pier could hurt somebody, have a licensed \
             engineer sign the anchorage.",
            SETTING,
        );
    }
}
