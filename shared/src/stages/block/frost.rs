//! Frost at the block's sides: what lifts it, what holds it, and the remedy that the plan contains where that is not enough.

use crate::{path, paths};
use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Kilonewton, Metre, One, Unit};
use crate::notes::{AssumedValue, Assumption, Check, Notes, Working};
use crate::rules::cfem_2006::adfreeze;
use crate::site_plan::block::FrostRemedy;
use crate::source::Source;
use crate::stages::block::actions::Actions;
use crate::stages::block::outline::{Contact, Outline};
use crate::stages::ground::Ground;
use crate::stages::ground::frost_class::FrostClass;
use crate::stages::ground::soil_table;
use crate::stock::Stock;
use crate::units::customary::{FOOT_M, INCH_MM};
use crate::units::{Force, Length, Pressure, kilonewton, kilopascal, metre, millimetre};

/// Depth of the boards below ground.
const BOARD_DEPTH_M: f64 = 0.3;
/// Width of the boards round the block at least: frost goes about as far sideways as down.
const BOARD_WIDTH_M: f64 = 1.0;
/// The same where boards are sold four feet wide, ft.
const BOARD_WIDTH_FT: f64 = 4.0;
/// Thickness of the boards where frost goes no deeper than [`DEEP_FROST_M`], and where it does.
const BOARD_MM: [f64; 2] = [50.0, 100.0];
const DEEP_FROST_M: f64 = 0.6;
/// Grip that is left in spite of the boards: cold also goes down in the concrete itself.
const LEFT_M: f64 = 0.10;
/// Width of a trench of gravel beside the block.
pub(crate) const GRAVEL_WIDTH_M: f64 = 0.3;

/// Boards that keep frost out of the ground.
const BOARD_SOURCE: Source = Source::from_memory(
    "EN ISO 13793",
    "2001",
    "ground insulation laid flat beside unheated structures; sizes by judgement",
);

/// Frost at the sides.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct SideFrost {
    /// What the plan does against it.
    pub remedy: FrostRemedy,
    /// Whether the planner chose it.
    #[serde(skip)]
    pub chosen: bool,
    /// Depth over which frozen ground grips the sides.
    #[serde(rename = "frozen_depth_m", with = "metre")]
    pub frozen_depth: Length,
    /// Lift in the middle of the bond's range and at its high end.
    #[serde(rename = "lift_kn", with = "kilonewton")]
    pub lift: Force,
    /// At the high end.
    #[serde(rename = "lift_high_kn", with = "kilonewton")]
    pub lift_high: Force,
    /// What holds the block down.
    #[serde(rename = "hold_kn", with = "kilonewton")]
    pub resistance: Force,
    /// Width of the insulation, sleeve or trench of gravel beyond the block's side; nought where there is none.
    #[serde(rename = "width_m", with = "metre")]
    pub width: Length,
    /// Depth of the boards, or to which sleeve or gravel reaches.
    #[serde(rename = "depth_m", with = "metre")]
    pub depth: Length,
    /// Thickness of the boards.
    #[serde(rename = "thickness_mm", with = "millimetre")]
    pub thickness: Length,
}

impl SideFrost {
    /// Decides the remedy: the person's, or insulation where frost would lift the block.
    pub(super) fn find(
        brief: &Brief,
        ground: &Ground,
        outline: &Outline,
        actions: &Actions,
    ) -> Self {
        let stock = brief.stock.value;
        let without = Self::with(FrostRemedy::None, stock, ground, outline, actions);
        match brief.block.frost_remedy {
            Some(remedy) => Self::with(remedy, stock, ground, outline, actions),
            None if without.lift_high <= without.resistance || !adheres(ground) => without,
            None => Self {
                chosen: true,
                ..Self::with(FrostRemedy::Insulation, stock, ground, outline, actions)
            },
        }
    }

    fn with(
        remedy: FrostRemedy,
        stock: Stock,
        ground: &Ground,
        outline: &Outline,
        actions: &Actions,
    ) -> Self {
        let nought = metre::new(0.0);
        let goes = frost_at_sides(ground, outline);
        // Below the base there is no side to grip; what frost does there is the base's own check.
        let side = goes.min(outline.depth);
        let bond = match remedy {
            FrostRemedy::None | FrostRemedy::Insulation => adfreeze::bond(),
            FrostRemedy::Sleeve | FrostRemedy::Gravel => adfreeze::sleeved_bond(),
        };
        let (frozen, width, depth, thickness) = match remedy {
            FrostRemedy::None => (side, nought, nought, nought),
            FrostRemedy::Insulation => (
                side.min(metre::new(LEFT_M)),
                board_width(stock, goes),
                metre::new(stock.either(BOARD_DEPTH_M, FOOT_M)),
                millimetre::new(
                    stock.either(BOARD_MM, [2.0, 4.0].map(|inches| inches * INCH_MM))
                        [usize::from(goes > metre::new(DEEP_FROST_M))],
                ),
            ),
            FrostRemedy::Sleeve => (side, nought, side, nought),
            FrostRemedy::Gravel => (
                side,
                metre::new(stock.either(GRAVEL_WIDTH_M, FOOT_M)),
                side,
                nought,
            ),
        };
        let perimeter = (outline.length + outline.width) * 2.0;
        let lift = |bond: Pressure| adfreeze::lift(bond, perimeter, frozen);
        let adhesion = adhesion(ground, frozen, outline.depth);
        Self {
            remedy,
            chosen: false,
            frozen_depth: frozen,
            lift: lift(bond.typical),
            lift_high: lift(bond.high),
            resistance: adfreeze::resistance(
                actions.weight - actions.lift / adfreeze::WEIGHT_FACTOR,
                adhesion,
                perimeter,
                outline.depth - frozen,
            )
            .max(kilonewton::new(0.0)),
            width,
            depth,
            thickness,
        }
    }

    /// The contact that is left: a sleeve or gravel takes it away as far down as it reaches.
    pub(super) fn contact(&self, contact: Contact) -> Contact {
        let lost = matches!(self.remedy, FrostRemedy::Sleeve | FrostRemedy::Gravel);
        if !lost {
            return contact;
        }
        Contact {
            from: contact.from.max(self.depth).min(contact.to),
            ..contact
        }
    }
}

/// Whether frozen ground grips the block's sides at all.
fn adheres(ground: &Ground) -> bool {
    ground.frost_class >= FrostClass::F2 && ground.frost_depth > metre::new(0.0)
}

/// How deep frost goes beside the block; on sound rock it ends with the soil.
fn frost_at_sides(ground: &Ground, outline: &Outline) -> Length {
    if !adheres(ground) {
        metre::new(0.0)
    } else if ground.is_sound_rock_at(outline.depth) {
        ground.frost_depth.min(outline.depth)
    } else {
        ground.frost_depth
    }
}

/// Boards reach as far out as frost goes down, in steps of a tenth.
fn board_width(stock: Stock, frost: Length) -> Length {
    let (least, in_a_metre) = stock.either(
        (BOARD_WIDTH_M, 10.0),
        (BOARD_WIDTH_FT * FOOT_M, 1.0 / FOOT_M),
    );
    metre::new((metre::get(frost) * in_a_metre - 1e-6).ceil() / in_a_metre).max(metre::new(least))
}

/// Grip of unfrozen soil below the frost: half the undrained strength of clay, up to 25 kPa; 12 kPa of silt; a fifth of the
/// effective pressure of sand and gravel. Judgement.
fn adhesion(ground: &Ground, frozen: Length, depth: Length) -> Pressure {
    use crate::stages::ground::soil_table::Group;
    const MOST_KPA: f64 = 25.0;
    match ground.group {
        Group::Clay => {
            let strength = ground.undrained_strength().map_or(0.0, kilopascal::get);
            kilopascal::new((0.5 * strength).min(MOST_KPA))
        }
        Group::Silt => kilopascal::new(12.0),
        Group::Sand | Group::Gravel => {
            let middle = (frozen + depth) / 2.0;
            ground.effective_stress(middle) * 0.2
        }
        Group::Rock => kilopascal::new(MOST_KPA),
        Group::Unfit => kilopascal::new(0.0),
    }
}

/// The check, its line of calculation, and the assumption where the planner chose. None on ground that is sound rock.
pub(super) fn note(
    brief: &Brief,
    ground: &Ground,
    frost: &SideFrost,
    notes: &mut Notes,
) -> Option<Check> {
    if ground.is_stable_rock() {
        return None;
    }
    let say = |force: Force| brief.units.say(force, Kilonewton);
    let ratio = |lift: Force| match over(lift, frost.resistance) {
        ratio if ratio.is_finite() => brief.units.say(ratio, One),
        _ => "without limit, since nothing holds it,".to_owned(),
    };
    if frost.chosen {
        notes.assumptions.push(chosen(brief, frost));
    }
    notes.working(
        Working::new(
            "block.adfreeze",
            format!(
                "Lift of frozen ground at the sides: {} in the middle of the bond's range, {} at its high end",
                say(frost.lift),
                say(frost.lift_high)
            ),
            "T/R = τ p z_f/[0.9 W + a p (D − z_f)]",
            adfreeze::SOURCE,
        )
        .with("z_f", frost.frozen_depth, Metre)
        .with("T", frost.lift_high, Kilonewton)
        .with("R", frost.resistance, Kilonewton)
        .gives("T/R", over(frost.lift_high, frost.resistance), One),
    );
    let note = if frost.frozen_depth <= metre::new(0.0) {
        "This ground does not heave, or no frost reaches it: nothing lifts the block by its sides."
            .to_owned()
    } else {
        format!(
            "Lift over what holds the block down: {} in the middle of the range, {} at its high end. {} The remedies, best first: insulation \
             laid flat round the block, which costs no stiffness; a smooth double sleeve or clean gravel down to the frost, which costs the \
             side contact there.",
            ratio(frost.lift),
            ratio(frost.lift_high),
            remedy_words(frost.remedy)
        )
    };
    // Behind boards, how much grip is left is judgement; in ground that nobody may presume, so is what holds.
    let by_judgement =
        frost.remedy == FrostRemedy::Insulation || ground.group == soil_table::Group::Unfit;
    let unsure =
        frost.lift_high > frost.resistance && (by_judgement || frost.lift <= frost.resistance);
    let check = Check::at_most(
        "block.adfreeze",
        "Does the block stay down when frost grips its sides?",
        frost.lift_high,
        frost.resistance,
        Kilonewton,
        adfreeze::SOURCE,
    );
    Some(check.ask_when(unsure).note(note).moved_by(paths![
        block.frost_remedy,
        site.frost_depth_m,
        site.soil,
        block.depth_m,
    ]))
}

fn over(lift: Force, resistance: Force) -> f64 {
    let resistance = kilonewton::get(resistance);
    if resistance > 0.0 {
        kilonewton::get(lift) / resistance
    } else {
        f64::INFINITY
    }
}

fn remedy_words(remedy: FrostRemedy) -> &'static str {
    match remedy {
        FrostRemedy::None => "Nothing is planned against it.",
        FrostRemedy::Insulation => {
            "The plan lays insulation in the ground round the block; some grip is left, since cold also goes down in the concrete."
        }
        FrostRemedy::Sleeve => {
            "The plan puts a sleeve of two greased layers round the block down to the frost."
        }
        FrostRemedy::Gravel => {
            "The plan fills a trench of clean, drained gravel round the block down to the frost."
        }
    }
}

fn chosen(brief: &Brief, frost: &SideFrost) -> Assumption {
    let say = |length: Length| brief.units.say(length, Metre);
    Assumption {
        field: path!(block.frost_remedy),
        value: AssumedValue::Text(frost.remedy.key().to_owned()),
        unit: Unit::One,
        why: format!(
            "Without it frozen ground could lift the block by its sides. Boards {} wide, {} below ground all round, keep frost out and cost \
             no stiffness.",
            say(frost.width),
            say(frost.depth)
        ),
        effect:
            "boards and gravel to order, a task after the pour, and whether frost lifts the pier"
                .into(),
        source: BOARD_SOURCE,
    }
}
