//! The coverage of a rule set as a heat map: a row a place, a column a week.
//!
//! How much is advised is told by tone and by the number in the cell; where nothing is due there is a hatch instead, where
//! nothing at all is said a cross. A frame is a cell in which nothing is due for somebody who tells nothing, a dot a scenario,
//! a bar at the foot advice that rests on doubtful evidence.
//!
//! - `tones` the colours, light and dark

mod tones;

use std::fmt::Write as _;

use lammas_engine::coverage::cell::Cell;
use lammas_engine::coverage::map::{LEVELS, Map, Plant, level};
use lammas_engine::pack::rule::Evidence;

/// Width and height of a cell, px.
const CELL: (usize, usize) = (16, 15);
/// Where the cells begin, px from the left.
const LEFT: usize = 200;
/// Height of what stands above the first plant, px.
const HEAD: usize = 96;
/// Height of a plant's name and its weeks, px.
const NAME: usize = 40;
/// Between two plants, px.
const BETWEEN: usize = 24;
/// Weeks.
const COLUMNS: usize = 52;
/// Width of the whole, px.
const WIDTH: usize = LEFT + COLUMNS * CELL.0 + 16;

/// The map as an SVG file.
#[must_use]
pub fn drawn(map: &Map<'_>) -> String {
    let of_plant = NAME + map.places.len() * CELL.1 + BETWEEN;
    let height = HEAD + map.plants.len() * of_plant;
    let header = &map.set.pack.header;
    let title = format!("Coverage of {} {}", header.name.value, header.version.value);
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {height}\" width=\"{WIDTH}\" height=\"{height}\" \
         role=\"img\" aria-labelledby=\"title desc\">\n<title id=\"title\">{}</title>\n<desc id=\"desc\">{}</desc>\n{}{}",
        escaped(&title),
        escaped(&description(map)),
        tones::style(),
        tones::PATTERNS,
    );
    let _ = writeln!(out, "<rect class=\"ground\" width=\"{WIDTH}\" height=\"{height}\"/>");
    text(&mut out, "heading", 16, 28, &title);
    legend(&mut out);
    for (at, one) in map.plants.iter().enumerate() {
        plant(&mut out, HEAD + at * of_plant, one, map);
    }
    out.push_str("</svg>\n");
    out
}

fn description(map: &Map<'_>) -> String {
    let parts = map.plants.iter().map(|plant| {
        let cells = || plant.rows.iter().flatten();
        let silent = cells().filter(|cell| cell.is_nothing_due()).count();
        format!("{}: nothing due in {silent} of {} cells", plant.id, cells().count())
    });
    format!(
        "How many tasks are advised under at least one typical condition, by plant, place and week. {}.",
        parts.collect::<Vec<String>>().join("; ")
    )
}

/// What tones and marks mean.
fn legend(out: &mut String) {
    let mut left = 16;
    text(out, "small", left, 52, "Tasks advised under some typical condition:");
    left += 284;
    for (level, (_, words)) in (1..).zip(LEVELS) {
        let _ = writeln!(out, "<rect class=\"l{level}\" x=\"{left}\" y=\"41\" width=\"16\" height=\"14\"/>");
        text(out, "small", left + 22, 52, words);
        left += 38 + 7 * words.len();
    }
    left = 16;
    for (class, words) in [("due", "nothing due"), ("silent", "nothing at all is said")] {
        let _ = writeln!(out, "<rect class=\"{class}\" x=\"{left}\" y=\"65\" width=\"16\" height=\"14\"/>");
        text(out, "small", left + 22, 76, words);
        left += 44 + 7 * words.len();
    }
    let _ = writeln!(out, "<rect class=\"untold f1\" x=\"{left}\" y=\"65.5\" width=\"15\" height=\"13\"/>");
    text(out, "small", left + 22, 76, "nothing due for somebody who tells nothing");
    left += 304;
    let _ = writeln!(out, "<circle class=\"asks\" cx=\"{}\" cy=\"72\" r=\"2.6\"/>", left + 4);
    text(out, "small", left + 14, 76, "a scenario asks there");
    left += 150;
    let _ = writeln!(out, "<rect class=\"doubt\" x=\"{left}\" y=\"75\" width=\"14\" height=\"2.5\"/>");
    text(out, "small", left + 22, 76, "rests on doubtful evidence");
}

fn plant(out: &mut String, top: usize, plant: &Plant, map: &Map<'_>) {
    let id = escaped(&plant.id);
    text(out, "plant", 16, top + 16, &plant.id);
    for week in (1..=COLUMNS).filter(|week| week % 4 == 1) {
        text(out, "week", LEFT + (week - 1) * CELL.0 + CELL.0 / 2, top + NAME - 6, &week.to_string());
    }
    for (line, (spot, row)) in map.rows(plant).enumerate() {
        let y = top + NAME + line * CELL.1;
        let silent = row.iter().filter(|cell| cell.is_nothing_due()).count();
        let name = escaped(spot.name.get("en"));
        let _ = writeln!(out, "<g><title>{id}, {name}: nothing due in {silent} of {} weeks</title>", row.len());
        let _ = writeln!(out, "<text class=\"place\" x=\"{}\" y=\"{}\">{name}</text>", LEFT - 8, y + 11);
        for (column, cell) in row.iter().enumerate() {
            one(out, LEFT + column * CELL.0, y, cell, map);
        }
        out.push_str("</g>\n");
    }
}

fn one(out: &mut String, x: usize, y: usize, cell: &Cell, map: &Map<'_>) {
    let class = match level(cell) {
        Some(level) => format!("l{level}"),
        None if cell.is_silent() => "silent".to_owned(),
        None => "due".to_owned(),
    };
    let (width, height) = (CELL.0 - 1, CELL.1 - 1);
    let _ = write!(out, "<rect class=\"{class}\" x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\"/>");
    if let Some(level) = level(cell) {
        let (middle, foot) = (x + width / 2, y + 10);
        let _ = write!(out, "<text class=\"n{level}\" x=\"{middle}\" y=\"{foot}\">{}</text>", cell.applies.len());
    }
    if let Some(level) = level(cell).filter(|_| cell.untold == 0) {
        let (left, top) = (x as f64 + 0.5, y as f64 + 0.5);
        let _ = write!(
            out,
            "<rect class=\"untold f{level}\" x=\"{left}\" y=\"{top}\" width=\"{}\" height=\"{}\"/>",
            width - 1,
            height - 1
        );
    }
    if cell.weakest(map.set) == Some(Evidence::Doubtful) {
        let _ =
            write!(out, "<rect class=\"doubt\" x=\"{x}\" y=\"{}\" width=\"{width}\" height=\"2\"/>", y + height - 2);
    }
    if cell.scenarios > 0 {
        let _ = write!(out, "<circle class=\"asks\" cx=\"{}\" cy=\"{}\" r=\"2.6\"/>", x + width - 2, y + 2);
    }
    out.push('\n');
}

fn text(out: &mut String, class: &str, x: usize, y: usize, words: &str) {
    let _ = writeln!(out, "<text class=\"{class}\" x=\"{x}\" y=\"{y}\">{}</text>", escaped(words));
}

/// A text as XML holds it.
fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
