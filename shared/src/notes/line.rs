//! A line of calculation that is worked by the very inputs that it prints.

use super::{Notes, Working};
use crate::figure::UnitOf;
use crate::source::Source;

/// A line of calculation whose inputs are still quantities: what it [`gives`](Line::gives) is found from these alone, so that the
/// printed numbers are those that the rule was called with.
///
/// # Example
/// ```
/// use stillground::figure::{Kilonewton, KilonewtonMetre, Metre};
/// use stillground::notes::Line;
/// use stillground::source::Source;
/// use stillground::units::{kilonewton, metre, newton_metre};
///
/// let moment = Line::new("a.moment", "Moment", "M = H z", Source::derived("statics"))
///     .with("H", kilonewton::new(0.5), Kilonewton)
///     .with("z", metre::new(2.0), Metre)
///     .gives("M", KilonewtonMetre, |(push, height)| push * height);
/// assert_eq!(newton_metre::get(moment.value), 1000.0);
/// assert_eq!((moment.working.inputs[1].value, moment.working.value), (2.0, 1.0));
/// ```
#[derive(Debug, Clone)]
pub struct Line<I> {
    working: Working,
    inputs: I,
}

/// A quantity and the line of calculation that gave it.
#[derive(Debug, Clone)]
pub struct Worked<Q> {
    /// The quantity.
    pub value: Q,
    /// The line.
    pub working: Working,
}

impl Line<()> {
    /// Starts a line.
    pub fn new(
        id: &'static str,
        title: impl Into<String>,
        formula: &'static str,
        source: Source,
    ) -> Self {
        Self {
            working: Working::new(id, title, formula, source),
            inputs: (),
        }
    }
}

impl<I> Line<I> {
    /// Ends it: the rule is called with the inputs in the order in which they were named.
    pub fn gives<Q: Copy>(
        self,
        symbol: &'static str,
        unit: impl UnitOf<Q>,
        rule: impl FnOnce(I) -> Q,
    ) -> Worked<Q> {
        let value = rule(self.inputs);
        Worked {
            value,
            working: self.working.gives(symbol, value, unit),
        }
    }
}

impl<Q> Worked<Q> {
    /// Puts its line with the others, where the quantity is not needed again.
    pub fn note(self, notes: &mut Notes) {
        notes.working(self.working);
    }

    /// The quantity, its line put with the others.
    pub fn noted(self, notes: &mut Notes) -> Q {
        notes.working(self.working);
        self.value
    }
}

macro_rules! one_more {
    ($(($($input:ident)*);)*) => {$(
        impl<$($input: Copy),*> Line<($($input,)*)> {
            /// Names one more input.
            pub fn with<Next: Copy>(
                self,
                symbol: &'static str,
                quantity: Next,
                unit: impl UnitOf<Next>,
            ) -> Line<($($input,)* Next,)> {
                #[allow(non_snake_case, reason = "each input is named as its type")]
                let ($($input,)*) = self.inputs;
                Line {
                    working: self.working.with(symbol, quantity, unit),
                    inputs: ($($input,)* quantity,),
                }
            }
        }
    )*};
}

one_more! {
    ();
    (A);
    (A B);
    (A B C);
    (A B C D);
    (A B C D E);
    (A B C D E F);
    (A B C D E F G);
    (A B C D E F G H);
}
