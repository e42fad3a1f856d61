//! Steps that a rule makes by its nature: a row of a table, a class of a standard, a size that is sold. A step that stands
//! not here is a fault.

/// A step, and the rule that makes it.
pub struct Step {
    /// How the answer's path begins.
    pub field: &'static str,
    /// How the figure's name begins.
    pub figure: &'static str,
    /// Answers at which the rule steps; none listed: the rule has its own rows.
    pub at: &'static [f64],
    /// The rule.
    pub rule: &'static str,
}

/// The rule that makes a step of a figure somewhere along an answer; none: nobody can name it.
#[must_use]
pub fn rule_of(field: &str, figure: &str) -> Option<&'static str> {
    of(field, figure)
        .find(|step| step.at.is_empty())
        .map(|step| step.rule)
}

/// The rule that makes a step of a figure between two near answers.
#[must_use]
pub fn rule_between(field: &str, figure: &str, answers: [f64; 2]) -> Option<&'static str> {
    let slack = 1e-3 * answers[0].abs().max(answers[1].abs()).max(1e-3);
    let (low, high) = (
        answers[0].min(answers[1]) - slack,
        answers[0].max(answers[1]) + slack,
    );
    of(field, figure)
        .find(|step| step.at.iter().any(|at| (low..=high).contains(at)))
        .map(|step| step.rule)
}

fn of<'a>(field: &'a str, figure: &'a str) -> impl Iterator<Item = &'static Step> + 'a {
    STEPS
        .iter()
        .filter(move |step| field.starts_with(step.field) && figure.starts_with(step.figure))
}

/// Bounds of the table of resin times, C.
const RESIN_ROWS: &[f64] = &[-10.0, 0.0, 5.0, 10.0, 15.0, 20.0, 30.0, 40.0];

const fn step(
    field: &'static str,
    figure: &'static str,
    at: &'static [f64],
    rule: &'static str,
) -> Step {
    Step {
        field,
        figure,
        at,
        rule,
    }
}

/// The steps.
pub const STEPS: &[Step] = &[
    step(
        "anchors.concrete_temperature_c",
        "",
        RESIN_ROWS,
        "a row of the table of resin times",
    ),
    step(
        "work.temperature_c",
        "",
        RESIN_ROWS,
        "a row of the table of resin times, whose concrete is as warm as the work; EN 13670 Table F.2, curing by rows of temperature",
    ),
    step(
        "work.temperature_c",
        "",
        &[25.0],
        "EN 13670 Table F.2, curing by rows of temperature",
    ),
    step(
        "anchors.service_temperature_c",
        "",
        &[],
        "a row of the product's own bond strengths by temperature",
    ),
    step(
        "anchors.installation_factor",
        "",
        &[1.1, 1.3],
        "ACI 318-19 17.5.3: a product's category, from its installation factor",
    ),
    step(
        "load.exposure_s",
        "",
        &[1.0, 2.0],
        "an exposure up to a second is a frame; a guider corrects within an exposure longer than its interval, 2 s where none is said",
    ),
    step(
        "block.side_contact_",
        "",
        &[0.0],
        "a band of contact holds by the reciprocal of its width's logarithm, so that the narrowest holds much more than none",
    ),
    step(
        "load.asked_growth_ratio",
        "quiet",
        &[],
        "between posts the movement rises and falls with the distance, and the farthest place that shows is at a shallow crossing",
    ),
    step(
        "block.upstand_m",
        "done",
        &[0.0],
        "a block that stands out of the ground has a form, which stands until the concrete is hard",
    ),
    step(
        "pier.gap_mm",
        "",
        &[0.0],
        "a plate without a gap lies on the concrete, and no longer on nuts",
    ),
    step(
        "site.mean_annual_temperature_c",
        "",
        &[18.0],
        "a place of 18 °C over the year has no frost in the ground",
    ),
    step(
        "excavation.max_",
        "block.",
        &[],
        "a block's sides and depth are chosen in steps; where the room is a step less deep, it is wider",
    ),
    step(
        "anchors.relaxation_factor",
        "check anchors.joint_closed",
        &[],
        "preload that is lost with the logarithm of time is gone where its factor is one over the decades, and what uses it goes \
         beyond all bounds",
    ),
    step(
        "load.inertia_kg_m2",
        "",
        &[0.0],
        "a load without inertia has no swing of its own, by which its mount's frequency could tell a stiffness",
    ),
    step(
        "floor.walk_speed_m_s",
        "walk",
        &[],
        "a walk is of whole steps: on a stride a little longer the last one falls beyond the path",
    ),
    step(
        "floor.walk_speed_m_s",
        "conduct second_person",
        &[],
        "who follows in step is a whole number of steps behind",
    ),
    step(
        "floor.pace_hz",
        "walk",
        &[],
        "a walk is of whole steps: on a stride a little longer the last one falls beyond the path",
    ),
    step(
        "floor.pace_hz",
        "conduct second_person",
        &[],
        "who follows in step is a whole number of steps behind",
    ),
];
