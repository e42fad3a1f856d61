//! Every drawing at its extremes: nothing off the paper, no label on another, the same bytes each time, and figures that
//! agree with lengths at the scale.

mod cut_away;

use std::num::NonZero;
use std::sync::LazyLock;
use std::thread;

use stillground::brief::{Brief, resolve};
use stillground::design::{Design, design};
use stillground::field::NumberField;
use stillground::figure::Units;
use stillground::halfspace::SmallShelf;
use stillground::site_plan::floor::{FloorKind, Stand};
use stillground::site_plan::pier::Levelling;
use stillground::site_plan::{SitePlan, excavation::Sides};
use stillground::units::metre;

use super::area::{Area, area_of, bounds};
use super::furniture::dimension_text;
use super::*;
use crate::views::svg;

/// Widest drawing that A4 takes at its stated scale, mm.
const WIDEST: f64 = super::callout::SHEET_WIDTH;

/// Many of these plans stand on the same block, which is solved once for all of them.
static SHELF: LazyLock<SmallShelf> = LazyLock::new(|| SmallShelf::holding(200));

fn designed(plan: &SitePlan) -> Option<(Brief, Design)> {
    let brief = resolve(plan).ok()?;
    let design = design(&brief, &*SHELF);
    Some((brief, design))
}

/// Plans as different as may be.
fn plans() -> Vec<(String, SitePlan)> {
    let mut plans = vec![("nothing known".to_owned(), SitePlan::unknown())];
    let mut add = |name: &str, change: fn(&mut SitePlan)| {
        let mut plan = SitePlan::unknown();
        change(&mut plan);
        plans.push((name.to_owned(), plan));
    };
    add("deck, battered pit, grout", |plan| {
        plan.excavation.sides = Some(Sides::Sloped);
        plan.floor.kind = Some(FloorKind::Deck);
        plan.floor.level_m = Some(0.4);
        plan.floor.supports = Some(vec![[-1.2, -1.2], [1.2, -1.2], [1.2, 1.2], [-1.2, 1.2]]);
        plan.pier.levelling = Some(Levelling::Grout);
        plan.site.groundwater_depth_m = Some(0.9);
    });
    add("twelve stands in one place, long names, inches", |plan| {
        plan.units = Some(Units::Imperial);
        let stand = |i: u32| Stand {
            name: format!("Stand {i} {}", "beside the old wall ".repeat(3)),
            x_m: 0.8,
            y_m: -0.8,
            mass_kg: 80.0,
        };
        plan.floor.stands = Some((0..12).map(stand).collect());
    });
    add("far stands", |plan| {
        plan.floor.stands = Some(vec![
            Stand {
                name: "here".into(),
                x_m: 0.0,
                y_m: 0.6,
                mass_kg: 80.0,
            },
            Stand {
                name: "天文台 مرصد 🔭".into(),
                x_m: 50.0,
                y_m: -50.0,
                mass_kg: 80.0,
            },
        ]);
    });
    add("small", |plan| {
        (plan.block.length_m, plan.block.width_m, plan.block.depth_m) =
            (Some(0.4), Some(0.4), Some(0.25));
        (plan.pier.height_m, plan.pier.plate_side_mm) = (Some(0.2), Some(300.0));
    });
    add("large", |plan| {
        plan.excavation.max_length_m = Some(12.0);
        plan.excavation.max_width_m = Some(12.0);
        plan.excavation.max_depth_m = Some(6.0);
        (plan.block.length_m, plan.block.width_m, plan.block.depth_m) =
            (Some(10.0), Some(9.0), Some(5.0));
        (
            plan.pier.height_m,
            plan.pier.outside_diameter_mm,
            plan.pier.plate_side_mm,
        ) = (Some(6.0), Some(900.0), Some(1600.0));
        plan.anchors.count = Some(12);
    });
    plans
}

/// What is wrong with a drawing.
fn faults(name: &str, drawing: &Drawing, widest: f64) -> Vec<String> {
    let mut faults = Vec::new();
    if !(drawing.width <= widest && drawing.height.is_finite()) {
        faults.push(format!(
            "{name}, {}: {:.1} mm wide",
            drawing.name, drawing.width
        ));
    }
    if drawing.title.is_empty() || !drawing.description.ends_with('.') {
        faults.push(format!("{name}, {}: not described", drawing.name));
    }
    for item in &drawing.items {
        let Area {
            left,
            top,
            right,
            bottom,
        } = bounds(item);
        if !(left >= -0.01
            && top >= -0.01
            && right <= drawing.width + 0.01
            && bottom <= drawing.height + 0.01)
        {
            faults.push(format!(
                "{name}, {}: {item:?} is off the paper",
                drawing.name
            ));
        }
    }
    let labels = labels(drawing);
    for (i, a) in labels.iter().enumerate() {
        for b in &labels[i + 1..] {
            if area_of(a)
                .with_margin(-0.35)
                .meets(&area_of(b).with_margin(-0.35))
            {
                faults.push(format!(
                    "{name}, {}: “{}” stands on “{}”",
                    drawing.name, a.text, b.text
                ));
            }
        }
    }
    faults
}

fn labels(drawing: &Drawing) -> Vec<&Label> {
    drawing
        .items
        .iter()
        .filter_map(|item| match item {
            Item::Text(label) => Some(label),
            _ => None,
        })
        .collect()
}

fn all_faults(name: &str, brief: &Brief, design: &Design) -> Vec<String> {
    let sheets = NAMES
        .iter()
        .filter_map(|drawing| by_name(drawing, brief, design))
        .flat_map(|drawing| faults(name, &drawing, WIDEST));
    let phones = NAMES
        .iter()
        .filter_map(|drawing| on_a_phone(drawing, brief, design))
        .flat_map(|drawing| phone_faults(&format!("{name}, telephone"), &drawing));
    sheets.chain(phones).collect()
}

/// What is wrong with a drawing for a telephone: beside the rest, letters that are too small there.
fn phone_faults(name: &str, drawing: &Drawing) -> Vec<String> {
    let mut found = faults(name, drawing, PHONE_WIDTH);
    for label in labels(drawing) {
        // A page on a screen 320 pixels wide leaves 286 of them to the drawing.
        let pixels = label.size * 286.0 / drawing.width.max(PHONE_WIDTH);
        if pixels < 12.0 {
            found.push(format!(
                "{name}, {}: “{}” is {pixels:.1} pixels high",
                drawing.name, label.text
            ));
        }
    }
    found
}

/// The example plans.
fn examples() -> Vec<(String, SitePlan)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../tests/examples");
    let mut plans: Vec<(String, SitePlan)> = std::fs::read_dir(folder)
        .expect("the examples")
        .map(|file| file.expect("a file").path())
        .map(|path| {
            let text = std::fs::read_to_string(&path).expect("an example");
            let plan = serde_json::from_str(&text).expect("a plan");
            (path.display().to_string(), plan)
        })
        .collect();
    plans.sort_by(|a, b| a.0.cmp(&b.0));
    assert_eq!(plans.len(), 6);
    plans
}

#[test]
fn the_examples_are_drawn_without_a_fault() {
    let mut found = Vec::new();
    for (name, plan) in examples() {
        let (brief, design) = designed(&plan).expect("a valid plan");
        found.extend(all_faults(&name, &brief, &design));
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn nothing_is_off_the_paper_and_no_label_stands_on_another() {
    let mut found = Vec::new();
    for (name, plan) in plans() {
        let Some((brief, design)) = designed(&plan) else {
            panic!("{name}: {:?}", plan.validate())
        };
        found.extend(all_faults(&name, &brief, &design));
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn each_number_at_its_ends_still_draws() {
    let drawn = [
        "block.",
        "pier.",
        "floor.",
        "excavation.",
        "anchors.length",
        "anchors.embedment",
        "anchors.circle",
        "anchors.count",
    ];
    let ends: Vec<_> = SitePlan::numbers()
        .filter(|field| drawn.iter().any(|part| field.path.starts_with(part)))
        .flat_map(|field| [(field, field.least), (field, field.most)])
        .collect();
    assert!(ends.len() > 50, "only {} ends", ends.len());
    let faults_at = |(field, end): &(&NumberField, f64)| {
        let mut plan = SitePlan::unknown();
        (field.set)(&mut plan, Some(*end));
        designed(&plan).map_or_else(Vec::new, |(brief, design)| {
            all_faults(&format!("{} = {end}", field.path), &brief, &design)
        })
    };
    // The longest of these tests: every core takes its part.
    let cores = thread::available_parallelism().map_or(1, NonZero::get);
    let found: Vec<String> = thread::scope(|scope| {
        let parts: Vec<_> = ends
            .chunks(ends.len().div_ceil(cores))
            .map(|part| scope.spawn(|| part.iter().flat_map(faults_at).collect::<Vec<_>>()))
            .collect();
        parts
            .into_iter()
            .flat_map(|part| part.join().expect("a part that ends"))
            .collect()
    });
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn the_same_design_gives_the_same_bytes() {
    let (brief, design) = designed(&SitePlan::unknown()).expect("a valid plan");
    for name in NAMES {
        let write = || by_name(name, &brief, &design).map(|drawing| svg::write(&drawing));
        assert_eq!(write(), write(), "{name}");
    }
}

#[test]
fn a_figure_agrees_with_its_length_at_the_scale() {
    let (brief, design) = designed(&SitePlan::unknown()).expect("a valid plan");
    let drawing = by_name("section", &brief, &design).expect("a section");
    let scale = f64::from(drawing.scale.expect("a scale"));
    let block = drawing.items.iter().find_map(|item| match item {
        Item::Path {
            runs,
            closed: true,
            line: Line::Heavy,
        } => runs.first().cloned(),
        _ => None,
    });
    let block = block.expect("the block's outline");
    let (width, height) = (
        (block[2].x - block[0].x).abs() * scale,
        (block[2].y - block[0].y).abs() * scale,
    );
    let of = |length| 1000.0 * metre::get(length);
    assert!((width - of(design.block.length)).abs() < 0.01, "{width}");
    assert!(
        (height - of(design.block.depth) - of(design.block.upstand)).abs() < 0.01,
        "{height}"
    );
    for length in [
        design.block.length,
        design.block.depth,
        design.block.upstand,
        design.pier.height,
    ] {
        let figure = dimension_text(brief.units, of(length));
        assert!(
            drawing
                .items
                .iter()
                .any(|item| matches!(item, Item::Text(label) if label.text == figure)),
            "{figure} is not on the section"
        );
    }
}

#[test]
fn every_character_of_a_plan_is_in_the_typefaces() {
    for (name, plan) in plans().into_iter().filter(|(name, _)| name != "far stands") {
        let (_, design) = designed(&plan).expect("a valid plan");
        let text = serde_json::to_string(&design).expect("a design is JSON");
        let missing: String = text
            .chars()
            .filter(|&c| {
                crate::lettering::set(crate::lettering::Face::Text, c.encode_utf8(&mut [0; 4]))
                    .replaced
                    > 0
            })
            .collect();
        assert!(
            missing.is_empty(),
            "{name}: {missing} is in no typeface: add it in static/font/make/make.py, or write it otherwise"
        );
    }
}

#[test]
fn the_specimen_is_drawn_as_before() {
    let mut pen = pen::Pen::default();
    let frame = pen::rectangle(at(0.0, 0.0), at(40.0, 24.0));
    pen.hatch(hatch::Hatch::Concrete, std::slice::from_ref(&frame));
    for line in Line::ALL {
        let y = 30.0 + 3.0 * line as usize as f64;
        pen.line(line, &[at(0.0, y), at(40.0, y)]);
    }
    pen.outline(Line::Heavy, &frame);
    dimension::across(&mut pen, at(0.0, 24.0), at(40.0, 24.0), 60.0, "40");
    dimension::upright(&mut pen, at(0.0, 0.0), at(0.0, 3.0), -9.0, "<3>");
    callout::column(
        &mut pen,
        vec![callout::note(at(30.0, 12.0), "A note & its leader")],
        50.0,
        0.0,
        60.0,
        30.0,
    );
    furniture::title_strip(&mut pen, "Specimen", Some(1), Units::Metric);
    let drawing = pen.finish(pen::Head {
        name: "specimen",
        title: "Specimen".into(),
        description: "All kinds of line.".into(),
        scale: Some(1),
    });
    let (found, file) = (
        svg::write(&drawing),
        concat!(env!("CARGO_MANIFEST_DIR"), "/src/drawing/specimen.svg"),
    );
    if std::env::var_os("STILLGROUND_BLESS").is_some() {
        std::fs::write(file, &found).expect("the specimen can be written");
    }
    let before = std::fs::read_to_string(file).unwrap_or_default();
    assert!(
        found == before,
        "the specimen has changed; look at it, then: STILLGROUND_BLESS=1 cargo test -p stillground-server specimen"
    );
}
