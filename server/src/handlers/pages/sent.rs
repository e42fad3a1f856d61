//! A page's form as it arrives: answers by name, for a reader or for a script.

use axum::extract::Form;
use axum::extract::rejection::FormRejection;

use crate::error::Trouble;
use crate::forms::sheet::Sheet;

/// Names and what stands at them, or why they could not be read.
pub type Sent = Result<Form<Vec<(String, String)>>, FormRejection>;

/// The answers of a form.
///
/// # Errors
/// It could not be read.
pub fn sheet(sent: Sent) -> Result<Sheet, Trouble> {
    sent.map(|Form(pairs)| Sheet::sent(pairs))
        .map_err(|_| unread())
}

/// A form that could not be read.
pub fn unread() -> Trouble {
    Trouble::malformed("This form could not be read. Go back, and send it again.")
}
