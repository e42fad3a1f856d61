//! The tests of the store on a SQLite file.

crate::store::tests_on!(on_sqlite);
