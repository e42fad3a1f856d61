//! Rules are arithmetic with a source.

use crate::files;

/// Longest file of code, in lines; a longer one answers two questions.
const MOST_LINES: usize = 400;

/// Files without a `Source` of their own or of the module above, and why.
const WITHOUT_A_SOURCE: [(&str, &str); 3] = [
    (
        "blow_count_regression.rs",
        "the form that several papers share; each paper has its own file",
    ),
    (
        "meeus_1998.rs",
        "the day count; each chapter has its own file",
    ),
    (
        "image_motion/places.rs",
        "sums over a grid, which need no authority; the star's image is fit.rs",
    ),
];

/// With these a source begins that is no document.
const NO_DOCUMENT: [&str; 13] = [
    "Archimedes",
    "Balance of heat",
    "Common practice",
    "Counting",
    "Derived",
    "Elementary statistics",
    "Geometr",
    "Gregorian calendar",
    "Judgement",
    "Kern of a disc",
    "Mechanics",
    "Parallel axes",
    "Statics",
];

/// What a rule's documentation says of its source: the lines below the heading, to the next heading.
fn source_of(doc: &[&str]) -> Option<String> {
    let lines = doc
        .iter()
        .map(|line| line.trim_start_matches(['/', '!']).trim())
        .skip_while(|line| *line != "# Source")
        .skip(1)
        .take_while(|line| !line.starts_with('#') && !line.starts_with("```"));
    let said = lines.collect::<Vec<_>>().join(" ");
    (!said.trim().is_empty()).then(|| said.trim().to_owned())
}

/// Whether this names where a rule is from: a document that is a `Source` in the same module, a year or a clause's number,
/// another rule, or one of the few things that need no document.
fn names_a_source(said: &str, documents: &[String]) -> bool {
    let year = said
        .split(|letter: char| !letter.is_ascii_digit())
        .any(|number| number.len() == 4 && ("1600".."2100").contains(&number));
    let clause = said
        .split_whitespace()
        .any(|word| word.contains('.') && word.chars().filter(char::is_ascii_digit).count() >= 2);
    year || clause
        || documents.iter().any(|name| said.contains(name.as_str()))
        || said.contains("[`")
        || said.contains(".csv`")
        || NO_DOCUMENT.iter().any(|start| said.starts_with(start))
}

/// The documents of the `Source` values in a file.
fn documents(text: &str) -> Vec<String> {
    ["new", "read", "second_hand", "from_memory"]
        .iter()
        .flat_map(|made| {
            text.split(&format!("Source::{made}("))
                .skip(1)
                .collect::<Vec<_>>()
        })
        .filter_map(|rest| rest.split('"').nth(1))
        .map(str::to_owned)
        .collect()
}

#[test]
fn two_lines_of_words_are_no_source() {
    let said = |doc: &[&str]| source_of(doc).is_some_and(|said| names_a_source(&said, &[]));
    assert!(!said(&[
        "/// Some force.",
        "/// It is larger than another."
    ]));
    assert!(!said(&["/// Some force.", "/// # Source"]));
    assert!(!said(&[
        "/// Some force.",
        "/// # Source",
        "/// It is well known."
    ]));
    assert!(!said(&[
        "/// # Source",
        "/// # Valid for",
        "/// EN 1990:2002, 6.4."
    ]));
    assert!(said(&[
        "/// Some force.",
        "/// # Source",
        "/// EN 1990:2002, 6.4."
    ]));
}

/// A source is a value (`Source`), which travels to the page; beside each formula stands which clause it is.
#[test]
fn every_rule_names_its_source() {
    let (mut without, mut rules) = (Vec::new(), 0);
    let all = files("shared/src/rules", &[".rs"]);
    let is_typed = |text: &str| text.contains(": Source =") || text.contains("-> Source {");
    for (path, text) in &all {
        let short = path.trim_start_matches("shared/src/rules/");
        let product = text.split("#[cfg(test)]").next().unwrap_or_default();
        let lines: Vec<&str> = product.lines().collect();
        let of_module: Vec<&str> = lines
            .iter()
            .copied()
            .filter(|line| line.starts_with("//!"))
            .collect();
        let above = short
            .rsplit_once('/')
            .map(|(folder, _)| format!("shared/src/rules/{folder}.rs"));
        let above = all.iter().find(|(path, _)| Some(path) == above.as_ref());
        let near = format!("{product}{}", above.map_or("", |(_, text)| text));
        let documents = documents(&near);
        let mut has_rules = false;
        for (i, line) in lines.iter().enumerate() {
            let start = line.trim_start();
            if !(start.starts_with("pub fn ") || start.starts_with("pub const fn ")) {
                continue;
            }
            (has_rules, rules) = (true, rules + 1);
            let mut doc: Vec<&str> = lines[..i]
                .iter()
                .rev()
                .map(|line| line.trim())
                .take_while(|line| line.starts_with("///") || line.starts_with("#["))
                .filter(|line| line.starts_with("///"))
                .collect();
            doc.reverse();
            // A table, or a family of formulas out of one clause: the module names it.
            let said = source_of(&doc).or_else(|| source_of(&of_module));
            if !said.is_some_and(|said| names_a_source(&said, &documents)) {
                without.push(format!("{path}:{}: {line}", i + 1));
            }
        }
        let excused = WITHOUT_A_SOURCE.iter().any(|(name, _)| *name == short);
        if has_rules && is_typed(&near) == excused {
            without.push(format!("{path}: a Source, or a reason why it has none"));
        }
    }
    assert!(rules > 300, "{rules} rules");
    assert!(
        without.is_empty(),
        "without a source:\n{}",
        without.join("\n")
    );
}

#[test]
fn no_file_answers_two_questions() {
    let mut long = Vec::new();
    for folder in [
        "shared/src",
        "server/src",
        "tests",
        "templates",
        "static/style",
        "static/script",
    ] {
        for (path, text) in files(folder, &[".rs", ".html", ".css", ".js"]) {
            let lines = text.lines().count();
            if lines > MOST_LINES {
                long.push(format!("{path}: {lines}"));
            }
        }
    }
    assert!(
        long.is_empty(),
        "files past {MOST_LINES} lines:\n{}",
        long.join("\n")
    );
}

#[test]
fn nothing_is_left_for_later() {
    let marks = [
        concat!("TO", "DO"),
        concat!("FIX", "ME"),
        concat!("todo", "!("),
        concat!("unimplemented", "!("),
    ];
    for folder in ["shared/src", "server/src", "tests", "templates"] {
        for (path, text) in files(folder, &[".rs", ".html"]) {
            for mark in marks {
                assert!(!text.contains(mark), "{path} has {mark}");
            }
        }
    }
}

/// A quantity goes to a check, a calculation or a page as it is, with a unit's type that fits it (`figure::UnitOf`). Pairing a
/// bare number with a unit's value by hand is how metres were once shown as millimetres.
#[test]
fn no_quantity_is_unwrapped_beside_its_unit() {
    let mut by_hand = Vec::new();
    let mut looked_at = 0;
    for folder in ["shared/src", "server/src"] {
        for (path, text) in super::files(folder, &[".rs"]) {
            looked_at += 1;
            let one_line: String = text.split_whitespace().collect::<Vec<_>>().join(" ");
            for (at, _) in one_line.match_indices("::get(") {
                let rest = &one_line[at + "::get(".len()..];
                // In the middle of a sum the number is the stage's own arithmetic.
                let before = one_line[..at].trim_end_matches(|letter: char| {
                    letter.is_alphanumeric() || letter == '_' || letter == ':'
                });
                let whole = before.trim_end().ends_with(['(', ',']);
                if whole && after_the_call(rest).is_some_and(|after| after.starts_with(", Unit::"))
                {
                    by_hand.push(format!(
                        "{path}: {}",
                        rest.chars().take(60).collect::<String>()
                    ));
                }
            }
        }
    }
    assert!(looked_at > 300, "only {looked_at} files were looked at");
    assert!(by_hand.is_empty(), "{by_hand:#?}");
}

/// What stands behind the bracket that closes a call, a comma before it left out.
fn after_the_call(text: &str) -> Option<&str> {
    let mut open = 1;
    for (at, letter) in text.char_indices() {
        match letter {
            '(' => open += 1,
            ')' => open -= 1,
            _ => {}
        }
        if open == 0 {
            return text.get(at + 1..);
        }
    }
    None
}
