//! The map for people: a line a place, a character a week.

use std::fmt::Write as _;

use lammas_agronomy::calendar::Day;
use lammas_engine::coverage::cell::Cell;
use lammas_engine::coverage::long_quiet;
use lammas_engine::coverage::map::{LEVELS, Map, Plant, level};
use lammas_engine::pack::rule::Evidence;
use lammas_engine::typical::weeks::{WEEKS, Weeks};

use crate::cli::counted::{count, counted};
use crate::cli::wrapped::lines;

/// No more stretches with nothing due are listed for a plant.
const MOST_GAPS: usize = 8;

/// The map of every plant.
pub(super) fn all(map: &Map<'_>) -> String {
    let header = &map.set.pack.header;
    let mut out = format!("{} {}: {}\n", header.name.value, header.version.value, key());
    for plant in &map.plants {
        of_plant(plant, map, &mut out);
    }
    out
}

fn key() -> String {
    let levels: Vec<String> = (1..).zip(LEVELS).map(|(level, (_, words))| format!("{level} = {words}")).collect();
    format!(
        "tasks advised under some typical condition\n{};\na to e: so many, but none for somebody who tells nothing;\n\
         -: nothing due, but something is held, noted or asked; .: nothing at all",
        levels.join(", ")
    )
}

/// The character of a cell.
fn mark(cell: &Cell) -> char {
    let marks = if cell.untold == 0 { "abcde" } else { "12345" };
    let of_level = level(cell).and_then(|level| marks.chars().nth(level - 1));
    of_level.unwrap_or(if cell.is_silent() { '.' } else { '-' })
}

fn of_plant(plant: &Plant, map: &Map<'_>, out: &mut String) {
    let width = map.places.iter().map(|spot| spot.name.get("en").chars().count()).max().unwrap_or(0);
    let _ = writeln!(out, "\n{} under {}", plant.id.to_uppercase(), counted(plant.cases.len() as u64, "condition"));
    let _ = writeln!(out, "  {:width$}  {}", "week", ruler());
    for (spot, row) in map.rows(plant) {
        let marks: String = row.iter().map(mark).collect();
        let _ = writeln!(out, "  {:width$}  {marks}", spot.name.get("en"));
    }
    out.push_str(&lines("  ", &totals(plant, map)));
    gaps(plant, map, out);
    quiet(plant, map, out);
}

/// The week under whose first digit its column stands.
fn ruler() -> String {
    let mut ruler = String::new();
    for week in (1..=WEEKS).filter(|week| week % 10 == 1) {
        ruler.push_str(&format!("{week:<10}"));
    }
    ruler.trim_end().to_owned()
}

fn totals(plant: &Plant, map: &Map<'_>) -> String {
    let cells: Vec<&Cell> = plant.rows.iter().flatten().collect();
    let number = |is: &dyn Fn(&Cell) -> bool| cells.iter().filter(|cell| is(cell)).count() as u64;
    let weakest = |evidence: Evidence| number(&|cell| cell.weakest(map.set) == Some(evidence));
    let scenarios: u64 = cells.iter().map(|cell| u64::from(cell.scenarios)).sum();
    format!(
        "{} of {} with nothing due whatever is told, {} for somebody who tells nothing. Weakest evidence behind what is advised: consensus {}, trial {}, common practice {}, doubtful {}. {} in {}",
        count(number(&|cell| cell.is_nothing_due())),
        counted(cells.len() as u64, "cell"),
        count(number(&|cell| cell.untold == 0)),
        count(weakest(Evidence::Consensus)),
        count(weakest(Evidence::Trial)),
        count(weakest(Evidence::CommonPractice)),
        count(weakest(Evidence::Doubtful)),
        counted(scenarios, "scenario"),
        counted(number(&|cell| cell.scenarios > 0), "cell"),
    )
}

/// Stretches of weeks in which nothing is due for somebody who tells nothing, the longest first, with what opens next.
fn gaps(plant: &Plant, map: &Map<'_>, out: &mut String) {
    let mut found: Vec<(u32, String)> = Vec::new();
    for (spot, row) in map.rows(plant) {
        let mut weeks = Weeks::default();
        (1..).zip(row).filter(|(_, cell)| cell.untold == 0).for_each(|(week, _)| weeks.put(week));
        for (first, last) in weeks.runs() {
            let mut run = Weeks::default();
            let inside =
                |week: u8| if first <= last { (first..=last).contains(&week) } else { week >= first || week <= last };
            (1..=WEEKS).filter(|week| inside(*week)).for_each(|week| run.put(week));
            // What opens after it; of a year that is all gap, what opens first.
            let asked = if run.count() == u32::from(WEEKS) { first } else { last };
            let next = row.get(usize::from(asked) - 1).and_then(|cell| cell.next_opening);
            found.push((run.count(), format!("{}, {}: {}", spot.name.get("en"), run.words(), opening(next, map))));
        }
    }
    found.sort_by_key(|(weeks, _)| std::cmp::Reverse(*weeks));
    for (_, gap) in found.iter().take(MOST_GAPS) {
        out.push_str(&lines("  nothing due, nothing told: ", gap));
    }
    if found.len() > MOST_GAPS {
        let _ = writeln!(
            out,
            "  … {}; --json has every week",
            format_args!("{} more such stretches", found.len() - MOST_GAPS)
        );
    }
}

/// Places where nothing opens for half a year, with the reason or the want of one.
fn quiet(plant: &Plant, map: &Map<'_>, out: &mut String) {
    for spot in &map.places {
        let Some(found) = long_quiet::of(map.set, &plant.id, spot) else { continue };
        let for_long = found.days.map_or_else(|| "never".to_owned(), |days| format!("not for {} weeks", days / 7));
        let why = found.because.unwrap_or_else(|| "no reason is written in `quiet`".to_owned());
        out.push_str(&lines("  opens ", &format!("{for_long}, {}: {why}", spot.name.get("en"))));
    }
}

fn opening(next: Option<(Day, u32)>, map: &Map<'_>) -> String {
    match next {
        Some((day, rule)) => format!("next opens {} on {}", map.rule(rule), day.date()),
        None => "no window opens later".to_owned(),
    }
}
