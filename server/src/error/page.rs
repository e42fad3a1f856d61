//! The page that a browser is shown when it goes wrong: what happened, and the next step.

use askama::Template;

use super::Trouble;

#[derive(Template)]
#[template(
    ext = "html",
    source = r#"<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{{ title }} · Stillground</title>
<link rel="stylesheet" href="{{ base }}/static/style/main.css">
<main>
<h1>{{ title }}</h1>
<p>{{ trouble.detail }}</p>
{% if !trouble.errors.is_empty() %}
<ul>
{% for error in trouble.errors %}<li><code>{{ error.path }}</code>: {{ error.detail }}</li>
{% endfor %}
</ul>
{% endif %}
<p><a href="{{ base }}/">Back to the first page</a></p>
</main>
</html>
"#
)]
struct ErrorPage<'a> {
    title: &'static str,
    base: &'a str,
    trouble: &'a Trouble,
}

/// The page as text.
pub(super) fn render(trouble: &Trouble, base: &str) -> String {
    let page = ErrorPage { title: title(trouble), base, trouble };
    page.render().unwrap_or_else(|_| "Something broke here.".to_owned())
}

fn title(trouble: &Trouble) -> &'static str {
    match trouble.status.as_u16() {
        404 => "Nothing opens here",
        403 => "Not with this link",
        412 => "Someone saved before you",
        413 => "That was too much at once",
        503 => "Not just now",
        status if status >= 500 => "Something broke here",
        _ => "This could not be taken",
    }
}
