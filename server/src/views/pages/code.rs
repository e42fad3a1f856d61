//! The square code of a link, to be scanned from the screen.

use std::fmt::Write as _;

use fast_qr::{ECL, QRBuilder};

/// Modules left free round a code, ISO/IEC 18004.
const QUIET: usize = 4;

/// The code of an address as SVG; none when the address is too long for one.
#[must_use]
pub fn svg(address: &str) -> Option<String> {
    let code = QRBuilder::new(address).ecl(ECL::M).build().ok()?;
    let mut path = String::new();
    for row in 0..code.size {
        for column in (0..code.size).filter(|&column| code[row][column].value()) {
            // Writing into a string does not fail.
            let _ = write!(path, "M{} {}h1v1h-1z", column + QUIET, row + QUIET);
        }
    }
    let side = code.size + 2 * QUIET;
    Some(format!(
        "<svg class=\"code\" viewBox=\"0 0 {side} {side}\" role=\"img\" aria-label=\"The same link as a code to scan\">\
         <rect width=\"{side}\" height=\"{side}\"/><path d=\"{path}\"/></svg>"
    ))
}

#[cfg(test)]
mod tests {
    use super::svg;

    #[test]
    fn a_link_has_a_code_and_a_text_that_is_too_long_has_none() {
        let code = svg("https://planner.example/p/0123456789abcdef0123456789abcdef").unwrap();
        assert!(
            code.starts_with("<svg") && code.contains("M4 4h1v1h-1z"),
            "{code}"
        );
        assert_eq!(svg(&"x".repeat(5000)), None);
    }
}
