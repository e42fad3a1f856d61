//! The list of materials as a table for a spreadsheet.

use csv::{Terminator, WriterBuilder};
use stillground::design::Design;
use stillground::figure::{Unit, Units, plain_decimal};
use stillground::stages::costs::LineCost;

use super::money;

/// Mark at the start of the file by which spreadsheets know UTF-8; without it they garble "m³".
const BYTE_ORDER_MARK: &str = "\u{feff}";
/// Signs with which a spreadsheet takes a cell for a formula; the wide ones are read like the narrow ones.
const FORMULA_SIGNS: [char; 11] = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];
/// Headings of the columns.
const HEADINGS: [&str; 16] = [
    "Part of the work",
    "Item",
    "Quantity",
    "Unit",
    "For",
    "Get",
    "Note",
    "Id",
    "Priced as",
    "Priced quantity",
    "Price per",
    "Price",
    "Total",
    "Currency",
    "In whole lengths",
    "Price was quoted for",
];

/// The materials as CSV (RFC 4180), in the reader's units: the same bytes each time.
#[must_use]
pub fn materials(design: &Design, units: Units) -> String {
    let mut writer = WriterBuilder::new()
        .terminator(Terminator::CRLF)
        .from_writer(BYTE_ORDER_MARK.as_bytes().to_vec());
    let rows =
        std::iter::once(HEADINGS.map(str::to_owned)).chain(design.materials.iter().map(|line| {
            let (quantity, unit) = units.convert(line.quantity, line.unit);
            let cost = design.costs.line(line.id);
            let offer = cost.and_then(LineCost::offer);
            let currency = design.costs.currency.as_deref().filter(|_| cost.is_some());
            [
                cell(line.group.heading()),
                cell(&line.item),
                number(quantity),
                cell(if line.unit == Unit::Count {
                    "pcs"
                } else {
                    unit
                }),
                cell(&line.purpose),
                cell(line.supply.word()),
                cell(&line.note),
                cell(line.id),
                cell(offer.map_or("", |offer| offer.id)),
                offer
                    .map(|offer| plain_decimal(offer.quantity, 2))
                    .unwrap_or_default(),
                cell(offer.map_or("", |offer| offer.per)),
                offer
                    .map(|offer| plain_decimal(offer.price, 2))
                    .unwrap_or_default(),
                cost.map(|cost| plain_decimal(cost.total.0, 2))
                    .unwrap_or_default(),
                cell(currency.unwrap_or_default()),
                cell(&money::lengths(&design.costs, line).join(" / ")),
                cell(
                    offer
                        .and_then(|offer| offer.quoted_for.as_deref())
                        .unwrap_or_default(),
                ),
            ]
        }));
    for row in rows {
        // Writing into memory does not fail; were it to, a shorter table shows it.
        if writer.write_record(row).is_err() {
            break;
        }
    }
    writer
        .into_inner()
        .ok()
        .and_then(|bytes| String::from_utf8(bytes).ok())
        .unwrap_or_default()
}

/// A text that no spreadsheet runs: one that begins like a formula gets an apostrophe before it.
fn cell(text: &str) -> String {
    match text.trim_start_matches(' ').starts_with(FORMULA_SIGNS) {
        true => format!("'{text}"),
        false => text.to_owned(),
    }
}

/// Digits that a spreadsheet reads as a number: a point, no groups, four significant figures, whole things whole.
fn number(value: f64) -> String {
    if value.fract().abs() < 1e-9 {
        return format!("{value:.0}");
    }
    let decimals = (3 - value.abs().log10().floor() as i32).clamp(0, 6) as usize;
    let text = format!("{value:.decimals$}");
    if decimals == 0 {
        text
    } else {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillground::decided::design_plan;
    use stillground::halfspace::NoShelf;
    use stillground::site_plan::SitePlan;

    fn design() -> Design {
        design_plan(&SitePlan::unknown(), &NoShelf).unwrap()
    }

    #[test]
    fn every_line_is_a_row_of_sixteen_cells_and_reads_back() {
        let design = design();
        let text = materials(&design, Units::Metric);
        let mut reader = csv::Reader::from_reader(text.as_bytes());
        assert_eq!(reader.headers().unwrap(), &HEADINGS[..]);
        let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
        assert_eq!(rows.len(), design.materials.len());
        for (row, line) in rows.iter().zip(&design.materials) {
            let quantity: f64 = row[2].parse().unwrap();
            assert!(
                (quantity - line.quantity).abs() <= 0.001 * line.quantity,
                "{row:?}"
            );
        }
        assert_eq!(text, materials(&design, Units::Metric));
    }

    #[test]
    fn a_price_times_its_quantity_is_its_total() {
        let mut plan = SitePlan::unknown();
        let prices = r#"{ "currency": "EUR", "lines": { "stud-rod-2m": { "price": 17.5, "per": "pcs" },
            "draw-cord": { "price": 0.0456, "per": "ft", "item": "=1+1" }, "polythene": { "price": 1.1, "per": "m²" } } }"#;
        plan.prices = serde_json::from_str(prices).unwrap();
        let text = materials(&design_plan(&plan, &NoShelf).unwrap(), Units::Metric);
        let mut reader = csv::Reader::from_reader(text.as_bytes());
        let rows: Vec<_> = reader
            .records()
            .map(Result::unwrap)
            .filter(|row| !row[12].is_empty())
            .collect();
        assert_eq!(
            rows.iter().map(|row| &row[8]).collect::<Vec<_>>(),
            ["draw-cord", "polythene", "stud-rod-2m"]
        );
        for row in rows {
            let [quantity, price, total] = [9, 11, 12].map(|at| row[at].parse::<f64>().unwrap());
            assert_eq!(&row[15], if &row[8] == "draw-cord" { "'=1+1" } else { "" });
            assert!(
                (quantity * price - total).abs() <= 0.005 + 1e-9 && &row[13] == "EUR",
                "{row:?}"
            );
        }
    }

    #[test]
    fn no_cell_is_run_as_a_formula() {
        let mut design = design();
        for text in ["=2+5", "+1", "-1", "@SUM(A1)", "\t=1", " =1", "＝1"] {
            design.materials[0].item = text.into();
            let table = materials(&design, Units::Metric);
            let first = csv::Reader::from_reader(table.as_bytes())
                .records()
                .next()
                .unwrap()
                .unwrap();
            assert_eq!(&first[1], format!("'{text}"));
        }
    }

    #[test]
    fn an_imperial_reader_gets_imperial_figures() {
        let text = materials(&design(), Units::Imperial);
        assert!(text.contains(",yd³,") && !text.contains(",m³,"));
    }
}
