//! The tables of a store, as its own schema names them, and their rows on the way from one database to the other.

use sqlx::sqlite::SqliteConnection;

use crate::store::connection::{Row, Value};
use crate::store::{Outcome, StoreFailure};

/// Most rows in one statement.
const MOST_ROWS: usize = 100;
/// A statement is sent when its rows weigh this much, bytes: a row may hold a picture.
const MOST_BYTES: usize = 1 << 20;

/// A table and its columns.
pub(super) struct Table {
    pub(super) name: String,
    columns: Vec<(String, Kind)>,
}

/// The kinds of value that both databases have.
#[derive(Clone, Copy)]
enum Kind {
    Text,
    Whole,
    Number,
    Bytes,
}

/// A value on its way.
enum Carried {
    Text(Option<String>),
    Whole(Option<i64>),
    Number(Option<f64>),
    Bytes(Option<Vec<u8>>),
}

/// Rows on their way, as many as one statement takes.
#[derive(Default)]
pub(super) struct Load {
    values: Vec<Carried>,
    rows: usize,
    bytes: usize,
}

/// The tables of a SQLite store in the order in which they were made: none refers to a later one.
pub(super) async fn tables(file: &mut SqliteConnection) -> Outcome<Vec<Table>> {
    let sql = "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY rowid";
    let names: Vec<String> = sqlx::query_scalar(sql).fetch_all(&mut *file).await?;
    let mut tables = Vec::with_capacity(names.len());
    for name in names {
        let columns: Vec<(String, String)> =
            sqlx::query_as("SELECT name, type FROM pragma_table_info($1) ORDER BY cid")
                .bind(&name)
                .fetch_all(&mut *file)
                .await?;
        let columns = columns
            .into_iter()
            .map(|(column, kind)| Ok((column, Kind::of(&name, &kind)?)))
            .collect::<Outcome<_>>()?;
        tables.push(Table { name, columns });
    }
    Ok(tables)
}

impl Kind {
    fn of(table: &str, declared: &str) -> Outcome<Self> {
        match declared {
            "TEXT" => Ok(Self::Text),
            "INTEGER" | "INT" => Ok(Self::Whole),
            "REAL" => Ok(Self::Number),
            "BLOB" => Ok(Self::Bytes),
            other => Err(StoreFailure::Foreign(format!(
                "its table {table} has a column of kind {other}"
            ))),
        }
    }
}

impl Table {
    /// Reads all rows.
    pub(super) fn select(&self) -> String {
        format!("SELECT {} FROM {}", self.names(), self.name)
    }

    /// Counts the rows.
    pub(super) fn count(&self) -> String {
        format!("SELECT count(*) FROM {}", self.name)
    }

    /// Adds as many rows as a load has.
    pub(super) fn insert(&self, load: &Load) -> String {
        let width = self.columns.len();
        let row = |row: usize| {
            let places: Vec<_> = (1..=width)
                .map(|column| format!("${}", row * width + column))
                .collect();
            format!("({})", places.join(", "))
        };
        let rows: Vec<_> = (0..load.rows).map(row).collect();
        format!(
            "INSERT INTO {} ({}) VALUES {}",
            self.name,
            self.names(),
            rows.join(", ")
        )
    }

    fn names(&self) -> String {
        let names: Vec<_> = self.columns.iter().map(|(name, _)| name.as_str()).collect();
        names.join(", ")
    }

    /// Takes a row on.
    pub(super) fn take(&self, row: &Row, load: &mut Load) -> Outcome<()> {
        for (column, (_, kind)) in self.columns.iter().enumerate() {
            let value = match kind {
                Kind::Text => Carried::Text(row.get(column)?),
                Kind::Whole => Carried::Whole(row.get(column)?),
                Kind::Number => Carried::Number(row.get(column)?),
                Kind::Bytes => Carried::Bytes(row.get(column)?),
            };
            load.bytes += value.bytes();
            load.values.push(value);
        }
        load.rows += 1;
        Ok(())
    }
}

impl Load {
    pub(super) fn is_full(&self) -> bool {
        self.rows >= MOST_ROWS || self.bytes >= MOST_BYTES
    }

    pub(super) fn is_empty(&self) -> bool {
        self.rows == 0
    }

    pub(super) fn values(&self) -> Vec<Value<'_>> {
        self.values.iter().map(Carried::value).collect()
    }
}

impl Carried {
    fn bytes(&self) -> usize {
        match self {
            Self::Text(text) => text.as_ref().map_or(0, String::len),
            Self::Bytes(bytes) => bytes.as_ref().map_or(0, Vec::len),
            Self::Whole(_) | Self::Number(_) => 8,
        }
    }

    fn value(&self) -> Value<'_> {
        match self {
            Self::Text(text) => Value::Text(text.as_deref()),
            Self::Whole(whole) => Value::Whole(*whole),
            Self::Number(number) => Value::Number(*number),
            Self::Bytes(bytes) => Value::Bytes(bytes.as_deref()),
        }
    }
}
