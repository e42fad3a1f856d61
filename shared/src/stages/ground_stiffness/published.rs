//! The published closed forms beside the solver: the same six stiffnesses by Pais & Kausel and by Gazetas, and how far
//! they are from what is solved.

use crate::figure::{Amount, Megapascal, One, Unit, Units};
use crate::halfspace::Shape;
use crate::notes::{Notes, Opinion, Working};
use crate::rules::{gazetas_1991 as gazetas, pais_kausel_1988 as pais};
use crate::units::{Pressure, metre, newton_metre_per_radian, newton_per_metre};

/// Six stiffnesses in the order x, y, z, about x, about y, about z; newton, metre, radian.
pub type Six = [f64; 6];

/// Side contact from the surface to the base, sides bonded: the case of Pais & Kausel.
pub fn pais_kausel(shape: &Shape, g: Pressure) -> Six {
    let (length, width) = (shape.length_m, shape.width_m);
    let footing = pais::Footing {
        shear_modulus: g,
        poisson_ratio: shape.poisson_ratio,
        half_length: metre::new(length.max(width) / 2.0),
        half_width: metre::new(length.min(width) / 2.0),
        depth: metre::new(shape.depth_m),
    };
    let horizontal = pais::horizontal_factor(&footing);
    along_axes(
        length >= width,
        [
            newton_per_metre::get(pais::surface_along(&footing)) * horizontal,
            newton_per_metre::get(pais::surface_across(&footing)) * horizontal,
            newton_per_metre::get(pais::surface_vertical(&footing))
                * pais::vertical_factor(&footing),
            newton_metre_per_radian::get(pais::surface_rocking_short(&footing))
                * pais::rocking_short_factor(&footing),
            newton_metre_per_radian::get(pais::surface_rocking_long(&footing))
                * pais::rocking_long_factor(&footing),
            newton_metre_per_radian::get(pais::surface_torsion(&footing))
                * pais::torsion_factor(&footing),
        ],
    )
}

/// A trench with the sides in contact over some height: Gazetas. He counts the height up from the base.
pub fn gazetas(shape: &Shape, g: Pressure) -> Six {
    let (length, width) = (shape.length_m, shape.width_m);
    let footing = gazetas::Footing {
        shear_modulus: g,
        poisson_ratio: shape.poisson_ratio,
        half_length: metre::new(length.max(width) / 2.0),
        half_width: metre::new(length.min(width) / 2.0),
        depth: metre::new(shape.depth_m),
        contact_height: metre::new((shape.contact_to_m - shape.contact_from_m).max(0.0)),
    };
    along_axes(
        length >= width,
        [
            newton_per_metre::get(gazetas::surface_along(&footing))
                * gazetas::along_factor(&footing),
            newton_per_metre::get(gazetas::surface_across(&footing))
                * gazetas::across_factor(&footing),
            newton_per_metre::get(gazetas::surface_vertical(&footing))
                * gazetas::vertical_factor(&footing),
            newton_metre_per_radian::get(gazetas::surface_rocking_short(&footing))
                * gazetas::rocking_short_factor(&footing),
            newton_metre_per_radian::get(gazetas::surface_rocking_long(&footing))
                * gazetas::rocking_long_factor(&footing),
            newton_metre_per_radian::get(gazetas::surface_torsion(&footing))
                * gazetas::torsion_factor(&footing),
        ],
    )
}

/// From along, across, vertical, about the long axis, about the short axis, torsion to the order of the axes.
fn along_axes(
    longer_along_x: bool,
    [along, across, vertical, about_long, about_short, torsion]: Six,
) -> Six {
    if longer_along_x {
        [along, across, vertical, about_long, about_short, torsion]
    } else {
        [across, along, vertical, about_short, about_long, torsion]
    }
}

/// Place of rocking about y, east and west, among the six.
const ABOUT_Y: usize = 4;

/// Names and units of the six, in the order of the axes.
const AXES: [(&str, Unit); 6] = [
    ("Horizontal stiffness along x", Unit::MeganewtonPerMetre),
    ("Horizontal stiffness along y", Unit::MeganewtonPerMetre),
    ("Vertical stiffness", Unit::MeganewtonPerMetre),
    ("Rocking stiffness about x", Unit::MeganewtonMetrePerRadian),
    ("Rocking stiffness about y", Unit::MeganewtonMetrePerRadian),
    ("Torsional stiffness", Unit::MeganewtonMetrePerRadian),
];
const PAIS_IDS: [&str; 6] = [
    "ground_stiffness.pais_kausel.horizontal_x",
    "ground_stiffness.pais_kausel.horizontal_y",
    "ground_stiffness.pais_kausel.vertical",
    "ground_stiffness.pais_kausel.rocking_x",
    "ground_stiffness.pais_kausel.rocking_y",
    "ground_stiffness.pais_kausel.torsion",
];
const GAZETAS_IDS: [&str; 6] = [
    "ground_stiffness.gazetas.horizontal_x",
    "ground_stiffness.gazetas.horizontal_y",
    "ground_stiffness.gazetas.vertical",
    "ground_stiffness.gazetas.rocking_x",
    "ground_stiffness.gazetas.rocking_y",
    "ground_stiffness.gazetas.torsion",
];
/// Along the longer side, along the shorter, vertical, about the longer axis, about the shorter, torsion.
const PAIS_FORMS: [&str; 6] = [
    "K = GB/(2−ν) [6.8 (L/B)^0.65 + 2.4] × {1 + [0.33 + 1.34/(1 + L/B)] (D/B)^0.8}",
    "K = GB/(2−ν) [6.8 (L/B)^0.65 + 0.8 L/B + 1.6] × {1 + [0.33 + 1.34/(1 + L/B)] (D/B)^0.8}",
    "K = GB/(1−ν) [3.1 (L/B)^0.75 + 1.6] × {1 + [0.25 + 0.25 B/L] (D/B)^0.8}",
    "K = GB³/(1−ν) [3.2 L/B + 0.8] × {1 + D/B + [1.6/(0.35 + L/B)] (D/B)²}",
    "K = GB³/(1−ν) [3.73 (L/B)^2.4 + 0.27] × {1 + D/B + [1.6/(0.35 + (L/B)⁴)] (D/B)²}",
    "K = GB³ [4.25 (L/B)^2.45 + 4.06] × {1 + [1.3 + 1.32 B/L] (D/B)^0.9}",
];
const GAZETAS_FORMS: [&str; 6] = [
    "K = {2GL/(2−ν) (2 + 2.5 (B/L)^0.85) − 0.2/(0.75−ν) GL (1 − B/L)} [1 + 0.15 √(D/B)] [1 + 0.52 (z_w A_w/(L B²))^0.4], A_w = 4(B + L)d_w, z_w = D − d_w/2",
    "K = 2GL/(2−ν) (2 + 2.5 (B/L)^0.85) [1 + 0.15 √(D/B)] [1 + 0.52 (z_w A_w/(B L²))^0.4], A_w = 4(B + L)d_w, z_w = D − d_w/2",
    "K = 2GL/(1−ν) (0.73 + 1.54 (B/L)^0.75) [1 + D/(21B) (1 + 1.3 B/L)] [1 + 0.2 (A_w/4BL)^(2/3)], A_w = 4(B + L)d_w",
    "K = G/(1−ν) I_x^0.75 (L/B)^0.25 (2.4 + 0.5 B/L) × {1 + 1.26 (d_w/B) [1 + (d_w/B)(d_w/D)^−0.2 √(B/L)]}, I_x = 4LB³/3",
    "K = 3G/(1−ν) I_y^0.75 (L/B)^0.15 × {1 + 0.92 (d_w/L)^0.6 [1.5 + (d_w/L)^1.9 (d_w/D)^−0.6]}, I_y = 4BL³/3",
    "K = G J^0.75 [4 + 11 (1 − B/L)^10] × {1 + 1.4 (1 + B/L)(d_w/B)^0.9}, J = 4LB(L² + B²)/3",
];

/// Writes down the published forms beside what was solved, each with the difference in its title.
pub fn note(shape: &Shape, g: Pressure, solved: &Six, units: Units, notes: &mut Notes) {
    let full = shape.contact_from_m <= 0.0 && shape.contact_to_m >= shape.depth_m;
    if full {
        let found = pais_kausel(shape, g);
        rows(
            shape,
            g,
            solved,
            &found,
            ("Pais & Kausel", pais::SOURCE, PAIS_IDS, PAIS_FORMS),
            units,
            notes,
        );
    }
    let found = gazetas(shape, g);
    rows(
        shape,
        g,
        solved,
        &found,
        ("Gazetas", gazetas::SOURCE, GAZETAS_IDS, GAZETAS_FORMS),
        units,
        notes,
    );
}

type Forms = (
    &'static str,
    crate::source::Source,
    [&'static str; 6],
    [&'static str; 6],
);

fn rows(
    shape: &Shape,
    g: Pressure,
    solved: &Six,
    found: &Six,
    (author, source, ids, forms): Forms,
    units: Units,
    notes: &mut Notes,
) {
    let role: [usize; 6] = if shape.length_m >= shape.width_m {
        [0, 1, 2, 3, 4, 5]
    } else {
        [1, 0, 2, 4, 3, 5]
    };
    let rocking = [found, solved].map(|six| Amount::of(six[ABOUT_Y] / 1e6, AXES[ABOUT_Y].1));
    let what = "Rocking stiffness east–west, with the sides held";
    notes.opinion(Opinion::figure(
        "ground_stiffness.rocking_y",
        author,
        what,
        rocking,
        source,
        units,
    ));
    for axis in 0..6 {
        let (name, unit) = AXES[axis];
        let off =
            format!("{:+.0}", 100.0 * (found[axis] / solved[axis] - 1.0)).replace('-', "\u{2212}");
        notes.working(
            Working::new(
                ids[axis],
                format!("{name} by {author}: {off} % against the solver"),
                forms[role[axis]],
                source,
            )
            .with("G", g, Megapascal)
            .with("ν", shape.poisson_ratio, One)
            .with("L", shape.length_m.max(shape.width_m) / 2.0, Unit::Metre)
            .with("B", shape.length_m.min(shape.width_m) / 2.0, Unit::Metre)
            .with("D", shape.depth_m, Unit::Metre)
            .with(
                "d_w",
                (shape.contact_to_m - shape.contact_from_m).max(0.0),
                Unit::Metre,
            )
            .gives("K", found[axis] / 1e6, unit),
        );
    }
}
