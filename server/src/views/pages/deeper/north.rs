//! True north on the day, for the mark on plate and template.

use super::{Chapter, Table};
use crate::planned::Planned;
use crate::views::north::{Way, ways};

/// The chapters about north.
pub fn chapters(planned: &Planned) -> Vec<Chapter> {
    ways(&planned.brief, &planned.design)
        .into_iter()
        .map(chapter)
        .collect()
}

fn chapter(way: Way) -> Chapter {
    let named = |row: Vec<String>| {
        let mut cells = row.into_iter();
        Some((cells.next()?, cells.collect()))
    };
    let rows: Vec<(String, Vec<String>)> = way.rows.into_iter().filter_map(named).collect();
    let table = (!rows.is_empty()).then_some(Table {
        names: way.names,
        columns: way.columns,
        rows,
    });
    Chapter {
        title: way.title,
        told: Vec::new(),
        words: way.says,
        table,
        after: Vec::new(),
    }
}
