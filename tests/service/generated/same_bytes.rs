//! One line for each kind of output, so that two builds can show that nothing changed:
//! `cargo run -p stillground-tests --example same_bytes -- [PLANS] [FOLDER] [NUMBER …]`, and with a whole `--workspace` build
//! where the sheets, drawings and pages of the examples are wanted too (feature `service`).
//!
//! The made-up plans are those of `generated_plans`: a hundred on one ground. A folder gets the outputs of the example
//! plans, the hashes of each made-up plan, and the outputs of the made-up plans whose numbers are given; two such folders
//! are compared with `diff -rq`.

#![allow(clippy::expect_used, reason = "a run that cannot go on says why")]

#[cfg(feature = "service")]
mod served;

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;

use sha2::{Digest, Sha256};
use stillground::brief::resolve;
use stillground::decided::design_plan;
use stillground::design::{Design, design};
use stillground::field::Problem;
use stillground::halfspace::SmallShelf;
use stillground_tests::example;
use stillground_tests::generated::{plan, plan_on};

/// The example plans of `tests/examples`.
const EXAMPLES: [&str; 6] = [
    "club-on-shallow-rock",
    "everything-unknown",
    "firm-clay-garden",
    "inch-garden",
    "quarry-lane",
    "sandy-water",
];
/// Plans that share a ground, a pit and a block.
const ON_ONE_GROUND: u64 = 100;
/// Shapes of blocks that are kept while a ground's plans are designed.
const KEPT_SHAPES: usize = 16;

/// Outputs by their names; a name's first part is the kind that is hashed together.
pub type Outputs = BTreeMap<String, Vec<u8>>;

fn main() {
    let given: Vec<String> = std::env::args().skip(1).collect();
    let plans = given.first().and_then(|n| n.parse().ok()).unwrap_or(2000);
    let folder = given.get(1).map(PathBuf::from);
    let shown: Vec<u64> = given
        .iter()
        .skip(2)
        .filter_map(|n| n.parse().ok())
        .collect();

    let mut outputs = examples();
    let made_up = made_up(plans, &shown);
    let mut lines = String::new();
    for made in &made_up {
        let _ = writeln!(lines, "{}", made.line());
    }
    println!(
        "{} made-up plans; answers of {} contradicted each other and some were taken back; {} refused as drawn; still refused after that: {:?}",
        made_up.len(),
        made_up.iter().filter(|made| made.agreed).count(),
        made_up.iter().filter(|made| made.refused_as_drawn).count(),
        made_up
            .iter()
            .filter(|made| made.refused)
            .map(|made| made.number)
            .collect::<Vec<_>>()
    );
    for made in made_up {
        outputs.extend(made.shown);
    }
    outputs.insert("made-up/each plan.txt".to_owned(), lines.into_bytes());
    print_hashes(&outputs);
    if let Some(folder) = folder {
        write(&folder, &outputs);
    }
}

/// What the engine says of the examples, and what the service makes of them.
fn examples() -> Outputs {
    let mut outputs = Outputs::new();
    for name in EXAMPLES {
        let plan = example(name);
        let shelf = SmallShelf::holding(KEPT_SHAPES);
        let design = design_plan(&plan, &shelf).expect("an example can be planned with");
        outputs.insert(format!("design/{name}.json"), json(&design));
        outputs.insert(
            format!("assumptions/{name}.json"),
            json(&design.assumptions),
        );
        #[cfg(feature = "service")]
        served::prints(name, &plan, &shelf, &mut outputs);
    }
    #[cfg(feature = "service")]
    served::pages(&EXAMPLES, &mut outputs);
    outputs
}

/// What came of a made-up plan.
struct Made {
    number: u64,
    agreed: bool,
    refused_as_drawn: bool,
    refused: bool,
    /// Hashes: the plan, what was said of contradictions, design, assumptions.
    hashes: [String; 4],
    shown: Outputs,
}

impl Made {
    fn line(&self) -> String {
        let refused = if self.refused { " refused" } else { "" };
        let [plan, problems, design, assumptions] = &self.hashes;
        format!(
            "{:06}{refused} plan {plan} problems {problems} design {design} assumptions {assumptions}",
            self.number
        )
    }
}

/// Made-up plans in the order of their numbers, whichever thread had them.
fn made_up(plans: u64, shown: &[u64]) -> Vec<Made> {
    let next = AtomicU64::new(0);
    let threads = thread::available_parallelism().map_or(1, usize::from);
    let grounds = plans.div_ceil(ON_ONE_GROUND);
    let work = || {
        let mut made = Vec::new();
        loop {
            let ground = next.fetch_add(1, Ordering::Relaxed);
            if ground >= grounds {
                return made;
            }
            made.extend(on_one_ground(ground, shown));
        }
    };
    let mut all: Vec<Made> = thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
        workers
            .into_iter()
            .flat_map(|worker| worker.join().expect("a plan that does not panic"))
            .collect()
    });
    all.sort_by_key(|made| made.number);
    all.truncate(usize::try_from(plans).expect("a count"));
    all
}

fn on_one_ground(ground: u64, shown: &[u64]) -> Vec<Made> {
    let shelf = SmallShelf::holding(KEPT_SHAPES);
    let mut sides_m = None;
    (ground * ON_ONE_GROUND..(ground + 1) * ON_ONE_GROUND)
        .map(|number| {
            let (plan, mut said) = plan_on(ground, sides_m, number);
            let agreed = !said.is_empty();
            let drawn = self::drawn(number);
            let refused_as_drawn = !drawn.is_empty();
            said.extend(drawn);
            let found = resolve(&plan).map(|brief| design(&brief, &shelf));
            let refused = found.is_err();
            let outputs = match &found {
                Ok(design) => {
                    sides_m.get_or_insert_with(|| sides(design));
                    [json(design), json(&design.assumptions)]
                }
                Err(problems) => [json(problems), Vec::new()],
            };
            let [design, assumptions] = outputs;
            let (plan, problems) = (json(&plan), json(&said));
            let hashes = [&plan, &problems, &design, &assumptions].map(|bytes| hash(bytes));
            let mut kept = Outputs::new();
            if shown.contains(&number) {
                for (kind, bytes) in [
                    ("plan", plan),
                    ("problems", problems),
                    ("design", design),
                    ("assumptions", assumptions),
                ] {
                    kept.insert(format!("made-up/{number:06} {kind}.json"), bytes);
                }
            }
            Made {
                number,
                agreed,
                refused_as_drawn,
                refused,
                hashes,
                shown: kept,
            }
        })
        .collect()
}

/// What is said of a plan of this number in which nothing was taken back.
fn drawn(number: u64) -> Vec<Problem> {
    plan(number)
        .validate()
        .err()
        .map(|problems| problems.0)
        .unwrap_or_default()
}

fn sides(found: &Design) -> [f64; 3] {
    [found.block.length, found.block.width, found.block.depth].map(stillground::units::metre::get)
}

/// A document, a value a line, so that two are compared by line.
fn json(document: &impl serde::Serialize) -> Vec<u8> {
    serde_json::to_vec_pretty(document).expect("a document")
}

fn hash(bytes: &[u8]) -> String {
    hex(&Sha256::digest(bytes))
}

fn hex(digest: &[u8]) -> String {
    digest.iter().fold(String::new(), |mut text, byte| {
        let _ = write!(text, "{byte:02x}");
        text
    })
}

/// A line for each kind: its hash over the names and bytes of all its outputs.
fn print_hashes(outputs: &Outputs) {
    let mut kinds: BTreeMap<&str, (usize, Sha256)> = BTreeMap::new();
    for (name, bytes) in outputs {
        let kind = name.split('/').next().unwrap_or(name);
        let (count, hasher) = kinds.entry(kind).or_default();
        *count += 1;
        hasher.update(name.as_bytes());
        hasher.update(hash(bytes).as_bytes());
    }
    for (kind, (count, hasher)) in kinds {
        println!("{} {kind} ({count})", hex(&hasher.finalize()));
    }
}

fn write(folder: &Path, outputs: &Outputs) {
    for (name, bytes) in outputs {
        let file = folder.join(name);
        std::fs::create_dir_all(file.parent().expect("a folder")).expect("a folder to write in");
        std::fs::write(file, bytes).expect("a file written");
    }
}
