//! The organiser's pages: the door, the shelf, and what is shown once.

use askama::Template;
use jiff::Timestamp;

use super::frame::Frame;
use crate::config::{Config, Creators};
use crate::store::access::Invitation;
use crate::store::organiser::{KEPT_AFTER_REMOVAL, ON_A_PAGE, Shelved};
use crate::views::words;

/// The door.
#[derive(Template)]
#[template(path = "pages/organiser-door.html")]
pub struct DoorPage {
    /// The frame.
    pub frame: Frame,
    /// Whether anybody goes in with a password.
    pub password: bool,
    /// Whether a wrong password was sent.
    pub wrong: bool,
}

/// Something that is shown once.
#[derive(Template)]
#[template(path = "pages/once.html")]
pub struct OncePage {
    /// The frame.
    pub frame: Frame,
    /// Heading.
    pub title: &'static str,
    /// What it is for.
    pub said: &'static str,
    /// What the box holds.
    pub label: &'static str,
    /// It.
    pub value: String,
}

/// The shelf.
#[derive(Template)]
#[template(path = "pages/organiser.html")]
pub struct ShelfPage {
    /// The frame.
    pub frame: Frame,
    /// What was searched for.
    pub sought: String,
    /// Whether removed plans are shown.
    pub removed: bool,
    /// The plans.
    pub plans: Vec<ShelvedView>,
    /// Address of the next page.
    pub more: Option<String>,
    /// How many plans there are, in words.
    pub count: String,
    /// Who may begin a plan, in words.
    pub creators: &'static str,
    /// Whether codes are used here.
    pub invites: bool,
    /// Invitations that are alive.
    pub invitations: Vec<InvitationView>,
}

/// A plan on the shelf.
#[derive(Debug, Clone)]
pub struct ShelvedView {
    /// Its name in the store.
    pub id: String,
    /// Its title.
    pub title: String,
    /// Its revision.
    pub revision: u32,
    /// When it was saved last.
    pub saved: String,
    /// What it takes, in words.
    pub size: String,
    /// When it was opened last, in words.
    pub opened: String,
    /// Whether it is open, and until when.
    pub state: String,
    /// Whether its links open it now.
    pub open: bool,
    /// Whether it is closed, or will be on a day.
    pub closing: bool,
}

/// An invitation.
#[derive(Debug, Clone)]
pub struct InvitationView {
    /// Its name in the store.
    pub id: String,
    /// For whom it is.
    pub said: String,
    /// What is left of it, in words.
    pub left: String,
}

impl ShelfPage {
    /// A page of the shelf.
    #[must_use]
    pub fn of(
        frame: Frame,
        config: &Config,
        sought: &str,
        removed: bool,
        mut found: Vec<Shelved>,
    ) -> Self {
        let beyond = found.len() > ON_A_PAGE;
        found.truncate(ON_A_PAGE);
        let last = found
            .last()
            .filter(|_| beyond)
            .map(|plan| plan.created_at.as_microsecond());
        let more = last.map(|last| {
            let removed = if removed { "&removed=yes" } else { "" };
            format!(
                "{}?title={}&before={last}{removed}",
                config.link("/organiser"),
                escaped(sought)
            )
        });
        Self {
            frame,
            sought: sought.to_owned(),
            removed,
            plans: found.iter().map(ShelvedView::of).collect(),
            more,
            count: String::new(),
            creators: creators(config.access.creators),
            invites: config.access.creators == Creators::Invited,
            invitations: Vec::new(),
        }
    }

    /// With the count of all plans, the most that are kept, and the invitations.
    #[must_use]
    pub fn with(self, count: u64, most: Option<u32>, invitations: Vec<Invitation>) -> Self {
        let count = if count == 1 {
            "One plan is kept here".to_owned()
        } else {
            format!("{count} plans are kept here")
        };
        let count = match most {
            Some(most) => format!(
                "{count}, of {most} at most; a removed plan counts until it is gone for good."
            ),
            None => format!("{count}."),
        };
        Self {
            count,
            invitations: invitations.into_iter().map(InvitationView::of).collect(),
            ..self
        }
    }
}

impl ShelvedView {
    fn of(plan: &Shelved) -> Self {
        let now = Timestamp::now();
        let closed = plan.closes_at.is_some_and(|at| at <= now);
        let state = match (plan.removed_at, plan.closes_at) {
            (Some(at), _) => format!(
                "removed {}; gone for good after {}",
                words::moment(at),
                words::moment(at + KEPT_AFTER_REMOVAL)
            ),
            (None, Some(at)) if at <= now => format!("closed since {}", words::moment(at)),
            (None, Some(at)) => format!("open until {}", words::moment(at)),
            (None, None) => "open".to_owned(),
        };
        Self {
            id: plan.id.clone(),
            title: plan
                .title
                .clone()
                .filter(|title| !title.trim().is_empty())
                .unwrap_or_else(|| "Untitled pier".to_owned()),
            revision: plan.revision,
            saved: words::moment(plan.saved_at),
            size: words::bytes(plan.size),
            opened: plan
                .opened_at
                .map_or_else(|| "not noted".to_owned(), words::day),
            state,
            open: plan.removed_at.is_none() && !closed,
            closing: plan.closes_at.is_some(),
        }
    }
}

impl InvitationView {
    fn of(invitation: Invitation) -> Self {
        let plans = if invitation.uses_left == 1 {
            "one plan".to_owned()
        } else {
            format!("{} plans", invitation.uses_left)
        };
        let until = invitation
            .expires_at
            .map(|at| format!(", until {}", words::moment(at)))
            .unwrap_or_default();
        let said = if invitation.said.is_empty() {
            "for nobody in particular".to_owned()
        } else {
            invitation.said
        };
        Self {
            id: invitation.id,
            said,
            left: format!("{plans}{until}; made {}", words::moment(invitation.made_at)),
        }
    }
}

const fn creators(creators: Creators) -> &'static str {
    match creators {
        Creators::Anyone => "Whoever reaches this planner may begin a plan.",
        Creators::Invited => "A plan begins with a code that you make below.",
        Creators::Organiser => "Only you begin plans, on the front page of this browser.",
    }
}

/// A text within an address's query.
fn escaped(text: &str) -> String {
    let byte = |b: u8| {
        if b.is_ascii_alphanumeric() {
            char::from(b).to_string()
        } else {
            format!("%{b:02X}")
        }
    };
    text.bytes().map(byte).collect()
}
