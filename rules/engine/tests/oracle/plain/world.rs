//! A question in the caller's own words, the pack, the season: all that the plain evaluator looks at.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::profile::Profile;
use lammas_agronomy::season::{Season, SiteShift};
use lammas_engine::pack::{Pack, PlantEntry, RuleEntry};
use lammas_engine::question::said::Said;

pub(crate) struct World<'a> {
    pub(crate) pack: &'a Pack,
    pub(crate) said: &'a Said,
    pub(crate) season: Season,
    pub(crate) day: Day,
}

impl<'a> World<'a> {
    pub(crate) fn new(pack: &'a Pack, said: &'a Said, profile: &Profile) -> Self {
        let shift = SiteShift { frost_hollow: said.site.frost_hollow == Some(true) };
        Self { pack, said, season: Season::new(profile, shift), day: Day::from_date(said.date.unwrap()) }
    }

    pub(crate) fn plant(&self) -> &'a PlantEntry {
        let kind = &self.said.plant.kind;
        self.pack.plants.iter().map(|p| &p.entry).find(|p| p.id.value == *kind).unwrap()
    }

    pub(crate) fn rule(&self, id: &str) -> &'a RuleEntry {
        self.pack.rules.iter().map(|r| &r.entry).find(|r| r.id.value == id).unwrap()
    }

    /// The rules that may concern the plant, in the order of their files.
    pub(crate) fn rules(&self) -> Vec<&'a RuleEntry> {
        use lammas_engine::pack::shapes::AllOr;
        let kind = &self.said.plant.kind;
        let all = self.pack.rules.iter().map(|r| &r.entry);
        // A rule for a problem concerns no plant that does not get it.
        let all = all.filter(|rule| rule.whom.problem.as_ref().is_none_or(|problem| self.gets(&problem.value)));
        all.filter(|rule| match (&rule.whom.plant, &rule.whom.plants) {
            (Some(plant), _) => plant.value == *kind,
            (None, Some(AllOr::These(plants))) => plants.iter().any(|p| p.value == *kind),
            (None, Some(AllOr::All) | None) => true,
        })
        .collect()
    }

    /// Whether the plant gets a problem at all.
    pub(crate) fn gets(&self, problem: &str) -> bool {
        use lammas_engine::pack::shapes::AllOr;
        let entry = self.pack.problems.iter().map(|p| &p.entry).find(|p| p.id.value == problem).unwrap();
        match &entry.plants {
            AllOr::All => true,
            AllOr::These(plants) => plants.iter().any(|p| p.value == self.said.plant.kind),
        }
    }
}
