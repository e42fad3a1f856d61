//! The set: which sheets there are, in which order.

mod build;
mod calculations;
mod cover;
mod day;
mod engineer;
mod figures;
pub(in crate::views::pdf) mod north;
mod order;
mod paperwork;
mod proof;
mod record;
mod steps;
mod stillness;

use stillground::notes::{Check, Stage, Verdict};

use crate::drawing::by_name;
use crate::views::pdf::flow::Flow;
use crate::views::pdf::frame::capital;
use crate::views::pdf::{Paper, Sheet};
use crate::views::words::{answer, sentence};

/// One sheet of the set: its name and what is put on it.
type Put = fn(&mut Flow, &Sheet<'_>);

/// The sheets in order, first those that are carried to the site; the cover comes before them.
const SITE: &[(&str, Put)] = &[
    ("Site and pit", build::site),
    ("True north", north::north),
    ("Block and shuttering", build::block),
    ("Pier and plate", build::pier),
    ("Studs and holes", build::studs),
    ("Observing floor", stillness::floor),
    ("Materials", paperwork::materials),
    ("Schedule", paperwork::schedule),
    ("Cautions", paperwork::cautions),
    ("Record of the work", record::record),
    ("Wall card", record::card),
];

/// The sheets that are read at a table.
const TABLE: &[(&str, Put)] = &[
    ("What the star does", stillness::motion),
    ("Checks", paperwork::checks),
    ("Assumptions", paperwork::assumptions),
    ("The studs, for the checking engineer", engineer::studs),
    ("Calculations", calculations::calculations),
];

/// The sheets of a pier that stands already: nothing of it is dug, ordered or set up.
const STANDING: &[(&str, Put)] = &[("Proof", proof::proof), ("Wall card", record::card)];

/// Whether the pier stands already, whoever built it.
fn stands(sheet: &Sheet<'_>) -> bool {
    sheet.design.schedule.is_empty()
}

/// A sheet whose last page is filled less than this is drawn together, to spare the page.
const NEARLY_EMPTY_RATIO: f64 = 0.3;
/// How closely, at most.
const CLOSER: [f64; 3] = [0.75, 0.55, 0.35];
/// A sheet of at most so many pages is drawn together a little wherever that spares one of them.
const FEW_PAGES: usize = 6;

/// Lays out all that can be checked.
#[must_use]
pub fn file(sheet: &Sheet<'_>, paper: Paper) -> Flow {
    let mut flow = Flow::new(paper);
    flow.blank("Cover", true);
    let mut index = Vec::new();
    let first = if stands(sheet) { STANDING } else { SITE };
    let proof: &[(&str, Put)] = if proof::is_there(sheet) && !stands(sheet) {
        &[("Proof", proof::proof)]
    } else {
        &[]
    };
    for (name, put) in first.iter().chain(proof).chain(TABLE) {
        index.push(((*name).to_owned(), flow.pages.len() + 1));
        one(&mut flow, sheet, name, *put, &CLOSER[..1]);
    }
    let index = if stands(sheet) {
        cover::Index::one(index)
    } else {
        cover::Index::two(index, SITE.len())
    };
    with_cover(flow, sheet, paper, &index)
}

/// Lays out what is carried to the site: what is ordered, one side a day, the cautions, the card for the wall.
#[must_use]
pub fn site_set(sheet: &Sheet<'_>, paper: Paper) -> Flow {
    let mut flow = Flow::new(paper);
    flow.blank("Cover", true);
    let mut index = Vec::new();
    if !stands(sheet) {
        index.push(("Order".to_owned(), flow.pages.len() + 1));
        order::order(&mut flow, sheet, "Order");
        for day in &day::DAYS {
            index.push((day.name.to_owned(), flow.pages.len() + 1));
            day::day(&mut flow, sheet, day);
        }
    }
    let last = if stands(sheet) { STANDING } else { LAST };
    for (name, put) in last {
        index.push(((*name).to_owned(), flow.pages.len() + 1));
        // What is carried is kept short.
        one(&mut flow, sheet, name, *put, &CLOSER);
    }
    with_cover(flow, sheet, paper, &cover::Index::one(index))
}

/// The sheets after the days.
const LAST: &[(&str, Put)] = &[
    ("Cautions", day::cautions_in_full),
    ("Wall card", record::card),
];

/// The cover is laid out last, since it has the index; it takes one page wherever it fits on one.
fn with_cover(mut flow: Flow, sheet: &Sheet<'_>, paper: Paper, index: &cover::Index) -> Flow {
    let cover = |factor: f64, more: usize, picture_mm: f64| {
        let mut cover = Flow::new(paper);
        cover.spacing_factor = factor;
        cover::cover(&mut cover, sheet, index, more, picture_mm);
        cover.pages
    };
    let one = PICTURES_MM
        .into_iter()
        .flat_map(|height| {
            [1.0]
                .into_iter()
                .chain(CLOSER)
                .map(move |factor| (factor, height))
        })
        .map(|(factor, height)| cover(factor, 0, height))
        .find(|pages| pages.len() == 1);
    let pages = one.unwrap_or_else(|| cover(1.0, cover(1.0, 0, 0.0).len() - 1, 0.0));
    flow.pages.splice(0..1, pages);
    flow
}

/// Heights of the picture on the cover, the largest that leaves the cover on one page; without any where none does.
const PICTURES_MM: [f64; 6] = [105.0, 90.0, 75.0, 60.0, 48.0, 0.0];

/// Puts one sheet, drawn together where a page would else be nearly empty.
fn one(flow: &mut Flow, sheet: &Sheet<'_>, name: &str, put: Put, closer: &[f64]) {
    let before = flow.pages.len();
    let again = |flow: &mut Flow, factor: f64| {
        flow.back_to(before);
        flow.spacing_factor = factor;
        flow.sheet(name);
        put(flow, sheet);
        flow.spacing_factor = 1.0;
        flow.pages.len()
    };
    let plain = again(flow, 1.0);
    let (pages, nearly_empty) = (plain - before, flow.taken_ratio() <= NEARLY_EMPTY_RATIO);
    let tried = match (pages, nearly_empty) {
        (0 | 1, _) => return,
        (_, true) => &CLOSER[..],
        (few, false) if few <= FEW_PAGES => closer,
        _ => return,
    };
    if !tried.iter().any(|&factor| again(flow, factor) < plain) {
        again(flow, 1.0);
    }
}

/// Puts a drawing on the sheet, when the design has it.
fn draw(flow: &mut Flow, sheet: &Sheet<'_>, name: &str) {
    if let Some(drawing) = by_name(name, sheet.brief, sheet.design) {
        flow.drawing(drawing);
    }
}

/// What a stage's checks say: those that say yes are counted, the others stand in full.
fn check_lines(flow: &mut Flow, sheet: &Sheet<'_>, stage: Stage) {
    let checks: Vec<&Check> = sheet
        .design
        .checks
        .iter()
        .filter(|check| check.stage() == stage)
        .collect();
    let others: Vec<&Check> = checks
        .iter()
        .copied()
        .filter(|check| check.verdict != Verdict::Holds)
        .collect();
    if checks.is_empty() {
        return;
    }
    let held = checks.len() - others.len();
    flow.heading("Checks");
    flow.paragraph(&match (held, others.len()) {
        (2, 0) => "Both checks of this part say yes. The sheet “Checks” has them with their figures and sources.".to_owned(),
        (1, 0) => "The one check of this part says yes. The sheet “Checks” has it with its figures and its source.".to_owned(),
        (held, 0) => format!("All {held} checks of this part say yes. The sheet “Checks” has them with their figures and sources."),
        (held, _) => format!(
            "Of {} checks of this part {held} say yes with room to spare; these do not. The sheet “Checks” has all with their figures \
             and sources.",
            checks.len()
        ),
    });
    for (title, note) in by_note(others) {
        flow.paragraph(&format!("{title} {note}"));
    }
}

/// Checks with their notes: neighbours that say the same thing and end the same way stand together.
fn by_note<'a>(checks: impl IntoIterator<Item = &'a Check>) -> Vec<(String, &'a str)> {
    let mut groups: Vec<Vec<&Check>> = Vec::new();
    for check in checks {
        match groups
            .last_mut()
            .filter(|group| group[0].note == check.note && group[0].verdict == check.verdict)
        {
            Some(group) => group.push(check),
            None => groups.push(vec![check]),
        }
    }
    let title = |group: &[&Check]| {
        let titles: Vec<&str> = group.iter().map(|check| check.title.as_str()).collect();
        let answer = answer(group[0].verdict);
        sentence(&format!("{} {}", titles.join(" "), capital(answer)))
    };
    groups
        .iter()
        .map(|group| (title(group), group[0].note.as_str()))
        .collect()
}

/// The cautions of one part of the work, where it is done.
fn cautions_of(flow: &mut Flow, sheet: &Sheet<'_>, parts: &[stillground::notes::When]) {
    let texts: Vec<&str> = sheet
        .design
        .cautions
        .iter()
        .filter(|caution| parts.contains(&caution.when))
        .map(|caution| caution.text.as_str())
        .collect();
    if texts.is_empty() {
        return;
    }
    flow.heading("Before you begin here");
    texts.into_iter().for_each(|text| flow.paragraph(text));
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test fails by panicking")]
mod tests {
    use super::*;
    use crate::views::pdf::flow::LEAST_LETTERING;
    use crate::views::pdf::page::{Mark, Page, Role};
    use stillground::brief::{Brief, resolve};
    use stillground::design::{Design, design};
    use stillground::halfspace::NoShelf;
    use stillground::site_plan::{SitePlan, prices};

    fn bare<'a>(brief: &'a Brief, design: &'a Design) -> Sheet<'a> {
        Sheet {
            brief,
            design,
            revision: None,
            date: None,
            view_link: None,
            check_link: None,
            letterhead: None,
            built: &[],
        }
    }

    /// The plan with a price for every line of its order.
    fn priced(mut plan: SitePlan) -> SitePlan {
        let brief = resolve(&plan).unwrap();
        let lines = design(&brief, &NoShelf).materials;
        assert!(lines.len() > 20, "{}", lines.len());
        let price = |line: &stillground::stages::materials::Material| {
            let price = prices::Price {
                price: 1234.5,
                per: prices::per(line.unit, brief.units).to_owned(),
                item: None,
            };
            (line.id.to_owned(), price)
        };
        plan.prices.currency = Some("pounds".to_owned());
        plan.prices.lines = Some(lines.iter().map(price).collect());
        plan
    }

    fn examples() -> Vec<(String, SitePlan)> {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../tests/examples");
        let read = |entry: std::io::Result<std::fs::DirEntry>| {
            let path = entry.unwrap().path();
            let text = std::fs::read_to_string(&path).unwrap();
            (
                path.display().to_string(),
                serde_json::from_str(&text).unwrap(),
            )
        };
        let plans: Vec<(String, SitePlan)> = std::fs::read_dir(folder).unwrap().map(read).collect();
        assert_eq!(plans.len(), 6);
        plans
    }

    #[test]
    fn the_site_set_has_ten_sides_at_most_and_each_day_has_one() {
        let mut wrong = Vec::new();
        // With prices there is more on the order than without; the days are the same.
        for (name, plan) in examples() {
            let brief = resolve(&priced(plan)).unwrap();
            let design = design(&brief, &NoShelf);
            let sheet = bare(&brief, &design);
            for paper in [Paper::A4, Paper::Letter] {
                let pages = site_set(&sheet, paper).pages;
                let sides = |name: &str| pages.iter().filter(|page| page.sheet == name).count();
                let days = day::DAYS.map(|day| day.name);
                let once = days.into_iter().chain(["Order"]);
                if pages.len() > 10 || once.clone().any(|side| sides(side) != 1) {
                    let names: Vec<&str> = pages.iter().map(|page| page.sheet.as_str()).collect();
                    wrong.push(format!("{name}, {paper:?}: {names:?}"));
                }
                wrong.extend(illegible(&pages, &format!("{name}, {paper:?}")));
            }
        }
        assert!(wrong.is_empty(), "{wrong:#?}");
    }

    /// Drawings whose lettering is below six points.
    fn illegible(pages: &[Page], name: &str) -> Vec<String> {
        let (mut wrong, mut drawings) = (Vec::new(), 0);
        for page in pages {
            for mark in page.pieces.iter().flat_map(|piece| &piece.marks) {
                if let Mark::Drawing {
                    factor, drawing, ..
                } = mark
                {
                    let size = drawing.least_lettering_mm() * factor;
                    if size < LEAST_LETTERING {
                        let (of, on) = (drawing.name, &page.sheet);
                        wrong.push(format!("{name}, {of}: {size:.2} mm on {on}"));
                    }
                    drawings += 1;
                }
            }
        }
        assert!(drawings >= 4, "{name}: {drawings}");
        wrong
    }

    #[test]
    fn no_heading_stands_alone_and_no_drawing_leaves_its_title_behind() {
        for (count, plate) in [(4, 400.0), (12, 900.0)] {
            let mut plan = SitePlan::unknown();
            (plan.anchors.count, plan.pier.plate_side_mm) = (Some(count), Some(plate));
            let brief = resolve(&plan).unwrap();
            let design = design(&brief, &NoShelf);
            let sheet = bare(&brief, &design);
            for paper in [Paper::A4, Paper::Letter] {
                for (i, page) in file(&sheet, paper).pages.iter().enumerate() {
                    let last = page
                        .pieces
                        .iter()
                        .rfind(|piece| piece.role != Role::Ornament)
                        .map(|piece| &piece.role);
                    assert!(
                        !matches!(last, None | Some(Role::Title | Role::Heading)),
                        "{paper:?}, page {} of {}: ends with {last:?}",
                        i + 1,
                        page.sheet
                    );
                }
            }
        }
    }
}
