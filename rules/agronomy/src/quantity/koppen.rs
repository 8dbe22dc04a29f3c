//! Köppen-Geiger classes, by name.

use super::inputs::{Input, Kind, LATITUDE};
use super::record::{MEANS_AND_RAIN, days};
use super::{Given, Quantity, Reckoned};
use crate::bounds::Unusable;
use crate::koppen::{CD_BOUNDARY_C, koppen_class};
use crate::profile::Monthly;
use crate::record::monthly_climate;

const CRITERIA: &str = "criteria of Peel and others 2007 and Beck and others 2018";
const METHOD: &str = "B tested first; C from D at 0 C of the coldest month; a dry summer needs a month under 40 mm";
/// Means that are given to compare with may differ by so much from those of the record: rounding, and means of
/// months instead of days.
const NEAR_C: f64 = 0.5;
const NEAR_SHARE: f64 = 0.1;

const fn warmth(name: &'static str, about: &'static str) -> Input {
    Input::new(name, Kind::Numbers { unit: "C", min: -90.0, max: 60.0, count: 12 }, about)
}

const fn rain(name: &'static str, about: &'static str) -> Input {
    Input::new(name, Kind::Numbers { unit: "mm", min: 0.0, max: 5000.0, count: 12 }, about)
}

const TMEAN: Input = warmth("monthly_tmean", "mean temperature of each month, January first");
const PRECIP: Input = rain("monthly_precip", "rain and melted snow of each month, January first");

pub(super) const ALL: &[Quantity] = &[
    Quantity {
        name: "koppen_class_profile",
        title: "climate class of monthly normals",
        inputs: &[LATITUDE, TMEAN, PRECIP],
        unit: "class",
        about: "Af to EF; summer is the warmer half of the year",
        method: METHOD,
        source: CRITERIA,
        reckon: |given| of_months(given, CD_BOUNDARY_C),
    },
    Quantity {
        name: "koppen_cd_boundary",
        title: "climate class with a chosen boundary of C and D",
        inputs: &[
            LATITUDE,
            TMEAN,
            PRECIP,
            Input::number(
                "cd_boundary",
                "C",
                -3.0,
                0.0,
                "coldest month above which a climate is C: 0 C (Peel, Beck) or -3 C (Köppen, Kottek)",
            ),
        ],
        unit: "class",
        about: "for comparing with maps that use the older boundary",
        method: "as koppen_class_profile, C from D at the boundary given",
        source: "criteria of Peel and others 2007, Beck and others 2018; Kottek and others 2006 for -3 C",
        reckon: |given| of_months(given, given.number("cd_boundary")?),
    },
    Quantity {
        name: "koppen_class_from_records",
        title: "climate class of a daily record",
        inputs: &[
            MEANS_AND_RAIN,
            LATITUDE,
            warmth("monthly_tmean_for_check", "means that the record should have; compared, not used").optional(),
            rain("monthly_precip_for_check", "rain that the record should have; compared, not used").optional(),
        ],
        unit: "class",
        about: "the whole record is averaged by month; thirty years are usual",
        method: METHOD,
        source: CRITERIA,
        reckon: of_record,
    },
];

fn twelve(given: &Given<'_>, name: &'static str) -> Result<Monthly, Unusable> {
    given.numbers(name)?.try_into().map_err(|_| Unusable::missing(name, "12 numbers"))
}

fn of_months(given: &Given<'_>, cd_boundary_c: f64) -> Result<Reckoned, Unusable> {
    let (tmean_c, rain_mm) = (twelve(given, "monthly_tmean")?, twelve(given, "monthly_precip")?);
    Ok(Reckoned::text(koppen_class(&tmean_c, &rain_mm, given.number("latitude")?, cd_boundary_c)))
}

fn of_record(given: &Given<'_>) -> Result<Reckoned, Unusable> {
    let days = days(given, &["tmin_c", "tmax_c", "precip_mm"])?;
    let (tmean_c, rain_mm) = monthly_climate(&days)
        .ok_or_else(|| Unusable::missing("series", "days with temperatures and rain in every month"))?;
    let mut reckoned = Reckoned::text(koppen_class(&tmean_c, &rain_mm, given.number("latitude")?, CD_BOUNDARY_C));
    if given.has("monthly_tmean_for_check") {
        let wanted = twelve(given, "monthly_tmean_for_check")?;
        if tmean_c.iter().zip(&wanted).any(|(own, wanted)| (own - wanted).abs() > NEAR_C) {
            reckoned = reckoned.note("monthly means differ from monthly_tmean_for_check by more than 0.5 K");
        }
    }
    if given.has("monthly_precip_for_check") {
        let wanted = twelve(given, "monthly_precip_for_check")?;
        if rain_mm.iter().zip(&wanted).any(|(own, wanted)| (own - wanted).abs() > NEAR_SHARE * wanted + 1.0) {
            reckoned = reckoned.note("monthly rain differs from monthly_precip_for_check by more than a tenth");
        }
    }
    Ok(reckoned)
}
