//! Words that do not belong in the project.

use crate::files;

#[test]
fn no_path_of_a_machine_stands_in_the_project() {
    let roots = [
        "ro".to_owned() + "ot",
        "wo".to_owned() + "rk",
        "ho".to_owned() + "me/",
        "tm".to_owned() + "p/",
    ];
    for folder in ["shared", "server", "templates", "static", "docs"] {
        for (path, text) in files(
            folder,
            &[".rs", ".html", ".css", ".js", ".md", ".toml", ".csv", ".py"],
        ) {
            for root in &roots {
                for quote in ["\"", " ", "`"] {
                    let needle = format!("{quote}/{root}");
                    assert!(!text.contains(&needle), "{path} has {needle}");
                }
            }
        }
    }
}

/// Words that people read: each thing has one name, and these are other names of it or phrases that a reader stumbles on.
const NOT_SAID: [&str; 20] = [
    "threaded rods",
    "foot joint",
    "joint at the foot",
    "Turn of the top",
    "slip of the pen",
    "taken cautiously",
    "middling",
    "Block and formwork",
    "What was taken",
    "Nobody said these",
    "reckons with",
    "link that edits",
    "link that only looks",
    "Links to share",
    "Nothing was kept yet",
    "Somebody saved before",
    "had to be taken",
    "battered",
    "The organiser’s door",
    "A star grows",
];

#[test]
fn what_people_read_calls_each_thing_by_its_one_name() {
    let mut said = Vec::new();
    for folder in [
        "templates",
        "server/src/forms",
        "server/src/views",
        "shared/src/record",
    ] {
        for (path, text) in files(folder, &[".rs", ".html"]) {
            for (number, line) in text.lines().enumerate() {
                let code = line.trim_start();
                if code.starts_with("//") {
                    continue;
                }
                let found = NOT_SAID.iter().filter(|words| code.contains(**words));
                said.extend(found.map(|words| format!("{path}:{}: {words}", number + 1)));
            }
        }
    }
    assert!(
        said.is_empty(),
        "docs/words.md has other words for these: {said:#?}"
    );
}
