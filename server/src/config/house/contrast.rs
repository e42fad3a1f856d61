//! The contrast of two colours, as WCAG 2.2 defines it.

use std::fmt;

/// A colour in sRGB: red, green and blue.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Colour(pub u8, pub u8, pub u8);

impl Colour {
    /// Reads `#rrggbb`.
    pub(super) fn parse(text: &str) -> Option<Self> {
        let digits = text
            .strip_prefix('#')
            .filter(|digits| digits.len() == 6 && digits.bytes().all(|b| b.is_ascii_hexdigit()))?;
        let part = |from: usize| u8::from_str_radix(digits.get(from..from + 2)?, 16).ok();
        Some(Self(part(0)?, part(2)?, part(4)?))
    }

    /// Relative luminance (WCAG 2.2, definitions).
    fn luminance_ratio(self) -> f64 {
        let linear = |part: u8| {
            let part = f64::from(part) / 255.0;
            if part <= 0.04045 {
                part / 12.92
            } else {
                ((part + 0.055) / 1.055).powf(2.4)
            }
        };
        0.2126 * linear(self.0) + 0.7152 * linear(self.1) + 0.0722 * linear(self.2)
    }
}

impl fmt::Display for Colour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{:02x}{:02x}{:02x}", self.0, self.1, self.2)
    }
}

/// Contrast ratio, from 1 to 21 (WCAG 2.2, definitions).
pub(super) fn ratio(a: Colour, b: Colour) -> f64 {
    let (a, b) = (a.luminance_ratio(), b.luminance_ratio());
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Black on white is 21 by the definition; #767676 on white is known as the lightest grey that reaches 4.5.
    #[test]
    fn contrasts_that_are_known() {
        let white = Colour(255, 255, 255);
        assert!((ratio(Colour(0, 0, 0), white) - 21.0).abs() < 1e-9);
        assert!(
            ratio(Colour(0x76, 0x76, 0x76), white) >= 4.5
                && ratio(Colour(0x77, 0x77, 0x77), white) < 4.5
        );
        assert!((ratio(white, white) - 1.0).abs() < 1e-12);
    }
}
