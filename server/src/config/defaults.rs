//! What a house knows already: the plan that new plans start from, and the tubes that lie in its store.

use std::path::Path;

use serde::Deserialize;
use stillground::rules::tubes;
use stillground::site_plan::SitePlan;

use super::catalogue::NO_TEXT;
use super::read::whole;

/// Largest file read, bytes.
const LARGEST: u64 = 1024 * 1024;
/// Most sizes of tube that are told.
const MOST_TUBES: usize = 40;

/// What a house knows already.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Defaults {
    /// The plan that new plans start from; its title is left out.
    pub plan: SitePlan,
    /// Tubes in stock: outside diameter and wall, millimetres.
    #[serde(default)]
    pub tubes_mm: Vec<(f64, f64)>,
}

impl Defaults {
    /// Reads a file.
    ///
    /// # Errors
    /// No file, no such document, or answers that no plan could be made with.
    pub(super) fn read(file: &Path) -> Result<Self, String> {
        let shown = file.display();
        let text = whole(file, LARGEST)?
            .ok_or_else(|| format!("({shown}) is larger than {} KiB", LARGEST / 1024))?;
        let text = std::str::from_utf8(&text).map_err(|_| format!("({shown}): {NO_TEXT}"))?;
        let mut reader = serde_json::Deserializer::from_str(text);
        let mut found: Self = serde_path_to_error::deserialize(&mut reader)
            .map_err(|error| format!("({shown}): {}: {}", error.path(), error.inner()))?;
        found.plan.title = None;
        found
            .plan
            .validate()
            .map_err(|problems| format!("({shown}): {problems}"))?;
        let sound = |(diameter, wall): &(f64, f64)| {
            diameter.is_finite()
                && wall.is_finite()
                && *wall > 0.0
                && *diameter > 2.0 * wall
                && *diameter <= 2000.0
        };
        if found.tubes_mm.len() > MOST_TUBES || !found.tubes_mm.iter().all(sound) {
            return Err(format!(
                "({shown}): tubes_mm: at most {MOST_TUBES} pairs of outside diameter and wall, [168.3, 6.3] for instance"
            ));
        }
        if let Some(wrong) = found.unsold_tube() {
            return Err(format!("({shown}): {wrong}"));
        }
        Ok(found)
    }

    /// The first tube in stock that the catalogue does not have, named with its field.
    fn unsold_tube(&self) -> Option<String> {
        let stock = self.plan.family();
        let at = self
            .tubes_mm
            .iter()
            .position(|&(diameter, wall)| tubes::sold(stock, diameter, wall).is_none())?;
        let (diameter, wall) = self.tubes_mm[at];
        Some(format!(
            "tubes_mm[{at}]: {diameter} × {wall} mm is no row of the catalogue’s {} tubes",
            stock.key()
        ))
    }
}
