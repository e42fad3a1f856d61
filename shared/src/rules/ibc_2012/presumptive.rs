//! Presumptive load-bearing values.
//! IBC 2012, Table 1806.2; the later editions repeat the figures.

use crate::source::Source;

/// Source of the table.
pub const SOURCE: Source =
    Source::second_hand("IBC", "2012", "Table 1806.2, vertical foundation pressure");

/// Source of what the table is not for.
pub const UNFIT: Source = Source::second_hand(
    "IBC",
    "2012",
    "1806.2, last paragraph: no value for mud, organic soil, peat and unprepared fill",
);
