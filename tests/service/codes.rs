//! The codes at the foot of every sheet, read back from pictures of a whole set by other hands than those that drew them.

use std::process::Command;

use stillground::brief::resolve;
use stillground::design::design;
use stillground::halfspace::NoShelf;
use stillground_server::views::pdf::{self, Paper, Sheet};

use crate::sheet_codes::grey;

const OPENS: &str = "https://planner.example/p/0123456789abcdef0123456789abcdef/plan?rev=7";
const CHECKS: &str = "https://planner.example/s/abcdefghijklmnopqrstuvwxyz";

/// Dots of an inch: a telephone held over the sheet sees more.
const DOTS: f64 = 150.0;
/// Height of the foot with the codes, mm.
const FOOT: f64 = 33.0;

/// The texts of the codes at the foot of each page.
fn of_each_page(pdf: &[u8], paper: Paper) -> Vec<Vec<String>> {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("set.pdf");
    std::fs::write(&file, pdf).unwrap();
    let dots = |mm: f64| (mm / 25.4 * DOTS).round().to_string();
    let (width, height) = paper.size_mm();
    let mut command = Command::new("pdftoppm");
    command.args([
        "-gray",
        "-r",
        &DOTS.to_string(),
        "-x",
        "0",
        "-y",
        &dots(height - FOOT),
        "-W",
        &dots(width),
        "-H",
        &dots(FOOT),
    ]);
    let output = command
        .arg(&file)
        .arg(folder.path().join("foot"))
        .output()
        .unwrap();
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let mut pictures: Vec<_> = std::fs::read_dir(folder.path())
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    pictures.retain(|path| path.extension().is_some_and(|name| name == "pgm"));
    pictures.sort();
    pictures
        .iter()
        .map(|path| texts(&std::fs::read(path).unwrap()))
        .collect()
}

fn texts(picture: &[u8]) -> Vec<String> {
    let (width, height, dots) = grey(picture);
    let mut prepared =
        rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| dots[y * width + x]);
    let mut found: Vec<String> = prepared
        .detect_grids()
        .iter()
        .filter_map(|grid| grid.decode().ok())
        .map(|(_, text)| text)
        .collect();
    found.sort();
    found
}

#[test]
fn both_codes_are_read_back_from_every_page_of_the_set_and_of_the_template_at_both_sizes() {
    let plan = serde_json::from_str(include_str!("../examples/quarry-lane.json")).unwrap();
    let brief = resolve(&plan).unwrap();
    let design = design(&brief, &NoShelf);
    let sheet = Sheet {
        brief: &brief,
        design: &design,
        revision: Some(7),
        date: Some("1 March 2027"),
        view_link: Some(OPENS),
        check_link: Some(CHECKS),
        letterhead: None,
        built: &[],
    };
    for paper in [Paper::A4, Paper::Letter] {
        for (what, pdf, least) in [
            ("set", pdf::plan(&sheet, paper).unwrap(), 8),
            ("file", pdf::file(&sheet, paper).unwrap(), 30),
            ("template", pdf::template(&sheet, paper).unwrap(), 6),
        ] {
            let pages = of_each_page(&pdf, paper);
            assert!(
                pages.len() >= least,
                "{paper:?}, {what}: {} pages",
                pages.len()
            );
            for (i, found) in pages.iter().enumerate() {
                assert_eq!(found, &[OPENS, CHECKS], "{paper:?}, {what}, page {}", i + 1);
            }
        }
    }
}
