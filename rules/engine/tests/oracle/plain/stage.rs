//! The stage of the plant: said, else by its model, else unknown.

use lammas_agronomy::calendar::Day;
use lammas_agronomy::origin::Origin;
use lammas_engine::lang::parse;

use super::facts::{Found, fact};
use super::markers::Dates;
use super::value::Value;
use super::world::World;

impl World<'_> {
    /// When a stage began or will begin.
    pub(crate) fn stage_begins(&self, stage: &str) -> (Dates, Origin) {
        let said = &self.said.plant;
        if said.stage.as_deref() == Some(stage)
            && let Some(since) = said.stage_since
        {
            return (Dates::On(vec![Day::from_date(since)]), Origin::Given);
        }
        let model = self.plant().stage_model.iter().find(|model| model.stage.value == stage);
        let Some(model) = model else { return (Dates::Unknown, Origin::Given) };
        let side = parse::side(&model.begins.value).unwrap();
        let mut last = (Dates::Unknown, Origin::Given);
        for choice in &side.choices {
            last = (self.dates_with_offset(choice).0, self.season.curve_origin());
            if !matches!(last.0, Dates::Absent { .. }) {
                break;
            }
        }
        last
    }

    /// The stage that the model says, with the day on which it began: the one that began last. While one of its days is
    /// unknown none is certain.
    fn modelled(&self) -> Option<(&str, Day, Origin)> {
        let mut now: Option<(&str, Day, Origin)> = None;
        for model in &self.plant().stage_model {
            let (dates, origin) = self.stage_begins(&model.stage.value);
            let days = match dates {
                Dates::Unknown => return None,
                Dates::Absent { .. } => continue,
                Dates::On(days) => days,
            };
            let began = days.into_iter().rfind(|day| *day <= self.day);
            if let Some(began) = began
                && now.is_none_or(|(_, day, _)| began >= day)
            {
                now = Some((&model.stage.value, began, origin));
            }
        }
        now
    }

    pub(crate) fn stage(&self) -> Found {
        match (&self.said.plant.stage, self.modelled()) {
            (Some(stage), _) => fact("plant.stage", Value::Word(stage.clone()), Origin::Given),
            (None, Some((stage, _, origin))) => fact("plant.stage", Value::Word(stage.to_owned()), origin),
            (None, None) => fact("plant.stage", Value::Unknown, Origin::Given),
        }
    }

    pub(crate) fn stage_since(&self) -> Found {
        let said = &self.said.plant;
        match (&said.stage, said.stage_since, self.modelled()) {
            (Some(_), Some(since), _) => fact("plant.stage_since", Value::On(Day::from_date(since)), Origin::Given),
            (None, _, Some((_, since, origin))) => fact("plant.stage_since", Value::On(since), origin),
            _ => fact("plant.stage_since", Value::Unknown, Origin::Given),
        }
    }

    /// Said, else it follows from the stage.
    pub(crate) fn in_leaf(&self) -> Found {
        if let Some(yes) = self.said.plant.in_leaf {
            return fact("plant.in_leaf", Value::Yes(yes), Origin::Given);
        }
        let (stage, read) = self.stage();
        match stage {
            Value::Word(stage) => {
                let yes = self.plant().in_leaf.iter().any(|s| s.value == stage);
                fact("plant.in_leaf", Value::Yes(yes), read.origin)
            }
            _ => fact("plant.in_leaf", Value::Unknown, Origin::Given),
        }
    }
}
