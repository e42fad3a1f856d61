//! Studs in shear by EN 1992-4: steel with and without lever arm, pry-out, edge.

use super::tension::Pulled;
use crate::figure::{
    Count, Kilonewton, Megapascal, Millimetre, NewtonMetre, One, SquareMillimetre,
};
use crate::notes::{Line, Notes, Working};
use crate::rules::en_1992_4_2018::{edge, factors, shear, steel};
use crate::rules::threads;
use crate::stages::anchors::areas::EdgeArea;
use crate::stages::anchors::situation::{Acting, Situation, named};
use crate::stages::anchors::strength::{Mode, Strengths};
use crate::units::{Force, newton};

/// Puts the resistances in shear.
pub(super) fn put(
    situation: &Situation,
    acting: &Acting,
    pulled: Pulled,
    strengths: &mut Strengths,
    notes: &mut Notes,
) {
    steel_alone(situation, acting, strengths, notes);
    lever(situation, acting, strengths, notes);
    let k8 = shear::k8_factor(situation.embedment);
    let pry = Line::new(
        named!("eurocode", acting.scope, "pry_out"),
        format!("{}: concrete prised out behind", acting.scope.words()),
        "V_Rk,cp = k₈ min(N_Rk,c; N_Rk,p)",
        shear::PRY_OUT,
    )
    .with("k₈", k8, One)
    .with("N_Rk,c", pulled.cone, Kilonewton)
    .with("N_Rk,p", pulled.bond, Kilonewton)
    .gives("V_Rk,cp", Kilonewton, |(k8, cone, bond)| {
        shear::pry_out(k8, cone, bond)
    })
    .noted(notes);
    // In shear the installation factor is one.
    strengths.put(Mode::PryOut, pry, factors::concrete_factor(1.0));
    if let Some((_, breaks, working)) = worst_edge(situation, acting) {
        strengths.put(Mode::Edge, breaks, factors::concrete_factor(1.0));
        notes.working(working);
    }
}

fn steel_alone(
    situation: &Situation,
    acting: &Acting,
    strengths: &mut Strengths,
    notes: &mut Notes,
) {
    let (steel, count) = (&situation.steel, acting.count() as f64);
    let k7 = if acting.count() > 1 {
        steel::k7_factor(steel.elongation_ratio)
    } else {
        1.0
    };
    let factor = factors::steel_shear_factor(steel.ultimate, steel.yield_strength);
    let found = Line::new(
        named!("eurocode", acting.scope, "shear_steel"),
        format!("{}: steel in shear", acting.scope.words()),
        "V_Rk,s = n k₇ k₆ A_s f_uk",
        steel::SHEAR,
    )
    .with("n", count, Count)
    .with("k₇", k7, One)
    .with("k₆", steel::k6_factor(steel.ultimate), One)
    .with("A_s", situation.thread.stress_area, SquareMillimetre)
    .with("f_uk", steel.ultimate, Megapascal)
    .with("γ_Ms", factor, One)
    .gives("V_Rk,s", Kilonewton, |(count, k7, _, area, ultimate, _)| {
        steel::shear_single(area, ultimate) * (count * k7)
    })
    .noted(notes);
    strengths.put(Mode::ShearSteel, found, factor);
}

/// Bending of the studs over what lies between concrete and plate, be it air or a thick bed of grout.
fn lever(situation: &Situation, acting: &Acting, strengths: &mut Strengths, notes: &mut Notes) {
    let Some(gap) = situation.lever_gap() else {
        return;
    };
    let (steel, thread) = (&situation.steel, &situation.thread);
    let section = steel::section_modulus(threads::stress_diameter(thread));
    let bending = steel::bending(section, steel.ultimate);
    let arm = steel::lever_arm(
        thread.diameter,
        gap,
        situation.brief.pier.plate_thickness.value,
        false,
    );
    let restraint = steel::restraint_factor(acting.count());
    let factor = factors::steel_shear_factor(steel.ultimate, steel.yield_strength);
    let found = Line::new(
            named!("eurocode", acting.scope, "shear_lever_arm"),
            format!("{}: steel in shear over the gap", acting.scope.words()),
            "V_Rk,s,M = n α_M M⁰_Rk,s/l_a, M⁰_Rk,s = 1.2 W_el f_uk, l_a = 0.5 d + gap + t/2; beside a pull M⁰_Rk,s falls by N_Ed/N_Rd,s",
            steel::LEVER_LENGTH,
        )
        .with("n", acting.count() as f64, One)
        .with("α_M", restraint, One)
        .with("M⁰_Rk,s", bending, NewtonMetre)
        .with("l_a", arm, Millimetre)
        .with("γ_Ms", factor, One)
        .gives("V_Rk,s,M", Kilonewton, |(count, restraint, bending, arm, _)| {
            steel::shear_with_lever(bending, arm, restraint) * count
        })
        .noted(notes);
    strengths.put(Mode::ShearLever, found, factor);
}

/// Edge break-out towards the side where it is least, with what an eccentricity leaves of it; none where every edge is far. The row nearest to the edge alone
/// carries the shear, since holes in the plate leave the studs play. Straight at the edge is the worst direction: the factor
/// ψ_α,V is 1 there and greater in any other.
pub(super) fn worst_edge(
    situation: &Situation,
    acting: &Acting,
) -> Option<(EdgeArea, Force, Working)> {
    let far = shear::far_edge(situation.embedment, situation.thread.diameter);
    let near = acting.group.edges().map(|edge| edge <= far);
    let found = (0..4)
        .filter(|&side| near[side])
        .map(|side| edge_force(situation, acting, side));
    let left = |area: &EdgeArea, force: Force| {
        newton::get(force) * edge::eccentricity_factor(acting.beside, area.counted)
    };
    found.min_by(|a, b| left(&a.0, a.1).total_cmp(&left(&b.0, b.1)))
}

fn edge_force(situation: &Situation, acting: &Acting, side: usize) -> (EdgeArea, Force, Working) {
    let area = EdgeArea::of(&acting.group, side);
    let (c1, diameter) = (area.counted, situation.thread.diameter);
    let k9 = edge::k9_factor(situation.cracked);
    let bearing = edge::bearing_length(situation.embedment, diameter);
    let one = edge::single(k9, diameter, bearing, situation.strength, c1);
    let (cornered, thick) = (
        edge::corner_factor(area.corner(), c1),
        edge::thickness_factor(c1, acting.group.concrete.thickness),
    );
    let straight = edge::direction_factor(0.0);
    let force = one * (area.ratio() * cornered * thick * straight);
    let working = Working::new(
        named!("eurocode", acting.scope, "edge"),
        format!("{}: the block's {} edge", acting.scope.words(), area.side),
        "V_Rk,c = V⁰_Rk,c (A_c,V/A⁰_c,V) ψ_s,V ψ_h,V ψ_α,V ψ_re,V, V⁰_Rk,c = k₉ d^α l_f^β √f_ck c₁^1.5",
        edge::EDGE,
    )
    .with("k₉", k9, One)
    .with("d", diameter, Millimetre)
    .with("f_ck", situation.strength, Megapascal)
    .with("l_f", bearing, Millimetre)
    .with("c₁", c1, Millimetre)
    .with("α", edge::alpha_factor(bearing, c1), One)
    .with("β", edge::beta_factor(diameter, c1), One)
    .with("V⁰_Rk,c", one, Kilonewton)
    .with("A_c,V", area.area, SquareMillimetre)
    .with("A⁰_c,V", area.single, SquareMillimetre)
    .with("ψ_s,V", cornered, One)
    .with("ψ_h,V", thick, One)
    .with("ψ_α,V", straight, One)
    .with("ψ_re,V, no edge bar counted", 1.0, One)
    .gives("V_Rk,c", force, Kilonewton);
    (area, force, working)
}
