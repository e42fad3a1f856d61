//! Arithmetic of standards and papers: one formula, one pure function, one clause. Named by document and edition.
