//! The pages' routes, read from the router itself, so that no test keeps a list of pages of its own: the attacks, the rules of
//! accessibility, and what a page may ask of its reader.

use stillground_server::drawing;
use stillground_server::forms::chapter::Chapter;
use stillground_server::forms::short::Part;
use stillground_server::forms::step::Step;
use stillground_server::views::pages::commissioning::ways::Way;

/// An address of the pages as the router has it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Route {
    /// With its names in braces.
    pub path: String,
    /// It is read.
    pub read: bool,
    /// A form is sent to it.
    pub sent: bool,
}

impl Route {
    /// Every address that it stands for, below one secret.
    #[must_use]
    pub fn addresses(&self, secret: &str) -> Vec<String> {
        let path = self.path.replace("{secret}", secret);
        let names: Vec<String> = match path.split_once('{').map(|(_, rest)| rest) {
            None => return vec![path],
            Some("step}") => Step::ALL.map(|step| step.slug().to_owned()).to_vec(),
            Some("chapter}") => Chapter::ALL.map(|it| it.slug().to_owned()).to_vec(),
            Some("way}") => Way::ALL.map(|way| way.slug().to_owned()).to_vec(),
            Some("part}") => Part::ALL.map(|part| part.slug().to_owned()).to_vec(),
            Some("file}") => drawing::NAMES
                .iter()
                .map(|name| format!("{name}.svg"))
                .collect(),
            // Which photograph and which sheet there are is not known here.
            Some(_) => vec!["x".to_owned()],
        };
        let (before, _) = path.split_once('{').unwrap_or((&path, ""));
        names.iter().map(|name| format!("{before}{name}")).collect()
    }
}

/// Every route of the pages.
///
/// # Panics
/// When a line of the router is not understood.
#[must_use]
pub fn pages() -> Vec<Route> {
    let file = crate::workspace().join("server/src/handlers/pages.rs");
    let text = std::fs::read_to_string(file).expect("the pages' routes");
    let routes: Vec<Route> = text
        .split(".route(")
        .skip(1)
        .map(|route| Route {
            path: route.split('"').nth(1).expect("a path").to_owned(),
            // `sheets` makes a route that is read.
            read: route.contains("get(") || route.contains("plan::sheets("),
            sent: route.contains("post("),
        })
        .collect();
    assert!(
        routes.len() > 40 && routes.iter().all(|route| route.read || route.sent),
        "{routes:?}"
    );
    routes
}

/// Every address below a plan's link that can be read.
#[must_use]
pub fn of_a_plan(secret: &str) -> Vec<String> {
    pages()
        .iter()
        .filter(|route| route.read && route.path.starts_with("/p/{secret}"))
        .flat_map(|route| route.addresses(secret))
        .collect()
}

/// What somebody sees who reads an address.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shown {
    /// A page: the rules of accessibility are held on it, and how much it may ask of its reader stands in this test of
    /// the browser's suite.
    Within(&'static str),
    /// A page that has no bound of its own, and why.
    AsLongAsItTakes(&'static str),
    /// A page that this other test of the browser's suite opens and holds, since it takes more than an address.
    Elsewhere(&'static str),
    /// A page that the browser's suite cannot open, and why.
    NotOpened(&'static str),
    /// No page, but this.
    NoPage(&'static str),
}

/// What each address that can be read shows. A new one belongs here; a house test says so.
pub const SHOWN: [(&str, Shown); 45] = {
    use Shown::{AsLongAsItTakes, Elsewhere, NoPage, NotOpened, Within};
    const SHEET: Shown = NoPage("a sheet for paper");
    const LIST: Shown = NoPage("a table for another program");
    const DRAWING: Shown = NoPage("a drawing");
    const STEP: Shown = Within("a_step_is_four_screens_of_a_telephone");
    const CHAPTER: Shown = Within("a_chapter_is_eight_screens_of_a_telephone");
    const ANSWERS: Shown = Within("all_answers_stand_on_one_page_of_eight_screens");
    const MEASURE: Shown = Within("a_way_to_measure_is_four_screens_of_a_telephone");
    const FORM: Shown = AsLongAsItTakes("a form as long as what it asks");
    const LISTED: Shown = AsLongAsItTakes("a list as long as what was kept");
    [
        (
            "/",
            Within("the_front_page_and_the_short_way_keep_to_their_budgets"),
        ),
        ("/recover", FORM),
        (
            "/organiser",
            Elsewhere("the_organisers_pages_are_walked_without_a_finding"),
        ),
        ("/example", NoPage("leads to the example's first step")),
        ("/example/{step}", STEP),
        ("/example/plan/{chapter}", CHAPTER),
        ("/example/answers", ANSWERS),
        ("/example/ways", LISTED),
        ("/example/drawings/{file}", DRAWING),
        (
            "/example/card",
            AsLongAsItTakes("a card to print and hang up"),
        ),
        ("/example/materials", LISTED),
        ("/example/plan.pdf", SHEET),
        ("/example/file.pdf", SHEET),
        ("/example/template.pdf", SHEET),
        ("/example/template.dxf", SHEET),
        ("/example/materials.csv", LIST),
        ("/example/schedule.ics", LIST),
        ("/versions", LISTED),
        (
            "/s/{token}",
            AsLongAsItTakes("some sentences about one sheet"),
        ),
        ("/p/{secret}", NoPage("leads to the plan")),
        ("/p/{secret}/{step}", STEP),
        ("/p/{secret}/answers", ANSWERS),
        ("/p/{secret}/links", FORM),
        (
            "/p/{secret}/climate",
            NotOpened("is there only where the host named a climate service"),
        ),
        ("/example/measure/{way}", MEASURE),
        ("/p/{secret}/measure/{way}", MEASURE),
        ("/example/commissioning", FORM),
        ("/p/{secret}/commissioning", FORM),
        ("/p/{secret}/revisions", LISTED),
        (
            "/p/{secret}/record",
            Within("today_is_two_screens_of_a_telephone_and_a_task_three"),
        ),
        ("/p/{secret}/found", LISTED),
        ("/p/{secret}/photos/{photo}", NoPage("a photograph")),
        (
            "/p/{secret}/card",
            AsLongAsItTakes("a card to print and hang up"),
        ),
        ("/p/{secret}/materials", LISTED),
        (
            "/p/{secret}/short/{part}",
            Within("the_front_page_and_the_short_way_keep_to_their_budgets"),
        ),
        ("/p/{secret}/ways", LISTED),
        ("/p/{secret}/plan/{chapter}", CHAPTER),
        ("/p/{secret}/drawings/{file}", DRAWING),
        ("/p/{secret}/prices", LISTED),
        ("/p/{secret}/materials.csv", LIST),
        ("/p/{secret}/schedule.ics", LIST),
        ("/p/{secret}/plan.pdf", SHEET),
        ("/p/{secret}/file.pdf", SHEET),
        ("/p/{secret}/template.pdf", SHEET),
        ("/p/{secret}/template.dxf", SHEET),
    ]
};

/// Every address, below one secret, that shows a page which is looked at by its address alone.
#[must_use]
pub fn to_walk(secret: &str) -> Vec<String> {
    let routes = pages();
    let route = |path: &str| routes.iter().find(|route| route.path == path);
    SHOWN
        .iter()
        .filter(|(_, shown)| matches!(shown, Shown::Within(_) | Shown::AsLongAsItTakes(_)))
        .filter_map(|(path, _)| route(path))
        .flat_map(|route| route.addresses(secret))
        .collect()
}
