//! More care with an entry below: holds, cautions, separations more; maxima lower; intervals longer. Nothing else.

use std::sync::Arc;

use crate::fault::{Fault, Place};
use crate::lang::parse;
use crate::pack::expression::place;
use crate::pack::layer::TightenEntry;
use crate::pack::material::MaximumEntry;
use crate::pack::rule::{ApartEntry, RepeatEntry};
use crate::pack::{At, MaterialEntry, Pack, RuleEntry};
use crate::unit::Unit;

/// The ids that more care may name.
pub(super) struct Names {
    cautions: Vec<String>,
    materials: Vec<String>,
    classes: Vec<String>,
    jobs: Vec<String>,
}

impl Names {
    /// Those of a pack.
    pub(super) fn of(pack: &Pack) -> Self {
        macro_rules! ids {
            ($list:ident) => {
                pack.$list.iter().map(|filed| filed.entry.id.value.clone()).collect()
            };
        }
        Self { cautions: ids!(cautions), materials: ids!(materials), classes: ids!(classes), jobs: ids!(jobs) }
    }
}

/// More care with a rule.
pub(super) fn rule(
    file: &Arc<str>,
    more: &TightenEntry,
    entry: &mut RuleEntry,
    names: &Names,
    faults: &mut Vec<Fault>,
) {
    let mut tightening = Tightening { file, more, names, faults };
    tightening.refuse("maximum", !more.maximum.is_empty(), "the most of a material stands at the material");
    tightening.something();
    for hold in &more.hold {
        let mut hold = hold.clone();
        hold.file = Some(Arc::clone(file));
        entry.hold.push(hold);
    }
    tightening.cautions(&mut entry.cautions);
    tightening.apart(&mut entry.keep_apart);
    if let Some(repeat) = &more.repeat {
        tightening.repeat(&mut entry.repeat, repeat);
    }
}

/// More care with a material.
pub(super) fn material(
    file: &Arc<str>,
    more: &TightenEntry,
    entry: &mut MaterialEntry,
    names: &Names,
    faults: &mut Vec<Fault>,
) {
    let mut tightening = Tightening { file, more, names, faults };
    tightening.refuse("hold", !more.hold.is_empty(), "a material has no holds: tighten its rules, or write a guard");
    tightening.refuse("repeat", more.repeat.is_some(), "how often stands at the rules");
    tightening.something();
    tightening.cautions(&mut entry.cautions);
    tightening.apart(&mut entry.keep_apart);
    tightening.maxima(&mut entry.maximum);
}

struct Tightening<'t> {
    file: &'t str,
    more: &'t TightenEntry,
    names: &'t Names,
    faults: &'t mut Vec<Fault>,
}

impl Tightening<'_> {
    fn here(&self) -> Place {
        place(self.file, &self.more.tighten)
    }

    fn wrong(&mut self, place: Place, message: String, help: &str) {
        let fault = Fault::error("not-a-tightening", place, message);
        self.faults.push(if help.is_empty() { fault } else { fault.help(help) });
    }

    fn refuse(&mut self, field: &str, is_said: bool, help: &str) {
        if is_said {
            let here = self.here();
            self.wrong(here, format!("`{field}` can't be tightened here"), help);
        }
    }

    fn something(&mut self) {
        let TightenEntry { hold, cautions, keep_apart, maximum, repeat, .. } = self.more;
        let nothing = hold.is_empty() && cautions.is_empty() && keep_apart.is_empty() && maximum.is_empty();
        if nothing && repeat.is_none() {
            let here = self.here();
            self.wrong(
                here,
                "a `tighten` adds something: it says nothing".to_owned(),
                "it may say hold, cautions, keep_apart, repeat; of a material cautions, keep_apart, maximum",
            );
        }
    }

    fn known(&mut self, id: &At<String>, known: &[String], what: &str) -> bool {
        if known.contains(&id.value) {
            return true;
        }
        let fault = Fault::error("unknown-name", place(self.file, id), format!("there is no {what} `{}`", id.value));
        self.faults.push(fault.nearest(&id.value, known.iter().map(String::as_str)));
        false
    }

    fn cautions(&mut self, own: &mut Vec<At<String>>) {
        for caution in &self.more.cautions {
            if self.known(caution, &self.names.cautions, "caution") && !own.iter().any(|c| c.value == caution.value) {
                own.push(caution.clone());
            }
        }
    }

    fn apart(&mut self, own: &mut Vec<ApartEntry>) {
        for apart in &self.more.keep_apart {
            let of = [
                (&apart.material, &self.names.materials, "material"),
                (&apart.class, &self.names.classes, "class"),
                (&apart.job, &self.names.jobs, "job"),
            ];
            let mut is_known = true;
            for (id, known, what) in of {
                if let Some(id) = id {
                    is_known &= self.known(id, known, what);
                }
            }
            if is_known {
                own.push(apart.clone());
            }
        }
    }

    fn maxima(&mut self, own: &mut Vec<MaximumEntry>) {
        for new in &self.more.maximum {
            let at = place(self.file, &new.value);
            let Some(known) = own.iter_mut().find(|known| known.per == new.per) else {
                own.push(new.clone());
                continue;
            };
            match is_at_most(&new.value.value, &known.value.value) {
                // It stands where the entry stands: a fault about it must find its file.
                Some(true) => known.value.value.clone_from(&new.value.value),
                Some(false) => {
                    let message = format!("the most below is `{}`, `{}` is more", known.value.value, new.value.value);
                    self.wrong(at, message, "a `tighten` can only lower it");
                }
                None => {
                    let message = format!("`{}` can't be compared with `{}` below", new.value.value, known.value.value);
                    self.wrong(at, message, "write a number with a unit of the same kind");
                }
            }
        }
    }

    fn repeat(&mut self, own: &mut Option<RepeatEntry>, new: &RepeatEntry) {
        for span in [new.every.as_ref(), new.at_most.as_ref().map(|most| &most.within)].into_iter().flatten() {
            if days(&span.value).is_none() {
                let message = format!("`{}` is no time between two works", span.value);
                self.wrong(place(self.file, span), message, "such as `28..42 days`");
                return;
            }
        }
        let Some(own) = own else {
            *own = Some(new.clone());
            return;
        };
        if let Some(every) = &new.every {
            let longer = own.every.as_ref().is_none_or(|known| is_as_long(&every.value, &known.value));
            if longer {
                own.every = Some(every.clone());
            } else {
                let known = own.every.as_ref().map_or("", |known| known.value.as_str());
                let message = format!("below it is done each `{known}`, `{}` is more often", every.value);
                self.wrong(place(self.file, every), message, "a `tighten` can only make the time between longer");
            }
        }
        if let Some(most) = &new.at_most {
            let fewer = own
                .at_most
                .as_ref()
                .is_none_or(|known| most.times <= known.times && is_as_long(&most.within.value, &known.within.value));
            if fewer {
                own.at_most = Some(most.clone());
            } else {
                let known =
                    own.at_most.as_ref().map(|known| format!("{} times within {}", known.times, known.within.value));
                let message = format!("below it is done at most {}: this is more", known.unwrap_or_default());
                self.wrong(place(self.file, &most.within), message, "a `tighten` can only make it fewer");
            }
        }
    }
}

/// Whether the first amount is not more than the second; none where they can't be compared.
pub(super) fn is_at_most(new: &str, known: &str) -> Option<bool> {
    let (new, known) = (parse::after(new).ok()?, parse::after(known).ok()?);
    let (new_unit, known_unit) = (Unit::find(&new.unit)?, Unit::find(&known.unit)?);
    (new_unit.dimension == known_unit.dimension).then(|| new_unit.convert(new.from, known_unit) <= known.from)
}

/// Both ends of a span in days; none where it is none.
fn days(text: &str) -> Option<(f64, f64)> {
    let read = parse::after(text).ok()?;
    let (unit, day) = (Unit::find(&read.unit)?, Unit::find("days")?);
    (unit.dimension == day.dimension).then(|| (unit.convert(read.from, day), unit.convert(read.to, day)))
}

/// Whether both ends of the first span are as long as those of the second. A span below that can't be read has been told.
fn is_as_long(new: &str, known: &str) -> bool {
    let (Some(new), Some(known)) = (days(new), days(known)) else { return true };
    new.0 >= known.0 && new.1 >= known.1
}
