//! Templates: all used, none with inline style or script.

use crate::files;

#[test]
fn every_template_is_used() {
    let templates = files("templates", &[".html", ".txt", ".svg"]);
    let code = files("server/src", &[".rs"]);
    assert!(templates.len() > 30, "{}", templates.len());
    for (path, _) in &templates {
        let name = path.trim_start_matches("templates/");
        let quoted = format!("\"{name}\"");
        let used = code
            .iter()
            .chain(&templates)
            .any(|(_, text)| text.contains(&quoted));
        assert!(used, "{path} is used by no page and no other template");
    }
}

#[test]
fn no_template_has_inline_style_or_script() {
    let templates = files("templates", &[".html"]);
    assert!(templates.len() > 30, "{}", templates.len());
    for (path, text) in templates {
        for (number, line) in text.lines().enumerate() {
            let line = line.to_lowercase();
            let inline = line.contains(" style=")
                || line.contains(" onclick=")
                || line.contains("javascript:");
            let script = line.contains("<script")
                && !line.contains("src=")
                && !line.contains("type=\"application/json\"");
            assert!(
                !inline && !script,
                "{path}:{}: the content security policy refuses this: {line}",
                number + 1
            );
        }
    }
}
