//! South of the equator all comes half a year later: the same question with the latitude negated, the months turned by six and
//! the date half a year later has the same outcomes, for rules over temperature and the sun.

use std::sync::OnceLock;

use chrono::{Days, Months, NaiveDate};
use lammas_agronomy::curve::Series;
use lammas_agronomy::marker::{Marker, Threshold};
use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::{Season, SiteShift};
use lammas_engine::question::said::Said;
use proptest::collection::vec;
use proptest::option::weighted;
use proptest::prelude::*;
use proptest::sample::select;

use crate::agreement::of_engine;
use crate::asking::{about, rule, set};
use crate::making::climates::{Place, extremes, mirrored, places};
use crate::making::conditions;
use crate::making::questions::dates;
use crate::making::windows::{PATTERNS, Pattern, written};
use crate::plain::outcome::{Outcome, Verdict};

/// Days either side of the date on which the answer must be the same: months differ in length, and harmonics are cut off.
const AWAY_FROM_AN_EDGE: u64 = 12;

/// Crossings that the rules name.
const CROSSINGS: [(Series, f64); 6] = [
    (Series::Tmean, 5.0),
    (Series::Tmean, 10.0),
    (Series::Tmean, 12.0),
    (Series::Tmax, 18.0),
    (Series::Tmax, 27.0),
    (Series::Tmax, 32.0),
];

/// Days by which a marker may miss the half year.
const TOLERANCE_DAYS: i32 = 6;

/// Whether two climates have the same markers, half a year apart, and are of one kind.
fn are_alike(here: &Season, there: &Season) -> bool {
    let crossings = CROSSINGS.into_iter().map(|(series, at)| (series, Threshold::new(at).unwrap()));
    let crossings = crossings.flat_map(|(series, at)| [Marker::Rises(series, at), Marker::Falls(series, at)]);
    let flags = |season: &Season| {
        let flags = season.climate();
        [flags.frost_free, flags.mild_winter, flags.cold_winter, flags.hot_summer, flags.short_season]
    };
    let dry = Marker::FIXED.into_iter().chain(crossings).filter(|marker| !marker.to_string().contains("rains"));
    let mut markers = dry.map(|marker| (here.marker(marker), there.marker(marker)));
    flags(here) == flags(there)
        && markers.all(|(a, b)| match (a.day(), b.day()) {
            (Some(a), Some(b)) => b.plus(-182).days_from(a).abs() <= TOLERANCE_DAYS,
            _ => a.as_str() == b.as_str(),
        })
}

/// The places where nothing grazes a threshold and no curve is flat at its top: elsewhere one hemisphere may have a season that
/// the other just misses.
fn settled() -> &'static [Place] {
    static SETTLED: OnceLock<Vec<Place>> = OnceLock::new();
    SETTLED.get_or_init(|| {
        let season = |profile: &Profile| Season::new(profile, SiteShift::default());
        let all = places().into_iter().chain(extremes());
        all.filter(|place| are_alike(&season(&place.profile), &season(&mirrored(&place.profile)))).collect()
    })
}

#[test]
fn nearly_every_place_has_the_same_seasons_on_both_hemispheres() {
    assert!(settled().len() >= 55, "{} of 65", settled().len());
}

/// Windows over temperature and the sun; rain and heat sums hang on thresholds that months of other lengths may miss.
fn windows() -> impl Strategy<Value = Pattern> {
    let is_dry =
        |side: &str| !side.contains("rains") && !side.contains("heat_reached") && !side.contains("chill_reached");
    select(
        PATTERNS
            .iter()
            .copied()
            .filter(|(opens, _, closes, _)| is_dry(opens) && is_dry(closes))
            .collect::<Vec<Pattern>>(),
    )
}

fn one_rule() -> impl Strategy<Value = String> {
    (weighted(0.7, windows()), weighted(0.7, conditions::mirrored()), weighted(0.3, conditions::mirrored())).prop_map(
        |(window, when, hold)| {
            let mut fields = Vec::new();
            fields.extend(window.map(|window| format!("window: {}", written(&window))));
            fields.extend(when.map(|when| format!("when: \"{when}\"")));
            fields.extend(hold.map(|hold| format!("hold: [{{if: \"{hold}\", because: {{en: B}}}}]")));
            fields.push("outside: {early: {en: E}, late: {en: L}, never: {en: N}}".to_owned());
            fields.join("\n")
        },
    )
}

/// The outcome by name, without the days that it tells.
fn word(verdicts: &[Verdict], id: &str) -> String {
    match verdicts.iter().find(|verdict| verdict.rule == id).map(|verdict| &verdict.outcome) {
        None | Some(Outcome::No) => "no".to_owned(),
        Some(Outcome::Applies) => "applies".to_owned(),
        Some(Outcome::Held(blocks)) => blocks.join(", "),
        Some(Outcome::Depends { could_apply }) => format!("depends {could_apply}"),
    }
}

fn asked(plant: &Said, date: NaiveDate) -> Said {
    Said { date: Some(date), ..plant.clone() }
}

proptest! {
    #![proptest_config(ProptestConfig { max_shrink_iters: 4096, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn half_a_year_later_on_the_other_hemisphere_comes_the_same(
        fields in vec(one_rule(), 1..=6),
        place in select(settled()),
        date in dates(),
        mulched in proptest::option::of(any::<bool>()),
        ph in proptest::option::of(select(vec![6.0, 6.5, 7.5])),
    ) {
        let rules: Vec<String> = fields.iter().enumerate().map(|(at, fields)| rule(&format!("any.m{at}"), fields)).collect();
        let set = set(&rules);
        let mut said = about("rose", "2025-01-01");
        said.site.mulched = mulched;
        said.site.soil.ph = ph;
        let there = mirrored(&place.profile);
        let of = |profile, date| of_engine(&set, &asked(&said, date), profile).0;
        let near = [date - Days::new(AWAY_FROM_AN_EDGE), date, date + Days::new(AWAY_FROM_AN_EDGE)];
        let here: Vec<Vec<Verdict>> = near.iter().map(|date| of(&place.profile, *date)).collect();
        let other: Vec<Vec<Verdict>> = near.iter().map(|date| of(&there, *date + Months::new(6))).collect();
        for (at, rule) in rules.iter().enumerate() {
            let id = format!("any.m{at}");
            let words: Vec<String> = here.iter().map(|verdicts| word(verdicts, &id)).collect();
            // Near an edge a day decides, and the half years are not of one length.
            if words.iter().all(|w| *w == words[0]) {
                let there: Vec<String> = other.iter().map(|verdicts| word(verdicts, &id)).collect();
                prop_assert!(there.contains(&words[0]), "{}: {} on {date}, {there:?} half a year later\n{rule}", place.name, words[0]);
            }
        }
    }
}
