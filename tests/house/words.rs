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
