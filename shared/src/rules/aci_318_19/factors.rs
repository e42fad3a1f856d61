//! Strength reduction factors φ.

use super::clause;
use crate::source::{Source, Standing};

/// Steel.
pub const STEEL: Source = clause("Table 17.5.3(a)", Standing::FromMemory);
/// Concrete in tension and shear.
pub const CONCRETE: Source = clause("Tables 17.5.3(b) and (c)", Standing::SecondHand);

/// How sensitive an anchor is to how it is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Category {
    /// Low sensitivity, high reliability.
    One,
    /// Medium.
    Two,
    /// High sensitivity, low reliability.
    Three,
}

/// Category that corresponds to a European installation factor: 1.0 one, to 1.2 two, above three.
///
/// # Source
/// Judgement: both scales grade sensitivity to setting, from 1.0 to 1.4 and from one to three.
pub fn category(installation_factor: f64) -> Category {
    match installation_factor {
        factor if factor < 1.1 => Category::One,
        factor if factor < 1.3 => Category::Two,
        _ => Category::Three,
    }
}

/// Steel in tension: 0.75 ductile, 0.65 brittle.
///
/// # Source
/// ACI 318-19, Table 17.5.3(a).
pub fn steel_tension_factor(ductile: bool) -> f64 {
    if ductile { 0.75 } else { 0.65 }
}

/// Steel in shear: 0.65 ductile, 0.60 brittle.
///
/// # Source
/// ACI 318-19, Table 17.5.3(a).
pub fn steel_shear_factor(ductile: bool) -> f64 {
    if ductile { 0.65 } else { 0.60 }
}

/// Breakout and bond in tension of post-installed anchors: 0.75, 0.65, 0.55 with supplementary steel; else 0.65, 0.55, 0.45.
///
/// # Source
/// ACI 318-19, Table 17.5.3(b).
pub fn concrete_tension_factor(category: Category, supplementary_steel: bool) -> f64 {
    let without = match category {
        Category::One => 0.65,
        Category::Two => 0.55,
        Category::Three => 0.45,
    };
    if supplementary_steel {
        without + 0.1
    } else {
        without
    }
}

/// Breakout of the edge in shear: 0.75 with supplementary steel, else 0.70.
///
/// # Source
/// ACI 318-19, Table 17.5.3(b).
pub fn concrete_shear_factor(supplementary_steel: bool) -> f64 {
    if supplementary_steel { 0.75 } else { 0.70 }
}

/// Pry-out: 0.70.
///
/// # Source
/// ACI 318-19, Table 17.5.3(c).
pub fn pry_out_factor() -> f64 {
    0.70
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sensitive_product_earns_less() {
        assert!((concrete_tension_factor(category(1.0), false) - 0.65).abs() < 1e-12);
        assert!((concrete_tension_factor(category(1.2), false) - 0.55).abs() < 1e-12);
        assert!((concrete_tension_factor(category(1.4), true) - 0.55).abs() < 1e-12);
    }
}
