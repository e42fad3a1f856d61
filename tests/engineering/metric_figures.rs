//! The metric examples' figures and orders are what they were before the catalogue of parts was there: block, pit, column, studs and
//! every line that is ordered. `reference/metric_before.json` is what the version before it said of them (its own command `design`,
//! run once); a part that is not sold would be the one reason for another figure, and these examples have none.

use serde_json::Value;
use stillground::decided::design_plan;
use stillground::halfspace::NoShelf;
use stillground_tests::{close, example};

#[test]
fn metric_examples_have_the_figures_that_they_had() {
    let before: Value = serde_json::from_str(include_str!("reference/metric_before.json")).unwrap();
    let before = before.as_object().unwrap();
    assert_eq!(before.len(), 5);
    for (name, was) in before {
        let design = design_plan(&example(name), &NoShelf).unwrap();
        let now = serde_json::to_value(&design).unwrap();
        let figures = was["figures"].as_object().unwrap();
        assert!(figures.len() > 50, "{name}: {} figures", figures.len());
        for (at, was) in figures {
            let found = now.pointer(at).and_then(Value::as_f64).unwrap();
            close(&format!("{name} {at}"), found, was.as_f64().unwrap(), 1e-9);
        }
        let order = was["order"].as_object().unwrap();
        assert_eq!(order.len(), design.materials.len(), "{name}");
        for line in &design.materials {
            let was = order[line.id].as_f64().unwrap();
            close(&format!("{name} {}", line.id), line.quantity, was, 1e-9);
        }
    }
}
