//! Studs in tension by ACI 318-19: steel, breakout, bond.

use super::{category, ductile, edition};
use crate::figure::{Count, Kilonewton, Megapascal, Millimetre, One, SquareMillimetre};
use crate::notes::{Line, Notes};
use crate::rules::aci_318_19::{bond, breakout, factors, steel};
use crate::stages::anchors::situation::{Acting, Situation, named};
use crate::stages::anchors::strength::{Mode, Strengths};
use crate::units::Force;

/// Concrete strengths that pry-out needs again.
pub(super) struct Pulled {
    pub(super) breakout: Force,
    pub(super) bond: Force,
}

/// Bars that cross a cone's surface raise φ; a mesh and a cage at the block's faces are not counted as such.
const SUPPLEMENTARY_STEEL: bool = false;

/// Puts the strengths in tension.
pub(super) fn put(
    situation: &Situation,
    acting: &Acting,
    strengths: &mut Strengths,
    notes: &mut Notes,
) -> Pulled {
    let count = acting.count() as f64;
    let ultimate = steel::ultimate_that_counts(
        edition(situation),
        situation.steel.ultimate,
        situation.steel.yield_strength,
    );
    let steel_factor = factors::steel_tension_factor(ductile(situation));
    let title = |what: &str| format!("{}: {what}", acting.scope.words());
    let in_steel = Line::new(
        named!("aci", acting.scope, "steel"),
        title("steel in tension"),
        "N_sa = n A_se f_uta",
        steel::TENSION,
    )
    .with("n", count, Count)
    .with("A_se", situation.thread.stress_area, SquareMillimetre)
    .with("f_uta", ultimate, Megapascal)
    .with("φ", steel_factor, One)
    .gives("N_sa", Kilonewton, |(count, area, ultimate, _)| {
        steel::tension(area, ultimate) * count
    });
    strengths.put(Mode::Steel, in_steel.value, 1.0 / steel_factor);
    let phi = factors::concrete_tension_factor(category(situation), SUPPLEMENTARY_STEEL);
    let breakout = breakout(situation, acting, notes);
    strengths.put(Mode::Cone, breakout, 1.0 / phi);
    let bond = bond(situation, acting, notes);
    strengths.put(Mode::Bond, bond, 1.0 / phi);
    // The code holds the most loaded stud alone against its basic bond.
    let basic = bond::basic(
        situation.bond,
        situation.thread.diameter,
        situation.embedment,
    ) * (situation.lasting_factor * count);
    strengths.put(
        Mode::BondSustained,
        basic,
        1.0 / (bond::SUSTAINED_RATIO * phi),
    );
    notes.working(in_steel.working);
    Line::new(
        named!("aci", acting.scope, "bond_sustained"),
        title("bond under a lasting pull"),
        "0.55 φ N_ba (0.4 of it at the table's least bond)",
        bond::SUSTAINED,
    )
    .with("φ", phi, One)
    .with("N_ba", basic, Kilonewton)
    .gives("0.55 φ N_ba", Kilonewton, |(phi, basic)| {
        bond::sustained(basic, phi)
    })
    .note(notes);
    Pulled { breakout, bond }
}

/// Concrete breakout, 17.6.2.
fn breakout(situation: &Situation, acting: &Acting, notes: &mut Notes) -> Force {
    let embedment = match acting.group.narrow(situation.embedment * 1.5) {
        Some(edge) => {
            breakout::narrow_embedment(situation.embedment, edge, acting.group.largest_spacing())
        }
        None => situation.embedment,
    };
    let edge = acting.group.nearest_edge();
    let title = |what: &str| format!("{}: {what}", acting.scope.words());
    let edition = edition(situation);
    let basic = Line::new(
        named!("aci", acting.scope, "breakout_basic"),
        title("breakout of a stud far from edges"),
        edition.either(
            "N_b = k_c λ_a √f'_c h_ef^1.5 in lb, in and psi",
            "N_b = k_c λ_a √f'_c h_ef^1.5",
        ),
        breakout::BREAKOUT,
    )
    .with("k_c", breakout::post_installed_factor(edition), One)
    .with("λ_a", 1.0, One)
    .with("f'_c", situation.specified, Megapascal)
    .with("h_ef", embedment, Millimetre)
    .gives("N_b", Kilonewton, |(factor, _, strength, embedment)| {
        breakout::basic(edition, factor, strength, embedment)
    })
    .noted(notes);
    let area_ratio = (acting.group.area(embedment * 1.5) / breakout::single_area(embedment)).value;
    let edged = breakout::edge_factor(edge, embedment);
    let [x, y] = acting
        .eccentricity
        .map(|eccentricity| breakout::eccentricity_factor(eccentricity, embedment));
    let cracking = breakout::cracking_factor(situation.cracked);
    let critical = breakout::critical_edge(situation.embedment);
    let splitting = breakout::splitting_factor(
        situation.cracked || situation.reinforced,
        edge,
        embedment,
        critical,
    );
    Line::new(
        named!("aci", acting.scope, "breakout"),
        title("concrete breakout"),
        "N_cbg = (A_Nc/A_Nco) ψ_ec,N ψ_ed,N ψ_c,N ψ_cp,N N_b",
        breakout::BREAKOUT,
    )
    .with("A_Nc/A_Nco", area_ratio, One)
    .with("ψ_ec,N", x * y, One)
    .with("ψ_ed,N", edged, One)
    .with("ψ_c,N", cracking, One)
    .with("c_ac", critical, Millimetre)
    .with("ψ_cp,N", splitting, One)
    .with(
        "φ",
        factors::concrete_tension_factor(category(situation), SUPPLEMENTARY_STEEL),
        One,
    )
    .gives(
        "N_cbg",
        Kilonewton,
        |(area, eccentric, edged, cracking, _, splitting, _)| {
            basic * (area * edged * eccentric * cracking * splitting)
        },
    )
    .noted(notes)
}

/// Bond, 17.6.5.
fn bond(situation: &Situation, acting: &Acting, notes: &mut Notes) -> Force {
    let diameter = situation.thread.diameter;
    let edge = acting.group.nearest_edge();
    let title = |what: &str| format!("{}: {what}", acting.scope.words());
    let basic = Line::new(
        named!("aci", acting.scope, "bond_basic"),
        title("bond of a stud far from edges"),
        "N_ba = λ_a τ_cr π d_a h_ef",
        bond::BOND,
    )
    .with("λ_a", 1.0, One)
    .with("τ_cr", situation.bond, Megapascal)
    .with("d_a", diameter, Millimetre)
    .with("h_ef", situation.embedment, Millimetre)
    .gives("N_ba", Kilonewton, |(_, bond, diameter, embedment)| {
        bond::basic(bond, diameter, embedment)
    })
    .noted(notes);
    let reach = bond::reach(edition(situation), diameter, situation.bond_uncracked);
    let area_ratio = (acting.group.area(reach) / bond::single_area(reach)).value;
    let edged = bond::edge_factor(edge, reach);
    let [x, y] = acting
        .eccentricity
        .map(|eccentricity| bond::eccentricity_factor(eccentricity, reach));
    let critical = breakout::critical_edge(situation.embedment);
    let splitting = bond::splitting_factor(
        situation.cracked || situation.reinforced,
        edge,
        reach,
        critical,
    );
    Line::new(
        named!("aci", acting.scope, "bond"),
        title("bond of the resin"),
        "N_ag = (A_Na/A_Nao) ψ_ec,Na ψ_ed,Na ψ_cp,Na N_ba",
        bond::BOND,
    )
    .with("c_Na", reach, Millimetre)
    .with("A_Na/A_Nao", area_ratio, One)
    .with("ψ_ec,Na", x * y, One)
    .with("ψ_ed,Na", edged, One)
    .with("ψ_cp,Na", splitting, One)
    .gives(
        "N_ag",
        Kilonewton,
        |(_, area, eccentric, edged, splitting)| basic * (area * edged * eccentric * splitting),
    )
    .noted(notes)
}
