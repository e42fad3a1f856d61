//! The page that a browser is shown when it goes wrong: what happened, and the next step.

use askama::Template;

use super::Trouble;
use crate::config::Config;
use crate::views::pages::frame::Frame;

#[derive(Template)]
#[template(path = "pages/error.html")]
struct ErrorPage<'a> {
    frame: Frame,
    title: &'static str,
    detail: &'a str,
    errors: Vec<(&'a str, &'a str)>,
    next: &'static str,
    /// What was typed, to be sent again.
    again: &'a [(String, String)],
}

/// The page as text.
pub(super) fn render(trouble: &Trouble, config: &Config, again: &[(String, String)]) -> String {
    let title = title(trouble);
    let errors = trouble
        .errors
        .iter()
        .map(|error| (error.path.as_str(), error.detail.as_str()))
        .collect();
    let frame = Frame::new(config, title.to_owned(), None);
    let page = ErrorPage {
        frame,
        title,
        detail: &trouble.detail,
        errors,
        next: next(trouble, !again.is_empty()),
        again,
    };
    page.render()
        .unwrap_or_else(|_| "Something broke here.".to_owned())
}

/// What the person can do now; whether the page holds what they typed.
fn next(trouble: &Trouble, held: bool) -> &'static str {
    match trouble.code {
        "not_invited" | "organiser_only" | "shelf_full" => {
            return "The example and every plan whose link you have stay open to you.";
        }
        "store_unsure" if held => {
            return "Read the plan in another window first. If what you typed is not in it, send it again from here: it is held on this page.";
        }
        "store_unsure" => return "Read the plan again, and save once more what is not in it.",
        "quota" if held => {
            return "What stands in the plan stays as it was saved last. What you typed is held on this page: send it again when there is room.";
        }
        "quota" => return "What stands in the plan stays as it was saved last.",
        "foreign_host" | "one_host" => return "Nothing was read and nothing was changed.",
        _ => {}
    }
    match trouble.status.as_u16() {
        _ if held => {
            "What you typed is held on this page. Wait a moment, and send it again from here."
        }
        404 => {
            "Plans begun in this browser stand on the front page, if their links are still alive."
        }
        403 => {
            "Ask whoever sent you the link for one that does more, or read the plan with this one."
        }
        409 | 412 => "Go back, read the plan as it stands now, and save your answers on top of it.",
        413 => "Send less at once; a plan is a few thousand letters.",
        429 => {
            "Everybody at your address is counted as one. Wait a little, go back, and try again."
        }
        status if status >= 500 => {
            "Wait a moment, go back and try again. What you typed is still in your browser’s last page."
        }
        _ => "Go back: what you typed is still there.",
    }
}

fn title(trouble: &Trouble) -> &'static str {
    match trouble.code {
        "not_invited" => return "With an invitation only",
        "organiser_only" => return "For the organiser only",
        "shelf_full" => return "No room for more plans",
        "quota" => return "This plan is full",
        "foreign_host" => return "Not under this name",
        _ => {}
    }
    match trouble.status.as_u16() {
        404 => "Nothing opens here",
        403 => "Not with this link",
        412 => "Someone saved before you",
        413 => "That was too much at once",
        429 => "Too often",
        503 => "Not just now",
        status if status >= 500 => "Something broke here",
        _ => "This could not be taken",
    }
}
