//! A drawing on a page, with its name for a look at it by itself.

use std::sync::Arc;

use crate::planned::Planned;

/// A drawing.
#[derive(Debug, Clone)]
pub struct DrawingView {
    /// Its name.
    pub name: &'static str,
    /// Its title.
    pub title: String,
    /// The drawing.
    pub svg: Arc<str>,
    /// The same laid out for a telephone.
    pub phone: Option<Arc<str>>,
    /// The class that says from which width the first is shown.
    pub from: &'static str,
}

impl DrawingView {
    /// The drawing of that name; none where this plan has nothing to draw.
    #[must_use]
    pub fn of(name: &'static str, planned: &Planned) -> Option<Self> {
        planned.drawing(name).map(|drawn| Self {
            name,
            title: drawn.title.clone(),
            svg: Arc::clone(&drawn.svg),
            phone: drawn.phone.clone(),
            from: drawn.from.class(),
        })
    }
}
