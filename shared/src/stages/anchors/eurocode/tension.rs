//! Studs in tension by EN 1992-4: steel, cone, combined pull-out and cone, splitting.

use crate::figure::{Count, Kilonewton, Megapascal, Millimetre, One, SquareMillimetre};
use crate::notes::{Line, Notes, Working};
use crate::rules::en_1992_4_2018::{bond, cone, factors, splitting, steel};
use crate::site_plan::block::Reinforcement;
use crate::stages::anchors::situation::{Acting, Situation, named};
use crate::stages::anchors::strength::{Mode, Strengths};
use crate::units::{Area, Force, Length};

/// Concrete resistances that pry-out needs again.
pub(super) struct Pulled {
    pub(super) cone: Force,
    pub(super) bond: Force,
}

/// Puts the resistances in tension.
pub(super) fn put(
    situation: &Situation,
    acting: &Acting,
    strengths: &mut Strengths,
    notes: &mut Notes,
) -> Pulled {
    let (steel, product) = (&situation.steel, &situation.brief.anchors.product);
    let count = acting.count() as f64;
    let title = |what: &str| format!("{}: {what}", acting.scope.words());
    let steel_factor = factors::steel_tension_factor(steel.ultimate, steel.yield_strength);
    let in_steel = Line::new(
        named!("eurocode", acting.scope, "steel"),
        title("steel in tension"),
        "N_Rk,s = n A_s f_uk",
        steel::TENSION,
    )
    .with("n", count, Count)
    .with("A_s", situation.thread.stress_area, SquareMillimetre)
    .with("f_uk", steel.ultimate, Megapascal)
    .with("γ_Ms", steel_factor, One)
    .gives("N_Rk,s", Kilonewton, |(count, area, ultimate, _)| {
        steel::tension(area, ultimate) * count
    });
    strengths.put(Mode::Steel, in_steel.value, steel_factor);
    let partial_factor = Line::new(
        named!("eurocode", acting.scope, "partial_factor"),
        title("partial factor of concrete"),
        "γ_Mc = 1.5 γ_inst",
        factors::CONCRETE,
    )
    .with("γ_inst", product.installation_factor.value, One)
    .gives("γ_Mc", One, |(installation,)| {
        factors::concrete_factor(installation)
    });
    let concrete_factor = partial_factor.value;
    let cone = cone(situation, acting, notes);
    strengths.put(Mode::Cone, cone, concrete_factor);
    let bond = bond(situation, acting, notes);
    strengths.put(Mode::Bond, bond, concrete_factor);
    let lasting = product.sustained_factor.value * situation.lasting_factor;
    strengths.put(Mode::BondSustained, bond * lasting, concrete_factor);
    if let Some(splits) = split(situation, acting, notes) {
        strengths.put(Mode::Splitting, splits, concrete_factor);
    }
    notes.working(in_steel.working);
    notes.working(partial_factor.working);
    notes.working(
        Working::new(
            named!("eurocode", acting.scope, "bond_sustained"),
            title("bond under a lasting pull"),
            "N_Rk,p,sus = ψ⁰_sus N_Rk,p (0.4 of it where no product is known)",
            bond::SUSTAINED,
        )
        .with("ψ⁰_sus", product.sustained_factor.value, One)
        .with("N_Rk,p", bond, Kilonewton)
        .gives("N_Rk,p,sus", bond * lasting, Kilonewton),
    );
    Pulled { cone, bond }
}

/// Factors that cone, bond and splitting share: area, edge, dense bars, eccentricity.
struct Factors {
    area: Area,
    single_area: Area,
    edge: f64,
    dense: f64,
    eccentricity: f64,
}

impl Factors {
    fn find(situation: &Situation, acting: &Acting, spacing: Length, embedment: Length) -> Self {
        let reach = spacing / 2.0;
        let [x, y] = acting.eccentricity;
        let dense = situation.brief.block.reinforcement.value == Reinforcement::Cage;
        Self {
            area: acting.group.area(reach),
            single_area: spacing * spacing,
            edge: cone::edge_factor(acting.group.nearest_edge(), reach),
            dense: if dense {
                cone::dense_bars_factor(embedment)
            } else {
                1.0
            },
            eccentricity: cone::eccentricity_factor(x, spacing)
                * cone::eccentricity_factor(y, spacing),
        }
    }

    fn product(&self) -> f64 {
        (self.area / self.single_area).value * self.edge * self.dense * self.eccentricity
    }

    /// The factors as inputs of a working.
    fn inputs(&self, working: Working) -> Working {
        working
            .with("A", self.area, SquareMillimetre)
            .with("A⁰", self.single_area, SquareMillimetre)
            .with("ψ_s", self.edge, One)
            .with("ψ_re", self.dense, One)
            .with("ψ_ec", self.eccentricity, One)
    }
}

/// Concrete cone, 7.2.1.4.
fn cone(situation: &Situation, acting: &Acting, notes: &mut Notes) -> Force {
    let full = cone::characteristic_spacing(situation.embedment) / 2.0;
    let embedment = match acting.group.narrow(full) {
        Some(edge) => {
            cone::narrow_embedment(situation.embedment, edge, acting.group.largest_spacing())
        }
        None => situation.embedment,
    };
    let k1 = cone::k1_factor(situation.cracked);
    let title = |what: &str| format!("{}: {what}", acting.scope.words());
    let one = Line::new(
        named!("eurocode", acting.scope, "cone_basic"),
        title("cone of a stud far from edges"),
        "N⁰_Rk,c = k₁ √f_ck h_ef^1.5",
        cone::CONE,
    )
    .with("k₁", k1, One)
    .with("f_ck", situation.strength, Megapascal)
    .with("h_ef", embedment, Millimetre)
    .gives("N⁰_Rk,c", Kilonewton, |(k1, strength, embedment)| {
        cone::single(k1, strength, embedment)
    })
    .noted(notes);
    let spacing = cone::characteristic_spacing(embedment);
    let factors = Factors::find(situation, acting, spacing, embedment);
    // What presses is the pull and the weight besides: never less than the pull.
    let pressed = acting.lever.map_or(1.0, |lever| {
        cone::compression_factor(lever, embedment, acting.group.nearest_edge(), 1.0)
    });
    let found = one * (factors.product() * pressed);
    let working = Working::new(
        named!("eurocode", acting.scope, "cone"),
        title("concrete cone"),
        "N_Rk,c = N⁰_Rk,c (A/A⁰) ψ_s ψ_re ψ_ec ψ_M",
        cone::CONE,
    )
    .with("N⁰_Rk,c", one, Kilonewton)
    .with("ψ_M", pressed, One)
    .with("s_cr,N", spacing, Millimetre);
    notes.working(factors.inputs(working).gives("N_Rk,c", found, Kilonewton));
    found
}

/// Combined pull-out and concrete, 7.2.1.6, without the factor for lasting load.
fn bond(situation: &Situation, acting: &Acting, notes: &mut Notes) -> Force {
    let (diameter, embedment) = (situation.thread.diameter, situation.embedment);
    let title = |what: &str| format!("{}: {what}", acting.scope.words());
    let one = Line::new(
        named!("eurocode", acting.scope, "bond_basic"),
        title("bond of a stud far from edges"),
        "N⁰_Rk,p = τ_Rk π d h_ef",
        bond::BOND,
    )
    .with("τ_Rk", situation.bond, Megapascal)
    .with("d", diameter, Millimetre)
    .with("h_ef", embedment, Millimetre)
    .gives("N⁰_Rk,p", Kilonewton, |(bond, diameter, embedment)| {
        bond::single(1.0, bond, diameter, embedment)
    })
    .noted(notes);
    let spacing = bond::characteristic_spacing(diameter, 1.0, situation.bond_uncracked, embedment);
    let limit = bond::concrete_bond(situation.cracked, diameter, embedment, situation.strength);
    let close = bond::close_group_factor(acting.count(), situation.bond, limit);
    let mean = acting.group.spacing().map_or(spacing, |(mean, _)| mean);
    let grouped = Line::new(
        named!("eurocode", acting.scope, "bond_group"),
        title("help of neighbours"),
        "ψ_g = ψ⁰_g − √(s/s_cr)(ψ⁰_g − 1), ψ⁰_g = √n − (√n − 1)(τ_Rk/τ_Rk,c)^1.5",
        bond::BOND,
    )
    .with("n", acting.count() as f64, Count)
    .with("τ_Rk,c", limit, Megapascal)
    .with("ψ⁰_g", close, One)
    .with("s", mean, Millimetre)
    .with("s_cr,Np", spacing, Millimetre)
    .gives("ψ_g", One, |(_, _, close, mean, spacing)| {
        bond::group_factor(close, mean, spacing)
    })
    .noted(notes);
    let factors = Factors::find(situation, acting, spacing, embedment);
    let found = one * (factors.product() * grouped);
    let working = Working::new(
        named!("eurocode", acting.scope, "bond"),
        title("combined pull-out and cone"),
        "N_Rk,p = N⁰_Rk,p (A/A⁰) ψ_g ψ_s ψ_re ψ_ec",
        bond::BOND,
    )
    .with("N⁰_Rk,p", one, Kilonewton)
    .with("ψ_g", grouped, One);
    notes.working(factors.inputs(working).gives("N_Rk,p", found, Kilonewton));
    found
}

/// Splitting under load, 7.2.1.7; none where it is ruled out.
fn split(situation: &Situation, acting: &Acting, notes: &mut Notes) -> Option<Force> {
    let product = &situation.brief.anchors.product;
    let (edge, thickness) = (acting.group.nearest_edge(), acting.group.concrete.thickness);
    let far = splitting::ruled_out(
        acting.count() == 1,
        edge,
        product.splitting_edge.value,
        thickness,
        product.min_thickness.value,
    );
    if far || (situation.cracked && situation.reinforced) {
        return None;
    }
    let bond_one = bond::single(
        1.0,
        situation.bond,
        situation.thread.diameter,
        situation.embedment,
    );
    let cone_one = cone::single(
        cone::k1_factor(situation.cracked),
        situation.strength,
        situation.embedment,
    );
    let basic = splitting::basic(bond_one, cone_one);
    let factors = Factors::find(
        situation,
        acting,
        product.splitting_edge.value * 2.0,
        situation.embedment,
    );
    let thick = splitting::thickness_factor(
        thickness,
        product.min_thickness.value,
        situation.embedment,
        edge,
    );
    let found = basic * (factors.product() * thick);
    let title = format!("{}: splitting of the block", acting.scope.words());
    let working = Working::new(
        named!("eurocode", acting.scope, "splitting"),
        title,
        "N_Rk,sp = min(N⁰_Rk,p; N⁰_Rk,c) (A/A⁰) ψ_s ψ_re ψ_ec ψ_h",
        splitting::SPLITTING,
    )
    .with("N⁰", basic, Kilonewton)
    .with("c_cr,sp", product.splitting_edge.value, Millimetre)
    .with("ψ_h", thick, One);
    notes.working(factors.inputs(working).gives("N_Rk,sp", found, Kilonewton));
    Some(found)
}
