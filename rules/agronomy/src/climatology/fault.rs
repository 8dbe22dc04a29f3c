//! What can be wrong with the bytes of a grid.

/// Why the bytes are no grid.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum GridFault {
    /// The bytes end too early.
    #[error("the grid ends within its {part}: expected {expected} bytes there, found {found}")]
    EndsEarly {
        /// The part that is cut.
        part: &'static str,
        /// Bytes that the part has.
        expected: usize,
        /// Bytes that are left.
        found: usize,
    },
    /// The first four bytes are not `LCLG`.
    #[error("the grid does not begin with `LCLG`")]
    NoGrid,
    /// A layout that is not known here.
    #[error("the grid has layout {version}, expected 1")]
    Version {
        /// As it stands there.
        version: u16,
    },
    /// Rows and columns that do not go round the world in the stated step.
    #[error("the grid has {rows} rows and {columns} columns at a step of {step} quarter degrees")]
    Shape {
        /// Quarters of a degree.
        step: u16,
        /// Rows.
        rows: u32,
        /// Columns.
        columns: u32,
    },
    /// A run that leaves its row or goes back.
    #[error("row {row} of the grid's index has a run that does not fit")]
    Run {
        /// The row, 0 at the north pole.
        row: usize,
    },
    /// The index names more or fewer points than the head.
    #[error("the grid's index names {counted} points, its head {stated}")]
    Count {
        /// By the index.
        counted: usize,
        /// By the head.
        stated: usize,
    },
    /// A value that no place on land has.
    #[error("the {part} of point {point} is {value}, expected {min} to {max}")]
    Value {
        /// What it is, with its unit.
        part: &'static str,
        /// The number of the point.
        point: usize,
        /// As it stands there.
        value: i32,
        /// The least.
        min: i32,
        /// The most.
        max: i32,
    },
    /// Bytes after the end.
    #[error("{bytes} bytes follow the end of the grid")]
    GoesOn {
        /// How many.
        bytes: usize,
    },
}
