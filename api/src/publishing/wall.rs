//! A wall time in a named zone, as an instant.

use chrono::{DateTime, Duration, LocalResult, NaiveDateTime, TimeZone as _, Utc};
use chrono_tz::Tz;

use super::NotDone;

/// An instant, and what there is to say about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Instant {
    /// The instant.
    pub at: DateTime<Utc>,
    /// What became of an hour that is not there, or is there twice.
    pub remark: Option<String>,
}

/// The instant at which the clocks of a zone show this wall time. Where they go back and show it twice, the first time;
/// where they go forward and never show it, the moment at which they jump.
///
/// # Errors
/// [`NotDone::Wrong`]: not a wall time, not a zone.
pub fn instant(wall: &str, zone: &str) -> Result<Instant, NotDone> {
    let shapes = ["%Y-%m-%d %H:%M", "%Y-%m-%dT%H:%M", "%Y-%m-%d %H:%M:%S", "%Y-%m-%dT%H:%M:%S"];
    let local = shapes.iter().find_map(|shape| NaiveDateTime::parse_from_str(wall, shape).ok());
    let local = local.ok_or_else(|| {
        NotDone::Wrong(format!("`at`: expected a wall time such as `2027-03-01 06:00`, found `{wall}`"))
    })?;
    let tz: Tz = zone.parse().map_err(|_| {
        NotDone::Wrong(format!("`zone`: expected a zone of the IANA database such as `Europe/Madrid`, found `{zone}`"))
    })?;
    match tz.from_local_datetime(&local) {
        LocalResult::Single(at) => Ok(Instant { at: at.to_utc(), remark: None }),
        LocalResult::Ambiguous(one, two) => {
            let remark = format!("the clocks of {zone} show {wall} twice: the first time is taken");
            Ok(Instant { at: one.min(two).to_utc(), remark: Some(remark) })
        }
        LocalResult::None => {
            let jump =
                jump(&tz, local).ok_or_else(|| NotDone::Wrong(format!("`at`: {wall} can't be found in {zone}")))?;
            let remark = format!("the clocks of {zone} never show {wall}: the moment of their jump is taken");
            Ok(Instant { at: jump, remark: Some(remark) })
        }
    }
}

/// The first instant whose wall time lies after one that is jumped over: zones jump on whole minutes today, on seconds before 1972.
fn jump(tz: &Tz, local: NaiveDateTime) -> Option<DateTime<Utc>> {
    let shown = |at: DateTime<Utc>| at.with_timezone(tz).naive_local();
    let day = Duration::hours(26);
    let (mut before, mut after) = (local.and_utc() - day, local.and_utc() + day);
    if shown(before) >= local || shown(after) <= local {
        return None;
    }
    while after - before > Duration::seconds(1) {
        let middle = before + (after - before) / 2;
        if shown(middle) > local { after = middle } else { before = middle }
    }
    Some(DateTime::from_timestamp(after.timestamp(), 0)?.max(before))
}

#[cfg(test)]
mod tests {
    use super::*;

    // The days and hours at which clocks change are those of the IANA database (2025b, through chrono-tz): Madrid 28 March 2027
    // at 2:00 to 3:00 and 31 October 2027 at 3:00 to 2:00; Lord Howe moves by half an hour; Apia had no 30 December 2011.
    #[test]
    fn a_wall_time_is_the_instant_meant_also_where_clocks_change() {
        for (wall, zone, at, remark) in [
            ("2027-03-01 06:00", "Europe/Madrid", "2027-03-01T05:00:00Z", false),
            ("2027-07-01T06:00", "Europe/Madrid", "2027-07-01T04:00:00Z", false),
            ("2027-03-28 02:30", "Europe/Madrid", "2027-03-28T01:00:00Z", true),
            ("2027-10-31 02:30", "Europe/Madrid", "2027-10-31T00:30:00Z", true),
            ("2027-10-31 03:30", "Europe/Madrid", "2027-10-31T02:30:00Z", false),
            ("2027-10-03 02:15", "Australia/Lord_Howe", "2027-10-02T15:30:00Z", true),
            ("2011-12-30 12:00", "Pacific/Apia", "2011-12-30T10:00:00Z", true),
            ("2027-01-01 00:00", "UTC", "2027-01-01T00:00:00Z", false),
        ] {
            let found = instant(wall, zone).expect("an instant");
            assert_eq!(
                (found.at.to_rfc3339().replace("+00:00", "Z").as_str(), found.remark.is_some()),
                (at, remark),
                "{wall} {zone}"
            );
        }
        for (wall, zone, words) in [
            ("tomorrow", "UTC", "`at`: expected a wall time"),
            ("2027-03-01 06:00", "Madrid", "`zone`: expected a zone"),
        ] {
            assert!(instant(wall, zone).expect_err("refused").to_string().starts_with(words));
        }
    }
}
