//! Browser suite.
