//! A check that a person has to answer, with its figures still shown.

use super::{Check, Verdict};

impl Check {
    /// The same check, put to somebody who looks at the place, where nobody can know the answer from a form.
    pub fn ask_when(mut self, unknowable: bool) -> Self {
        if unknowable {
            self.verdict = Verdict::Unknown;
        }
        self
    }

    /// The same check, which asks where it would fail: beyond its limit somebody has to look, and may find that it stands.
    pub fn asks_beyond(self) -> Self {
        let beyond = self.verdict == Verdict::Fails;
        self.ask_when(beyond)
    }
}
