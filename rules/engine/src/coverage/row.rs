//! The weeks of a plant at a place.

use lammas_agronomy::calendar::Day;

use super::cell::Cell;
use crate::compile::set::Set;
use crate::decide::decision::decide;
use crate::decide::moment::Moment;
use crate::question::understand::understand;
use crate::typical::cases::{self, Case};
use crate::typical::places::Spot;
use crate::typical::weeks::{self, WEEKS};

/// The cells of a plant at a place, a week each.
#[must_use]
pub fn of(set: &Set, plant: &str, cases: &[Case], spot: &Spot) -> Vec<Cell> {
    let mut cells = vec![Cell::default(); usize::from(WEEKS)];
    let climates = [false, true].map(|hollow| spot.climate(hollow));
    for (number, case) in cases.iter().enumerate() {
        let [plain, hollow] = &climates;
        let climate = if case.is_hollow() { hollow } else { plain };
        let Ok(question) = understand(&case.at(spot, weeks::day(1)), set, climate.clone(), None) else { continue };
        let Some(book) = set.plants.get(usize::from(question.plant)) else { continue };
        for (cell, week) in cells.iter_mut().zip(1..=WEEKS) {
            let there = cases::moved(&question, weeks::day(week));
            let moment = Moment::new(set, book, &there, there.day);
            // The first condition is that of somebody who tells nothing.
            if number == 0 {
                cell.add_untold(&decide(&moment), &moment);
            } else {
                cell.add(&decide(&moment), set);
            }
        }
    }
    for (cell, week) in cells.iter_mut().zip(1..=WEEKS) {
        cell.scenarios = asking(set, plant, spot, week);
    }
    cells
}

/// Scenarios of the plant that ask at the place in the week.
fn asking(set: &Set, plant: &str, spot: &Spot, week: u8) -> u16 {
    let asks = set.pack.scenarios.iter().map(|filed| &filed.entry.ask);
    let there = asks.filter(|ask| {
        let in_week = ask.date.is_some_and(|date| weeks::week_of(Day::from_date(date)) == week);
        ask.plant.kind == plant && ask.climate.id.as_deref() == Some(&spot.id) && in_week
    });
    u16::try_from(there.count()).unwrap_or(u16::MAX)
}
