//! Sheets of paper: their size, their fonts, their words, and holes that are where the plan says, to a tenth of a
//! millimetre, in the file itself.

use std::process::Command;

use lopdf::Document;
use lopdf::content::Content;
use serde_json::{Value, json};
use stillground::brief::resolve;
use stillground::design::design;
use stillground::halfspace::NoShelf;
use stillground::site_plan::SitePlan;
use stillground_server::views::pdf::{self, Paper, Sheet};
use stillground_tests::binary::run;
use stillground_tests::service::{start, unknown};

use crate::tiles::number;

pub(crate) const POINTS_PER_MM: f64 = 72.0 / 25.4;

/// The file and the template.
pub(crate) fn printed(plan: &Value, paper: Paper) -> (Vec<u8>, Vec<u8>) {
    let [file, template, _] = all(plan, paper);
    (file, template)
}

/// The file, the template and the site set.
fn all(plan: &Value, paper: Paper) -> [Vec<u8>; 3] {
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
        built: &[],
    };
    [
        pdf::file(&sheet, paper).unwrap(),
        pdf::template(&sheet, paper).unwrap(),
        pdf::plan(&sheet, paper).unwrap(),
    ]
}

/// Runs a tool of poppler on a PDF and gives what it prints.
pub(crate) fn tool(name: &str, arguments: &[&str], pdf: &[u8]) -> String {
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
        for pdf in &all(&unknown(), paper) {
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
        let prints = all(&plan, paper);
        for pdf in &prints {
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
        let text = tool("pdftotext", &["-layout"], &prints[0]);
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
    for pdf in &all(&unknown(), Paper::A4) {
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
    let [file, _, set] = all(&unknown(), Paper::Letter);
    for pdf in [&file, &set] {
        let text: String = letters(&tool("pdftotext", &["-raw"], pdf));
        for caution in &design.cautions {
            let start: String = letters(&caution.text).chars().take(50).collect();
            assert!(text.contains(&start), "{}", caution.text);
        }
    }
}

pub(crate) fn letters(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).collect()
}

/// The template's tiles by name, each with its page.
pub(crate) fn tiles_of(template: &[u8]) -> Vec<(String, usize)> {
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
pub(crate) fn lines(pdf: &[u8]) -> Vec<Vec<f64>> {
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
        ("file.pdf", "application/pdf"),
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
        "file.pdf",
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
