//! Whether a term can turn out absent: known not to exist.

use crate::compile::term::{MarkerAt, MarkerRef, Term};

/// Whether a term can turn out absent.
#[must_use]
pub(super) fn may_be_absent(term: &Term) -> bool {
    match term {
        Term::Marker(at) => marker(&at.marker),
        // A day that comes once is behind us as soon as it has passed: then there is no next one.
        Term::DaysTo(at) => marker(&at.marker) || !matches!(at.marker, MarkerRef::Today),
        Term::DaysFrom(at) => marker(&at.marker),
        Term::HeatSum { from, .. } => marker(&from.marker),
        Term::Add(a, b) | Term::Subtract(a, b) | Term::Compare(a, _, b) => may_be_absent(a) || may_be_absent(b),
        Term::Times(a, _) | Term::Over(a, _) | Term::Converted(a, ..) => may_be_absent(a),
        _ => false,
    }
}

fn marker(of: &MarkerRef) -> bool {
    match of {
        MarkerRef::Season(_)
        | MarkerRef::HeatReached { .. }
        | MarkerRef::ChillReached(_)
        | MarkerRef::Stage(_)
        | MarkerRef::Last(_)
        | MarkerRef::HarvestWait => true,
        MarkerRef::Planted | MarkerRef::Since(_) | MarkerRef::Today => false,
    }
}

/// The markers on which the absence of a term hangs.
#[must_use]
pub(super) fn markers(term: &Term) -> Vec<&MarkerAt> {
    let mut out: Vec<&MarkerAt> = Vec::new();
    term.walk(&mut |inner| match inner {
        Term::Marker(at) | Term::DaysTo(at) | Term::DaysFrom(at) => out.push(at),
        Term::HeatSum { from, .. } => out.push(from),
        _ => {}
    });
    out
}
