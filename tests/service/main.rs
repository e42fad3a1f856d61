//! Service suite.
