//! Studs in shear by ACI 318-19: steel, edge, pry-out.

use super::tension::Pulled;
use super::{ductile, edition};
use crate::figure::{
    Count, Kilonewton, Megapascal, Millimetre, NewtonMetre, One, SquareMillimetre,
};
use crate::notes::{Line, Notes, Worked};
use crate::rules::aci_318_19::{factors, shear, steel};
use crate::rules::en_1992_4_2018::steel as bending;
use crate::rules::threads;
use crate::stages::anchors::areas::EdgeArea;
use crate::stages::anchors::seat::Seat;
use crate::stages::anchors::situation::{Acting, Situation, named};
use crate::stages::anchors::strength::{Mode, Strengths};
use crate::units::{Force, millimetre, newton};

/// Puts the strengths in shear.
pub(super) fn put(
    situation: &Situation,
    acting: &Acting,
    pulled: Pulled,
    strengths: &mut Strengths,
    notes: &mut Notes,
) {
    let count = acting.count() as f64;
    let edition = edition(situation);
    let ultimate = steel::ultimate_that_counts(
        edition,
        situation.steel.ultimate,
        situation.steel.yield_strength,
    );
    let grouted =
        situation.seat == Seat::Bedded && millimetre::get(situation.brief.pier.gap.value) > 0.0;
    let phi = factors::steel_shear_factor(ductile(situation));
    let title = |what: &str| format!("{}: {what}", acting.scope.words());
    let source = if grouted { steel::GROUT } else { steel::SHEAR };
    let in_steel = Line::new(
        named!("aci", acting.scope, "shear_steel"),
        title("steel in shear"),
        "V_sa = n 0.6 A_se f_uta (0.8 of it on grout)",
        source,
    )
    .with("n", count, Count)
    .with("A_se", situation.thread.stress_area, SquareMillimetre)
    .with("f_uta", ultimate, Megapascal)
    .with("φ", phi, One)
    .gives("V_sa", Kilonewton, |(count, area, ultimate, _)| {
        steel::shear(area, ultimate, grouted) * count
    })
    .noted(notes);
    strengths.put(Mode::ShearSteel, in_steel, 1.0 / phi);
    lever(situation, acting, phi, strengths, notes);
    let kcp = shear::pry_out_factor(edition, situation.embedment);
    let pried = Line::new(
        named!("aci", acting.scope, "pry_out"),
        title("concrete prised out behind"),
        "V_cpg = k_cp min(N_cbg; N_ag)",
        shear::PRY_OUT,
    )
    .with("k_cp", kcp, One)
    .with("N_cbg", pulled.breakout, Kilonewton)
    .with("N_ag", pulled.bond, Kilonewton)
    .with("φ", factors::pry_out_factor(), One)
    .gives("V_cpg", Kilonewton, |(kcp, breakout, bond, _)| {
        if breakout < bond {
            breakout * kcp
        } else {
            bond * kcp
        }
    })
    .noted(notes);
    strengths.put(Mode::PryOut, pried, 1.0 / factors::pry_out_factor());
    edge(situation, acting, strengths, notes);
}

/// The code has no rule for a plate on an open gap: bending of the studs as in EN 1992-4 stands beside it.
fn lever(
    situation: &Situation,
    acting: &Acting,
    phi: f64,
    strengths: &mut Strengths,
    notes: &mut Notes,
) {
    let Some(gap) = situation.open_gap() else {
        return;
    };
    let thread = &situation.thread;
    let held = bending::bending(
        bending::section_modulus(threads::stress_diameter(thread)),
        situation.steel.ultimate,
    );
    let arm = bending::lever_arm(
        thread.diameter,
        gap,
        situation.brief.pier.plate_thickness.value,
        false,
    );
    let restraint = bending::restraint_factor(acting.count());
    let found = Line::new(
        named!("aci", acting.scope, "shear_lever_arm"),
        format!("{}: steel in shear over the gap", acting.scope.words()),
        "as EN 1992-4, since ACI 318 has no rule: V = n α_M M⁰/l_a, M⁰ = 1.2 W_el f_u",
        bending::LEVER,
    )
    .with("n", acting.count() as f64, One)
    .with("α_M", restraint, One)
    .with("M⁰", held, NewtonMetre)
    .with("l_a", arm, Millimetre)
    .gives("V", Kilonewton, |(count, restraint, held, arm)| {
        bending::shear_with_lever(held, arm, restraint) * count
    })
    .noted(notes);
    strengths.put(Mode::ShearLever, found, 1.0 / phi);
}

/// Breakout of the edge towards the side where it is least, 17.7.2: the row nearest to the edge carries the shear. Straight
/// at the edge is the worst direction: along it the code doubles the strength.
pub(super) fn worst_edge(
    situation: &Situation,
    acting: &Acting,
) -> Option<(EdgeArea, Worked<Force>)> {
    let left = |area: &EdgeArea, force: Force| {
        newton::get(force) * shear::eccentricity_factor(acting.beside, area.counted)
    };
    (0..4)
        .map(|side| edge_force(situation, acting, side))
        .min_by(|(a, there), (b, here)| left(a, there.value).total_cmp(&left(b, here.value)))
}

fn edge(situation: &Situation, acting: &Acting, strengths: &mut Strengths, notes: &mut Notes) {
    let Some((_, force)) = worst_edge(situation, acting) else {
        return;
    };
    strengths.put(
        Mode::Edge,
        force.noted(notes),
        1.0 / factors::concrete_shear_factor(situation.caged),
    );
}

fn edge_force(situation: &Situation, acting: &Acting, side: usize) -> (EdgeArea, Worked<Force>) {
    let area = EdgeArea::of(&acting.group, side);
    let ca1 = area.counted;
    let edition = edition(situation);
    let basic = shear::basic(
        edition,
        situation.thread.diameter,
        situation.embedment,
        situation.specified,
        ca1,
    );
    let cornered = shear::corner_factor(area.corner(), ca1);
    let (cracking, thick) = (
        shear::cracking_factor(situation.cracked),
        shear::thickness_factor(ca1, acting.group.concrete.thickness),
    );
    let force = Line::new(
        named!("aci", acting.scope, "edge"),
        format!("{}: the block's {} edge", acting.scope.words(), area.side),
        edition.either(
            "V_cbg = (A_Vc/A_Vco) ψ_ed,V ψ_c,V ψ_h,V V_b, V_b = min(7 (l_e/d)^0.2 √d; 9) λ_a √f'_c c_a1^1.5 in lb, in and psi",
            "V_cbg = (A_Vc/A_Vco) ψ_ed,V ψ_c,V ψ_h,V V_b, V_b = min(0.6 (l_e/d)^0.2 √d; 3.7) λ_a √f'_c c_a1^1.5",
        ),
        shear::BREAKOUT,
    )
    .with("c_a1", ca1, Millimetre)
    .with("λ_a", 1.0, One)
    .with("V_b", basic, Kilonewton)
    .with("A_Vc", area.area, SquareMillimetre)
    .with("A_Vco", area.single, SquareMillimetre)
    .with("ψ_ed,V", cornered, One)
    .with("ψ_c,V", cracking, One)
    .with("ψ_h,V", thick, One)
    .with("φ", factors::concrete_shear_factor(situation.caged), One)
    .gives(
        "V_cbg",
        Kilonewton,
        |(_, _, basic, area, single, cornered, cracking, thick, _)| {
            basic * ((area / single).value * cornered * cracking * thick)
        },
    );
    (area, force)
}
