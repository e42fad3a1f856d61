//! The form of prices: what was typed beside each line becomes the plan's section of prices.

use std::collections::BTreeMap;

use stillground::figure::Units;
use stillground::site_plan::SitePlan;
use stillground::site_plan::prices::lines::LINES;
use stillground::site_plan::prices::{Price, Prices, per, system};
use stillground::stages::materials::Material;

use super::price;
use super::sheet::Sheet;

/// Something to be put right: name of the box, and a whole sentence.
pub type PriceFault = (String, String);

/// The box of a line's price.
#[must_use]
pub fn box_of(id: &str) -> String {
    format!("price~{id}")
}

/// A price as it stands in its box.
#[must_use]
pub fn entry(price: &Price) -> String {
    let text = format!("{:.4}", price.price);
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    let part = part.trim_end_matches('0');
    if part.is_empty() {
        whole.to_owned()
    } else {
        format!("{whole}.{part:0<2}")
    }
}

/// The plan with the prices of a form that was shown with the boxes' `was` in them. What was left as it was shown stays as
/// it stands now, so that two people who price different lines at once lose nothing; the same line priced twice is asked.
///
/// # Errors
/// Every box that has to be put right.
pub fn read(
    plan: &SitePlan,
    materials: &[Material],
    sheet: &Sheet,
) -> Result<SitePlan, Vec<PriceFault>> {
    let mut faults = Vec::new();
    let mut prices = plan.prices.clone();
    let mut lines = prices.lines.take().unwrap_or_default();
    for line in LINES {
        let name = box_of(line.id);
        let Some(typed) = sheet.text(&name) else {
            continue;
        };
        let sent = (
            typed.trim(),
            sheet.text(&format!("per~{}", line.id)).unwrap_or_default(),
        );
        let was = (
            sheet.text(&format!("was~{}", line.id)).unwrap_or_default(),
            sheet
                .text(&format!("was-per~{}", line.id))
                .unwrap_or_default(),
        );
        let again = sheet.ticked(&format!("again~{}", line.id));
        // An empty box is empty whatever its unit.
        if (sent == was || sent.0.is_empty() && was.0.is_empty()) && !again {
            continue;
        }
        match price::read(typed) {
            Err(said) => faults.push((name, said)),
            Ok(None) => drop(lines.remove(line.id)),
            Ok(Some(price)) => {
                let now = lines
                    .get(line.id)
                    .map(|price| (entry(price), price.per.clone()))
                    .unwrap_or_default();
                if now.0 != was.0 && (now.0.as_str(), now.1.as_str()) != sent && !now.0.is_empty() {
                    faults.push((
                        name,
                        format!(
                            "Somebody else wrote {} {} here meanwhile. Look which one holds.",
                            now.0,
                            each(&now.1)
                        ),
                    ));
                    continue;
                }
                let units = system(line, sent.1).unwrap_or(plan.units.unwrap_or_default());
                let item = item(materials, line.id);
                lines.insert(
                    line.id.to_owned(),
                    Price {
                        price,
                        per: per(line.unit, units).to_owned(),
                        item,
                    },
                );
            }
        }
    }
    if let Some(currency) = sheet.text("currency")
        && Some(currency.trim()) != sheet.text("was-currency")
    {
        prices.currency = Some(currency.trim().to_owned()).filter(|currency| !currency.is_empty());
    }
    prices.lines = Some(lines).filter(|lines: &BTreeMap<String, Price>| !lines.is_empty());
    let plan = SitePlan {
        prices,
        ..plan.clone()
    };
    faults.extend(problems(&plan));
    if faults.is_empty() {
        Ok(plan)
    } else {
        Err(faults)
    }
}

/// The unit of a price in words.
#[must_use]
pub fn each(per: &str) -> String {
    if per == "pcs" {
        "each".to_owned()
    } else {
        format!("per\u{a0}{}", per.replace(' ', "\u{a0}"))
    }
}

/// The units that a price of this line may be for.
#[must_use]
pub fn units(id: &str) -> Vec<&'static str> {
    let known = LINES
        .iter()
        .find(|line| line.id == id)
        .map(|line| line.unit);
    let mut all: Vec<&'static str> = known
        .into_iter()
        .flat_map(|unit| [per(unit, Units::Metric), per(unit, Units::Imperial)])
        .collect();
    all.dedup();
    all
}

fn item(materials: &[Material], id: &str) -> Option<String> {
    let of = |line: &&Material| line.id == id || line.stock.iter().any(|stock| stock.id == id);
    materials.iter().find(of).map(|line| line.item.clone())
}

/// What the engine says of the section, at the boxes.
fn problems(plan: &SitePlan) -> Vec<PriceFault> {
    let name = |path: &str| match path.strip_prefix("prices.lines.") {
        Some(rest) => box_of(rest.split('.').next().unwrap_or(rest)),
        None => path.trim_start_matches("prices.").to_owned(),
    };
    let found = stillground::site_plan::prices::problems(plan);
    found
        .into_iter()
        .map(|problem| {
            (
                problem
                    .fields
                    .first()
                    .map(|path| name(path))
                    .unwrap_or_default(),
                problem.said,
            )
        })
        .collect()
}

/// What a saved plan puts into the boxes.
#[must_use]
pub fn sheet(prices: &Prices) -> Sheet {
    let mut sheet = Sheet::default();
    sheet.put("currency", prices.currency.clone().unwrap_or_default());
    for (id, price) in prices.lines.iter().flatten() {
        sheet.put(box_of(id), entry(price));
        sheet.put(format!("per~{id}"), price.per.clone());
    }
    sheet
}

#[cfg(test)]
mod tests;
