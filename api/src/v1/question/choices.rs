//! The fixed choices of a question.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

// The word is a `tt`: as a `literal` it would not be seen by the maker of the schema, which reads the attribute itself.
macro_rules! choices {
    ($($(#[$about:meta])* $name:ident { $($variant:ident $word:tt $said:literal,)* })*) => {$(
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize, Serialize, ToSchema)]
        pub enum $name {
            $(#[doc = $said] #[serde(rename = $word)] $variant,)*
        }

        impl $name {
            /// Every choice, in order.
            pub const ALL: &[Self] = &[$(Self::$variant),*];

            /// The word for it, as it is sent.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self { $(Self::$variant => $word),* }
            }
        }
    )*};
}

pub(crate) use choices;

choices! {
    /// Where the plant stands.
    Planting {
        Ground "ground" "In open ground.",
        Container "container" "In a pot or tub.",
        RaisedBed "raised-bed" "In a raised bed.",
        Indoor "indoor" "In a room.",
    }
    /// What the pot is made of.
    ContainerMaterial {
        Clay "clay" "Unglazed clay.",
        Plastic "plastic" "Plastic or glazed.",
        Wood "wood" "Wood.",
        Fabric "fabric" "Fabric.",
    }
    /// How much direct sun the place has in the growing season.
    Exposure {
        FullSun "full-sun" "Six hours a day or more.",
        HalfSun "half-sun" "Three to six hours.",
        Shade "shade" "Under three hours.",
        AfternoonSun "afternoon-sun" "Sun in the afternoon only.",
    }
    /// How windy the place is.
    SiteWind {
        Sheltered "sheltered" "Sheltered.",
        Open "open" "Open.",
        Windy "windy" "Windy.",
    }
    /// The texture of the soil: the twelve classes of the United States Department of Agriculture.
    SoilTexture {
        Sand "sand" "Sand.",
        LoamySand "loamy-sand" "Loamy sand.",
        SandyLoam "sandy-loam" "Sandy loam.",
        Loam "loam" "Loam.",
        SiltLoam "silt-loam" "Silt loam.",
        Silt "silt" "Silt.",
        SandyClayLoam "sandy-clay-loam" "Sandy clay loam.",
        ClayLoam "clay-loam" "Clay loam.",
        SiltyClayLoam "silty-clay-loam" "Silty clay loam.",
        SandyClay "sandy-clay" "Sandy clay.",
        SiltyClay "silty-clay" "Silty clay.",
        Clay "clay" "Clay.",
    }
    /// How fast water leaves the soil.
    SoilDrainage {
        Fast "fast" "Fast.",
        Good "good" "Good.",
        Poor "poor" "Poor.",
    }
    /// How the soil feels today, 5 cm down.
    SoilMoisture {
        Dry "dry" "Dry.",
        Moist "moist" "Moist.",
        Wet "wet" "Wet.",
    }
    /// How water is brought to the plant.
    WateringMethod {
        Can "can" "By can or hose.",
        Drip "drip" "By drippers.",
        Basin "basin" "Into a basin around the plant.",
        Sprinkler "sprinkler" "From above.",
    }
    /// A day of the week.
    Weekday {
        Monday "monday" "Monday.",
        Tuesday "tuesday" "Tuesday.",
        Wednesday "wednesday" "Wednesday.",
        Thursday "thursday" "Thursday.",
        Friday "friday" "Friday.",
        Saturday "saturday" "Saturday.",
        Sunday "sunday" "Sunday.",
    }
    /// How bad a sign is.
    SignSeverity {
        Slight "slight" "Slight.",
        Moderate "moderate" "Moderate.",
        Severe "severe" "Severe.",
    }
    /// How strongly the plant grows.
    Vigour {
        Weak "weak" "Weak.",
        Normal "normal" "Normal.",
        Strong "strong" "Strong.",
    }
    /// The language of the answer.
    Language {
        En "en" "English.",
        Es "es" "Spanish.",
    }
    /// In which units amounts are said.
    UnitSystem {
        Si "si" "Metric.",
        Us "us" "United States customary.",
        Both "both" "Both.",
    }
    /// How much is said about each task. What is for safety is said at every detail.
    Detail {
        Brief "brief" "What and how much.",
        Standard "standard" "And why.",
        Full "full" "And how it was reckoned and ranked.",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_choice_is_sent_as_its_word() {
        for texture in SoilTexture::ALL {
            assert_eq!(serde_json::json!(texture), texture.word());
        }
        assert_eq!(SoilTexture::ALL.len(), 12);
    }
}
