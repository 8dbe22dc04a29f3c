//! The grid, read from its bytes.

use super::fault::GridFault;

/// Number of a place in the grid where nothing is stored.
const NOTHING: u32 = u32::MAX;
/// Rows and columns at the finest step, a quarter of a degree.
const FINEST: (u32, u32) = (721, 1440);

/// What is stored of one point: the centre of its cell.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Cell {
    /// Mean of each month, 0.1 °C.
    pub(super) temperature_tenths_c: [i16; 12],
    /// Rain of each month, mm in 30 days.
    pub(super) rain_mm_30_days: [i16; 12],
    /// Mean height of the cell, 10 m.
    pub(super) altitude_tens_m: i16,
    /// Land, %; lakes count as land.
    pub(super) land_pct: u8,
}

impl Cell {
    /// Mean height, m.
    pub(super) fn altitude_m(&self) -> f64 {
        f64::from(self.altitude_tens_m) * 10.0
    }

    /// Share of land, 0 to 1.
    pub(super) fn land(&self) -> f64 {
        f64::from(self.land_pct) / 100.0
    }
}

/// Monthly temperature and rain of the world's land and of two cells of sea around it, from 90° N to 60° S.
#[derive(Debug)]
pub struct Grid {
    step_deg: f64,
    rows: i64,
    columns: i64,
    /// The number of the cell of each place, row by row.
    places: Vec<u32>,
    cells: Vec<Cell>,
}

impl Grid {
    /// Reads a grid of layout 1 (see the README beside the data), unpacked. Nothing is taken on trust: sizes are
    /// bounded before anything is made, and each value is looked at.
    ///
    /// # Errors
    /// The first fault: bytes missing or left over, another layout, a run that does not fit, a value that no place has.
    pub fn read(bytes: &[u8]) -> Result<Self, GridFault> {
        let mut rest = Rest(bytes);
        if rest.take(4, "head")? != b"LCLG" {
            return Err(GridFault::NoGrid);
        }
        let version = rest.u16("head")?;
        if version != 1 {
            return Err(GridFault::Version { version });
        }
        let step = rest.u16("head")?;
        let (rows, columns) = (rest.u32("head")?, rest.u32("head")?);
        let quarters = u32::from(step);
        if !matches!(quarters, 1 | 2) || rows != (FINEST.0 - 1) / quarters + 1 || columns != FINEST.1 / quarters {
            return Err(GridFault::Shape { step, rows, columns });
        }
        let stated = rest.u32("head")? as usize;
        let index_bytes = rest.u32("head")? as usize;
        let (row_count, column_count) = (rows as usize, columns as usize);
        let mut index = Rest(rest.take(index_bytes, "index")?);
        let places = read_index(&mut index, row_count, column_count, stated)?;

        let mut cells = vec![Cell::default(); stated];
        read_months(&mut rest, &mut cells, "temperature in 0.1 °C", (-900, 600), |cell| {
            &mut cell.temperature_tenths_c
        })?;
        read_months(&mut rest, &mut cells, "rain in mm", (0, i32::from(i16::MAX)), |cell| &mut cell.rain_mm_30_days)?;
        let heights = differences(rest.take(stated * 2, "altitude")?, stated);
        for (point, (cell, value)) in cells.iter_mut().zip(heights).enumerate() {
            cell.altitude_tens_m = within(value, "altitude in 10 m", point, (-50, 900))?;
        }
        for (point, (cell, land)) in cells.iter_mut().zip(rest.take(stated, "land")?).enumerate() {
            let _: i16 = within(i32::from(*land), "land in %", point, (0, 100))?;
            cell.land_pct = *land;
        }
        if !rest.0.is_empty() {
            return Err(GridFault::GoesOn { bytes: rest.0.len() });
        }
        let step_deg = 0.25 * f64::from(step);
        Ok(Self { step_deg, rows: i64::from(rows), columns: i64::from(columns), places, cells })
    }

    /// How many points are stored.
    #[must_use]
    pub fn points(&self) -> usize {
        self.cells.len()
    }

    /// Bytes that it holds in memory.
    #[must_use]
    pub fn resident_bytes(&self) -> usize {
        self.places.len() * size_of::<u32>() + self.cells.len() * size_of::<Cell>()
    }

    /// Distance of two points, degrees.
    pub(super) fn step_deg(&self) -> f64 {
        self.step_deg
    }

    /// Rows, from pole to pole.
    pub(super) fn rows(&self) -> i64 {
        self.rows
    }

    /// The cell at a row and a column, which goes round the world.
    pub(super) fn cell(&self, row: i64, column: i64) -> Option<&Cell> {
        if !(0..self.rows).contains(&row) {
            return None;
        }
        let place = usize::try_from(row * self.columns + column.rem_euclid(self.columns)).ok()?;
        self.cells.get(*self.places.get(place)? as usize)
    }
}

/// Bytes that are still to be read.
struct Rest<'a>(&'a [u8]);

impl<'a> Rest<'a> {
    fn take(&mut self, count: usize, part: &'static str) -> Result<&'a [u8], GridFault> {
        let (taken, rest) = self.0.split_at_checked(count).ok_or(GridFault::EndsEarly {
            part,
            expected: count,
            found: self.0.len(),
        })?;
        self.0 = rest;
        Ok(taken)
    }

    fn u16(&mut self, part: &'static str) -> Result<u16, GridFault> {
        Ok(self.take(2, part)?.iter().rev().fold(0, |value, byte| value << 8 | u16::from(*byte)))
    }

    fn u32(&mut self, part: &'static str) -> Result<u32, GridFault> {
        Ok(self.take(4, part)?.iter().rev().fold(0, |value, byte| value << 8 | u32::from(*byte)))
    }
}

/// The number of the point at each place: points are numbered along the runs of each row.
fn read_index(index: &mut Rest<'_>, rows: usize, columns: usize, stated: usize) -> Result<Vec<u32>, GridFault> {
    let mut places = vec![NOTHING; rows * columns];
    let mut counted = 0_u32;
    for (row, line) in places.chunks_exact_mut(columns).enumerate() {
        let mut free_from = 0;
        for _ in 0..index.u16("index")? {
            let (first, length) = (usize::from(index.u16("index")?), usize::from(index.u16("index")?));
            let run = line.get_mut(first..first + length).filter(|_| first >= free_from);
            for place in run.ok_or(GridFault::Run { row })? {
                *place = counted;
                counted += 1;
            }
            free_from = first + length;
        }
    }
    if !index.0.is_empty() {
        return Err(GridFault::GoesOn { bytes: index.0.len() });
    }
    if counted as usize != stated {
        return Err(GridFault::Count { counted: counted as usize, stated });
    }
    Ok(places)
}

/// Twelve arrays: the first month, then each month's difference to the month before.
fn read_months(
    rest: &mut Rest<'_>,
    cells: &mut [Cell],
    part: &'static str,
    limits: (i32, i32),
    months: impl Fn(&mut Cell) -> &mut [i16; 12],
) -> Result<(), GridFault> {
    let points = cells.len();
    for month in 0..12_usize {
        let values = differences(rest.take(points * 2, part)?, points);
        for (point, (cell, value)) in cells.iter_mut().zip(values).enumerate() {
            let months = months(cell);
            let before =
                month.checked_sub(1).and_then(|before| months.get(before)).map_or(0, |value| i32::from(*value));
            let value = within(before.saturating_add(value), part, point, limits)?;
            if let Some(place) = months.get_mut(month) {
                *place = value;
            }
        }
    }
    Ok(())
}

/// The values of an array, which is stored as differences: low bytes first, then high bytes.
fn differences(bytes: &[u8], points: usize) -> impl Iterator<Item = i32> + '_ {
    let (low, high) = bytes.split_at_checked(points).unwrap_or_default();
    low.iter().zip(high).scan(0_i32, |sum, (low, high)| {
        let zigzag = i32::from(*high) << 8 | i32::from(*low);
        *sum = sum.saturating_add((zigzag >> 1) ^ -(zigzag & 1));
        Some(*sum)
    })
}

fn within(value: i32, part: &'static str, point: usize, (min, max): (i32, i32)) -> Result<i16, GridFault> {
    let fault = GridFault::Value { part, point, value, min, max };
    i16::try_from(value).ok().filter(|_| (min..=max).contains(&value)).ok_or(fault)
}
