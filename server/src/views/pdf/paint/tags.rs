//! The tag tree: what each piece of a page is to a screen reader.

use std::num::NonZeroU16;

use krilla::tagging::{Identifier, TableHeaderScope, Tag, TagGroup, TagTree};

use crate::views::pdf::page::Role;

/// The tree as it grows.
#[derive(Default)]
pub struct Tags {
    groups: Vec<TagGroup>,
    table: Option<Table>,
}

struct Table {
    number: usize,
    rows: Vec<(usize, TagGroup)>,
}

impl Tags {
    /// Adds a piece.
    pub fn add(&mut self, role: &Role, identifier: Identifier) {
        if let Role::Cell { table, row, head } = *role {
            return self.cell(table, row, head, identifier);
        }
        let group = match role {
            Role::Title => {
                TagGroup::with_children(Tag::Hn(NonZeroU16::MIN, None), vec![identifier.into()])
            }
            Role::Heading => TagGroup::with_children(
                Tag::Hn(NonZeroU16::MIN.saturating_add(1), None),
                vec![identifier.into()],
            ),
            Role::Figure(alt) => {
                TagGroup::with_children(Tag::Figure(Some(alt.clone())), vec![identifier.into()])
            }
            Role::Paragraph => TagGroup::with_children(Tag::P, vec![identifier.into()]),
            Role::Ornament | Role::Cell { .. } => return,
        };
        self.close_table();
        self.groups.push(group);
    }

    fn cell(&mut self, number: usize, row: usize, head: bool, identifier: Identifier) {
        if self
            .table
            .as_ref()
            .is_some_and(|table| table.number != number)
        {
            self.close_table();
        }
        let table = self.table.get_or_insert_with(|| Table {
            number,
            rows: Vec::new(),
        });
        if table.rows.last().is_none_or(|(last, _)| *last != row) {
            table.rows.push((row, TagGroup::new(Tag::TR)));
        }
        let cell = if head {
            TagGroup::with_children(Tag::TH(TableHeaderScope::Column), vec![identifier.into()])
        } else {
            TagGroup::with_children(Tag::TD, vec![identifier.into()])
        };
        if let Some((_, group)) = table.rows.last_mut() {
            group.push(cell);
        }
    }

    fn close_table(&mut self) {
        if let Some(table) = self.table.take() {
            let rows = table.rows.into_iter().map(|(_, row)| row.into()).collect();
            self.groups.push(TagGroup::with_children(Tag::Table, rows));
        }
    }

    /// The whole tree.
    #[must_use]
    pub fn finish(mut self) -> TagTree {
        self.close_table();
        let mut tree = TagTree::new().with_lang(Some("en-GB".to_owned()));
        self.groups.into_iter().for_each(|group| tree.push(group));
        tree
    }
}
