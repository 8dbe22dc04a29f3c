//! `POST /v1/season`.

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use chrono::{DateTime, NaiveDate, Utc};
use lammas_agronomy::calendar::Day;
use lammas_engine::explain::season::whole;
use lammas_engine::question::said::ClimateSaid;
use serde_json::{Value, json};

use super::answer::SeasonAnswer;
use super::request::SeasonRequest;
use crate::problem::Problem;
use crate::problem::extractors::Body;
use crate::problem::faults::Faults;
use crate::problem::kinds::INVALID_REQUEST;
use crate::sets::rules::Rules;
use crate::v1::language;
use crate::v1::question::choices::Language;
use crate::v1::question::place::{self, When};
use crate::v1::question::today;
use crate::v1::sent::{self, Keep};
use crate::weather::age;

/// The text of a season, in its language.
#[derive(Debug)]
pub struct Reply {
    /// JSON.
    pub text: String,
    /// The language.
    pub language: Language,
    /// How long it may be kept, in seconds: an hour, not past the end of the weather that was used, and where it is for
    /// today not past midnight at the place.
    pub keep_s: u64,
}

/// What season is it?
///
/// The season of a climate on a day, computed and never looked up by month: every marker with its date, where it comes
/// from and how it is computed, and every fact that rules read of a season.
///
/// # Errors
/// Those of any JSON body, and of the climate that it names.
#[utoipa::path(
    post, path = "/v1/season", operation_id = "compute_season", tag = "season",
    request_body(content = SeasonRequest, description = "The question.",
        example = json!({"climate": {"id": "cold-inland"}, "date": "2026-09-15"})),
    responses((status = 200, description = "The season.", body = SeasonAnswer, example = json!(example())))
)]
pub async fn compute_season(
    request: HttpRequest,
    Body(asked): Body<SeasonRequest>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    let said = reply(asked, language::accepted(&request), &rules, today::now())?;
    Ok(sent::json(&request, said.text, said.language, Keep::No))
}

/// The season that a request asks for, at this moment. `accepted` is the language when the request names none.
///
/// # Errors
/// The problem that names every wrong place.
pub fn reply(
    asked: SeasonRequest,
    accepted: Option<Language>,
    rules: &Rules,
    now: DateTime<Utc>,
) -> Result<Reply, Problem> {
    let SeasonRequest { climate, date, site, language } = asked;
    let language = language.or(accepted).unwrap_or(Language::En);
    let mut faults = Faults::default();
    climate.check("/climate", &mut faults);
    let set = rules.set();
    let hollow = site.and_then(|site| site.frost_hollow) == Some(true);
    let place = place::find(
        &ClimateSaid::from(climate),
        hollow,
        When { date: date.map(NaiveDate::from), now },
        rules,
        &set,
        &mut faults,
    );
    let day = match date.map(|date| Day::supported(NaiveDate::from(date))) {
        Some(Ok(day)) => Some(day),
        Some(Err(fault)) => {
            faults.add("/date", fault.to_string());
            None
        }
        None => place.as_ref().map(|place| Day::from_date(place.clock().date(now))),
    };
    faults.or_problem(INVALID_REQUEST)?;
    let (Some(place), Some(day)) = (place, day) else {
        return Err(Problem::broken("a season without a fault was not understood"));
    };
    let season = whole(&place.climate, day, language.word());
    let text = serde_json::to_string(&season).map_err(Problem::broken)?;
    let midnight = date.is_none().then(|| place.clock().seconds_left(day.date(), now).unwrap_or(0));
    let weather = age::seconds_kept(&place.climate, now);
    let keep_s = [midnight, weather].into_iter().flatten().fold(sent::LONGEST_S, u64::min);
    Ok(Reply { text, language, keep_s })
}

/// The example of the document.
pub(super) fn example() -> Value {
    json!({
        "date": "2026-09-15", "half": "cooling", "tmin_c": 10.0, "tmax_c": 25.1, "et0_mm_day": 3.8,
        "et0_method": {"method": "hargreaves-samani", "assumed": []},
        "daylength_h": 12.2, "heat_left_cd": 235.0, "frost_chance_pct": 100.0,
        "markers": [{"name": "first_frost.median", "words": "the usual first frost", "state": "seasonal",
            "nearest": "2026-10-08", "days": 23, "origin": "computed", "likely_error_days": 9.0,
            "formula": "day by which 10, 50, 90 % of years have had their first minimum at or below 0 °C"}],
        "facts": [{"name": "tmin", "words": "usual minimum of the day", "value": 10.0, "unit": "°C", "origin": "computed"}],
        "hardiness_zone": "5b", "heat_zone": 6, "curve_error_k": 0.54,
        "climate_sha256": "b2ae6fe3c6b20eeeb5f8f531debc4268448b3a36ccbdb3ac9bf78b9c8766bbe9", "climate_origin": "given",
        "days": [{"from": "2026-09-01", "to": "2026-09-30", "origin": "computed"}]
    })
}
