//! The fixed lists of choices. (Plants, traits, stages and signs belong to the pack.)

/// A fixed list of choices.
#[derive(Debug, PartialEq, Eq)]
pub struct ChoiceList {
    /// What is chosen.
    pub name: &'static str,
    /// The choices, in their order.
    pub values: &'static [&'static str],
    /// Whether their order means something, so that `<` may be asked.
    pub ordered: bool,
}

impl ChoiceList {
    /// The position of a choice.
    #[must_use]
    pub fn position(&self, value: &str) -> Option<u16> {
        self.values.iter().position(|v| *v == value).and_then(|at| u16::try_from(at).ok())
    }
}

macro_rules! lists {
    ($($constant:ident $name:literal $ordered:literal [$($value:literal)*])*) => {
        $(#[doc = concat!("Choices of ", $name, ".")]
        pub static $constant: ChoiceList = ChoiceList { name: $name, values: &[$($value),*], ordered: $ordered };)*
        /// All of them.
        pub static ALL: &[&ChoiceList] = &[$(&$constant),*];
    };
}

lists! {
    PLANTING "planting" false ["ground" "container" "raised-bed" "indoor"]
    CONTAINER_MATERIAL "container material" false ["clay" "plastic" "wood" "fabric"]
    EXPOSURE "exposure" false ["full-sun" "half-sun" "shade" "afternoon-sun"]
    WIND "wind" true ["sheltered" "open" "windy"]
    TEXTURE "soil texture" false ["sand" "loamy-sand" "sandy-loam" "loam" "silt-loam" "silt" "sandy-clay-loam" "clay-loam" "silty-clay-loam" "sandy-clay" "silty-clay" "clay"]
    DRAINAGE "drainage" false ["fast" "good" "poor"]
    MOISTURE "soil moisture" true ["dry" "moist" "wet"]
    WATER_METHOD "way of watering" false ["can" "drip" "basin" "sprinkler"]
    WEEKDAY "weekday" false ["monday" "tuesday" "wednesday" "thursday" "friday" "saturday" "sunday"]
    VIGOUR "vigour" true ["weak" "normal" "strong"]
    SEVERITY "severity" true ["slight" "moderate" "severe"]
    KOPPEN "köppen class" false ["Af" "Am" "Aw" "BWh" "BWk" "BSh" "BSk" "Csa" "Csb" "Csc" "Cwa" "Cwb" "Cwc" "Cfa" "Cfb" "Cfc" "Dsa" "Dsb" "Dsc" "Dsd" "Dwa" "Dwb" "Dwc" "Dwd" "Dfa" "Dfb" "Dfc" "Dfd" "ET" "EF"]
    HALF "half of the year" false ["warming" "cooling" "even"]
}
