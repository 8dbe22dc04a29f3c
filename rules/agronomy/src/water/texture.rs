//! The twelve USDA texture classes and the water that plants can take from them.

/// One texture class.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Texture {
    /// Its names: USDA's first, FAO-56's second where it differs.
    pub names: &'static [&'static str],
    /// Water content at field capacity, m3/m3, lower and upper bound.
    pub field_capacity: (f64, f64),
    /// Water content at wilting point, m3/m3, lower and upper bound.
    pub wilting_point: (f64, f64),
    /// Water between the two, mm per m of soil, lower and upper bound.
    pub available_mm_per_m: (f64, f64),
    /// Where the row comes from.
    pub source: &'static str,
}

impl Texture {
    /// The middle of the available water, mm per m: the value to reckon with when no more is known.
    #[must_use]
    pub fn available_middle_mm_per_m(&self) -> f64 {
        (self.available_mm_per_m.0 + self.available_mm_per_m.1) / 2.0
    }
}

const TABLE_19: &str = "FAO-56 Table 19";
const TABLE_19_FROM_MEMORY: &str = "FAO-56 Table 19 (from memory)";
// FAO-56 Table 19 has no row for these three. Both bounds of capacity and wilting point are one value.
const SAXTON_RAWLS: &str = "Saxton and Rawls 2006, Table 3, capacity and wilting point at 2.5 % organic matter; range of available water by common practice";

const fn row(
    names: &'static [&'static str],
    field_capacity: (f64, f64),
    wilting_point: (f64, f64),
    available_mm_per_m: (f64, f64),
    source: &'static str,
) -> Texture {
    Texture { names, field_capacity, wilting_point, available_mm_per_m, source }
}

/// The classes from light to heavy.
pub const TEXTURES: &[Texture] = &[
    row(&["sand"], (0.07, 0.17), (0.02, 0.07), (50.0, 110.0), TABLE_19),
    row(&["loamy sand"], (0.11, 0.19), (0.03, 0.10), (60.0, 120.0), TABLE_19_FROM_MEMORY),
    row(&["sandy loam"], (0.18, 0.28), (0.06, 0.16), (110.0, 150.0), TABLE_19),
    row(&["loam"], (0.20, 0.30), (0.07, 0.17), (130.0, 180.0), TABLE_19),
    row(&["silt loam"], (0.22, 0.36), (0.09, 0.21), (130.0, 190.0), TABLE_19_FROM_MEMORY),
    row(&["silt"], (0.28, 0.36), (0.12, 0.22), (160.0, 200.0), TABLE_19),
    row(&["sandy clay loam"], (0.27, 0.27), (0.17, 0.17), (100.0, 140.0), SAXTON_RAWLS),
    row(&["clay loam"], (0.36, 0.36), (0.22, 0.22), (137.0, 172.0), SAXTON_RAWLS),
    row(&["silty clay loam", "silt clay loam"], (0.30, 0.37), (0.17, 0.24), (130.0, 180.0), TABLE_19),
    row(&["sandy clay"], (0.36, 0.36), (0.25, 0.25), (100.0, 140.0), SAXTON_RAWLS),
    row(&["silty clay"], (0.30, 0.42), (0.17, 0.29), (130.0, 190.0), TABLE_19_FROM_MEMORY),
    row(&["clay"], (0.32, 0.40), (0.20, 0.24), (120.0, 200.0), TABLE_19),
];

/// The texture class of a name.
#[must_use]
pub fn find(name: &str) -> Option<&'static Texture> {
    TEXTURES.iter().find(|texture| texture.names.contains(&name))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_are_twelve_classes_and_each_holds_some_water() {
        assert_eq!(TEXTURES.len(), 12);
        for texture in TEXTURES {
            let (least, most) = texture.available_mm_per_m;
            assert!(0.0 < least && least < most && most <= 200.0, "{:?}", texture.names);
            assert!(texture.field_capacity.0 > texture.wilting_point.0, "{:?}", texture.names);
            assert!(texture.field_capacity.0 <= texture.field_capacity.1);
            assert!(texture.wilting_point.0 <= texture.wilting_point.1);
        }
    }

    #[test]
    fn sand_holds_least() {
        let sand = find("sand").unwrap().available_middle_mm_per_m();
        assert!(TEXTURES.iter().skip(1).all(|other| other.available_middle_mm_per_m() > sand));
    }
}
