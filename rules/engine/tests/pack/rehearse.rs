//! A rehearsed year is 366 live answers.

use std::sync::Arc;

use lammas_agronomy::calendar::Day;
use lammas_agronomy::season::SiteShift;
use lammas_engine::compile::set::{Set, compile};
use lammas_engine::explain::whole::{self, Extent};
use lammas_engine::question::Climate;
use lammas_engine::question::said::Said;
use lammas_engine::question::understand::{profile, understand};
use lammas_engine::rank::Band;
use lammas_engine::read::read;
use lammas_engine::rehearse::days::{self, DAYS, Member, Stretch};
use lammas_engine::rehearse::plan;

use crate::shipped::{files, set};

fn climate(set: &Set, id: &str) -> Arc<Climate> {
    let entry = &set.pack.climates.iter().find(|c| c.entry.id.value == id).unwrap().entry;
    Arc::new(Climate::new(None, profile(&entry.profile, "").unwrap(), SiteShift::default()))
}

fn from() -> Day {
    // The year has a leap day in it.
    Day::from_date(chrono::NaiveDate::from_ymd_opt(2027, 9, 1).unwrap())
}

/// Conditions of the scenarios that stand all year, the first of each plant planted lately, in turn in some climates.
fn basket(set: &Set) -> Vec<Member> {
    let ids = ["hot-dry-valley", "cold-inland", "southern-temperate", "tropical-lowland"];
    let mut planted: Vec<String> = Vec::new();
    let asks = set.pack.scenarios.iter().enumerate().filter(|(at, _)| at % 9 == 0);
    asks.enumerate()
        .map(|(number, (_, filed))| {
            let mut said = Said { climate: Default::default(), ..filed.entry.ask.clone() };
            said.site.frost_hollow = None;
            if !planted.contains(&said.plant.kind) {
                planted.push(said.plant.kind.clone());
                said.plant.age_years = None;
                said.plant.planted_on = Some((from() - 200).date());
            }
            Member { name: filed.file.to_string(), said, climate: climate(set, ids[number % ids.len()]) }
        })
        .collect()
}

/// What a day's answer says: the tasks in their order, what is held, what depends, what is noted.
type Said4 = (Vec<(String, Band)>, Vec<String>, Vec<String>, Vec<String>);

fn live(set: &Set, member: &Member, day: Day) -> Said4 {
    let said = Said { date: Some(day.date()), ..member.said.clone() };
    let question = understand(&said, set, Arc::clone(&member.climate), None).unwrap();
    let extent = Extent { most_depends: usize::MAX, ..Extent::STANDARD };
    let answer = whole::answer(set, &question, "en", extent).unwrap();
    let sorted = |ids: Vec<&str>| {
        let mut ids: Vec<String> = ids.into_iter().map(str::to_owned).collect();
        ids.sort();
        ids
    };
    (
        answer.tasks.iter().map(|t| (t.id.to_owned(), t.priority.band)).collect(),
        sorted(answer.held.iter().map(|h| h.id).collect()),
        sorted(answer.depends_on.iter().map(|d| d.id).collect()),
        sorted(answer.notes.iter().map(|n| n.id).collect()),
    )
}

fn rehearsed(set: &Set, stretch: &Stretch) -> Said4 {
    let id = |rule: &u32| set.rules[*rule as usize].id.clone();
    let sorted = |rules: Vec<u32>| {
        let mut ids: Vec<String> = rules.iter().map(id).collect();
        ids.sort();
        ids
    };
    let decided = &stretch.decided;
    (
        decided.tasks.iter().map(|(rule, band)| (id(rule), *band)).collect(),
        sorted(decided.held.iter().map(|(rule, _)| *rule).collect()),
        sorted(decided.depends.clone()),
        sorted(decided.noted.clone()),
    )
}

#[test]
fn every_day_of_the_year_is_what_the_live_answer_of_that_day_says() {
    let set = set();
    let mut stretches = 0;
    for member in basket(&set) {
        let year = days::of(&member, &set, from()).unwrap();
        assert_eq!((year[0].first, year[year.len() - 1].last), (from(), from() + (DAYS - 1)), "{}", member.name);
        assert!(year.windows(2).all(|pair| pair[0].last + 1 == pair[1].first && pair[0].decided != pair[1].decided));
        for stretch in &year {
            let expected = rehearsed(&set, stretch);
            let mut day = stretch.first;
            while day <= stretch.last {
                assert_eq!(live(&set, &member, day), expected, "{} on {}", member.name, day.date());
                day = day + 1;
            }
        }
        stretches += year.len();
    }
    assert!(stretches > 100, "{stretches} stretches: too few to show anything");
}

/// One rose with aphids, in a climate and under rules in which a separation was sown or not.
fn sown(days: u16) -> (Set, Vec<plan::Week>) {
    let mut files = files();
    if days > 0 {
        let file = files.iter_mut().find(|file| file.path == "rules/rose-sucking-pests.yaml").unwrap();
        let from = "- id: rose.aphid-jet\n";
        assert!(file.text.contains(from));
        file.text = file.text.replacen(from, &format!("{from}  keep_apart: [{{job: prune, days: {days}}}]\n"), 1);
    }
    let set = compile(read(&files).unwrap()).0.unwrap();
    let said: Said = serde_json::from_value(serde_json::json!({
        "plant": {"type": "rose", "age_years": 5},
        "condition": {"signs": [{"sign": "aphid-clusters", "share_pct": 60}, {"sign": "spent-blooms"}]},
        "history": []
    }))
    .unwrap();
    let member = Member { name: "rose".to_owned(), said, climate: climate(&set, "mediterranean-coast") };
    let year = days::of(&member, &set, from()).unwrap();
    let weeks = plan::weeks(&[year], &set);
    (set, weeks)
}

#[test]
fn a_separation_that_was_sown_is_found_and_costs_a_day_or_a_wait() {
    let prunes_and_jets = |set: &Set, weeks: &[plan::Week]| {
        let jet = set.names.rules.wide("rose.aphid-jet").unwrap();
        let prune = set.names.jobs.number("prune").unwrap();
        let is_prune = |rule: u32| set.rules[rule as usize].job == Some(prune);
        let clash =
            |c: &plan::Clash| c.rule == jet && is_prune(c.before.rule) || c.before.rule == jet && is_prune(c.rule);
        weeks.iter().filter(|week| week.clashes.iter().any(clash)).cloned().collect::<Vec<plan::Week>>()
    };
    let (set, weeks) = sown(0);
    assert_eq!(prunes_and_jets(&set, &weeks), [], "nothing keeps them apart as the rules are");
    for days in [2, 9] {
        let (set, weeks) = sown(days);
        let found = prunes_and_jets(&set, &weeks);
        assert!(!found.is_empty(), "{days} days");
        let clashes = found.iter().flat_map(|week| &week.clashes);
        assert!(clashes.clone().all(|clash| clash.before.days >= 1), "{found:?}");
        // Works that were put on days keep the distance.
        for clash in clashes {
            let dates = |rule: u32| -> Vec<Day> {
                weeks.iter().flat_map(|w| &w.works).filter(|w| w.rule == rule).map(|w| w.day).collect()
            };
            for one in dates(clash.rule) {
                for other in dates(clash.before.rule) {
                    let apart = (one - other).abs();
                    assert!(apart >= i32::from(days), "{days}: {} and {}", one.date(), other.date());
                }
            }
        }
    }
}

#[test]
fn the_weeks_lie_one_after_another_and_count_their_days() {
    let (_, weeks) = sown(2);
    assert_eq!(weeks.len(), 53, "366 days are 52 weeks and 2 days");
    assert_eq!((weeks[0].first, weeks[52].last), (from(), from() + 365));
    for week in &weeks {
        let mut days: Vec<Day> = week.works.iter().map(|work| work.day).collect();
        assert!(days.iter().all(|day| week.first <= *day && *day <= week.last));
        days.dedup();
        assert_eq!(days.len(), week.separate_days);
        assert_eq!(week.is_empty(), week.works.is_empty() && week.going_on.is_empty() && week.clashes.is_empty());
    }
    let works: usize = weeks.iter().map(|week| week.works.len()).sum();
    assert!(works > 5, "{works}");
}
