//! What cannot be kept, and which member says so.

use super::*;

#[test]
fn what_cannot_be_kept_is_said() {
    let site = site();
    let said = |entry: &Entry| {
        entry
            .faults(site.tasks(), &site.items, &site.design.materials)
            .iter()
            .map(|fault| fault.field)
            .collect::<Vec<_>>()
    };
    assert!(said(&done("1", "dig")).is_empty());
    assert_eq!(said(&done("1", "dance")), ["task"]);
    assert_eq!(said(&done("", "dig")), ["id"]);
    assert_eq!(
        said(&Entry {
            who: "x".repeat(500),
            ..done("1", "dig")
        }),
        ["who"]
    );
    assert_eq!(
        said(&Entry {
            who: "  ".into(),
            ..done("1", "dig")
        }),
        ["who"]
    );
    assert!(
        said(&Entry {
            who: "観測者 مرصد 🔭".into(),
            ..done("1", "dig")
        })
        .is_empty()
    );
    assert_eq!(
        said(&Entry::measured("1", "inspect", "colour", 1.0)),
        ["item"]
    );
    assert_eq!(
        said(&Entry::measured("1", "pour", "pit_depth", 1.0)),
        ["item"],
        "an item of another task"
    );
    assert_eq!(
        said(&Entry::measured("1", "inspect", "pit_depth", 900.0)),
        ["value"]
    );
    assert_eq!(
        said(&Entry::measured("1", "inspect", "pit_depth", f64::NAN)),
        ["value"]
    );
    assert_eq!(
        said(&Entry::answered("1", "inspect", "pit_depth", "none")),
        ["value"]
    );
    assert_eq!(
        said(&Entry::answered("1", "inspect", "soil_met", "custard")),
        ["text"]
    );
    assert_eq!(
        said(&Entry::answered("1", "bond", "set_at", "noon")),
        ["text"]
    );
    assert_eq!(
        said(&Entry::answered("1", "bond", "resin_use_by", "2027-02-30")),
        ["text"]
    );
    assert_eq!(
        said(&Entry {
            decides: Some("2".into()),
            ..Entry::new("1", "dig", Kind::Decided)
        }),
        ["text"]
    );
}
