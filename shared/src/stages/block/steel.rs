//! Steel in the block: the ways, each with its reason.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Megapascal, SquareMillimetre, Unit};
use crate::notes::{Notes, Working};
use crate::rules::en_1992_1_1_2004::{minimum_steel, strength, strength_by_age};
use crate::site_plan::block::Reinforcement;
use crate::units::{day, megapascal, metre, square_millimetre};

use super::age::{cement_factor, characteristic};
use super::outline::Outline;

/// Depth of the face that cools and dries first, mm.
const ZONE_MM: f64 = 200.0;
/// Yield strength of bars, MPa.
const YIELD_MPA: f64 = 500.0;
/// Day at which the face first cracks.
const CRACK_DAY: f64 = 3.0;
/// Bars of a mesh, mm, and the spacings in which it is sold or tied, mm.
const BAR_MM: f64 = 12.0;
const SPACINGS_MM: [f64; 5] = [200.0, 150.0, 125.0, 100.0, 75.0];
/// Cover to the bars, mm.
const COVER_MM: f64 = 50.0;

/// One way to reinforce the block.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SteelOption {
    /// Its name in the plan.
    pub kind: &'static str,
    /// Whether it is the chosen one.
    pub chosen: bool,
    /// Why one would.
    pub says: String,
    /// Diameter of the bars, mm; none for a plain block.
    pub bar_mm: Option<f64>,
    /// Their spacing, mm.
    pub spacing_mm: Option<f64>,
    /// Cover, mm.
    pub cover_mm: Option<f64>,
    /// Length of bar in all, m.
    pub bars_m: Option<f64>,
    /// The straight bars that make it, before any is bent.
    pub bars: Vec<Bars>,
}

/// Bars of one length.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Bars {
    /// How many.
    pub count: f64,
    /// Length of each, m.
    pub length_m: f64,
}

/// Lists them.
pub(super) fn options(brief: &Brief, outline: &Outline, notes: &mut Notes) -> Vec<SteelOption> {
    let spacing = spacing(brief, notes);
    let said = format!(
        "bars of {} at {}, {} below the top",
        brief.units.say(BAR_MM, Unit::Millimetre),
        brief.units.say(spacing, Unit::Millimetre),
        brief.units.say(COVER_MM, Unit::Millimetre)
    );
    let (l, w, h) = (
        metre::get(outline.length),
        metre::get(outline.width),
        metre::get(outline.height()),
    );
    let mesh = net(l, w, spacing, 1.0).to_vec();
    let cage: Vec<Bars> = [(l, w), (l, h), (w, h)]
        .into_iter()
        .flat_map(|(along, across)| net(along, across, 200.0, 2.0))
        .collect();
    let chosen = brief.block.reinforcement.value;
    let option = |kind: Reinforcement, says: String, bars: Option<(f64, Vec<Bars>)>| SteelOption {
        kind: kind.key(),
        chosen: kind == chosen,
        says,
        bar_mm: bars.as_ref().map(|_| BAR_MM),
        spacing_mm: bars.as_ref().map(|(spacing, _)| *spacing),
        cover_mm: bars.as_ref().map(|_| COVER_MM),
        bars_m: bars
            .as_ref()
            .map(|(_, bars)| bars.iter().map(|bars| bars.count * bars.length_m).sum()),
        bars: bars.map(|(_, bars)| bars).unwrap_or_default(),
    };
    vec![
        option(Reinforcement::Plain, plain(), None),
        option(
            Reinforcement::TopMesh,
            format!("A mesh under the top face ({said}) keeps the cracks of cooling and drying fine, just where the studs are."),
            Some((spacing, mesh)),
        ),
        option(
            Reinforcement::Cage,
            "Bars on all faces, tied, hold the block together where the ground may move, and round the studs they add to what the edge \
             carries. More steel to bend and to drill past."
                .to_owned(),
            Some((200.0, cage)),
        ),
    ]
}

fn plain() -> String {
    "A block about as deep as it is wide needs no steel to carry its load. It may crack finely as it cools and dries; that hardly softens \
     it, but a crack through a hole weakens a stud."
        .to_owned()
}

/// The bars of so many nets, both ways.
fn net(length: f64, width: f64, spacing_mm: f64, nets: f64) -> [Bars; 2] {
    let cover = 2.0 * COVER_MM / 1000.0;
    let (l, w) = ((length - cover).max(0.1), (width - cover).max(0.1));
    let count = |across: f64| nets * ((across * 1000.0 / spacing_mm).floor() + 1.0);
    [
        Bars {
            count: count(w),
            length_m: l,
        },
        Bars {
            count: count(l),
            length_m: w,
        },
    ]
}

/// The widest usual spacing that gives the least steel of a face.
fn spacing(brief: &Brief, notes: &mut Notes) -> f64 {
    let class = characteristic(brief.block.concrete.value);
    let share =
        strength_by_age::share_ratio(day::new(CRACK_DAY), cement_factor(brief.block.cement.value));
    let tensile = strength::mean_tensile(class) * share;
    let zone = square_millimetre::new(1000.0 * ZONE_MM);
    let least = square_millimetre::get(minimum_steel::least(
        1.0,
        tensile,
        zone,
        megapascal::new(YIELD_MPA),
    ));
    notes.working(
        Working::new(
            "block.least_steel",
            "Least steel of the top face, on a metre",
            "A_s = k f_ct A_ct / σ_s",
            minimum_steel::SOURCE,
        )
        .with("f_ct", tensile, Megapascal)
        .with("A_ct", zone, SquareMillimetre)
        .with("σ_s", YIELD_MPA, Unit::Megapascal)
        .gives("A_s", least, Unit::SquareMillimetre),
    );
    let bar = std::f64::consts::FRAC_PI_4 * BAR_MM * BAR_MM;
    SPACINGS_MM
        .into_iter()
        .find(|spacing| bar * 1000.0 / spacing >= least)
        .unwrap_or(75.0)
}
