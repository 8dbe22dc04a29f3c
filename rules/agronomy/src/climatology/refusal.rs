//! Places of which nothing can be said.

/// Why there is no estimate.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Refusal {
    /// A number outside its range.
    #[error("{words}")]
    OutOfRange {
        /// The field: `latitude_deg`, `longitude_deg`, `elevation_m`.
        field: &'static str,
        /// What is wrong: `latitude_deg is 91, expected -90 to 90°`.
        words: String,
    },
    /// The sea, and no land near.
    #[error(
        "there is no land near latitude {latitude_deg}, longitude {longitude_deg}, and a climate can be estimated on land \
         only: check the signs, south and west are negative"
    )]
    NotOnLand {
        /// As asked, degrees.
        latitude_deg: f64,
        /// As asked, degrees.
        longitude_deg: f64,
    },
    /// South of 60° S nothing is stored.
    #[error("latitude {latitude_deg} lies south of 60° S, of which nothing is known here")]
    TooFarSouth {
        /// As asked, degrees.
        latitude_deg: f64,
    },
}
