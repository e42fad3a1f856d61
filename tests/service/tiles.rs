//! The drilling template on paper: where its holes come to stand when its tiles are laid together.

use lopdf::content::Content;
use lopdf::{Document, Object};
use serde_json::json;
use stillground_server::views::pdf::Paper;

use crate::sheets::{POINTS_PER_MM, printed, tiles_of, tool};

/// A circle of a page: centre and radius in millimetres from the page's upper left corner.
type Circle = (f64, f64, f64);

/// Every closed path of four curves in each page's content.
fn circles(pdf: &[u8]) -> Vec<Vec<Circle>> {
    let document = Document::load_mem(pdf).unwrap();
    document
        .get_pages()
        .values()
        .map(|&page| circles_of(&document.get_page_content(page)))
        .collect()
}

fn circles_of(content: &[u8]) -> Vec<Circle> {
    let (mut found, mut path, mut curves) = (Vec::new(), Vec::<(f64, f64)>::new(), 0);
    let mut matrix = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];
    let mut kept = Vec::new();
    for operation in Content::decode(content).unwrap().operations {
        let numbers: Vec<f64> = operation.operands.iter().filter_map(number).collect();
        match operation.operator.as_str() {
            "q" => kept.push(matrix),
            "Q" => matrix = kept.pop().unwrap(),
            "cm" => matrix = times(&numbers, &matrix),
            "m" => (path, curves) = (vec![place(&numbers, &matrix)], 0),
            "c" => {
                path.push(place(&numbers[4..], &matrix));
                curves += 1;
            }
            "S" | "s" if curves == 4 => {
                let (xs, ys): (Vec<f64>, Vec<f64>) = path.iter().copied().unzip();
                let ends = |values: &[f64]| {
                    values.iter().fold((f64::MAX, f64::MIN), |(low, high), &v| {
                        (low.min(v), high.max(v))
                    })
                };
                let ((west, east), (low, high)) = (ends(&xs), ends(&ys));
                found.push(((west + east) / 2.0, (low + high) / 2.0, (east - west) / 2.0));
                curves = 0;
            }
            _ => {}
        }
    }
    found
}

pub(crate) fn number(object: &Object) -> Option<f64> {
    object.as_float().ok().map(f64::from)
}

fn times(a: &[f64], b: &[f64; 6]) -> [f64; 6] {
    [
        a[0] * b[0] + a[1] * b[2],
        a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2],
        a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4],
        a[4] * b[1] + a[5] * b[3] + b[5],
    ]
}

/// In millimetres, y upwards.
fn place(point: &[f64], matrix: &[f64; 6]) -> (f64, f64) {
    let (x, y) = (point[0], point[1]);
    let (x, y) = (
        x * matrix[0] + y * matrix[2] + matrix[4],
        x * matrix[1] + y * matrix[3] + matrix[5],
    );
    (x / POINTS_PER_MM, y / POINTS_PER_MM)
}

#[test]
fn holes_on_one_sheet_are_as_far_apart_as_the_plan_says() {
    // A plate that one sheet takes whole, so that all distances can be measured on it.
    let plan = json!({"schema_version": 1,
        "pier": {"plate_side_mm": 150, "outside_diameter_mm": 76.1, "wall_mm": 4, "top_plate_side_mm": 120, "top_bolt_circle_mm": 60},
        "anchors": {"count": 4, "size": "M10", "circle_diameter_mm": 116, "hole_diameter_mm": 12}});
    for paper in [Paper::A4, Paper::Letter] {
        let (_, template) = printed(&plan, paper);
        let holes: Vec<Circle> = circles(&template)
            .into_iter()
            .flatten()
            .filter(|(_, _, radius)| (radius - 6.0).abs() < 0.05)
            .collect();
        assert_eq!(holes.len(), 4, "{paper:?}: {holes:?}");
        let mut distances: Vec<f64> = (0..4)
            .flat_map(|i| (i + 1..4).map(move |j| (i, j)))
            .map(|(i, j)| (holes[i].0 - holes[j].0).hypot(holes[i].1 - holes[j].1))
            .collect();
        distances.sort_by(f64::total_cmp);
        let side = 116.0 / 2f64.sqrt();
        for (found, wanted) in distances.iter().zip([side, side, side, side, 116.0, 116.0]) {
            assert!(
                (found - wanted).abs() < 0.1,
                "{paper:?}: {found} for {wanted}"
            );
        }
        assert!(
            holes
                .iter()
                .all(|(_, _, radius)| (radius - 6.0).abs() < 0.05),
            "a hole of 12 mm"
        );
    }
}

/// Holes of such a radius, put where they come to stand when the tiles are laid register mark on register mark.
fn laid(template: &[u8], radius: f64, step: (f64, f64)) -> Vec<(f64, f64)> {
    let circles = circles(template);
    let mut holes: Vec<(f64, f64)> = Vec::new();
    for (name, page) in tiles_of(template) {
        let row = f64::from(u32::from(name.chars().next().unwrap()) - u32::from('A'));
        let column = f64::from(name[1..].parse::<u32>().unwrap() - 1);
        for (x, y, _) in circles[page]
            .iter()
            .filter(|circle| (circle.2 - radius).abs() < 0.05)
        {
            let place = (x + column * step.0, y - row * step.1);
            if !holes
                .iter()
                .any(|hole| (hole.0 - place.0).hypot(hole.1 - place.1) < 0.1)
            {
                holes.push(place);
            }
        }
    }
    holes
}

#[test]
fn tiles_laid_register_mark_on_register_mark_put_every_hole_in_its_place() {
    // Tiles of A4 are 167 × 231 mm and share 12 mm: from sheet to sheet the pattern moves by the difference.
    let step = (178.0 - 11.0 - 12.0, 242.0 - 11.0 - 12.0);
    for (plate, circle, count) in [(400.0, 320.0, 4u32), (900.0, 800.0, 12), (900.0, 300.0, 6)] {
        let plan = json!({"schema_version": 1, "pier": {"plate_side_mm": plate, "outside_diameter_mm": 168.3, "wall_mm": 8}, "block": {"length_m": 1.4, "width_m": 1.4},
            "anchors": {"count": count, "circle_diameter_mm": circle, "hole_diameter_mm": 18}});
        let (_, template) = printed(&plan, Paper::A4);
        let holes = laid(&template, 9.0, step);
        assert_eq!(holes.len(), count as usize, "{plate}: {holes:?}");
        let (mx, my) = holes.iter().fold((0.0, 0.0), |sum, hole| {
            (
                sum.0 + hole.0 / f64::from(count),
                sum.1 + hole.1 / f64::from(count),
            )
        });
        let side = circle * (std::f64::consts::PI / f64::from(count)).sin();
        for hole in &holes {
            assert!(
                ((hole.0 - mx).hypot(hole.1 - my) - circle / 2.0).abs() < 0.1,
                "{hole:?} off its circle"
            );
            let apart = |other: &(f64, f64)| (other.0 - hole.0).hypot(other.1 - hole.1);
            let near = holes
                .iter()
                .map(apart)
                .filter(|far| *far > 1.0)
                .fold(f64::MAX, f64::min);
            assert!((near - side).abs() < 0.1, "{near} for {side}");
        }
    }
}

#[test]
fn a_large_plate_prints_no_empty_tile_and_fits_fewer_large_sheets() {
    let plan = json!({"schema_version": 1, "pier": {"plate_side_mm": 900}, "block": {"length_m": 1.4, "width_m": 1.4}, "anchors": {"count": 8, "circle_diameter_mm": 800}});
    let count = |paper| tiles_of(&printed(&plan, paper).1).len();
    assert!(count(Paper::Letter) <= 24, "{}", count(Paper::Letter));
    assert!(count(Paper::A0) <= 2, "{}", count(Paper::A0));
    let (set, template) = printed(&plan, Paper::A0);
    assert!(
        tool("pdfinfo", &[], &set).contains("(A4)"),
        "words stay on paper that can be carried"
    );
    assert!(tool("pdfinfo", &["-l", "9"], &template).contains("3370.39 x 2383.94"));
}
