//! Sums with depths, areas and times of watering, by name.

use super::inputs::Input;
use super::{Quantity, Reckoned};

const DEPTH: Input = Input::number("depth", "mm", 0.0, 5000.0, "depth of water");
const AREA: Input = Input::number("area", "m2", 0.0, 1_000_000.0, "area watered");
const EFFICIENCY: &str = "share of the water that reaches the roots";
/// Litres of a US gallon, exact by definition (231 cubic inches).
const LITRES_PER_GALLON: f64 = 3.785_411_784;

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "annual_water_use_gal",
        title: "estimated water use of a planting in a year",
        inputs: &[
            Input::number("et0", "mm/yr", 0.0, 5000.0, "reference evapotranspiration of a year"),
            Input::number("plant_factor", "-", 0.0, 1.5, "plant factor"),
            Input::number("irrigation_efficiency", "-", 0.1, 1.0, EFFICIENCY),
            AREA,
        ],
        unit: "US gal/yr",
        about: "exact conversion, where worksheets use 0.62 gal per square foot and inch",
        method: "reference evapotranspiration times factor times area over efficiency",
        source: "Model Water Efficient Landscape Ordinance worksheet",
        reckon: |given| {
            let litres = given.number("et0")? * given.number("plant_factor")? * given.number("area")?
                / given.number("irrigation_efficiency")?;
            Ok((litres / LITRES_PER_GALLON).into())
        },
    },
    Quantity {
        name: "inches_to_gallons",
        title: "volume of a depth of water on an area, in US gallons",
        inputs: &[DEPTH, AREA],
        unit: "US gal",
        about: "0.6234 US gallons per square foot and inch",
        method: "depth times area",
        source: "US gallon of 231 cubic inches (definition)",
        reckon: |given| Ok((given.number("depth")? * given.number("area")? / LITRES_PER_GALLON).into()),
    },
    Quantity {
        name: "mm_to_litres",
        title: "volume of a depth of water on an area",
        inputs: &[DEPTH, AREA],
        unit: "L",
        about: "one millimetre on one square metre is one litre",
        method: "depth times area",
        source: "definition",
        reckon: |given| Ok((given.number("depth")? * given.number("area")?).into()),
    },
    Quantity {
        name: "interval_and_gross_depth",
        title: "longest interval and depth to apply",
        inputs: &[
            Input::number("taw", "mm", 0.0, 2000.0, "total available water"),
            Input::number("p", "-", 0.0, 1.0, "share used without stress, not adjusted here"),
            Input::number("etc", "mm/d", 0.1, 30.0, "evapotranspiration of the plant"),
            Input::number("application_efficiency", "-", 0.1, 1.0, EFFICIENCY),
            Input::number("effective_rain", "mm", 0.0, 1000.0, "rain within the interval"),
        ],
        unit: "mm, d",
        about: "water again before depletion passes the readily available water",
        method: "readily available water plus rain over need; net depth over efficiency",
        source: "FAO-56 chapter 8",
        reckon: |given| {
            let net_mm = given.number("taw")? * given.number("p")?;
            let (store_mm, etc_mm) = (net_mm + given.number("effective_rain")?, given.number("etc")?);
            let days = store_mm / etc_mm;
            // Down and never up: the remainder is exact, so a last day that the numbers as given fall short
            // of, however little, is left out.
            let whole_days = ((store_mm - store_mm % etc_mm) / etc_mm).round();
            Ok(Reckoned::fields(vec![
                ("net_mm", net_mm.into()),
                ("max_interval_days", days.into()),
                ("whole_days", whole_days.into()),
                ("gross_mm", (net_mm / given.number("application_efficiency")?).into()),
            ]))
        },
    },
    Quantity {
        name: "run_time_min",
        title: "time that a system must run",
        inputs: &[
            Input::number("gross_depth", "mm", 0.0, 1000.0, "depth to apply"),
            Input::number("precipitation_rate", "mm/h", 0.1, 500.0, "what the system gives"),
        ],
        unit: "min",
        about: "without breaks for soaking in",
        method: "depth over rate",
        source: "definition",
        reckon: |given| Ok((60.0 * given.number("gross_depth")? / given.number("precipitation_rate")?).into()),
    },
];
