//! What the grid says of a point and of the land around it.

use super::grid::{Cell, Grid};
use crate::profile::Monthly;

/// Kilometres in a degree of latitude.
const KM_PER_DEG: f64 = 111.0;
/// Fall of temperature with height, K/m: the one that leaves the smallest scatter among 49 Alpine stations (0.0050 to
/// 0.0055 do equally well; the standard atmosphere has 0.0065).
pub(super) const LAPSE_K_PER_M: f64 = 0.0055;
/// Half the width of the land from which the fall of temperature towards the pole is taken, degrees.
const WIDE_DEG: f64 = 6.0;
/// What every corner weighs beside its share of land, so that a corner without land still counts a little.
const SEA_WEIGHT: f64 = 0.02;

/// What the four points around a place say of it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Here {
    /// Mean temperature of each month, °C, at `altitude_m`.
    pub(super) tmean_c: Monthly,
    /// Rain of each month, mm in 30 days.
    pub(super) rain_mm_30_days: Monthly,
    /// Height for which these hold, m.
    pub(super) altitude_m: f64,
    /// Highest less lowest of the points, m.
    pub(super) spread_m: f64,
}

impl Grid {
    /// Row and column of a place, with the parts between.
    fn at(&self, latitude_deg: f64, longitude_deg: f64) -> (f64, f64) {
        ((90.0 - latitude_deg) / self.step_deg(), longitude_deg.rem_euclid(360.0) / self.step_deg())
    }

    /// The four points around, each with its bilinear weight; those that are stored and weigh anything.
    fn corners(&self, latitude_deg: f64, longitude_deg: f64) -> [Option<(&Cell, f64)>; 4] {
        let (y, x) = self.at(latitude_deg, longitude_deg);
        let (row, column) = (whole(y).min(self.rows() - 2), whole(x));
        let (down, right) = (y - as_number(row), x - as_number(column));
        [
            (0, 0, (1.0 - down) * (1.0 - right)),
            (0, 1, (1.0 - down) * right),
            (1, 0, down * (1.0 - right)),
            (1, 1, down * right),
        ]
        .map(|(rows, columns, weight)| {
            self.cell(row + rows, column + columns).filter(|_| weight > 0.0).map(|cell| (cell, weight))
        })
    }

    /// What the points around say of a place, points with more land counting more; none where no point is stored.
    pub(super) fn here(&self, latitude_deg: f64, longitude_deg: f64) -> Option<Here> {
        let corners = self.corners(latitude_deg, longitude_deg);
        let mut weights = 0.0;
        let mut here = Here { tmean_c: [0.0; 12], rain_mm_30_days: [0.0; 12], altitude_m: 0.0, spread_m: 0.0 };
        let (mut lowest_m, mut highest_m) = (f64::INFINITY, f64::NEG_INFINITY);
        for (cell, bilinear) in corners.into_iter().flatten() {
            let weight = bilinear * (cell.land() + SEA_WEIGHT);
            weights += weight;
            for (sum, tenths) in here.tmean_c.iter_mut().zip(cell.temperature_tenths_c) {
                *sum += weight * f64::from(tenths) / 10.0;
            }
            for (sum, mm) in here.rain_mm_30_days.iter_mut().zip(cell.rain_mm_30_days) {
                *sum += weight * f64::from(mm);
            }
            here.altitude_m += weight * cell.altitude_m();
            lowest_m = lowest_m.min(cell.altitude_m());
            highest_m = highest_m.max(cell.altitude_m());
        }
        if weights <= 0.0 {
            return None;
        }
        here.tmean_c = here.tmean_c.map(|sum| sum / weights);
        here.rain_mm_30_days = here.rain_mm_30_days.map(|sum| sum / weights);
        here.altitude_m /= weights;
        here.spread_m = highest_m - lowest_m;
        Some(here)
    }

    /// Mean share of land of the points within a distance, 0 to 1; points that are not stored count as sea.
    pub(super) fn land_within(&self, latitude_deg: f64, longitude_deg: f64, km: f64) -> f64 {
        let (y, x) = self.at(latitude_deg, longitude_deg);
        let (row, column) = (nearest(y), nearest(x));
        let narrow = libm::cos(latitude_deg.to_radians()).max(0.2);
        let km_per_step = KM_PER_DEG * self.step_deg();
        let (rows, columns) = (whole_up(km / km_per_step), whole_up(km / km_per_step / narrow));
        let (mut land, mut count) = (0.0, 0.0);
        for down in -rows..=rows {
            if !(0..self.rows()).contains(&(row + down)) {
                continue;
            }
            let north_km = (as_number(row + down) - y) * km_per_step;
            for right in -columns..=columns {
                let east_km = (as_number(column + right) - x) * km_per_step * narrow;
                if libm::hypot(north_km, east_km) <= km {
                    count += 1.0;
                    land += self.cell(row + down, column + right).map_or(0.0, Cell::land);
                }
            }
        }
        if count > 0.0 { land / count } else { 0.0 }
    }

    /// Fall of temperature towards the pole, reduced to one height, K per 100 km, each month; below 0 where it is
    /// warmer on the side of the pole. A plane by least squares through every second point within 6 degrees.
    pub(super) fn poleward_gradient(&self, latitude_deg: f64, longitude_deg: f64) -> Monthly {
        let (y, x) = self.at(latitude_deg, longitude_deg);
        let (row, column) = (nearest(y), nearest(x));
        let narrow = libm::cos(latitude_deg.to_radians()).max(0.25);
        let rows = whole(WIDE_DEG / self.step_deg());
        let columns = whole(WIDE_DEG / self.step_deg() / narrow);
        let mut sums = Sums::default();
        let mut down = -rows;
        while down <= rows {
            let north_deg = as_number(down) * self.step_deg();
            let mut line = Sums::default();
            let mut right = -columns;
            while right <= columns {
                let east_deg = as_number(right) * self.step_deg() * narrow;
                if north_deg * north_deg + east_deg * east_deg <= WIDE_DEG * WIDE_DEG
                    && let Some(cell) = self.cell(row + down, column + right)
                {
                    line.add(right, cell);
                }
                right += 2;
            }
            sums.add_line(down, &line);
            down += 2;
        }
        let towards_pole = if latitude_deg >= 0.0 { 1.0 } else { -1.0 };
        sums.slope_per_row().map(|slope| slope / self.step_deg() * towards_pole / 1.11)
    }
}

/// Sums for a plane through temperatures at one height. They are whole numbers, so they are exact. Places are counted
/// in steps of the grid: columns to the east (`x`), rows to the south (`y`).
#[derive(Default)]
struct Sums {
    n: i64,
    x: i64,
    y: i64,
    xx: i64,
    xy: i64,
    yy: i64,
    /// Of temperatures in 0.1 °C, and of heights in 10 m.
    v: [i64; 13],
    xv: [i64; 13],
    yv: [i64; 13],
}

impl Sums {
    /// A point of a line, whose `y` comes with the line.
    fn add(&mut self, x: i64, cell: &Cell) {
        self.n += 1;
        self.x += x;
        self.xx += x * x;
        let temperatures = cell.temperature_tenths_c.iter();
        let values = temperatures.chain(std::iter::once(&cell.altitude_tens_m)).map(|value| i64::from(*value));
        for ((v, xv), value) in self.v.iter_mut().zip(&mut self.xv).zip(values) {
            *v += value;
            *xv += x * value;
        }
    }

    fn add_line(&mut self, y: i64, line: &Self) {
        self.n += line.n;
        self.x += line.x;
        self.xx += line.xx;
        self.y += y * line.n;
        self.yy += y * y * line.n;
        self.xy += y * line.x;
        for (sum, v) in self.v.iter_mut().zip(line.v) {
            *sum += v;
        }
        for (sum, xv) in self.xv.iter_mut().zip(line.xv) {
            *sum += xv;
        }
        for (sum, v) in self.yv.iter_mut().zip(line.v) {
            *sum += y * v;
        }
    }

    /// Slope of the plane along the rows, K a row to the south, each month; 0 where the points lie on one line.
    fn slope_per_row(&self) -> Monthly {
        let n = as_number(self.n);
        let (x, y) = (as_number(self.x), as_number(self.y));
        let xx = as_number(self.xx) - x * x / n;
        let xy = as_number(self.xy) - x * y / n;
        let yy = as_number(self.yy) - y * y / n;
        let determinant = xx * yy - xy * xy;
        let slope = |((v, xv), yv): ((&i64, &i64), &i64)| {
            let xv = as_number(*xv) - x * as_number(*v) / n;
            let yv = as_number(*yv) - y * as_number(*v) / n;
            (xx * yv - xy * xv) / determinant
        };
        let mut slopes = self.v.iter().zip(&self.xv).zip(&self.yv).map(slope);
        let mut monthly = [0.0; 12];
        if self.n < 3 || determinant <= 1e-6 * xx * yy {
            return monthly;
        }
        for month in &mut monthly {
            *month = slopes.next().unwrap_or_default() / 10.0;
        }
        let with_height = slopes.next().unwrap_or_default() * 10.0 * LAPSE_K_PER_M;
        monthly.map(|slope| slope + with_height)
    }
}

#[expect(clippy::cast_precision_loss, reason = "counts and sums of a few thousand points")]
fn as_number(value: i64) -> f64 {
    value as f64
}

#[expect(clippy::cast_possible_truncation, reason = "rows and columns of the grid are below 3000")]
fn whole(value: f64) -> i64 {
    value.floor() as i64
}

fn whole_up(value: f64) -> i64 {
    whole(value.ceil())
}

/// The nearest whole number, the even one of two.
fn nearest(value: f64) -> i64 {
    whole(libm::rint(value))
}
