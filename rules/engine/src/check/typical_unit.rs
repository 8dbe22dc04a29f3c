//! A usual amount in a unit that there is not, or that the quantity called beside it does not have.

use lammas_agronomy::{quantity, units};

use crate::compile::amount::door_unit;
use crate::fault::Fault;
use crate::pack::expression::place;
use crate::pack::{Filed, Pack};
use crate::unit::{UNITS, Unit};

/// Looks at `typical` of every amount.
pub(super) fn look(pack: &Pack, faults: &mut Vec<Fault>) {
    for Filed { file, entry } in &pack.rules {
        for amount in &entry.amount {
            let Some(typical) = &amount.typical else { continue };
            let here = place(file, &typical.unit);
            let Some(unit) = Unit::find(&typical.unit.value) else {
                let known = UNITS.iter().map(|unit| unit.symbol);
                faults.push(
                    Fault::error("wrong-unit", here, format!("`{}` is no unit", typical.unit.value))
                        .nearest(&typical.unit.value, known),
                );
                continue;
            };
            let called = amount.call.as_ref().and_then(|call| quantity::find(&call.value).ok());
            if let Some(quantity) = called
                && units::convert_text(1.0, door_unit(unit), quantity.unit).is_err()
            {
                faults.push(
                    Fault::error(
                        "wrong-unit",
                        here,
                        format!("`{}` is in {}, its usual range in {}", quantity.name, quantity.unit, unit.symbol),
                    )
                    .help("give the usual range in a unit of what is reckoned"),
                );
            }
        }
    }
}
