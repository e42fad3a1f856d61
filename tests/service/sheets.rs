//! Sheets of paper: their size, their fonts, their words, and holes that are where the plan says, to a tenth of a
//! millimetre, in the file itself.

use std::process::Command;

use lopdf::content::Content;
use lopdf::{Document, Object};
use serde_json::{Value, json};
use stillground::brief::resolve;
use stillground::design::design;
use stillground::halfspace::NoShelf;
use stillground::site_plan::SitePlan;
use stillground_server::views::pdf::{self, Paper, Sheet};
use stillground_tests::binary::run;
use stillground_tests::service::{start, unknown};

const POINTS_PER_MM: f64 = 72.0 / 25.4;

fn printed(plan: &Value, paper: Paper) -> (Vec<u8>, Vec<u8>) {
    let plan: SitePlan = serde_json::from_value(plan.clone()).unwrap();
    let brief = resolve(&plan).unwrap();
    let design = design(&brief, &NoShelf);
    let link = "https://planner.example/p/0123456789abcdef0123456789abcdef";
    let sheet = Sheet {
        brief: &brief,
        design: &design,
        revision: Some(7),
        date: Some("1 March 2027"),
        view_link: Some(link),
        check_link: None,
        letterhead: None,
    };
    (
        pdf::plan(&sheet, paper).unwrap(),
        pdf::template(&sheet, paper).unwrap(),
    )
}

/// Runs a tool of poppler on a PDF and gives what it prints.
fn tool(name: &str, arguments: &[&str], pdf: &[u8]) -> String {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("sheet.pdf");
    std::fs::write(&file, pdf).unwrap();
    let mut command = Command::new(name);
    command.args(arguments).arg(&file);
    if name == "pdftotext" {
        command.arg("-");
    }
    let output = command.output().unwrap();
    assert!(
        output.status.success(),
        "{name}: {}",
        String::from_utf8_lossy(&output.stderr)
    );
    // With -bbox the title of the document is copied as it is encoded in the file.
    String::from_utf8_lossy(&output.stdout).into_owned()
}

#[test]
fn both_papers_have_their_size_and_fonts_of_their_own() {
    for (paper, size) in [
        (Paper::A4, "595.276 x 841.89 pts (A4)"),
        (Paper::Letter, "612 x 792 pts (letter)"),
    ] {
        let (plan, template) = printed(&unknown(), paper);
        for pdf in [&plan, &template] {
            let info = tool("pdfinfo", &[], pdf);
            assert!(info.contains(size), "{info}");
            assert!(info.contains("Tagged:          yes"), "{info}");
            let fonts = tool("pdffonts", &[], pdf);
            for line in fonts.lines().skip(2) {
                let words: Vec<&str> = line.split_whitespace().collect();
                assert!(
                    words[0].contains("+Stillground") && words[4..7] == ["yes", "yes", "yes"],
                    "{line}"
                );
            }
        }
    }
}

#[test]
fn every_sheet_says_what_it_is_and_which_revision() {
    let plan = json!({"schema_version": 1, "title": "Quarry Lane pier", "pier": {"plate_side_mm": 900}, "block": {"length_m": 1.4, "width_m": 1.4},
        "anchors": {"count": 12, "circle_diameter_mm": 700}});
    for paper in [Paper::A4, Paper::Letter] {
        let (plan, template) = printed(&plan, paper);
        for pdf in [&plan, &template] {
            let text = tool("pdftotext", &["-layout"], pdf);
            let pages: Vec<&str> = text.split_terminator('\u{c}').collect();
            for (i, page) in pages.iter().enumerate() {
                let words = page.split_whitespace().collect::<Vec<_>>().join(" ");
                for said in [
                    "Quarry Lane pier",
                    "Revision 7, 1 March 2027, Stillground",
                    "Superseded?",
                    "50 mm (1.97 in) at full size",
                    "Open the plan",
                ] {
                    assert!(words.contains(said), "{said}: {page}");
                }
                assert!(
                    words.contains(&format!("Page {} of {}", i + 1, pages.len())),
                    "{page}"
                );
            }
        }
        let text = tool("pdftotext", &["-layout"], &plan);
        for sheet in [
            "Site and pit",
            "Studs and holes",
            "Observing floor",
            "Checks",
            "Cautions",
            "Wall card",
            "Calculations",
        ] {
            assert!(text.contains(sheet), "{sheet}");
        }
    }
}

#[test]
fn the_bar_at_the_foot_of_every_sheet_is_as_long_as_it_says() {
    let (plan, template) = printed(&unknown(), Paper::A4);
    for pdf in [&plan, &template] {
        for (i, page) in lines(pdf).iter().enumerate() {
            assert!(
                page.iter().any(|length| (length - 50.0).abs() < 0.02),
                "page {}",
                i + 1
            );
        }
    }
}

#[test]
fn both_rulers_of_every_tile_are_a_hundred_millimetres() {
    for paper in [Paper::A4, Paper::Letter, Paper::A1] {
        let (_, template) = printed(&unknown(), paper);
        let tiles = tiles_of(&template);
        assert!(!tiles.is_empty());
        for (name, page) in tiles {
            let rulers = lines(&template)[page]
                .iter()
                .filter(|length| (**length - 100.0).abs() < 0.05)
                .count();
            assert!(rulers >= 2, "{paper:?}, {name}: {rulers}");
        }
    }
}

#[test]
fn every_caution_stands_in_the_set_where_its_work_is_done() {
    let plan: SitePlan = serde_json::from_value(unknown()).unwrap();
    let design = design(&resolve(&plan).unwrap(), &NoShelf);
    let (set, _) = printed(&unknown(), Paper::Letter);
    let text: String = letters(&tool("pdftotext", &["-raw"], &set));
    for caution in &design.cautions {
        let start: String = letters(&caution.text).chars().take(50).collect();
        assert!(text.contains(&start), "{}", caution.text);
    }
}

fn letters(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).collect()
}

/// The template's tiles by name, each with its page.
fn tiles_of(template: &[u8]) -> Vec<(String, usize)> {
    let text = tool("pdftotext", &["-layout"], template);
    let name = |page: &str| {
        page.split("Drilling template, sheet ")
            .nth(1)?
            .split_whitespace()
            .next()
            .map(str::to_owned)
    };
    text.split('\u{c}')
        .enumerate()
        .filter_map(|(i, page)| Some((name(page)?, i)))
        .collect()
}

/// Lengths of the straight lines on each page, millimetres.
fn lines(pdf: &[u8]) -> Vec<Vec<f64>> {
    let document = Document::load_mem(pdf).unwrap();
    let of = |content: &[u8]| {
        let (mut found, mut from) = (Vec::new(), (0.0, 0.0));
        for operation in Content::decode(content).unwrap().operations {
            let numbers: Vec<f64> = operation.operands.iter().filter_map(number).collect();
            match operation.operator.as_str() {
                "m" => from = (numbers[0], numbers[1]),
                "l" => {
                    found.push((numbers[0] - from.0).hypot(numbers[1] - from.1) / POINTS_PER_MM);
                    from = (numbers[0], numbers[1]);
                }
                _ => {}
            }
        }
        found
    };
    document
        .get_pages()
        .values()
        .map(|&page| of(&document.get_page_content(page)))
        .collect()
}

#[test]
fn the_same_plan_and_revision_give_the_same_bytes() {
    assert!(printed(&unknown(), Paper::Letter) == printed(&unknown(), Paper::Letter));
}

#[test]
fn a_long_title_and_letters_of_no_typeface_still_print_and_say_so() {
    let title = format!("{} 天文台 مرصد 🔭", "A long title ".repeat(36));
    let stand = json!({"name": "観測者", "x_m": 0.9, "y_m": -0.9, "mass_kg": 80});
    let plan = json!({"schema_version": 1, "title": title, "floor": {"stands": vec![stand; 12]}});
    let (plan, template) = printed(&plan, Paper::A4);
    let text = tool("pdftotext", &["-layout"], &plan);
    assert!(text.contains("are not in the typefaces"), "{text}");
    let cover = text
        .split('\u{c}')
        .next()
        .unwrap()
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ");
    assert!(
        cover.contains(&"A long title ".repeat(36)),
        "the cover has the whole of it: {cover}"
    );
    assert!(tool("pdfinfo", &[], &template).contains("Pages"));
    // Letters stand within the paper.
    for line in tool("pdftotext", &["-bbox"], &plan)
        .lines()
        .filter(|line| line.contains("<word"))
    {
        let number = |name: &str| {
            line.split(&format!("{name}=\""))
                .nth(1)
                .unwrap()
                .split('"')
                .next()
                .unwrap()
                .parse::<f64>()
                .unwrap()
        };
        assert!(
            number("xMin") > 20.0
                && number("xMax") < 595.3 - 20.0
                && number("yMin") > 20.0
                && number("yMax") < 841.9 - 20.0,
            "{line}"
        );
    }
}

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

fn number(object: &Object) -> Option<f64> {
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

#[test]
fn every_view_of_a_plan_by_its_address_and_a_bad_paper() {
    let service = start();
    let kept = service.create(&json!({"schema_version": 1, "work": {"start_date": "2027-04-05"}}));
    let others = [
        ("materials.csv", "text/csv; charset=utf-8"),
        ("schedule.ics", "text/calendar; charset=utf-8"),
        ("drawings/section.svg", "image/svg+xml"),
    ];
    for (name, kind) in others {
        let (answer, page) = (
            service.read(&kept, &kept.view, &format!("/{name}")),
            service.get(&format!("/p/{}/{name}", kept.view)),
        );
        assert_eq!(
            (
                answer.status,
                answer.header("content-type"),
                page.status,
                page.header("content-type")
            ),
            (200, kind, 200, kind),
            "{name}"
        );
    }
    assert_eq!(
        service
            .read(&kept, &kept.view, "/drawings/nothing.svg")
            .status,
        404
    );
    for answer in [
        service.read(&kept, &kept.view, "/template.dxf"),
        service.get(&format!("/p/{}/template.dxf", kept.view)),
    ] {
        assert_eq!(
            (answer.status, answer.header("content-type")),
            (200, "image/vnd.dxf")
        );
        let text = answer.text();
        assert!(
            text.contains("SECTION")
                && text.contains("Plate holes")
                && text.trim_end().ends_with("EOF")
        );
    }
    for (name, kind) in [
        ("plan.pdf", "application/pdf"),
        ("template.pdf", "application/pdf"),
    ] {
        let answer = service.read(&kept, &kept.view, &format!("/{name}"));
        assert_eq!((answer.status, answer.header("content-type")), (200, kind));
        let page = service.get(&format!("/p/{}/{name}?paper=letter", kept.view));
        assert_eq!((page.status, page.header("content-type")), (200, kind));
        assert_eq!(
            service
                .get(&format!("/p/{}/{name}?paper=a5", kept.view))
                .status,
            400
        );
    }
}

#[test]
fn the_command_line_writes_all_that_is_carried_to_the_site() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(
        folder.path().join("plan.json"),
        "{\"schema_version\":1,\"work\":{\"start_date\":\"2027-04-05\"}}",
    )
    .unwrap();
    let output = run(
        folder.path(),
        &["print", "plan.json", "--out", "sheets", "--paper", "letter"],
    );
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    for file in [
        "plan.pdf",
        "template.pdf",
        "template.dxf",
        "materials.csv",
        "schedule.ics",
        "drawings/section.svg",
        "drawings/tilt-map.svg",
    ] {
        assert!(
            folder
                .path()
                .join("sheets")
                .join(file)
                .metadata()
                .unwrap()
                .len()
                > 200,
            "{file}"
        );
    }
    let plan = std::fs::read(folder.path().join("sheets/plan.pdf")).unwrap();
    assert!(tool("pdfinfo", &[], &plan).contains("letter"));
    assert_eq!(
        run(folder.path(), &["print", "plan.json", "--paper", "a5"])
            .status
            .code(),
        Some(2)
    );
}
