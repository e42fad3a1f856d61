//! The schema of a plan, from the engine's catalogue of its fields.

use serde_json::{Map, Value, json};
use stillground::field::{Cell, Kind, NumberField, OtherField};
use stillground::figure::{Unit, Units};
use stillground::rules::tubes;
use stillground::site_plan::anchors::Size;
use stillground::site_plan::commissioning;
use stillground::site_plan::prices::lines;
use stillground::site_plan::prices::{CURRENCY_LENGTH, MOST, per};
use stillground::site_plan::yard::MOST_ROWS;
use stillground::site_plan::{SCHEMA_VERSION, SitePlan, TITLE_LENGTH, chosen};
use stillground::{path, row};

/// A day between 1900 and 2999.
const DAY: &str = "^(19|2[0-9])[0-9]{2}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$";
/// A text that prints: no control characters, no separators of lines, no marks that no eye sees, nothing garbled.
pub(super) const PRINTABLE: &str = r"^[^\u0000-\u001f\u007f-\u009f\u00ad\u180e\u200b\u2028-\u202e\u2060-\u2069\ufeff\ufff9-\uffff]*$";
/// The same in several lines.
pub(super) const LINES: &str = r"^([\t\n\r]|[^\u0000-\u001f\u007f-\u009f\u00ad\u180e\u200b\u2028-\u202e\u2060-\u2069\ufeff\ufff9-\uffff])*$";

/// The plan's schema.
pub(super) fn schema() -> Value {
    let mut properties = head();
    for field in SitePlan::numbers() {
        insert(&mut properties, &field.path, number(field));
    }
    for field in SitePlan::others() {
        insert(&mut properties, &field.path, other(field));
    }
    json!({
        "type": "object",
        "description": "What a person said about a site and a pier. Any answer may be null or missing: not known.",
        "required": ["schema_version"],
        "additionalProperties": false,
        "properties": properties
    })
}

fn head() -> Map<String, Value> {
    let mut properties = Map::new();
    let mut put = |name: &str, schema| properties.insert(name.to_owned(), schema);
    put(
        "schema_version",
        json!({ "type": "integer", "const": SCHEMA_VERSION, "description": "Version of this document." }),
    );
    for field in [
        row!(title).row,
        row!(use).row,
        row!(units).row,
        row!(code).row,
        row!(stock).row,
    ] {
        put(&field.path, other(&field));
    }
    put("prices", prices());
    put("yard", yard());
    put(
        "state",
        choice(
            commissioning::State::KEYS,
            "What there is of the pier: it is planned, or stands already.",
        ),
    );
    put("commissioning", super::commissioning::schema());
    put(
        "chosen",
        json!({
            "type": "array",
            "uniqueItems": true,
            "maxItems": chosen::FIELDS.len(),
            "items": { "type": "string", "enum": chosen::FIELDS },
            "description": "Answers that the planner found and the person took; they count as open where piers are looked for again."
        }),
    );
    properties
}

/// Which rows of the catalogue are kept where the parts come from.
fn yard() -> Value {
    let names = |what: &str| json!({ "type": "array", "maxItems": MOST_ROWS, "items": { "type": "string" }, "description": what });
    json!({
        "type": "object",
        "additionalProperties": false,
        "description": "Which rows of the catalogue are kept where the parts come from; a list left out keeps the whole family.",
        "properties": {
            "tubes": names("Tubes by the names of their rows, for instance NPS 8 Sch 40."),
            "plates": names("Plates by the names of their rows, for instance 3/4 in."),
            "sizes": { "type": "array", "maxItems": MOST_ROWS, "items": { "type": "string", "enum": Size::KEYS }, "description": "Threads of rod." },
            "longest_rod_m": { "type": ["number", "null"], "minimum": 0.1, "maximum": 12.0, "description": "Longest rod." }
        }
    })
}

/// What the reader was quoted.
fn prices() -> Value {
    let mut units: Vec<&str> = lines::LINES
        .iter()
        .flat_map(|line| {
            [
                per(line.unit, Units::Metric),
                per(line.unit, Units::Imperial),
            ]
        })
        .collect();
    units.sort_unstable();
    units.dedup();
    let price = json!({
        "type": "object",
        "required": ["price", "per"],
        "additionalProperties": false,
        "properties": {
            "price": { "type": "number", "minimum": 0.0, "maximum": MOST, "description": "Price of one unit, with up to four decimals." },
            "per": { "type": "string", "enum": units, "description": "Unit that it is for: the line's metric one or its imperial one." },
            "item": text("What the line was called when it was quoted.")
        }
    });
    let names: Vec<&str> = lines::LINES.iter().map(|line| line.id).collect();
    json!({
        "type": "object",
        "additionalProperties": false,
        "default": {},
        "description": "What the reader was quoted for lines of the materials. A price keeps its unit and is never turned into another.",
        "properties": {
            "currency": {
                "type": ["string", "null"],
                "minLength": 1,
                "maxLength": CURRENCY_LENGTH,
                "pattern": PRINTABLE,
                "description": "The currency of all of them: letters, or its sign."
            },
            "lines": {
                "type": ["object", "null"],
                "propertyNames": { "enum": names },
                "additionalProperties": price,
                "description": "The price of each line, by the line's id."
            }
        }
    })
}

/// Puts a field's schema in its section.
fn insert(properties: &mut Map<String, Value>, path: &str, schema: Value) {
    let Some((section, field)) = path.split_once('.') else {
        return;
    };
    let place = properties
        .entry(section)
        .or_insert_with(|| json!({ "type": "object", "additionalProperties": false, "default": {}, "properties": {} }));
    place["properties"][field] = schema;
}

fn number(field: &NumberField) -> Value {
    let whole = field.unit == Unit::Count;
    let unit = match field.unit.symbol() {
        "" => String::new(),
        symbol => format!(" In {symbol}."),
    };
    json!({
        "type": [if whole { "integer" } else { "number" }, "null"],
        "minimum": field.least,
        "maximum": field.most,
        "description": format!("{}{unit} The range: {}.", field.what.trim(), field.why),
    })
}

fn other(field: &OtherField) -> Value {
    let what = field.what.trim();
    match field.kind {
        Kind::Choice(keys) => choice(keys, what),
        Kind::YesOrNo => json!({ "type": ["boolean", "null"], "description": what }),
        Kind::Text if field.path == path!(work.start_date) => {
            json!({ "type": ["string", "null"], "format": "date", "pattern": DAY, "description": what })
        }
        Kind::Text if field.path == path!(pier.tube) => {
            choice(&tubes::names().collect::<Vec<_>>(), what)
        }
        Kind::Text => text(what),
        Kind::Rows(cells, most) => {
            json!({ "type": ["array", "null"], "maxItems": most, "items": row(cells), "description": what })
        }
        Kind::Points(most) => {
            let point = json!({ "type": "array", "items": { "type": "number" }, "minItems": 2, "maxItems": 2 });
            json!({ "type": ["array", "null"], "maxItems": most, "items": point, "description": what })
        }
    }
}

fn text(what: &str) -> Value {
    json!({ "type": ["string", "null"], "maxLength": TITLE_LENGTH, "pattern": PRINTABLE, "description": what })
}

fn choice(keys: &[&str], what: &str) -> Value {
    let values: Vec<_> = keys.iter().map(|&key| Some(key)).chain([None]).collect();
    json!({ "type": ["string", "null"], "enum": values, "description": what })
}

fn row(cells: &[Cell]) -> Value {
    let kind = |cell: &Cell| if cell.is_text { "string" } else { "number" };
    let properties: Map<String, Value> = cells
        .iter()
        .map(|cell| {
            (
                cell.name.to_owned(),
                json!({ "type": kind(cell), "description": cell.what }),
            )
        })
        .collect();
    let names: Vec<_> = cells.iter().map(|cell| cell.name).collect();
    json!({ "type": "object", "required": names, "additionalProperties": false, "properties": properties })
}

#[cfg(test)]
mod tests {
    use super::*;
    use stillground::site_plan::Yard;

    /// Every field that the engine writes stands in the schema, and nothing else does.
    #[test]
    fn the_schema_has_the_fields_of_a_plan_and_no_others() {
        // What nobody has taken is not written.
        let plan = SitePlan {
            chosen: vec!["pier.fill".to_owned()],
            yard: Yard {
                longest_rod_m: Some(3.0),
                ..Yard::default()
            },
            state: Some(commissioning::State::Standing),
            commissioning: commissioning::Commissioning {
                symptoms: commissioning::Symptoms {
                    in_wind: Some(true),
                    ..commissioning::Symptoms::default()
                },
                ..commissioning::Commissioning::default()
            },
            ..SitePlan::unknown()
        };
        let written = serde_json::to_value(plan).unwrap_or_default();
        assert_eq!(names(&written, ""), names(&fields(&schema()), ""));
    }

    fn fields(schema: &Value) -> Value {
        let Some(properties) = schema["properties"].as_object() else {
            return Value::Null;
        };
        properties
            .iter()
            .map(|(name, schema)| (name.clone(), fields(schema)))
            .collect::<Map<_, _>>()
            .into()
    }

    fn names(value: &Value, path: &str) -> std::collections::BTreeSet<String> {
        let Some(object) = value.as_object() else {
            return [path.to_owned()].into();
        };
        object
            .iter()
            .flat_map(|(name, value)| names(value, &format!("{path}/{name}")))
            .collect()
    }
}
