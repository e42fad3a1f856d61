//! Where an answer stands in the plan.

use std::fmt;
use std::ops::Deref;

use serde::Serialize;

/// The place of an answer that the plan has, for instance `site.frost_depth_m`. Only a row of the plan makes one, so that
/// a name that is misspelt does not compile; [`path!`](crate::path) writes it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(transparent)]
pub struct Path(&'static str);

impl Path {
    /// The place of a row.
    pub(crate) const fn new(path: &'static str) -> Self {
        Self(path)
    }

    /// Its name.
    pub const fn as_str(self) -> &'static str {
        self.0
    }
}

impl Deref for Path {
    type Target = str;

    fn deref(&self) -> &str {
        self.0
    }
}

impl fmt::Display for Path {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0)
    }
}

impl PartialEq<str> for Path {
    fn eq(&self, other: &str) -> bool {
        self.0 == other
    }
}

impl PartialEq<&str> for Path {
    fn eq(&self, other: &&str) -> bool {
        self.0 == *other
    }
}

impl PartialEq<String> for Path {
    fn eq(&self, other: &String) -> bool {
        self.0 == other
    }
}

impl From<Path> for String {
    fn from(path: Path) -> Self {
        path.0.to_owned()
    }
}

/// The row of an answer, by its section and field: `row!(site.frost_depth_m)`, or `row!(code)` for one that stands in no
/// section. What the plan has not does not compile.
#[macro_export]
macro_rules! row {
    (title) => {
        $crate::site_plan::SitePlan::title
    };
    (use) => {
        $crate::site_plan::SitePlan::purpose
    };
    (units) => {
        $crate::site_plan::SitePlan::units
    };
    (stock) => {
        $crate::site_plan::SitePlan::stock
    };
    (code) => {
        $crate::site_plan::SitePlan::code
    };
    (site.$field:ident) => {
        $crate::site_plan::Site::$field
    };
    (excavation.$field:ident) => {
        $crate::site_plan::Excavation::$field
    };
    (block.$field:ident) => {
        $crate::site_plan::Block::$field
    };
    (pier.$field:ident) => {
        $crate::site_plan::Pier::$field
    };
    (load.$field:ident) => {
        $crate::site_plan::Load::$field
    };
    (anchors.$field:ident) => {
        $crate::site_plan::Anchors::$field
    };
    (floor.$field:ident) => {
        $crate::site_plan::Floor::$field
    };
    (work.$field:ident) => {
        $crate::site_plan::Work::$field
    };
}

/// The [`Path`] of an answer: `path!(site.frost_depth_m)`.
#[macro_export]
macro_rules! path {
    ($($name:tt)+) => {
        $crate::row!($($name)+).row.path
    };
}

/// The [`Path`]s of several answers: `paths![block.depth_m, site.soil]`.
#[macro_export]
macro_rules! paths {
    ($($section:ident.$field:ident),* $(,)?) => {
        &[$($crate::path!($section.$field)),*]
    };
}
