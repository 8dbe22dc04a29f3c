//! A fault: something that is wrong with a rule set, said so that its author can mend it.

use std::fmt;

use serde::Serialize;

use crate::prove::{Certificate, Witness};

/// Where a fault stands: a file of the pack, and line and column in it, both counted from 1.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize)]
pub struct Place {
    /// Path of the file inside the pack, with forward slashes.
    pub file: String,
    /// Line, from 1; 0 when the fault belongs to the file as a whole.
    pub line: u32,
    /// Column in characters, from 1; 0 when the fault belongs to the line as a whole.
    pub column: u32,
    /// How many characters the fault covers, 0 when only its beginning is known.
    pub width: u32,
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.file)?;
        if self.line > 0 {
            write!(f, ":{}", self.line)?;
            if self.column > 0 {
                write!(f, ":{}", self.column)?;
            }
        }
        Ok(())
    }
}

/// How much a fault weighs: an error makes the set unloadable, a warning does not.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Weight {
    /// The set can't be loaded.
    Error,
    /// The set loads; a person should look.
    Warning,
}

/// One thing that is wrong with a rule set.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Fault {
    /// Where.
    pub place: Place,
    /// Which check found it; `lammas fault CODE` explains it.
    pub code: &'static str,
    /// How much it weighs.
    pub weight: Weight,
    /// What is wrong, in the author's words: lower case, no full stop.
    pub message: String,
    /// How to put it right, where that is known.
    pub help: Option<String>,
    /// Other places that belong to it, each with a remark.
    pub related: Vec<(Place, String)>,
    /// A question that shows it, where it was proven.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub witness: Option<Witness>,
    /// What was judged, where it was proven that something never comes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub certificate: Option<Certificate>,
}

impl Fault {
    /// A fault of weight error.
    #[must_use]
    pub fn error(code: &'static str, place: Place, message: impl Into<String>) -> Self {
        Self {
            place,
            code,
            weight: Weight::Error,
            message: message.into(),
            help: None,
            related: Vec::new(),
            witness: None,
            certificate: None,
        }
    }

    /// A fault of weight warning.
    #[must_use]
    pub fn warning(code: &'static str, place: Place, message: impl Into<String>) -> Self {
        Self { weight: Weight::Warning, ..Self::error(code, place, message) }
    }

    /// The same fault with a cure.
    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Self {
        self.help = Some(help.into());
        self
    }

    /// Whether a question or a certificate stands behind it.
    #[must_use]
    pub const fn is_proven(&self) -> bool {
        self.witness.is_some() || self.certificate.is_some()
    }

    /// The same fault with the nearest known name as its cure, when there is one.
    #[must_use]
    pub fn nearest<'a>(self, word: &str, known: impl IntoIterator<Item = &'a str>) -> Self {
        match crate::nearest::nearest(word, known) {
            Some(name) => self.help(format!("did you mean `{name}`?")),
            None => self,
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let weight = match self.weight {
            Weight::Error => "error",
            Weight::Warning => "warning",
        };
        write!(f, "{}: {weight}[{}]: {}", self.place, self.code, self.message)?;
        if let Some(help) = &self.help {
            write!(f, "\n  help: {help}")?;
        }
        for (place, remark) in &self.related {
            write!(f, "\n  {place}: {remark}")?;
        }
        Ok(())
    }
}

/// Sorted by place, each once.
#[must_use]
pub fn in_order(mut faults: Vec<Fault>) -> Vec<Fault> {
    faults.sort();
    faults.dedup();
    faults
}
