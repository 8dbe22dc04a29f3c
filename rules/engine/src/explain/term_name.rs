//! The name of a term, as a rule writes it.

use crate::compile::book::PlantBook;
use crate::compile::path::SERIES;
use crate::compile::set::Set;
use crate::compile::term::{MarkerRef, Term, Work};
use crate::fact::value::Value;
use lammas_agronomy::season::{Aggregate, Series};

/// The name of a term.
#[must_use]
pub fn of(term: &Term, set: &Set, book: &PlantBook) -> String {
    let names = &set.names;
    let inner = |term: &Term| of(term, set, book);
    match term {
        Term::Fact(fact) => fact.entry().name.to_owned(),
        Term::Trait(number) => format!("plant.trait({})", book.names.traits.name(*number)),
        Term::Sign(sign) => format!("signs has {}", names.signs.name(*sign)),
        Term::Severity(sign) => format!("severity({})", names.signs.name(*sign)),
        Term::Share(sign) => format!("share({})", names.signs.name(*sign)),
        Term::RegionIs(_) => "region".to_owned(),
        Term::RegionFlag(flag) => format!("region.flag({flag})"),
        Term::Wants(job) => format!("wants({})", names.jobs.name(*job)),
        Term::Done(work, days) => format!("done({}, within {days} days)", self::work(*work, set)),
        Term::Count(work, days) => format!("count({}, within {days} days)", self::work(*work, set)),
        Term::Past(aggregate, series, days) => {
            format!("{}({}, {days} days)", self::aggregate(*aggregate), self::series(*series))
        }
        Term::Ahead(aggregate, series, days) => {
            format!("ahead({}, {}, {days} days)", self::aggregate(*aggregate), self::series(*series))
        }
        Term::FrostAhead(temperature, days) => format!("frost_ahead({temperature} °C, {days} days)"),
        Term::HeatSum { base_c, upper_c, from } => match upper_c {
            Some(upper) => format!("heat_sum({base_c} °C, {upper} °C, from {})", from.text),
            None => format!("heat_sum({base_c} °C, from {})", from.text),
        },
        Term::Marker(at) => at.text.clone(),
        Term::DaysTo(at) => format!("days_to({})", at.text),
        Term::DaysFrom(at) => format!("days_from({})", at.text),
        Term::Literal(Value::Number(number)) => number.to_string(),
        Term::Literal(_) => String::new(),
        Term::Add(a, b) => format!("{} + {}", inner(a), inner(b)),
        Term::Subtract(a, b) => format!("{} - {}", inner(a), inner(b)),
        Term::Times(a, by) => format!("{} * {by}", inner(a)),
        Term::Over(a, by) => format!("{} / {by}", inner(a)),
        Term::Converted(a, ..) => inner(a),
        Term::Compare(a, comparison, b) => format!("{} {} {}", inner(a), comparison.symbol(), inner(b)),
    }
}

fn work(work: Work, set: &Set) -> &str {
    match work {
        Work::Job(job) => set.names.jobs.name(job),
        Work::Material(material) => set.names.materials.name(material),
        Work::Class(class) => set.names.classes.name(class),
    }
}

fn aggregate(of: Aggregate) -> &'static str {
    match of {
        Aggregate::Mean => "mean",
        Aggregate::Min => "min",
        Aggregate::Max => "max",
        Aggregate::Sum => "sum",
    }
}

fn series(of: Series) -> &'static str {
    SERIES.iter().find(|(_, row, _)| *row == of).map_or("", |(name, ..)| name)
}

/// The terms by themselves that a term reads: the facts in it.
#[must_use]
pub fn leaves(term: &Term) -> Vec<&Term> {
    let mut out = Vec::new();
    term.walk(&mut |t| {
        if t.fact().is_some() {
            out.push(t);
        }
    });
    out
}

/// Whether a marker can only be told by the caller, and by which fact.
#[must_use]
pub const fn asked_for(marker: &MarkerRef) -> Option<crate::fact::catalogue::Fact> {
    use crate::fact::catalogue::Fact;
    match marker {
        MarkerRef::Planted => Some(Fact::PlantPlantedOn),
        MarkerRef::Stage(_) => Some(Fact::PlantStage),
        MarkerRef::Last(_) | MarkerRef::HarvestWait => Some(Fact::Done),
        MarkerRef::Since(_) => Some(Fact::Since),
        MarkerRef::Season(_) | MarkerRef::HeatReached { .. } | MarkerRef::ChillReached(_) | MarkerRef::Today => None,
    }
}
