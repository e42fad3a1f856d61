//! Three ways to build it: looked for, shown, taken, and held against another revision.

use axum::Form;
use axum::extract::{Query, State};
use axum::response::{IntoResponse, Redirect, Response};
use serde::Deserialize;
use stillground::options::Point;
use stillground::options::taking::{PINS, pinned, taken};
use stillground::site_plan::SitePlan;

use super::place::Place;
use crate::app::App;
use crate::client::Asker;
use crate::error::Trouble;
use crate::guard::RouteKind;
use crate::planned::digest;
use crate::searches::Looked;
use crate::store::Deed;
use crate::turns::Work;
use crate::views::pages::answer;
use crate::views::pages::beside_each_other::{BesidePage, Compared};
use crate::views::pages::ways::{GoingPage, WaysPage, by_key};

/// What the address says.
#[derive(Deserialize)]
pub struct Asked {
    /// Go on with a search that was cut short.
    more: Option<String>,
    /// The revision that this one is held against.
    with: Option<u32>,
}

/// The link of another plan, as somebody copied it.
#[derive(Deserialize)]
pub struct Another {
    link: String,
}

/// Which way is taken, or which of its answers is pinned, and on top of which revision.
#[derive(Deserialize)]
pub struct Take {
    way: String,
    pin: Option<String>,
    base: u32,
}

/// The three ways, or how far the search for them is.
pub async fn show(
    State(app): State<App>,
    place: Place,
    asker: Asker,
    Query(asked): Query<Asked>,
) -> Result<Response, Trouble> {
    if let Some(with) = asked.with {
        return beside(&app, place, with).await;
    }
    let looked = look(&app, &place.plan, &asker, asked.more.is_some()).await?;
    let frame = place.frame("Three ways to build it");
    let page = match looked {
        Looked::Going(reached) => answer(&GoingPage::of(frame, &place.root, reached))?,
        Looked::Found(options) => answer(&WaysPage::of(
            frame,
            &place.root,
            place.right.may_edit(),
            place.revision,
            &place.plan,
            &options,
        ))?,
    };
    Ok(page.into_response())
}

/// What is kept of the search, or the search itself; beginning one is counted.
async fn look(app: &App, plan: &SitePlan, asker: &Asker, more: bool) -> Result<Looked, Trouble> {
    let open = plan.left_open();
    let key = digest(&open);
    let goes_on = app.searches.goes_on(&key);
    // While it goes on again, what was found before is no answer to whoever wants more.
    if let Some(kept) = app.searches.kept(&key, more || goes_on) {
        return Ok(Looked::Found(kept));
    }
    if !goes_on {
        app.guard.take(&asker.0, RouteKind::Search)?;
    }
    app.searches.look(&asker.0, key, open).await
}

/// Two revisions side by side.
async fn beside(app: &App, place: Place, with: u32) -> Result<Response, Trouble> {
    let place = place.who_may(Deed::ReadRevisions)?;
    let other = app.store.revision(&place.plan_id, with).await?;
    let other = other.ok_or_else(Trouble::nothing_here)?;
    let titles = [
        format!("Revision {with}"),
        format!("Revision {}, which stands", place.revision),
    ];
    side_by_side(app, &place, &other.plan, Compared::Revisions(titles)).await
}

/// This plan beside another one, by a link that opens it. The link is sent in a form, so that it stands in no address.
pub async fn beside_another(
    State(app): State<App>,
    place: Place,
    Form(another): Form<Another>,
) -> Result<Response, Trouble> {
    let secret = secret_of(&another.link);
    let other = Place::behind(&app, Some(secret), None).await?;
    let title = |plan: &SitePlan| plan.title.clone().unwrap_or_else(|| "Untitled".to_owned());
    let titles = [title(&other.plan), title(&place.plan)];
    side_by_side(&app, &place, &other.plan, Compared::Plans(titles)).await
}

/// The secret in a link, or the whole of what is no link.
fn secret_of(link: &str) -> &str {
    let link = link.trim();
    let from = link.rsplit_once("/p/").map_or(link, |(_, secret)| secret);
    from.split(['/', '?', '#']).next().unwrap_or(from)
}

async fn side_by_side(
    app: &App,
    place: &Place,
    other: &SitePlan,
    compared: Compared,
) -> Result<Response, Trouble> {
    let (then, now) = (app.planned(other).await?, app.planned(&place.plan).await?);
    let shelf = app.shelf.clone();
    let points = Box::pin(app.work(Work::Design, move || {
        [then, now].map(|planned| Point::of(&planned.brief, Vec::new(), &shelf))
    }));
    let page = answer(&BesidePage::of(
        place.frame(compared.heading()),
        &place.root,
        compared,
        [other, &place.plan],
        &points.await?,
    ))?;
    Ok(page.into_response())
}

/// Writes a way's answers into the plan as chosen, or one of them as said, as a revision of its own.
pub async fn take(
    State(app): State<App>,
    place: Place,
    asker: Asker,
    Form(take): Form<Take>,
) -> Result<Response, Trouble> {
    let place = place.editing()?;
    let Looked::Found(options) = look(&app, &place.plan, &asker, false).await? else {
        return Ok(Redirect::to(&format!("{}/ways", place.root)).into_response());
    };
    let (_, point) = by_key(&options, &take.way).ok_or_else(Trouble::nothing_here)?;
    let (made, to) = match take.pin.as_deref() {
        None => (
            taken(&place.plan, point),
            format!("plan?before={}", take.base),
        ),
        Some(pin) => {
            let pin = PINS.iter().find(|known| known.key == pin);
            let pin = pin.ok_or_else(Trouble::nothing_here)?;
            (pinned(&place.plan, point, pin), "ways".to_owned())
        }
    };
    let saved = place.save(&app, take.base, &made, &to).await?;
    Ok(saved.into_response())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_link_is_taken_as_it_was_copied() {
        for link in [
            "https://piers.example/p/abc",
            " http://127.0.0.1:8080/p/abc/plan?rev=2#checks ",
            "/base/p/abc/plan",
            "abc",
        ] {
            assert_eq!(secret_of(link), "abc", "{link}");
        }
    }
}
