//! The tree of an expression as written, before its names are looked up.

/// A stretch of the expression, in bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Span {
    /// First byte.
    pub start: usize,
    /// The byte after the last.
    pub end: usize,
}

impl Span {
    /// From `start` up to `end`, which does not belong to it.
    #[must_use]
    pub const fn new(start: usize, end: usize) -> Self {
        Self { start, end }
    }

    /// From the beginning of this one to the end of the other.
    #[must_use]
    pub const fn to(self, other: Self) -> Self {
        Self { start: self.start, end: other.end }
    }
}

/// A comparison.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Comparison {
    /// `<`
    Less,
    /// `<=`
    AtMost,
    /// `>`
    More,
    /// `>=`
    AtLeast,
    /// `=`
    Equal,
    /// `!=`
    Unequal,
}

impl Comparison {
    /// As it is written.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Less => "<",
            Self::AtMost => "<=",
            Self::More => ">",
            Self::AtLeast => ">=",
            Self::Equal => "=",
            Self::Unequal => "!=",
        }
    }

    /// The comparison that holds with its sides changed over.
    #[must_use]
    pub const fn turned(self) -> Self {
        match self {
            Self::Less => Self::More,
            Self::AtMost => Self::AtLeast,
            Self::More => Self::Less,
            Self::AtLeast => Self::AtMost,
            same => same,
        }
    }

    /// Whether it holds of two values in this order.
    #[must_use]
    pub fn holds(self, order: std::cmp::Ordering) -> bool {
        match self {
            Self::Less => order.is_lt(),
            Self::AtMost => order.is_le(),
            Self::More => order.is_gt(),
            Self::AtLeast => order.is_ge(),
            Self::Equal => order.is_eq(),
            Self::Unequal => order.is_ne(),
        }
    }
}

/// A number as written.
#[derive(Clone, Debug, PartialEq)]
pub struct Literal {
    /// The number.
    pub value: f64,
    /// The unit's symbol; empty if there is none.
    pub unit: String,
}

/// An expression with its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Expr {
    /// Where it stands.
    pub span: Span,
    /// What it is.
    pub kind: ExprKind,
}

/// What an expression is.
#[derive(Clone, Debug, PartialEq)]
pub enum ExprKind {
    /// Any of them.
    Or(Vec<Expr>),
    /// All of them.
    And(Vec<Expr>),
    /// Its opposite.
    Not(Box<Expr>),
    /// Two sums compared.
    Compare(Box<Expr>, Comparison, Box<Expr>),
    /// One of a list.
    In(Box<Expr>, Vec<Expr>),
    /// `signs has ID`.
    SignsHas(String, Span),
    /// `… is absent`.
    IsAbsent(Box<Expr>),
    /// A number.
    Number(Literal),
    /// A fact, a marker, a choice: ids joined by dots.
    Path(String),
    /// A fact with arguments.
    Call(String, Vec<Argument>),
    /// The sum of two.
    Add(Box<Expr>, Box<Expr>),
    /// The difference of two.
    Subtract(Box<Expr>, Box<Expr>),
    /// A multiple.
    Times(Box<Expr>, f64),
    /// A fraction.
    Over(Box<Expr>, f64),
    /// The negative.
    Negative(Box<Expr>),
}

/// An argument of a call.
#[derive(Clone, Debug, PartialEq)]
pub enum Argument {
    /// A sum.
    Value(Expr),
    /// `from MARKER`.
    From(MarkerExpr),
    /// `within 28 days`.
    Within(Literal, Span),
}

/// `M ± duration`.
#[derive(Clone, Debug, PartialEq)]
pub struct MarkerExpr {
    /// Where it stands.
    pub span: Span,
    /// A path or a call.
    pub marker: Box<Expr>,
    /// The duration added to it; negative when it is taken off.
    pub offset: Option<(Literal, Span)>,
}

/// One side of a window: the first marker that is not absent.
#[derive(Clone, Debug, PartialEq)]
pub struct SideExpr {
    /// `M ± duration else M2 ± duration …`.
    pub choices: Vec<MarkerExpr>,
}

/// `after` of an expectation: `7..14 days`, `20 days`, `550 °Cd`.
#[derive(Clone, Debug, PartialEq)]
pub struct AfterExpr {
    /// The least.
    pub from: f64,
    /// The most; the same when only one number is written.
    pub to: f64,
    /// The unit of both.
    pub unit: String,
    /// Where it stands.
    pub span: Span,
}
