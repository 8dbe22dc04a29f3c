//! What a key may do.

use std::fmt;

/// One thing that a key may do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Scope {
    /// Read, bring in and change drafts.
    Edit,
    /// Publish, plan, undo, hold back.
    Publish,
    /// Review what was held back.
    Review,
    /// Read the audit trail.
    Audit,
    /// Send weather.
    Weather,
}

impl Scope {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Edit, Self::Publish, Self::Review, Self::Audit, Self::Weather];

    /// As it is written.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Edit => "edit",
            Self::Publish => "publish",
            Self::Review => "review",
            Self::Audit => "audit",
            Self::Weather => "weather",
        }
    }

    /// From how it is written.
    #[must_use]
    pub fn find(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|scope| scope.name() == name)
    }
}

impl fmt::Display for Scope {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}
