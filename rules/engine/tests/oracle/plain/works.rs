//! Works done: what counts as which, and how long ago.

use lammas_agronomy::calendar::Day;
use lammas_engine::pack::MaterialEntry;
use lammas_engine::question::said::WorkSaid;

use super::markers::Dates;
use super::world::World;

/// How far back a pest or disease work may forbid the harvest, days.
const HARVEST_WAIT_DAYS: i32 = 60;

impl World<'_> {
    pub(crate) fn material(&self, id: &str) -> &MaterialEntry {
        self.pack.materials.iter().map(|m| &m.entry).find(|m| m.id.value == id).unwrap()
    }

    /// Whether a material is of a class. A work may name no more than the class.
    pub(crate) fn has_class(&self, material: &str, class: &str) -> bool {
        material == class
            || self.is_material(material) && self.material(material).classes.iter().any(|c| c.value == class)
    }

    pub(crate) fn is_material(&self, id: &str) -> bool {
        self.pack.materials.iter().any(|m| m.entry.id.value == id)
    }

    /// The works said, oldest first; none: not said.
    pub(crate) fn works(&self) -> Option<Vec<(Day, &WorkSaid)>> {
        let list = self.said.history.as_ref()?;
        let mut works: Vec<_> = list.iter().map(|work| (Day::from_date(work.date.unwrap()), work)).collect();
        works.sort_by_key(|(day, _)| *day);
        Some(works)
    }

    /// The job of a work: said, else that of its rule.
    pub(crate) fn job_of<'w>(&'w self, work: &'w WorkSaid) -> Option<&'w str> {
        let of_rule = || self.rule(work.rule.as_deref()?).job.as_ref().map(|job| job.value.as_str());
        work.job.as_deref().or_else(of_rule)
    }

    /// The materials of a work: said, else those of its rule.
    pub(crate) fn materials_of<'w>(&'w self, work: &'w WorkSaid) -> Vec<&'w str> {
        match (&work.material, &work.rule) {
            (Some(material), _) => vec![material],
            (None, Some(rule)) => self.rule(rule).materials.iter().map(|m| m.value.as_str()).collect(),
            (None, None) => Vec::new(),
        }
    }

    /// Whether a work was of a job, with a material, or with one of a class.
    pub(crate) fn was(&self, work: &WorkSaid, what: &str) -> bool {
        let materials = self.materials_of(work);
        self.job_of(work) == Some(what) || materials.iter().any(|m| *m == what || self.has_class(m, what))
    }

    /// How often something was done within so many days.
    pub(crate) fn count(&self, what: &str, within: i32) -> Option<usize> {
        Some(self.works()?.iter().filter(|(day, work)| self.day - *day < within && self.was(work, what)).count())
    }

    /// When something was done last; absent when never.
    pub(crate) fn last(&self, what: &str) -> Option<Option<Day>> {
        Some(self.works()?.iter().filter(|(_, work)| self.was(work, what)).map(|(day, _)| *day).max())
    }

    /// The day from which the harvest is free again.
    pub(crate) fn harvest_wait(&self) -> Dates {
        let Some(works) = self.works() else { return Dates::Unknown };
        let mut free: Option<Day> = None;
        for (day, work) in works {
            if self.day - day > HARVEST_WAIT_DAYS || !matches!(self.job_of(work), Some("treat-pest" | "treat-disease"))
            {
                continue;
            }
            let Some(days) = work.label_days_to_harvest else { return Dates::Unknown };
            free = free.max(Some(day + i32::from(days)));
        }
        free.map_or(Dates::Absent { always: false }, |day| Dates::On(vec![day]))
    }
}
