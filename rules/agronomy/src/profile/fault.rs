//! One thing that is wrong with a profile.

use std::fmt;

use serde::Serialize;

/// One thing that is wrong with a profile: where, and what.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, thiserror::Error)]
pub struct ProfileFault {
    /// Where in the profile, as a JSON pointer: `/normals/tmax_c/6`.
    pub path: String,
    /// What is wrong there: `tmax_c[6] is below tmin_c[6]`.
    pub words: String,
}

impl fmt::Display for ProfileFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.path, self.words)
    }
}
