//! Three ways to build it, side by side, and what lies between them.

mod by_cost;
mod worth;

use askama::Template;
use stillground::candidates::Reached;
use stillground::field::Path;
use stillground::figure::{Count, Unit, Units};
use stillground::notes::Obstacle;
use stillground::options::taking::{PINS, Pin};
use stillground::options::{Options, Point};
use stillground::site_plan::SitePlan;
use stillground::site_plan::pier::{Fill, Levelling};
use stillground::verdict::Says;

use super::frame::Frame;
use crate::drawing::{front, way};
use crate::forms::questions;
use crate::views::svg;
use crate::views::verdict::per_cent;

pub use by_cost::CostView;
pub use worth::WorthView;

/// The page.
#[derive(Template)]
#[template(path = "pages/ways.html")]
pub struct WaysPage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages stand.
    pub root: String,
    /// Whether the reader may take one.
    pub edit: bool,
    /// Revision that a way is taken on top of.
    pub base: u32,
    /// The three, as far as there are any.
    pub ways: Vec<Way>,
    /// A line of figures for each thing that is compared.
    pub rows: Vec<Row>,
    /// The front as a drawing.
    pub picture: Option<String>,
    /// The front by cost, where anything has a price.
    pub by_cost: Option<CostView>,
    /// The front, the three and the rules of thumb as a table.
    pub points: Vec<PointView>,
    /// What can be kept of a way while the rest is looked for again.
    pub pins: &'static [Pin],
    /// What stands in the way, where nothing is within what is asked.
    pub in_the_way: Vec<InTheWay>,
    /// Whether time ended before all were looked at.
    pub unfinished: bool,
    /// How many piers were looked at, and how many did not have to be.
    pub counted: String,
    /// Answers that are worth finding out before one is chosen.
    pub worth: Vec<WorthView>,
}

/// The page while the search goes on: it asks again by itself.
#[derive(Template)]
#[template(path = "pages/ways-going.html")]
pub struct GoingPage {
    /// The frame.
    pub frame: Frame,
    /// Address below which the plan's pages stand.
    pub root: String,
    /// Blocks that were gone through.
    pub blocks: usize,
    /// Of so many; nought before that is known.
    pub of: usize,
}

impl GoingPage {
    /// The page of a search that reached so far.
    #[must_use]
    pub fn of(frame: Frame, root: &str, reached: Reached) -> Self {
        Self {
            frame,
            root: root.to_owned(),
            blocks: reached.blocks,
            of: reached.of,
        }
    }
}

/// A way to build it.
pub struct Way {
    /// Its name in the form.
    pub key: &'static str,
    /// Its name on the page; where one pier is more than one of the three, all of these.
    pub title: String,
    /// Its section.
    pub svg: String,
    /// Whether the plan stands so now.
    pub stands: bool,
}

/// A thing that is compared.
pub struct Row {
    /// What it is.
    pub label: &'static str,
    /// Its figure for each way.
    pub says: Vec<String>,
}

/// Something that stands in the way.
pub struct InTheWay {
    /// What it is, and how much of it would do.
    pub says: String,
    /// The question that it is about and where it is asked; none where it is no single one.
    pub asked: Option<(String, &'static str)>,
}

impl InTheWay {
    fn of(one: &Obstacle, root: &str) -> Self {
        let asked = |field: Path| Some((asked_at(&field, root)?, questions::label(field.as_str())));
        Self {
            says: one.says.clone(),
            asked: one.field.and_then(asked),
        }
    }
}

/// Where a question is asked.
fn asked_at(field: &str, root: &str) -> Option<String> {
    let (step, question) = questions::about(field)?;
    Some(format!(
        "{root}/{}#{}",
        step.slug(),
        super::field::id(&question.path)
    ))
}

/// A pier in the table.
pub struct PointView {
    /// What it is called; empty for the others of the front.
    pub name: String,
    /// The block.
    pub block: String,
    /// The tube.
    pub tube: String,
    /// Ground to dig.
    pub dig: String,
    /// Growth of the star at worst.
    pub growth: String,
    /// Whether it may be built.
    pub build: &'static str,
}

/// Name in the form and on the page, and the name of the drawing.
const NAMES: [(&str, &str, &str); 4] = [
    ("cheapest", "Cheapest", "way-cheapest"),
    ("least_digging", "Least digging", "way-least-digging"),
    ("middle", "Middle", "way-middle"),
    ("stillest", "Stillest that fits", "way-stillest"),
];

/// The named points of a search, in the order of the page.
fn named(options: &Options) -> [Option<&Point>; 4] {
    let named = &options.named;
    let cheapest = options
        .by_cost
        .as_ref()
        .and_then(|by_cost| by_cost.cheapest.as_ref());
    let [least_digging, middle, stillest] =
        [&named.least_digging, &named.middle, &named.stillest].map(Option::as_ref);
    [cheapest, least_digging, middle, stillest]
}

/// Names and title of a way, and its pier.
type Titled<'a> = (
    (&'static str, &'static str, &'static str),
    String,
    &'a Point,
);

/// The ways that are piers of their own: what is the same pier stands there once, with all of its names.
fn different(options: &Options) -> Vec<Titled<'_>> {
    let mut all: Vec<Titled<'_>> = Vec::new();
    for (names, point) in NAMES.into_iter().zip(named(options)) {
        let Some(point) = point else { continue };
        match all.last_mut() {
            Some((_, title, last)) if *last == point => {
                title.push_str(" and ");
                title.push_str(&names.1.to_lowercase());
            }
            _ => all.push((names, names.1.to_owned(), point)),
        }
    }
    all
}

/// The way of that name.
#[must_use]
pub fn by_key<'a>(options: &'a Options, key: &str) -> Option<(&'static str, &'a Point)> {
    let all = NAMES.iter().zip(named(options));
    let found = all.into_iter().find(|((name, ..), _)| *name == key)?;
    Some((found.0.1, found.1?))
}

impl WaysPage {
    /// The page of a plan's search.
    #[must_use]
    pub fn of(
        frame: Frame,
        root: &str,
        edit: bool,
        base: u32,
        plan: &SitePlan,
        options: &Options,
    ) -> Self {
        let units = plan.units.unwrap_or_default();
        let there = different(options);
        let extent = way::Extent::of(there.iter().map(|(.., point)| *point));
        let ways = there.iter().map(|((key, _, name), title, point)| Way {
            key,
            title: title.clone(),
            svg: svg::write(&way::draw(name, point, extent, units)),
            stands: stands(plan, point),
        });
        Self {
            frame,
            root: root.to_owned(),
            edit,
            base,
            ways: ways.collect(),
            rows: rows(
                &there.iter().map(|(.., point)| *point).collect::<Vec<_>>(),
                units,
                plan.prices.currency.as_deref(),
            ),
            picture: front::draw(options, units).map(|drawing| svg::write(&drawing)),
            by_cost: options
                .by_cost
                .as_ref()
                .map(|found| CostView::of(found, options, plan)),
            points: points(options, units),
            pins: &PINS,
            in_the_way: options
                .in_the_way
                .iter()
                .map(|one| InTheWay::of(one, root))
                .collect(),
            unfinished: options.not_reached > 0,
            counted: counted(options, units),
            worth: options
                .worth_measuring
                .iter()
                .map(|worth| WorthView::of(worth, root, units))
                .collect(),
        }
    }
}

/// Whether every answer of a point stands in the plan already.
fn stands(plan: &SitePlan, point: &Point) -> bool {
    stillground::options::taking::taken(plan, point) == *plan
}

pub(super) fn rows(points: &[&Point], units: Units, currency: Option<&str>) -> Vec<Row> {
    let row = |label, say: &dyn Fn(&Point) -> String| Row {
        label,
        says: points.iter().map(|point| say(point)).collect(),
    };
    let mut rows = vec![
        row("Block", &|point| block(point, units)),
        row("Dig", &|point| {
            units.say(point.dig_volume_m3, Unit::CubicMetre)
        }),
        row("Concrete to order", &|point| {
            units.say(point.order_volume_m3, Unit::CubicMetre)
        }),
        row("The block weighs", &|point| {
            units.say(point.block.mass_kg, Unit::Kilogram)
        }),
        row("Tube", &|point| tube(point, units)),
        row("The plate stands", &|point| {
            match point.pier.levelling {
                Levelling::Nuts => "on nuts",
                Levelling::Grout => "on grout",
            }
            .to_owned()
        }),
        row("Star growth, expected", &|point| {
            growth(point.star_growth_ratio.map(|growth| growth.expected), units)
        }),
        row("Star growth, at worst", &|point| {
            growth(point.star_growth_ratio.map(|growth| growth.worst), units)
        }),
        row("Distance to keep", &|point| match point.quiet_distance_m {
            Some(distance) if distance > 0.0 && !point.quiet_anywhere => {
                units.say(distance, Unit::Metre)
            }
            Some(_) => "off the block".to_owned(),
            None => "not known".to_owned(),
        }),
        row("First natural frequency", &|point| {
            point
                .frequency_hz
                .map_or_else(|| "not known".to_owned(), |hz| units.say(hz, Unit::Hertz))
        }),
        row("Build it?", &|point| build(point.build).to_owned()),
    ];
    if points.iter().any(|point| point.cost.is_some()) {
        rows.push(row("Materials that have a price", &|point| {
            by_cost::cost(point, currency)
        }));
    }
    rows
}

fn block(point: &Point, units: Units) -> String {
    let block = &point.block;
    let [long, wide, deep] =
        [block.length_m, block.width_m, block.depth_m].map(|metres| units.say(metres, Unit::Metre));
    format!("{long} × {wide} × {deep}")
}

fn tube(point: &Point, units: Units) -> String {
    let pier = &point.pier;
    let [across, wall] =
        [pier.outside_diameter_mm, pier.wall_mm].map(|mm| units.to_measure(mm).to_string());
    let fill = match pier.fill {
        Fill::None => "empty",
        Fill::Sand => "sand",
        Fill::Concrete => "concrete",
    };
    format!("{across} × {wall}, {fill}")
}

fn growth(ratio: Option<f64>, units: Units) -> String {
    ratio.map_or_else(|| "not known".to_owned(), |ratio| per_cent(ratio, units))
}

const fn build(says: Says) -> &'static str {
    match says {
        Says::Yes => "yes",
        Says::No => "no",
        Says::Ask => "ask",
    }
}

fn view(name: String, point: &Point, units: Units) -> PointView {
    PointView {
        name,
        block: block(point, units),
        tube: tube(point, units),
        dig: units.say(point.dig_volume_m3, Unit::CubicMetre),
        growth: growth(point.star_growth_ratio.map(|growth| growth.worst), units),
        build: build(point.build),
    }
}

fn points(options: &Options, units: Units) -> Vec<PointView> {
    let view = |name: String, point: &Point| view(name, point, units);
    let nearest = options
        .nearest
        .iter()
        .map(|point| view("nearest to what is asked".to_owned(), point));
    let front = options.front.iter().map(|point| view(String::new(), point));
    let thumbs = options
        .rules_of_thumb
        .iter()
        .map(|thumb| view(thumb.title.to_owned(), &thumb.point));
    nearest.chain(front).chain(thumbs).collect()
}

fn counted(options: &Options, units: Units) -> String {
    let say = |count: usize| units.say(count as f64, Count);
    let all = options.looked_at + options.skipped + options.not_reached;
    let mut said = format!(
        "{} piers are possible here: {} were designed, and the other {} cannot be better than those.",
        say(all),
        say(options.looked_at),
        say(options.skipped)
    );
    if options.not_reached > 0 {
        said.push_str(&format!(
            " {} are still to be looked at.",
            say(options.not_reached)
        ));
    }
    said.push_str(
        " A dot is a block with its stillest column. A way has the lightest column: for the least digging one within what is asked, for the others one with which nobody would see a difference.",
    );
    said
}
