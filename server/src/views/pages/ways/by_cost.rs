//! What the piers that fit cost, where anything has a price.

use stillground::figure::Count;
use stillground::options::{ByCost, Options, Point};
use stillground::site_plan::SitePlan;

use super::{PointView, view};
use crate::drawing::front;
use crate::views::svg;

/// The front by cost.
pub struct CostView {
    /// As a drawing.
    pub picture: Option<String>,
    /// As a table.
    pub points: Vec<CostPoint>,
    /// How many were reckoned.
    pub counted: String,
}

/// A pier of the front by cost.
pub struct CostPoint {
    /// What it comes to.
    pub cost: String,
    /// The pier.
    pub point: PointView,
}

impl CostView {
    pub(super) fn of(found: &ByCost, options: &Options, plan: &SitePlan) -> Self {
        let units = plan.units.unwrap_or_default();
        let currency = plan.prices.currency.as_deref();
        let say = |count: usize| units.say(count as f64, Count);
        let mut counted = if found.looked_at == 0 {
            "There was no time left to add up what they cost.".to_owned()
        } else {
            format!(
                "What has a price was added up for {} piers, at the prices that the plan holds; a line without a price counts nothing.",
                say(found.looked_at)
            )
        };
        if found.not_reached > 0 {
            counted.push_str(&format!(
                " {} are still to be looked at.",
                say(found.not_reached)
            ));
        }
        let drawing = front::by_cost(options, units, currency);
        Self {
            picture: drawing.map(|drawing| svg::write(&drawing)),
            points: found
                .front
                .iter()
                .map(|point| CostPoint {
                    cost: cost(point, currency),
                    point: view(String::new(), point, units),
                })
                .collect(),
            counted,
        }
    }
}

pub(super) fn cost(point: &Point, currency: Option<&str>) -> String {
    match (point.cost, currency) {
        (Some(cost), Some(currency)) => format!("{cost}\u{a0}{currency}"),
        (Some(cost), None) => cost.to_string(),
        (None, _) => String::new(),
    }
}
