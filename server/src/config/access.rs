//! Who may begin plans, who keeps the shelf, and how much may be kept.

use super::Settings;
use super::organisers::{self, ByProxy, Organisers};
use super::read::{Reading, count};

/// Who may do what.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Access {
    /// Who may begin a plan.
    pub creators: Creators,
    /// Who the organisers are; without any there is no shelf.
    pub organisers: Organisers,
    /// How much may be kept.
    pub quotas: Quotas,
}

/// Who may begin a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Creators {
    /// Whoever comes.
    #[default]
    Anyone,
    /// Whoever has a code that the organiser made.
    Invited,
    /// The organiser only.
    Organiser,
}

/// How much may be kept; `None`: no limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Quotas {
    /// Plans, those removed and not yet gone among them.
    pub plans: Option<u32>,
    /// Revisions of one plan.
    pub revisions: Option<u32>,
    /// Bytes of one plan with all its revisions, its record and its photographs.
    pub plan_bytes: Option<u32>,
}

/// What is kept where anyone may begin a plan and nothing else is said: far more than a club needs, and a bound.
pub const OPEN_QUOTAS: Quotas = Quotas {
    plans: Some(10_000),
    revisions: Some(10_000),
    plan_bytes: Some(256 * 1024 * 1024),
};

/// A number, or `none` for no limit.
fn limit(text: &str) -> Result<Option<u32>, String> {
    if text.eq_ignore_ascii_case("none") {
        Ok(None)
    } else {
        count(text).map(Some)
    }
}

impl Access {
    pub(super) fn read(reading: &mut Reading, settings: &Settings) -> Self {
        let organisers = organisers(reading, settings);
        let stated = organisers.are_there() || settings.organiser_token_file.is_some();
        let creators = settings.who_creates.as_deref();
        let creators = reading.or_default("STILLGROUND_WHO_CREATES", creators, Creators::parse);
        if creators != Creators::Anyone && !stated {
            let said = "somebody has to let people in: name STILLGROUND_ORGANISER_TOKEN_FILE too, or write anyone";
            let _: Option<()> = reading.take("STILLGROUND_WHO_CREATES", Err(said.to_owned()));
        }
        // Where anyone may begin a plan, somebody will begin too many.
        let usual = if creators == Creators::Anyone {
            OPEN_QUOTAS
        } else {
            Quotas::default()
        };
        let mut limit = |name, text: &Option<String>, usual| {
            reading
                .optional(name, text.as_deref(), limit)
                .unwrap_or(usual)
        };
        let quotas = Quotas {
            plans: limit("STILLGROUND_MOST_PLANS", &settings.most_plans, usual.plans),
            revisions: limit(
                "STILLGROUND_MOST_REVISIONS",
                &settings.most_revisions,
                usual.revisions,
            ),
            plan_bytes: limit(
                "STILLGROUND_MOST_PLAN_BYTES",
                &settings.most_plan_bytes,
                usual.plan_bytes,
            ),
        };
        Self {
            creators,
            organisers,
            quotas,
        }
    }
}

/// The organisers: those in the file of passwords, and those whom a proxy names.
fn organisers(reading: &mut Reading, settings: &Settings) -> Organisers {
    let file = settings
        .organiser_token_file
        .as_deref()
        .filter(|file| !file.as_os_str().is_empty());
    let with_password = file
        .and_then(|file| reading.take("STILLGROUND_ORGANISER_TOKEN_FILE", organisers::read(file)))
        .unwrap_or_default();
    let header = reading.optional(
        "STILLGROUND_ORGANISER_HEADER",
        settings.organiser_header.as_deref(),
        organisers::header,
    );
    let names = reading.optional(
        "STILLGROUND_ORGANISERS",
        settings.organisers.as_deref(),
        organisers::names,
    );
    let stated = |text: &Option<String>| text.as_ref().is_some_and(|text| !text.trim().is_empty());
    match (
        stated(&settings.organiser_header),
        stated(&settings.organisers),
    ) {
        (true, false) => {
            let said = "a proxy may let many people through: name those who are organisers in STILLGROUND_ORGANISERS";
            let _: Option<()> = reading.take("STILLGROUND_ORGANISER_HEADER", Err(said.to_owned()));
        }
        (false, true) => {
            let said =
                "nobody says who comes: name the proxy's header in STILLGROUND_ORGANISER_HEADER";
            let _: Option<()> = reading.take("STILLGROUND_ORGANISERS", Err(said.to_owned()));
        }
        (true, true) if !stated(&settings.trusted_proxies) => {
            let said = "only a stated proxy is believed: name it in STILLGROUND_TRUSTED_PROXIES";
            let _: Option<()> = reading.take("STILLGROUND_ORGANISER_HEADER", Err(said.to_owned()));
        }
        _ => {}
    }
    Organisers {
        with_password,
        by_proxy: header
            .zip(names)
            .map(|(header, names)| ByProxy { header, names }),
    }
}

impl Creators {
    fn parse(text: &str) -> Result<Self, String> {
        match text.to_ascii_lowercase().as_str() {
            "anyone" => Ok(Self::Anyone),
            "invited" => Ok(Self::Invited),
            "organiser" => Ok(Self::Organiser),
            _ => Err("write anyone, invited or organiser".to_owned()),
        }
    }
}
