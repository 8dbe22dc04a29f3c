//! Where the names of points on a line stand: in rows below it, none over another, all inside. A thin line leads from each
//! point down to its row; where it can be helped none of these goes through a name.

/// Room between a point and its name.
const GAP: f64 = 4.0;
/// Room between two names of a row: more, so that each dot is seen to be its own name's.
const APART: f64 = 11.0;
/// Half the width of the dot that marks a point.
pub const DOT: f64 = 2.4;

/// A name that wants a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// Where its point is.
    pub at: f64,
    /// How far the mark of the point reaches to both sides, beyond its dot.
    pub reach: f64,
    /// How wide the name is; at most as wide as the room there is.
    pub width: f64,
}

/// On which side of its point a name stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// To the right.
    Right,
    /// To the left.
    Left,
    /// Neither side has room: under it.
    Under,
}

/// The place of a name.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placed {
    /// Its row, 0 the nearest to the line.
    pub row: usize,
    /// Where it begins.
    pub left: f64,
    /// On which side of its point.
    pub side: Side,
}

/// What stands in a row: a name with its mark.
#[derive(Clone, Copy)]
struct Taken {
    row: usize,
    at: f64,
    from: f64,
    to: f64,
}

/// The places of names between `from` and `to`, in the order in which they are asked for.
#[must_use]
pub fn place(wanted: &[Wanted], from: f64, to: f64) -> Vec<Placed> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    // From the right: a name then stands right of its own line, and clear of the lines that come after it.
    order.sort_by(|a, b| wanted[*b].at.total_cmp(&wanted[*a].at).then(a.cmp(b)));
    let mut taken: Vec<Taken> = Vec::new();
    let mut placed = vec![Placed { row: 0, left: from, side: Side::Under }; wanted.len()];
    for index in order {
        let found = place_one(wanted[index], from, to, &taken);
        taken.push(Taken { row: found.0.row, at: wanted[index].at, from: found.1, to: found.2 });
        placed[index] = found.0;
    }
    placed
}

/// The place of one name, and from where to where it and its mark take room.
fn place_one(name: Wanted, from: f64, to: f64, taken: &[Taken]) -> (Placed, f64, f64) {
    let rows = taken.iter().map(|other| other.row + 1).max().unwrap_or(0);
    let mark = DOT + name.reach;
    let mut sides = Vec::new();
    if name.at + mark + GAP + name.width <= to {
        sides.push((Side::Right, name.at + mark + GAP));
    }
    if name.at - mark - GAP - name.width >= from {
        sides.push((Side::Left, name.at - mark - GAP - name.width));
    }
    if sides.is_empty() {
        sides.push((Side::Under, (name.at - name.width / 2.0).clamp(from, (to - name.width).max(from))));
    }
    let mut second_best = None;
    for row in 0..=rows {
        for &(side, left) in &sides {
            let (start, end) = (left.min(name.at - mark), (left + name.width).max(name.at + mark));
            let is_free =
                taken.iter().all(|other| other.row != row || end + APART <= other.from || other.to + APART <= start);
            if !is_free {
                continue;
            }
            let found = (Placed { row, left, side }, start, end);
            let crosses = taken.iter().any(|other| {
                let through_it = other.row < row && other.from < name.at && name.at < other.to;
                let through_this = other.row > row && start < other.at && other.at < end;
                through_it || through_this
            });
            if !crosses {
                return found;
            }
            second_best.get_or_insert(found);
        }
    }
    // The last row tried is empty, so something was free.
    second_best.unwrap_or((Placed { row: rows, left: from, side: Side::Under }, from, to))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn wanted(at: f64, width: f64) -> Wanted {
        Wanted { at, reach: 0.0, width }
    }

    #[test]
    fn names_side_by_side_share_a_row_and_near_ones_do_not() {
        let rows = |names: &[Wanted]| place(names, 0.0, 400.0).iter().map(|place| place.row).collect::<Vec<_>>();
        assert_eq!(rows(&[wanted(10.0, 80.0), wanted(200.0, 80.0)]), [0, 0]);
        assert_eq!(rows(&[wanted(10.0, 80.0), wanted(40.0, 80.0), wanted(50.0, 80.0)]), [2, 1, 0]);
    }

    #[test]
    fn a_name_that_has_no_room_to_the_right_stands_to_the_left_and_a_long_one_under_its_point() {
        assert_eq!(place(&[wanted(390.0, 80.0)], 0.0, 400.0)[0].side, Side::Left);
        let long = place(&[wanted(200.0, 300.0)], 0.0, 400.0)[0];
        assert_eq!((long.side, long.left.round() as i32), (Side::Under, 50));
    }

    #[test]
    fn lines_that_lead_to_names_of_one_corner_go_through_none() {
        let names: Vec<_> = [20.0, 30.0, 44.0, 60.0].map(|at| wanted(at, 120.0)).into();
        let places = place(&names, 0.0, 400.0);
        for (name, place) in names.iter().zip(&places) {
            for (other, above) in names.iter().zip(&places) {
                let through = above.row < place.row && above.left < name.at && name.at < above.left + other.width;
                assert!(!through, "{name:?} {other:?}");
            }
        }
    }

    proptest! {
        #[test]
        fn names_never_cover_each_other_and_stay_inside(
            names in prop::collection::vec((0.0..332.0f64, 0.0..40.0f64, 0.0..388.0f64), 0..24)
        ) {
            let names: Vec<_> = names.into_iter().map(|(at, reach, width)| Wanted { at: at + 34.0, reach, width }).collect();
            let places = place(&names, 6.0, 394.0);
            for (index, (name, place)) in names.iter().zip(&places).enumerate() {
                prop_assert!(place.left >= 6.0 && place.left + name.width <= 394.0 + 1e-9, "{name:?} {place:?}");
                for (other, there) in names.iter().zip(&places).skip(index + 1) {
                    let apart = place.row != there.row
                        || place.left + name.width <= there.left
                        || there.left + other.width <= place.left;
                    prop_assert!(apart, "{name:?} {place:?} {other:?} {there:?}");
                    // Nor does a name cover the other's dot.
                    let clear = place.row != there.row || other.at + DOT <= place.left || place.left + name.width <= other.at - DOT;
                    prop_assert!(clear, "{name:?} {place:?} {other:?} {there:?}");
                }
            }
        }
    }
}
