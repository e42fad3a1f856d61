//! House suite.
