//! The climate grid, which stands inside the program: unpacked and read once in a process, when a place is first asked for
//! by its coordinates.

use std::io::Read;
use std::sync::OnceLock;

use lammas_agronomy::climatology::Grid;
use lammas_engine::version::hash;

static PACKED: &[u8] = include_bytes!("../../rules/climatology/climate_grid_025.bin.zst");
/// More bytes than any grid unpacks to.
const MOST_BYTES: u64 = 64 << 20;

/// The grid and what it is known by.
#[derive(Debug)]
pub struct ClimateGrid {
    /// The grid.
    pub grid: Grid,
    /// SHA-256 of its unpacked bytes.
    pub sha256: String,
}

/// The grid.
///
/// # Errors
/// Why it can't be read: the program was built from broken data.
pub fn climate_grid() -> Result<&'static ClimateGrid, &'static str> {
    static GRID: OnceLock<Result<ClimateGrid, String>> = OnceLock::new();
    GRID.get_or_init(|| read(PACKED)).as_ref().map_err(String::as_str)
}

fn read(packed: &[u8]) -> Result<ClimateGrid, String> {
    let unreadable = |error: &dyn std::fmt::Display| format!("the climate grid can't be unpacked: {error}");
    let decoder = ruzstd::decoding::StreamingDecoder::new(packed).map_err(|error| unreadable(&error))?;
    let mut bytes = Vec::new();
    decoder.take(MOST_BYTES).read_to_end(&mut bytes).map_err(|error| unreadable(&error))?;
    let grid = Grid::read(&bytes).map_err(|fault| fault.to_string())?;
    Ok(ClimateGrid { grid, sha256: hash::of_bytes(&bytes) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_grid_stands_inside_the_program_and_stays_small() {
        let read = climate_grid().expect("it reads");
        assert_eq!(read.grid.points(), 314_911);
        assert!(read.grid.resident_bytes() <= 30_000_000, "{}", read.grid.resident_bytes());
    }

    #[test]
    fn broken_data_is_named() {
        assert!(read(b"not packed").expect_err("it is broken").starts_with("the climate grid can't be unpacked: "));
        assert!(read(&PACKED[..1000]).is_err());
    }
}
