//! `POST /v1/season`.

use std::sync::Arc;

use actix_web::web::Data;
use actix_web::{HttpRequest, HttpResponse};
use chrono::{DateTime, NaiveDate, Utc};
use lammas_agronomy::calendar::Day;
use lammas_engine::explain::season::{SeasonWhole, whole};
use lammas_engine::question::Climate;
use lammas_engine::question::said::ClimateSaid;
use serde_json::{Value, json};

use super::answer::SeasonAnswer;
use super::request::SeasonRequest;
use crate::picture;
use crate::picture::year::words::coordinates;
use crate::problem::Problem;
use crate::problem::extractors::Body;
use crate::problem::faults::Faults;
use crate::problem::kinds::INVALID_REQUEST;
use crate::sets::rules::Rules;
use crate::v1::face::{self, Face};
use crate::v1::language;
use crate::v1::question::choices::Language;
use crate::v1::question::place::{self, When};
use crate::v1::question::today;
use crate::v1::sent::{self, Keep};
use crate::weather::age;

/// A season that was asked for.
#[derive(Debug)]
pub struct Found {
    climate: Arc<Climate>,
    /// What the place is called.
    place: String,
    day: Day,
    /// Whether that is today at the place, since no date was given.
    is_today: bool,
    /// The language.
    pub language: Language,
    /// How long it may be kept, in seconds: an hour, not past the end of the weather that was used, and where it is for
    /// today not past midnight at the place.
    pub keep_s: u64,
}

impl Found {
    fn season(&self) -> SeasonWhole<'_> {
        whole(&self.climate, self.day, self.language.word())
    }

    /// As JSON.
    ///
    /// # Errors
    /// A fault of this program.
    pub fn json(&self) -> Result<String, Problem> {
        serde_json::to_string(&self.season()).map_err(Problem::broken)
    }

    /// As a picture of the year: SVG.
    #[must_use]
    pub fn picture(&self) -> String {
        picture::year::draw(picture::year::Year {
            climate: &self.climate,
            season: &self.season(),
            day: self.day,
            is_today: self.is_today,
            place: &self.place,
            language: self.language.word(),
        })
    }

    /// The answer to a request that would rather have one or the other.
    pub(super) fn sent(&self, request: &HttpRequest, keep: Keep) -> Result<HttpResponse, Problem> {
        let face = face::wanted(request);
        let text = match face {
            Face::Json => self.json()?,
            Face::Picture => self.picture(),
        };
        Ok(sent::faced(request, face, text, self.language, keep))
    }
}

/// What season is it?
///
/// The season of a climate on a day, computed and never looked up by month: every marker with its date, where it comes
/// from and how it is computed, and every fact that rules read of a season.
///
/// With `accept: image/svg+xml` the year is drawn: usual minimum and maximum, rain, evapotranspiration and daylight, every
/// marker by its name, the day asked, and the observed and forecast days of the year in which it lies. The year begins on
/// the place's shortest day (near the equator in its coldest week), so that no warm half is torn. The picture carries a
/// text that says the same, follows the reader's choice of light or dark, and loads nothing.
///
/// # Errors
/// Those of any JSON body, and of the climate that it names.
#[utoipa::path(
    post, path = "/v1/season", operation_id = "compute_season", tag = "season",
    request_body(content = SeasonRequest, description = "The question.",
        example = json!({"climate": {"id": "cold-inland"}, "date": "2026-09-15"})),
    responses((status = 200, description = "The season.", content(
        (SeasonAnswer = "application/json", example = json!(example())),
        (String = "image/svg+xml", example = json!(PICTURE_EXAMPLE))
    )))
)]
pub async fn compute_season(
    request: HttpRequest,
    Body(asked): Body<SeasonRequest>,
    rules: Data<Rules>,
) -> Result<HttpResponse, Problem> {
    find(asked, language::accepted(&request), &rules, today::now())?.sent(&request, Keep::No)
}

/// The season that a request asks for, at this moment. `accepted` is the language when the request names none.
///
/// # Errors
/// The problem that names every wrong place.
pub fn find(
    asked: SeasonRequest,
    accepted: Option<Language>,
    rules: &Rules,
    now: DateTime<Utc>,
) -> Result<Found, Problem> {
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
    let midnight = date.is_none().then(|| place.clock().seconds_left(day.date(), now).unwrap_or(0));
    let weather = age::seconds_kept(&place.climate, now);
    let keep_s = [midnight, weather].into_iter().flatten().fold(sent::LONGEST_S, u64::min);
    let registered = place.climate.id.as_deref().and_then(|id| place::entry(id, &set));
    let name = registered.map_or_else(
        || coordinates(place.climate.profile.latitude_deg, place.longitude_deg, language.word()),
        |entry| entry.name.get(language.word()).to_owned(),
    );
    Ok(Found { climate: place.climate, place: name, day, is_today: date.is_none(), language, keep_s })
}

/// The picture of the document's example, with most of its marks and words left out.
pub(super) const PICTURE_EXAMPLE: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 400 700\" \
    width=\"480\" height=\"840\" role=\"img\" lang=\"en\" aria-labelledby=\"lammas-title lammas-desc\">\
    <title id=\"lammas-title\">A year in: Cold inland</title>\
    <desc id=\"lammas-desc\">15 September: usual minimum 10.0 °C (50 °F), maximum 25.1 °C (77 °F).</desc></svg>";

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
