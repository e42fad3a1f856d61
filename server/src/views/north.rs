//! True north in words and a table for each way: the same on the page, on the sheets and beside the template.

use stillground::brief::Brief;
use stillground::design::Design;
use stillground::figure::{Degree, One, Units};
use stillground::stages::north::{Noon, North, Polaris};

/// A way to true north.
#[derive(Debug, Clone, PartialEq)]
pub struct Way {
    /// Heading.
    pub title: &'static str,
    /// Sentences.
    pub says: Vec<String>,
    /// What the rows' names are.
    pub names: &'static str,
    /// Headings of the other columns.
    pub columns: Vec<String>,
    /// Rows; none where there is nothing to tell.
    pub rows: Vec<Vec<String>>,
}

/// All ways, and how north is carried to the plate.
#[must_use]
pub fn ways(brief: &Brief, design: &Design) -> Vec<Way> {
    let (north, units) = (&design.north, brief.units);
    let clock = if brief.work.utc_offset_h.is_some() {
        "your clocks"
    } else {
        "UTC"
    };
    // Without a place none of the three can be reckoned: said once is enough.
    let placeless =
        north.compass.why_not.is_some() && north.compass.why_not == north.polaris.why_not;
    let mut ways = vec![
        Way {
            title: "By the shadow at noon",
            names: "Day",
            rows: noon_rows(&north.noon, units),
            columns: noon_heads(clock),
            says: noon_words(north),
        },
        Way {
            title: if placeless {
                "By compass, or by the pole star"
            } else {
                "By compass"
            },
            says: words(north.compass.why_not.as_ref(), &north.compass.says),
            names: "",
            columns: Vec::new(),
            rows: Vec::new(),
        },
        Way {
            title: "By the pole star",
            says: words(north.polaris.why_not.as_ref(), &north.polaris.says),
            names: "Hour",
            columns: polaris_heads(clock),
            rows: polaris_rows(&north.polaris, units),
        },
        Way {
            title: "From the pegs to the plate",
            says: north.marking.clone(),
            names: "",
            columns: Vec::new(),
            rows: Vec::new(),
        },
    ];
    ways.retain(|way| !(placeless && way.title == "By the pole star"));
    ways
}

fn words(why_not: Option<&String>, says: &[String]) -> Vec<String> {
    why_not.into_iter().chain(says).cloned().collect()
}

fn noon_words(north: &North) -> Vec<String> {
    let mut words = words(north.noon.why_not.as_ref(), &north.noon.says);
    words.push("Never look at the sun, with bare eyes or through anything: watch the shadow on the ground.".to_owned());
    words
}

fn noon_heads(clock: &str) -> Vec<String> {
    vec![
        format!("Noon by {clock}"),
        "Sun above the horizon".into(),
        "Shadow, for each 1 of height".into(),
        "It points".into(),
    ]
}

fn noon_rows(noon: &Noon, units: Units) -> Vec<Vec<String>> {
    let row = |day: &stillground::stages::north::NoonDay| {
        vec![
            day.at.day().to_owned(),
            day.at.exact().to_owned(),
            units.say(day.sun_altitude_deg, Degree),
            units.say(day.shadow_ratio, One),
            day.shadow_points.to_owned(),
        ]
    };
    noon.days.iter().map(row).collect()
}

fn polaris_heads(clock: &str) -> Vec<String> {
    vec![
        format!("Aside of true north, at the hour by {clock}"),
        "Above the horizon".to_owned(),
    ]
}

fn polaris_rows(polaris: &Polaris, units: Units) -> Vec<Vec<String>> {
    let row = |at: &stillground::stages::north::PolarisAt| {
        let hundredths = (at.bearing_deg.abs() * 100.0).round() / 100.0;
        let side = match at.bearing_deg {
            _ if hundredths == 0.0 => "",
            bearing if bearing < 0.0 => " west",
            _ => " east",
        };
        vec![
            at.at.short().to_owned(),
            format!("{}{side}", units.say(hundredths, Degree)),
            units.say(at.altitude_deg, Degree),
        ]
    };
    polaris.hours.iter().map(row).collect()
}
