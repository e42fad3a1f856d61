//! The file read back by a reader of our own: pairs of a code and a value.

use stillground::brief::resolve;
use stillground::decided::design_plan;
use stillground::halfspace::NoShelf;
use stillground::site_plan::SitePlan;

use super::*;

fn made(plan: &SitePlan) -> (String, Design) {
    let (brief, design) = (resolve(plan).unwrap(), design_plan(plan, &NoShelf).unwrap());
    (workshop(&brief, &design).unwrap(), design)
}

/// Entities of the drawing: kind, layer and the numbers of their codes 10, 20 and 40.
fn entities(text: &str) -> Vec<(String, String, [Vec<f64>; 3])> {
    let lines: Vec<&str> = text.lines().map(str::trim).collect();
    let pairs: Vec<(&str, &str)> = lines
        .chunks_exact(2)
        .map(|pair| (pair[0], pair[1]))
        .collect();
    let start = pairs
        .iter()
        .position(|pair| *pair == ("2", "ENTITIES"))
        .unwrap();
    let mut found: Vec<(String, String, [Vec<f64>; 3])> = Vec::new();
    for (code, value) in pairs[start + 1..]
        .iter()
        .take_while(|pair| **pair != ("0", "ENDSEC"))
    {
        match (*code, found.last_mut()) {
            ("0", _) => found.push(((*value).to_owned(), String::new(), Default::default())),
            ("8", Some(entity)) => entity.1 = (*value).to_owned(),
            ("10" | "20" | "40", Some(entity)) => entity.2[match *code {
                "10" => 0,
                "20" => 1,
                _ => 2,
            }]
            .push(value.parse().unwrap()),
            _ => {}
        }
    }
    found
}

fn circles(text: &str, layer: &str) -> Vec<(f64, f64, f64)> {
    let of_layer = entities(text)
        .into_iter()
        .filter(|(kind, on, _)| kind == "CIRCLE" && on == layer);
    of_layer
        .map(|(_, _, [x, y, r])| (x[0], y[0], r[0]))
        .collect()
}

#[test]
fn holes_are_where_the_plan_has_them() {
    let plan: SitePlan =
        serde_json::from_str(include_str!("../../../../tests/examples/quarry-lane.json")).unwrap();
    let (text, design) = made(&plan);
    let (plate, jig) = (circles(&text, "Plate holes"), circles(&text, "Jig holes"));
    assert_eq!(plate.len(), design.anchors.studs.len());
    assert_eq!(jig.len(), plate.len());
    let east = jig[0].0 - plate[0].0;
    for ((stud, on_plate), on_jig) in design.anchors.studs.iter().zip(&plate).zip(&jig) {
        let (x, y) = (millimetre::get(stud.x), millimetre::get(stud.y));
        assert!(
            (on_plate.0 - x).abs() < 1e-9 && (on_plate.1 - y).abs() < 1e-9,
            "{on_plate:?} against {x}, {y}"
        );
        assert!(
            (on_jig.0 - east - x).abs() < 1e-9 && (on_jig.1 - y).abs() < 1e-9,
            "{on_jig:?}"
        );
        assert!((2.0 * on_jig.2 - millimetre::get(design.anchors.hole_diameter)).abs() < 1e-9);
        assert!(on_plate.2 > 0.0);
    }
}

#[test]
fn the_outline_is_the_plate_and_every_layer_is_used() {
    let (text, design) = made(&SitePlan::unknown());
    let found = entities(&text);
    let (_, _, [x, _, _]) = found
        .iter()
        .find(|(kind, layer, _)| kind == "LWPOLYLINE" && layer == "Plate outline")
        .unwrap();
    let (west, east) = x.iter().fold((f64::MAX, f64::MIN), |(low, high), x| {
        (low.min(*x), high.max(*x))
    });
    assert!((east - west - millimetre::get(design.pier.plate_side)).abs() < 1e-9);
    for (layer, _) in LAYERS {
        assert!(
            found.iter().any(|(_, on, _)| on == layer),
            "{layer} is empty"
        );
    }
}

#[test]
fn the_same_plan_gives_the_same_bytes_and_says_millimetres() {
    let (first, _) = made(&SitePlan::unknown());
    std::thread::sleep(std::time::Duration::from_millis(1100));
    assert_eq!(first, made(&SitePlan::unknown()).0);
    let lines: Vec<&str> = first.lines().map(str::trim).collect();
    let units = lines.iter().position(|line| *line == "$INSUNITS").unwrap();
    assert_eq!(lines[units + 2], "4");
}
