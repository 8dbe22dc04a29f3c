//! Markers, and the sides of a window.

use super::condition::term;
use super::{Plain, inside, number};
use crate::decide::marker_names::marker_name;
use crate::fact::choice_names::series_name;
use crate::lang::ast::{Argument, Expr, ExprKind, Literal, MarkerExpr, SideExpr};
use crate::lang::print;

/// The first marker that comes here.
pub(super) fn side(side: &SideExpr, at: &Plain<'_>) -> String {
    let choices: Vec<String> = side.choices.iter().map(|choice| of(choice, at)).collect();
    choices.join(at.pick("; where that never comes: ", "; donde eso no llega nunca: "))
}

/// `4 weeks before the end of the hot season`.
pub(super) fn of(written: &MarkerExpr, at: &Plain<'_>) -> String {
    let name = named(&written.marker, at);
    let Some((offset, _)) = &written.offset else { return name };
    let length = number::of(&Literal { value: offset.value.abs(), unit: offset.unit.clone() }, at);
    let way = if offset.value < 0.0 { at.pick("before", "antes de") } else { at.pick("after", "después de") };
    format!("{length} {way} {name}").replace(" de el ", " del ")
}

/// A marker by itself, with its article.
pub(super) fn named(expr: &Expr, at: &Plain<'_>) -> String {
    match &expr.kind {
        ExprKind::Path(path) => {
            marker_name(path).map_or_else(|| path.clone(), |words| words.get(at.language).to_owned())
        }
        ExprKind::Call(name, arguments) => called(name, arguments, at).unwrap_or_else(|| print::expr(expr)),
        _ => print::expr(expr),
    }
}

/// A marker with arguments; none for a call that is no marker.
pub(super) fn called(name: &str, arguments: &[Argument], at: &Plain<'_>) -> Option<String> {
    let pack = &at.set.pack;
    Some(match (name, arguments) {
        (
            "rises" | "falls",
            [Argument::Value(Expr { kind: ExprKind::Path(series), .. }), Argument::Value(threshold)],
        ) => {
            let series = series_name(series)?.get(at.language);
            let (threshold, up) = (term(threshold, at), name == "rises");
            let way = if up { at.pick("rises to", "sube a") } else { at.pick("falls under", "baja de") };
            match crate::explain::words::is_spanish(at.language) {
                true => format!("el día en que la curva de {series} {way} {threshold}"),
                false => format!("the day on which the curve of {series} {way} {threshold}"),
            }
        }
        ("heat_reached", [Argument::Value(sum), Argument::Value(base), Argument::From(from)]) => {
            let (sum, base, from) = (term(sum, at), term(base, at), of(from, at));
            match crate::explain::words::is_spanish(at.language) {
                true => format!("el día en que se han juntado {sum} sobre {base} desde {from}"),
                false => format!("the day on which {sum} over {base} have gathered since {from}"),
            }
        }
        ("stage", [Argument::Value(Expr { kind: ExprKind::Path(id), .. })]) => {
            let stage = pack.stages.iter().find(|s| s.entry.id.value == *id)?.entry.name.get(at.language);
            format!("{} {}", at.pick("the beginning of the stage", "el comienzo de la fase"), inside(stage))
        }
        ("since", [Argument::Value(Expr { kind: ExprKind::Path(id), .. })]) => {
            let sign = pack.signs.iter().find(|s| s.entry.id.value == *id)?.entry.name.get(at.language);
            format!(
                "{} {}",
                at.pick("the day on which you first saw", "el día en que vio por primera vez"),
                inside(sign)
            )
        }
        ("last", [Argument::Value(work)]) => {
            format!("{} {}", at.pick("the last time of", "la última vez de"), super::condition::work(work, at))
        }
        _ => return None,
    })
}
