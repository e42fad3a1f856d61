//! A plan's complete inputs, what was found from them, and what is written of that once, the same for every link.

use std::sync::{Arc, OnceLock};

use sha2::{Digest, Sha256};
use stillground::brief::Brief;
use stillground::decided::{Decided, decide, improved};
use stillground::design::Design;
use stillground::field::Problems;
use stillground::halfspace::Shelf;
use stillground::site_plan::SitePlan;

use crate::drawing;
use crate::forms::step::Step;
use crate::views::svg;

/// A plan's complete inputs and what was found from them.
#[derive(Debug)]
pub struct Planned {
    /// Complete inputs.
    pub brief: Brief,
    /// What was found.
    pub design: Design,
    /// The digest of the plan that it was found from.
    pub plan: [u8; 32],
    /// The plan with the sizes that had to be chosen together, from which improvements begin.
    pub sized: SitePlan,
    /// Whether what would help most was looked for.
    pub improved: bool,
    written: Written,
}

/// What was written of a design: it depends on nothing else, so that any link may show it.
#[derive(Debug, Default)]
struct Written {
    drawings: [OnceLock<Option<Drawn>>; drawing::NAMES.len()],
    glances: [OnceLock<Option<Glance>>; drawing::NAMES.len()],
    panels: [OnceLock<Arc<str>>; Step::ALL.len()],
}

/// A drawing as it stands on a page.
#[derive(Debug)]
pub struct Drawn {
    /// Its title.
    pub title: String,
    /// As SVG.
    pub svg: Arc<str>,
    /// The same laid out for a telephone; none for one that has no such layout.
    pub phone: Option<Arc<str>>,
    /// Width from which a screen shows it as the sheet does.
    pub from: ShownFrom,
}

/// A drawing as it stands at a task.
#[derive(Debug)]
pub struct Glance {
    /// Its title.
    pub title: String,
    /// As SVG, for a telephone.
    pub svg: Arc<str>,
}

/// Width from which a drawing's letters are large enough as the sheet has them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShownFrom {
    /// A drawing of half a sheet's width.
    Narrow,
    /// A drawing of three quarters of it.
    Middle,
    /// Any other.
    Wide,
}

impl ShownFrom {
    fn of(drawing: &drawing::Drawing) -> Self {
        match drawing.width {
            ..=112.0 => Self::Narrow,
            ..=146.0 => Self::Middle,
            _ => Self::Wide,
        }
    }

    /// Its class in the style sheet.
    #[must_use]
    pub const fn class(self) -> &'static str {
        match self {
            Self::Narrow => "from-narrow",
            Self::Middle => "from-middle",
            Self::Wide => "from-wide",
        }
    }
}

impl Planned {
    /// The plan's inputs and what the stages find, here and now; what would help is left out, which takes as long again.
    ///
    /// # Errors
    /// Every field out of range and every contradiction.
    pub fn of(plan: &SitePlan, shelf: &dyn Shelf) -> Result<Self, Problems> {
        let Decided {
            brief,
            design,
            plan: sized,
        } = decide(plan, shelf)?;
        Ok(Self {
            brief,
            design,
            plan: digest(plan),
            sized,
            improved: false,
            written: Written::default(),
        })
    }

    /// The same with what would help most.
    #[must_use]
    pub fn improve(&self, shelf: &dyn Shelf) -> Self {
        Self {
            design: improved(&self.sized, &self.brief, self.design.clone(), shelf),
            brief: self.brief.clone(),
            sized: self.sized.clone(),
            plan: self.plan,
            improved: true,
            written: Written::default(),
        }
    }

    /// A drawing, written when first asked for; none where this plan has nothing to draw.
    #[must_use]
    pub fn drawing(&self, name: &str) -> Option<&Drawn> {
        let place = drawing::NAMES.iter().position(|known| *known == name)?;
        let draw = || {
            let drawing = drawing::by_name(name, &self.brief, &self.design)?;
            let phone = drawing::on_a_phone(name, &self.brief, &self.design);
            Some(Drawn {
                svg: svg::write(&drawing).into(),
                phone: phone.map(|drawing| svg::write(&drawing).into()),
                from: ShownFrom::of(&drawing),
                title: drawing.title,
            })
        };
        self.written.drawings.get(place)?.get_or_init(draw).as_ref()
    }

    /// A drawing as it stands at a task, written when first asked for.
    #[must_use]
    pub fn glance(&self, name: &str) -> Option<&Glance> {
        let place = drawing::NAMES.iter().position(|known| *known == name)?;
        let draw = || {
            let drawing = drawing::at_a_glance(name, &self.brief, &self.design)?;
            Some(Glance {
                svg: svg::write(&drawing).into(),
                title: drawing.title,
            })
        };
        self.written.glances.get(place)?.get_or_init(draw).as_ref()
    }

    /// What stands beside a step's questions as text, written by `write` when first asked for.
    ///
    /// # Errors
    /// What `write` says; then nothing is kept.
    pub fn panel<E>(
        &self,
        step: Step,
        write: impl FnOnce(&Self) -> Result<String, E>,
    ) -> Result<Arc<str>, E> {
        let place = self.written.panels.get(step as usize);
        if let Some(kept) = place.and_then(OnceLock::get) {
            return Ok(Arc::clone(kept));
        }
        let text: Arc<str> = write(self)?.into();
        Ok(place.map_or_else(
            || Arc::clone(&text),
            |place| Arc::clone(place.get_or_init(|| Arc::clone(&text))),
        ))
    }
}

/// A plan's digest. Its document is what is kept of it, and the same for the same plan.
#[must_use]
pub fn digest(plan: &SitePlan) -> [u8; 32] {
    let mut digest = Digesting(Sha256::new());
    // Nothing of a plan fails to be written; if ever something did, it is digested up to there, with a mark of its own.
    if serde_json::to_writer(&mut digest, plan).is_err() {
        digest.0.update(b"broken off");
    }
    digest.0.finalize().into()
}

/// Takes a document in as it is written.
struct Digesting(Sha256);

impl std::io::Write for Digesting {
    fn write(&mut self, part: &[u8]) -> std::io::Result<usize> {
        self.0.update(part);
        Ok(part.len())
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillground::halfspace::NoShelf;

    #[test]
    fn what_is_written_once_is_what_would_be_written_again() {
        let planned = Planned::of(&SitePlan::unknown(), &NoShelf)
            .map_err(|problems| problems.to_string())
            .unwrap();
        for name in drawing::NAMES {
            let again = drawing::by_name(name, &planned.brief, &planned.design)
                .map(|drawing| svg::write(&drawing));
            assert_eq!(
                planned.drawing(name).map(|drawn| drawn.svg.to_string()),
                again,
                "{name}"
            );
        }
        for step in Step::ALL {
            assert!(planned.panel(step, |_| Err("no paper")).is_err());
            let once = planned
                .panel(step, |_| Ok::<_, ()>(step.slug().to_owned()))
                .unwrap();
            let again = planned.panel(step, |_| Err("it is written")).unwrap();
            assert!(Arc::ptr_eq(&once, &again) && *once == *step.slug());
        }
        assert!(planned.drawing("no-such-drawing").is_none());
    }

    #[test]
    fn a_plan_that_was_improved_says_what_would_help() {
        let plan = SitePlan::unknown();
        let planned = Planned::of(&plan, &NoShelf)
            .map_err(|problems| problems.to_string())
            .unwrap();
        assert!(planned.design.improvements.is_empty());
        let improved = planned.improve(&NoShelf);
        assert!(!improved.design.improvements.is_empty() && improved.improved);
    }
}
