//! Values of a statement, in the kinds that both databases have.

use sqlx::query::Query;
use sqlx::{Database, Encode, SqlSafeStr, Type};

/// A value for a `$1`: text, whole number, number or bytes, or none of that kind.
#[derive(Debug, Clone, Copy)]
pub(in crate::store) enum Value<'v> {
    Text(Option<&'v str>),
    Whole(Option<i64>),
    Number(Option<f64>),
    Bytes(Option<&'v [u8]>),
}

/// The values of a statement, in the order of their `$1`, `$2`, …
macro_rules! values {
    ($($value:expr),* $(,)?) => { &[$($crate::store::connection::Value::from($value)),*] };
}
pub(in crate::store) use values;

/// A statement with its values.
pub(in crate::store) fn bound<'q, D: Database>(
    sql: impl SqlSafeStr,
    values: &[Value<'_>],
) -> Query<'q, D, D::Arguments>
where
    for<'v> Option<&'v str>: Encode<'v, D> + Type<D>,
    for<'v> Option<&'v [u8]>: Encode<'v, D> + Type<D>,
    for<'v> Option<i64>: Encode<'v, D> + Type<D>,
    for<'v> Option<f64>: Encode<'v, D> + Type<D>,
{
    values
        .iter()
        .fold(sqlx::query(sql), |query, value| match *value {
            Value::Text(text) => query.bind(text),
            Value::Whole(whole) => query.bind(whole),
            Value::Number(number) => query.bind(number),
            Value::Bytes(bytes) => query.bind(bytes),
        })
}

impl<'v> From<&'v str> for Value<'v> {
    fn from(text: &'v str) -> Self {
        Self::Text(Some(text))
    }
}

impl<'v> From<&'v String> for Value<'v> {
    fn from(text: &'v String) -> Self {
        Self::Text(Some(text))
    }
}

impl<'v> From<&'v Option<String>> for Value<'v> {
    fn from(text: &'v Option<String>) -> Self {
        Self::Text(text.as_deref())
    }
}

impl<'v> From<Option<&'v str>> for Value<'v> {
    fn from(text: Option<&'v str>) -> Self {
        Self::Text(text)
    }
}

impl From<i64> for Value<'_> {
    fn from(whole: i64) -> Self {
        Self::Whole(Some(whole))
    }
}

impl From<u32> for Value<'_> {
    fn from(whole: u32) -> Self {
        Self::Whole(Some(i64::from(whole)))
    }
}

impl From<Option<i64>> for Value<'_> {
    fn from(whole: Option<i64>) -> Self {
        Self::Whole(whole)
    }
}

impl From<f64> for Value<'_> {
    fn from(number: f64) -> Self {
        Self::Number(Some(number))
    }
}

impl From<Option<f64>> for Value<'_> {
    fn from(number: Option<f64>) -> Self {
        Self::Number(number)
    }
}

impl<'v> From<&'v [u8]> for Value<'v> {
    fn from(bytes: &'v [u8]) -> Self {
        Self::Bytes(Some(bytes))
    }
}

impl<'v> From<&'v Vec<u8>> for Value<'v> {
    fn from(bytes: &'v Vec<u8>) -> Self {
        Self::Bytes(Some(bytes))
    }
}

impl<'v, const N: usize> From<&'v [u8; N]> for Value<'v> {
    fn from(bytes: &'v [u8; N]) -> Self {
        Self::Bytes(Some(bytes))
    }
}

impl<'v> From<Option<&'v [u8]>> for Value<'v> {
    fn from(bytes: Option<&'v [u8]>) -> Self {
        Self::Bytes(bytes)
    }
}
