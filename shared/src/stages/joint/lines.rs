//! The lines of calculation behind the foot's stiffness.

use crate::brief::Brief;
use crate::figure::{
    Count, KilonewtonPerMillimetre, Megapascal, Millimetre, MillimetrePerMegapascal,
    SquareMillimetre, Unit,
};
use crate::notes::{Line, Notes, Working};
use crate::rules::annular_plate::{self, Plate};
use crate::rules::en_1993_1_8_2005::base_plate;
use crate::rules::vdi_2230_2015::loss;
use crate::rules::{resin, stud_group};
use crate::stages::anchors::seat::Seat;
use crate::stages::anchors::situation::tightening_is_known;
use crate::units::{
    LinearStiffness, RotationalStiffness, newton_metre_per_radian, newton_per_metre,
};

use super::{Joint, bar, bar_length, plate, steel};

/// Above this a line says as good as rigid, N/m.
const RIGID_SHOWN_N_PER_M: f64 = 1e12;

/// The lines of calculation behind the foot's stiffness.
pub fn workings(brief: &Brief, joint: &Joint, notes: &mut Notes) {
    // Stiffer than this is as good as rigid.
    let shown = |stiffness: LinearStiffness| {
        newton_per_metre::new(newton_per_metre::get(stiffness).min(RIGID_SHOWN_N_PER_M))
    };
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
    Line::new(
        "joint.bar",
        "Free length of one stud",
        "k_s = E A_s/l",
        stud_group::RING,
    )
    .with("E", steel(), Megapascal)
    .with("A_s", thread.stress_area, SquareMillimetre)
    .with("l", bar_length(brief, joint.seat), Millimetre)
    .gives("k_s", KilonewtonPerMillimetre, |(modulus, area, length)| {
        shown(bar(modulus, area, length))
    })
    .note(notes);
    let plate = plate(brief);
    Line::new(
        "joint.plate",
        "Plate between the wall and one stud",
        "Kirchhoff's plate in harmonics round the axis",
        annular_plate::PLATE,
    )
    .with("n", anchors.count.value, Count)
    .with("a", plate.wall_radius, Millimetre)
    .with("t_w", plate.wall, Millimetre)
    .with("R", plate.stud_radius, Millimetre)
    .with("R_o", plate.outer_radius, Millimetre)
    .with("t", plate.thickness, Millimetre)
    .with("E", plate.modulus, Megapascal)
    .gives(
        "k_p",
        KilonewtonPerMillimetre,
        |(_, wall_radius, wall, stud_radius, outer_radius, thickness, modulus)| {
            let plate = Plate {
                wall_radius,
                wall,
                stud_radius,
                outer_radius,
                thickness,
                modulus,
            };
            let found = annular_plate::stiffness_per_stud(&plate, anchors.number());
            shown(found.unwrap_or(joint.plate))
        },
    )
    .note(notes);
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
    let open = |formula| {
        let title = "The same with the joint open";
        Line::new("joint.open", title, formula, base_plate::JOINT)
    };
    match joint.opened {
        Some(parts) => open("S_j = E z²/(1/k_T + 1/k_C)")
            .with("E", steel(), Megapascal)
            .with("z", parts.lever, Millimetre)
            .with("k_T", parts.pulled, Millimetre)
            .with("k_C", parts.pressed, Millimetre)
            .gives(
                "K_open",
                Unit::MeganewtonMetrePerRadian,
                |(modulus, lever, pulled, pressed)| {
                    mega(base_plate::joint(modulus, lever, pulled, pressed))
                },
            )
            .note(notes),
        None => open("S_j = n R²/2 ÷ (1/k_b + 1/k_s + 1/k_p)")
            .with("n", anchors.count.value, Count)
            .with("R", anchors.circle_diameter.value / 2.0, Millimetre)
            .with("k_b", joint.bond, KilonewtonPerMillimetre)
            .with("k_s", joint.bar, KilonewtonPerMillimetre)
            .with("k_p", joint.plate, KilonewtonPerMillimetre)
            .gives(
                "K_open",
                Unit::MeganewtonMetrePerRadian,
                |(_, radius, bond, bar, plate)| {
                    let stud = loss::in_series(loss::in_series(bond, bar), plate);
                    mega(stud_group::ring_stiffness(anchors.number(), radius, stud))
                },
            )
            .note(notes),
    }
}
