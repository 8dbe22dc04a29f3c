//! The expression language: text -> tokens -> tree, and the tree printed back.

pub mod ast;
pub mod parse;
pub mod print;
pub mod token;
