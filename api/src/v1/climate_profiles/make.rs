//! `POST /v1/climate-profiles`.

use actix_web::{HttpRequest, HttpResponse};
use chrono::{Datelike as _, NaiveDate};
use serde_json::{Value, json};

use super::answer::ProfileAnswer;
use super::build;
use super::request::{ProfileQuery, ProfileRequest};
use crate::problem::Problem;
use crate::problem::extractors::{Query, RecordBody};
use crate::v1::language;
use crate::v1::sent::{self, Keep};

/// What climate does a daily record tell of?
///
/// A year or more of days, as JSON or as `text/csv` with the columns `date`, `tmin_c`, `tmax_c` and, if known,
/// `precip_mm` (others are passed over and named) or a station export (`STATION`, `DATE`, `TMAX`, `TMIN`, `PRCP`), becomes a climate that can be put into `climate` of a question: monthly
/// normals, frost dates counted in the record where it has 8 seasons or more, the mean of each year's coldest night, and the
/// last days as recent weather. Gaps are allowed and listed, nothing is filled in, what looks wrong is named, frost dates that
/// were counted come with the error of their few years, and what the record does not tell is said in words. Every wrong row is named; nothing of the record is kept.
///
/// # Errors
/// Those of any JSON body; in a CSV file a pointer is `/line/column`.
#[utoipa::path(
    post, path = "/v1/climate-profiles", operation_id = "make_climate_profile", tag = "season", params(ProfileQuery),
    request_body(description = "The record.", content(
        (ProfileRequest = "application/json", example = json!(request())),
        (String = "text/csv", example = json!("date,tmin_c,tmax_c,precip_mm\n2015-01-01,-12.3,1.5,0.0\n2015-01-02,-9.0,,2.5\n"))
    )),
    responses((status = 200, description = "The climate.", body = ProfileAnswer, example = json!(answer())))
)]
pub async fn make_climate_profile(
    request: HttpRequest,
    Query(query): Query<ProfileQuery>,
    body: RecordBody<ProfileRequest>,
) -> Result<HttpResponse, Problem> {
    let named = match &body {
        RecordBody::Json(record) => record.language.or(query.language),
        RecordBody::Csv(_) => query.language,
    };
    let language = language::of(named, &request);
    let answer = match body {
        RecordBody::Json(record) => build::of_json(record, &query, language)?,
        RecordBody::Csv(text) => build::of_csv(&text, &query, language)?,
    };
    let text = serde_json::to_string(&answer).map_err(Problem::broken)?;
    Ok(sent::json(&request, text, language, Keep::No))
}

/// The example of the document: an invented year with half of each month, the thinnest record that there may be.
fn request() -> Value {
    let days: Vec<Value> = NaiveDate::from_ymd_opt(2025, 1, 1)
        .into_iter()
        .flat_map(|first| first.iter_days().take(365))
        .filter(|date| date.day() <= 15 || date.ordinal() == 365)
        .map(|date| {
            // A tent instead of a wave, in whole tenths: every machine writes it alike.
            let tenths = 150 - (i64::from(date.ordinal()) - 200).abs();
            json!({"date": date, "tmin_c": tenths as f64 / 10.0, "tmax_c": (tenths + 120) as f64 / 10.0,
                "precip_mm": if date.ordinal() % 5 == 0 { 6.0 } else { 0.0 }})
        })
        .collect();
    json!({"latitude": 40.4, "longitude": -101.7, "elevation_m": 1000, "recent_days": 0, "days": days})
}

fn answer() -> Value {
    serde_json::from_str(include_str!("example.json")).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::v1::question::choices::Language;

    #[test]
    fn the_example_is_what_comes_out_of_its_record() {
        let asked = serde_json::from_value(request()).expect("a record");
        let made = build::of_json(asked, &ProfileQuery::default(), Language::En).expect("a climate");
        assert_eq!(serde_json::to_value(made).expect("JSON"), answer());
    }
}
