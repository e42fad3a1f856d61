//! The lines of calculation behind the foot's stiffness.

use crate::brief::Brief;
use crate::figure::{
    Count, KilonewtonPerMillimetre, Millimetre, MillimetrePerMegapascal, SquareMillimetre, Unit,
};
use crate::notes::{Line, Notes, Working};
use crate::rules::en_1993_1_1_2005::material;
use crate::rules::en_1993_1_8_2005::base_plate;
use crate::rules::{annular_plate, resin, stud_group};
use crate::stages::anchors::seat::Seat;
use crate::stages::anchors::situation::tightening_is_known;
use crate::units::{
    LinearStiffness, RotationalStiffness, newton_metre_per_radian, newton_per_metre,
};

use super::Joint;

/// The lines of calculation behind the foot's stiffness.
pub fn workings(brief: &Brief, joint: &Joint, notes: &mut Notes) {
    let per_mm = |stiffness: LinearStiffness| newton_per_metre::get(stiffness) / 1e6;
    let mega = |stiffness: RotationalStiffness| newton_metre_per_radian::get(stiffness) / 1e6;
    let anchors = &brief.anchors;
    let thread = anchors.thread();
    Line::new(
        "joint.bond",
        "Bond of one stud",
        "k_b = π d h_ef/f",
        resin::BOND_STIFFNESS,
    )
    .with("d", thread.diameter, Millimetre)
    .with("h_ef", anchors.embedment.value, Millimetre)
    .with(
        "f",
        anchors.product.displacement_short.value,
        MillimetrePerMegapascal,
    )
    .gives(
        "k_b",
        KilonewtonPerMillimetre,
        |(diameter, embedment, displacement)| {
            resin::bond_stiffness(diameter, embedment, displacement)
        },
    )
    .note(notes);
    notes.working(
        Working::new(
            "joint.bar",
            "Free length of one stud",
            "k_s = E A_s/l",
            stud_group::RING,
        )
        .with("E", material::E_MPA, Unit::Megapascal)
        .with("A_s", thread.stress_area, SquareMillimetre)
        .with("gap", brief.pier.gap.value, Millimetre)
        .gives(
            "k_s",
            per_mm(joint.bar).min(1e6),
            Unit::KilonewtonPerMillimetre,
        ),
    );
    notes.working(
        Working::new(
            "joint.plate",
            "Plate between the wall and one stud",
            "Kirchhoff's plate in harmonics round the axis",
            annular_plate::PLATE,
        )
        .with("t", brief.pier.plate_thickness.value, Millimetre)
        .gives(
            "k_p",
            per_mm(joint.plate).min(1e6),
            Unit::KilonewtonPerMillimetre,
        ),
    );
    let (formula, source) = match joint.seat {
        Seat::Nuts => ("K = n R²/2 ÷ (1/k_b + 1/k_s + 1/k_p)", stud_group::RING),
        Seat::Bedded | Seat::Dished if tightening_is_known(brief) => (
            "K = 4 E_c a³/[3(1 − ν²)], closed by the preload",
            base_plate::DISC,
        ),
        Seat::Bedded | Seat::Dished => (
            "as with the joint open, since nothing vouches for a preload",
            base_plate::JOINT,
        ),
    };
    notes.working(
        Working::new(
            "pier.base_joint_stiffness",
            "Turning stiffness of the foot",
            formula,
            source,
        )
        .with("n", anchors.count.value, Count)
        .with("R", anchors.circle_diameter.value / 2.0, Millimetre)
        .with("a", joint.disc_radius, Millimetre)
        .with(
            "K_low",
            mega(joint.stiffness.low),
            Unit::MeganewtonMetrePerRadian,
        )
        .with(
            "K_high",
            mega(joint.stiffness.high),
            Unit::MeganewtonMetrePerRadian,
        )
        .gives(
            "K",
            mega(joint.stiffness.typical),
            Unit::MeganewtonMetrePerRadian,
        ),
    );
    let open = Working::new(
        "joint.open",
        "The same with the joint open",
        "S_j = E z²/(1/k_T + 1/k_C); on nuts as above",
        base_plate::JOINT,
    );
    let open = match joint.opened {
        Some(parts) => open
            .with("z", parts.lever, Millimetre)
            .with("k_T", parts.pulled, Millimetre)
            .with("k_C", parts.pressed, Millimetre),
        None => open.with(
            "K",
            mega(joint.stiffness.typical),
            Unit::MeganewtonMetrePerRadian,
        ),
    };
    notes.working(open.gives("K_open", mega(joint.open), Unit::MeganewtonMetrePerRadian));
}
