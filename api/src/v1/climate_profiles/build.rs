//! From a daily record to a profile. What is wrong with the record is named at its place: the JSON pointer of a value, or
//! `/line/column` of a CSV file.

use chrono::NaiveDate;
use lammas_agronomy::calendar::Day;
use lammas_agronomy::profile::DailyWeather;
use lammas_agronomy::record::{
    Layout, Place, Quality, Record, RecordFault, RecordProfile, Suspicions, read_csv_in, suspicions,
};
use lammas_engine::question::profile_said;
use lammas_engine::question::said::ClimateSaid;
use lammas_engine::question::understand;
use lammas_engine::version::hash;

use super::answer::{ProfileAnswer, ProfileGap, ProfileQuality};
use super::request::{ProfileDay, ProfileQuery, ProfileRequest, RecordUnits};
use super::{doubts, words};
use crate::problem::Problem;
use crate::problem::faults::Faults;
use crate::problem::kinds::INVALID_REQUEST;
use crate::problem::pointer::{below, entry};
use crate::v1::question::choices::Language;
use crate::v1::question::date::Date;

/// Most recent days that a climate holds.
const MOST_RECENT: u16 = 400;

/// The profile of a record in JSON. What stands in the query too must be the same there.
///
/// # Errors
/// The problem `invalid-request`, with every wrong place.
pub fn of_json(request: ProfileRequest, query: &ProfileQuery, language: Language) -> Result<ProfileAnswer, Problem> {
    let ProfileRequest { latitude, longitude, elevation_m, recent_days, language: _, days } = request;
    let mut faults = Faults::default();
    let mut one = |name: &str, body: Option<f64>, asked: Option<f64>| {
        // Both were typed by somebody: equal means equal.
        if let (Some(here), Some(there)) = (body, asked)
            && here.to_bits() != there.to_bits()
        {
            faults.add(below("", name), format!("is `{here}` here and `{there}` in the query"));
        }
        body.or(asked)
    };
    let place = Told {
        latitude: one("latitude", latitude, query.latitude),
        longitude: one("longitude", longitude, query.longitude),
        elevation_m: one("elevation_m", elevation_m, query.elevation_m),
        recent_days: one("recent_days", recent_days.map(f64::from), query.recent_days.map(f64::from)),
    };
    if query.units == Some(RecordUnits::Tenths) {
        faults.add("/units", "expected `metric`, since JSON names its units; `tenths` is for a station export in CSV");
    }
    let rows = days.iter().map(weather).collect();
    made(&place, Read { rows, ignored_columns: Vec::new(), layout: None }, &Source::Days(&days), faults, language)
}

/// The profile of a CSV file, whose place stands in the query.
///
/// # Errors
/// The problem `invalid-request`, with every wrong place.
pub fn of_csv(text: &str, query: &ProfileQuery, language: Language) -> Result<ProfileAnswer, Problem> {
    let mut faults = Faults::default();
    let place = Told {
        latitude: query.latitude,
        longitude: query.longitude,
        elevation_m: query.elevation_m,
        recent_days: query.recent_days.map(f64::from),
    };
    match read_csv_in(text, query.units.map(Into::into)) {
        Ok(read) => {
            if query.units == Some(RecordUnits::Tenths) && read.layout == Layout::Plain {
                faults.add(
                    "/units",
                    "expected `metric`, since these columns name their units; `tenths` is for a station export",
                );
            }
            let read = Read { rows: read.rows, ignored_columns: read.ignored_columns, layout: Some(read.layout) };
            let is_station = read.layout != Some(Layout::Plain);
            made(&place, read, &Source::Lines { text, is_station }, faults, language)
        }
        Err(found) => {
            place.check(&mut faults);
            for fault in found {
                let line = entry("", fault.line);
                let at = fault.column.as_ref().map_or_else(|| line.clone(), |column| below(&line, column));
                faults.add(at, fault.to_string());
            }
            faults.or_problem(INVALID_REQUEST)?;
            Err(Problem::broken("a CSV file was refused without a fault"))
        }
    }
}

/// Where a record was taken, as it was told.
struct Told {
    latitude: Option<f64>,
    longitude: Option<f64>,
    elevation_m: Option<f64>,
    recent_days: Option<f64>,
}

impl Told {
    fn check(&self, faults: &mut Faults) {
        if self.latitude.is_none() {
            faults.add("/latitude", "expected the latitude of the place, in degrees, south negative");
        }
        faults.in_range("", "latitude", self.latitude, (-90.0, 90.0), "°");
        faults.in_range("", "longitude", self.longitude, (-180.0, 180.0), "°");
        faults.in_range("", "elevation_m", self.elevation_m, (-500.0, 9000.0), "m");
        faults.in_range("", "recent_days", self.recent_days, (0.0, f64::from(MOST_RECENT)), "days");
    }

    fn recent(&self) -> usize {
        self.recent_days.map_or(usize::from(MOST_RECENT), |days| days as usize)
    }
}

/// Where a day stands in what was sent.
enum Source<'a> {
    Days(&'a [ProfileDay]),
    Lines { text: &'a str, is_station: bool },
}

/// What a profile calls a field, and what JSON and plain columns, and a station export call it.
const FIELDS: [(&str, [&str; 2]); 4] = [
    ("date", ["date", "DATE"]),
    ("tmin_c", ["tmin_c", "TMIN"]),
    ("tmax_c", ["tmax_c", "TMAX"]),
    ("rain_mm", ["precip_mm", "PRCP"]),
];

impl Source<'_> {
    /// The place of a field of a day: of its first entry, or of its second.
    fn at(&self, date: NaiveDate, second: bool, field: &str) -> String {
        let form = usize::from(matches!(self, Self::Lines { is_station: true, .. }));
        let names = FIELDS.iter().find(|(known, _)| *known == field).map(|(_, names)| names);
        let field = names.and_then(|names| names.get(form)).copied().unwrap_or(field);
        let nth = usize::from(second);
        match self {
            Self::Days(days) => {
                let found = days.iter().enumerate().filter(|(_, day)| day.date == Date(date)).nth(nth);
                found.map_or_else(|| "/days".to_owned(), |(place, _)| below(&entry("/days", place), field))
            }
            Self::Lines { text, .. } => {
                let written = date.to_string();
                // Line 1 is the header.
                let found = text.lines().zip(1..).skip(1).filter(|(line, _)| line.contains(&written)).nth(nth);
                found.map_or_else(String::new, |(_, line)| below(&entry("", line), field))
            }
        }
    }

    /// The same words with its fields as they are called here.
    fn called(&self, words: &str) -> String {
        let form = usize::from(matches!(self, Self::Lines { is_station: true, .. }));
        FIELDS.iter().skip(1).fold(words.to_owned(), |words, (field, names)| {
            names.get(form).map_or(words.clone(), |name| words.replace(field, name))
        })
    }

    /// The place of the whole record.
    fn whole(&self) -> String {
        match self {
            Self::Days(_) => "/days".to_owned(),
            Self::Lines { .. } => String::new(),
        }
    }
}

fn weather(day: &ProfileDay) -> DailyWeather {
    let Date(date) = day.date;
    let ProfileDay { date: _, tmin_c, tmax_c, precip_mm } = *day;
    DailyWeather { tmin_c, tmax_c, rain_mm: precip_mm, ..DailyWeather::unknown(Day::from_date(date)) }
}

/// A record as it was read.
struct Read {
    rows: Vec<DailyWeather>,
    ignored_columns: Vec<String>,
    /// How a CSV file was written.
    layout: Option<Layout>,
}

fn made(
    told: &Told,
    Read { rows, ignored_columns, layout }: Read,
    source: &Source<'_>,
    mut faults: Faults,
    language: Language,
) -> Result<ProfileAnswer, Problem> {
    told.check(&mut faults);
    let place = Place {
        latitude_deg: told.latitude.unwrap_or(0.0),
        longitude_deg: told.longitude,
        elevation_m: told.elevation_m,
    };
    let looks = suspicions(&rows);
    let recorded = rows.len();
    let built = Record::new(rows).and_then(|record| record.profile(&place));
    if let Err(found) = &built {
        for (place, fault) in found.iter().enumerate() {
            // What is wrong with a day that has been found to come twice is wrong with its second entry.
            let is_doubled =
                |date: NaiveDate| found.iter().take(place + 1).any(|known| *known == RecordFault::Doubled { date });
            note(fault, source, &is_doubled, &mut faults);
        }
        for words in whole_record(&looks, recorded, layout.as_ref()) {
            faults.add(source.whole(), source.called(&words));
        }
    }
    faults.or_problem(INVALID_REQUEST)?;
    let Ok(RecordProfile { profile, quality }) = built else {
        return Err(Problem::broken("a record was refused without a fault"));
    };
    let said = recent(profile_said::said(&profile), told.recent());
    // As a question that holds it is understood: the hash is that of its answer's climate.
    let understood = understand::profile(&said, "/climate")
        .map_err(|troubles| Problem::broken(format!("a profile that a question can't hold: {troubles:?}")))?;
    let climate_sha256 = hash::of_value(&serde_json::to_value(&understood).map_err(Problem::broken)?);
    let (known, unknown) = words::told(&understood, &quality, language);
    // An error of dates that were not counted would be none of theirs.
    let sampling = quality.frost_sampling.filter(|_| understood.counted_frost.is_some());
    Ok(ProfileAnswer {
        climate: said.into(),
        climate_sha256,
        layout: doubts::layout(layout.as_ref(), language),
        quality: shown(&quality, layout.as_ref(), language),
        frost_error: sampling.map(|sampling| doubts::frost_error(&sampling, language)),
        known,
        unknown,
        ignored_columns,
    })
}

/// The same with at most so many of its last days.
fn recent(mut said: ClimateSaid, most: usize) -> ClimateSaid {
    if let Some(days) = &mut said.observations {
        days.drain(..days.len().saturating_sub(most));
    }
    said.observations = said.observations.filter(|days| !days.is_empty());
    said
}

fn note(fault: &RecordFault, source: &Source<'_>, is_doubled: &dyn Fn(NaiveDate) -> bool, faults: &mut Faults) {
    let at = match fault {
        RecordFault::Doubled { date } | RecordFault::Outside { date } => source.at(*date, is_doubled(*date), "date"),
        RecordFault::Crossed { date, .. } => source.at(*date, is_doubled(*date), "tmax_c"),
        RecordFault::Value { date, words } => {
            let field = words.split_whitespace().next().unwrap_or_default();
            source.at(*date, is_doubled(*date), field)
        }
        _ => source.whole(),
    };
    let words = source.called(&fault.to_string());
    let line = match source {
        Source::Lines { .. } => at.split('/').nth(1).map_or_else(String::new, |line| format!("line {line}: ")),
        Source::Days(_) => String::new(),
    };
    faults.add(at, line + &words);
}

/// What a record that is refused looks like as a whole: the one mistake behind many wrong days.
fn whole_record(looks: &Suspicions, recorded: usize, layout: Option<&Layout>) -> Vec<String> {
    let mut words = Vec::new();
    let swapped = looks.swapped_count;
    if swapped > 0 && (swapped as usize) * 2 >= recorded {
        words.push(format!("tmax_c is below tmin_c on {swapped} of {recorded} days: are the two columns swapped?"));
    } else if swapped as usize > Record::MOST_FAULTS {
        words.push(format!("tmax_c is below tmin_c on {swapped} of {recorded} days, of which the first are named"));
    }
    words.extend(doubts::contradiction(layout, Language::En).map(str::to_owned));
    words.extend(looks.units.iter().map(|unit| doubts::unit_words(*unit, Language::En).to_owned()));
    // As a fault is worded: a lower-case start, no full stop.
    let as_fault = |words: String| {
        let mut chars = words.trim_end_matches('.').chars();
        chars.next().map_or_else(String::new, |first| first.to_lowercase().chain(chars).collect())
    };
    words.into_iter().map(as_fault).collect()
}

fn shown(quality: &Quality, layout: Option<&Layout>, language: Language) -> ProfileQuality {
    let (suspicions, suspicion_count) = doubts::suspicions(quality, layout, language);
    ProfileQuality {
        first: Date(quality.first.date()),
        last: Date(quality.last.date()),
        years: (quality.years * 10.0).round() / 10.0,
        days: quality.days,
        recorded_days: quality.recorded_days,
        rain_days: quality.rain_days,
        gaps: quality
            .gaps
            .iter()
            .map(|gap| ProfileGap { first: Date(gap.first.date()), last: Date(gap.last.date()), days: gap.days })
            .collect(),
        gap_count: quality.gap_count,
        frost_seasons: quality.frost_seasons,
        years_used: quality.years_used.clone(),
        suspicions,
        suspicion_count,
    }
}
