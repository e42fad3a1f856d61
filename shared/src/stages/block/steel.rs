//! Steel in the block: the ways, each with its reason.

use serde::Serialize;

use crate::brief::Brief;
use crate::figure::{Megapascal, SquareMillimetre, Unit};
use crate::notes::{Notes, Working};
use crate::rules::en_1992_1_1_2004::{minimum_steel, strength, strength_by_age};
use crate::site_plan::block::Reinforcement;
use crate::stock::Stock;
use crate::stock::goods::BARS;
use crate::units::customary::INCH_MM;
use crate::units::{day, megapascal, metre, square_millimetre};

use super::age::{cement_factor, characteristic};
use super::outline::Outline;

/// Depth of the face that cools and dries first, mm.
const ZONE_MM: f64 = 200.0;
/// Day at which the face first cracks.
const CRACK_DAY: f64 = 3.0;

/// What a net is tied of, by the family that is sold.
struct Net {
    /// Name of the bar's row.
    bar: &'static str,
    /// Its diameter, mm.
    bar_mm: f64,
    /// Its yield strength, MPa.
    yield_mpa: f64,
    /// Spacings, mm.
    spacings_mm: [f64; 5],
    /// Spacing of a cage, mm.
    cage_mm: f64,
    /// Cover, mm.
    cover_mm: f64,
}

impl Net {
    fn of(stock: Stock) -> Self {
        let bar = stock.either("12", "#4");
        let row = BARS.row(bar);
        let cell = |column| row.as_ref().map_or(f64::NAN, |row| row.value(column));
        let spacings_mm = stock.either(
            [200.0, 150.0, 125.0, 100.0, 75.0],
            [8.0, 6.0, 5.0, 4.0, 3.0].map(|inches| inches * INCH_MM),
        );
        Self {
            bar,
            bar_mm: cell("diameter_mm"),
            yield_mpa: cell("yield_mpa"),
            cage_mm: spacings_mm[0],
            spacings_mm,
            cover_mm: stock.either(50.0, 2.0 * INCH_MM),
        }
    }
}

/// One way to reinforce the block.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SteelOption {
    /// Its name in the plan.
    pub kind: &'static str,
    /// Whether it is the chosen one.
    pub chosen: bool,
    /// Why one would.
    pub says: String,
    /// Row of the bars in the catalogue; none for a plain block.
    pub bar: Option<&'static str>,
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
    let net_of = Net::of(brief.stock.value);
    let (spacing, cover) = (spacing(brief, &net_of, notes), net_of.cover_mm);
    let said = format!(
        "bars of {} at {}, {} below the top",
        bar_words(brief, &net_of),
        brief.units.say(spacing, Unit::Millimetre),
        brief.units.say(cover, Unit::Millimetre)
    );
    let (l, w, h) = (
        metre::get(outline.length),
        metre::get(outline.width),
        metre::get(outline.height()),
    );
    let mesh = net(l, w, spacing, cover, 1.0).to_vec();
    let cage: Vec<Bars> = [(l, w), (l, h), (w, h)]
        .into_iter()
        .flat_map(|(along, across)| net(along, across, net_of.cage_mm, cover, 2.0))
        .collect();
    let chosen = brief.block.reinforcement.value;
    let option = |kind: Reinforcement, says: String, bars: Option<(f64, Vec<Bars>)>| SteelOption {
        kind: kind.key(),
        chosen: kind == chosen,
        says,
        bar: bars.as_ref().map(|_| net_of.bar),
        bar_mm: bars.as_ref().map(|_| net_of.bar_mm),
        spacing_mm: bars.as_ref().map(|(spacing, _)| *spacing),
        cover_mm: bars.as_ref().map(|_| cover),
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
            Some((net_of.cage_mm, cage)),
        ),
    ]
}

/// A bar as it is asked for: by its diameter, or by its number.
fn bar_words(brief: &Brief, net: &Net) -> String {
    brief.stock.value.either(
        brief.units.say(net.bar_mm, Unit::Millimetre),
        net.bar.to_owned(),
    )
}

fn plain() -> String {
    "A block about as deep as it is wide needs no steel to carry its load. It may crack finely as it cools and dries; that hardly softens \
     it, but a crack through a hole weakens a stud."
        .to_owned()
}

/// The bars of so many nets, both ways.
fn net(length: f64, width: f64, spacing_mm: f64, cover_mm: f64, nets: f64) -> [Bars; 2] {
    let cover = 2.0 * cover_mm / 1000.0;
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
fn spacing(brief: &Brief, net: &Net, notes: &mut Notes) -> f64 {
    let class = characteristic(brief.block.concrete.value);
    let share =
        strength_by_age::share_ratio(day::new(CRACK_DAY), cement_factor(brief.block.cement.value));
    let tensile = strength::mean_tensile(class) * share;
    let zone = square_millimetre::new(1000.0 * ZONE_MM);
    let least = square_millimetre::get(minimum_steel::least(
        1.0,
        tensile,
        zone,
        megapascal::new(net.yield_mpa),
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
        .with("σ_s", net.yield_mpa, Unit::Megapascal)
        .gives("A_s", least, Unit::SquareMillimetre),
    );
    let bar = std::f64::consts::FRAC_PI_4 * net.bar_mm * net.bar_mm;
    net.spacings_mm
        .into_iter()
        .find(|spacing| bar * 1000.0 / spacing >= least)
        .unwrap_or(net.spacings_mm[4])
}
