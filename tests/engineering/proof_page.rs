//! The tables of `docs/proof-validation.md`: each is what its test found, and the test says when the page has another.

const PLACE: &str = "docs/proof-validation.md";

/// Holds a table of the page against what was found; with `STILLGROUND_BLESS=1` it is written anew.
pub fn keeps(name: &str, table: &str) {
    let place = stillground_tests::workspace().join(PLACE);
    let page = std::fs::read_to_string(&place).unwrap();
    let (begin, end) = (
        format!("<!-- {name} -->\n"),
        format!("<!-- end of {name} -->"),
    );
    let (before, rest) = page.split_once(&begin).unwrap();
    let (kept, after) = rest.split_once(&end).unwrap();
    if std::env::var_os("STILLGROUND_BLESS").is_some() {
        std::fs::write(&place, format!("{before}{begin}{table}{end}{after}")).unwrap();
        return;
    }
    assert_eq!(
        kept, table,
        "{PLACE} has another table {name}; write it anew with STILLGROUND_BLESS=1 and the same test"
    );
}
