//! Rules are arithmetic with a source.

use crate::files;

/// Longest file of code, in lines; a longer one answers two questions.
const MOST_LINES: usize = 400;

#[test]
fn every_rule_names_its_source() {
    let mut without = Vec::new();
    for (path, text) in files("shared/src/rules", &[".rs"]) {
        if text.lines().any(|line| line.starts_with("//! # Source")) {
            continue; // a table, or a family of formulas out of one clause: the module names it
        }
        let lines: Vec<&str> = text
            .lines()
            .take_while(|line| line.trim() != "#[cfg(test)]")
            .collect();
        for (i, line) in lines
            .iter()
            .enumerate()
            .filter(|(_, line)| line.starts_with("pub fn ") || line.starts_with("pub const fn "))
        {
            let doc: Vec<&str> = lines[..i]
                .iter()
                .rev()
                .map(|line| line.trim())
                .take_while(|line| line.starts_with("///") || line.starts_with("#["))
                .filter(|line| line.starts_with("///"))
                .collect();
            let named = doc.iter().any(|line| line.starts_with("/// # Source")) || doc.len() >= 2;
            if !named {
                without.push(format!("{path}:{}: {line}", i + 1));
            }
        }
    }
    assert!(
        without.is_empty(),
        "rules without a source in their documentation:\n{}",
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
