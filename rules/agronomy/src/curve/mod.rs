//! Daily curves over the climate year from monthly normals.

mod harmonics;
mod row;
mod series;
mod straight;

pub use harmonics::Harmonics;
pub(crate) use harmonics::largest_residual;
pub use row::Row;
pub(crate) use row::SAME;
pub use series::{Aggregate, Series};
pub use straight::straight_lines;
