//! The season of whole places: against records, against a second writing of the formulas, over 57
//! climates and their mirror images, and over profiles drawn at random.

mod chill;
mod classes;
mod climates;
mod coordinates;
mod counted_frost;
mod differences;
mod estimates;
mod evaporation;
mod forecast;
mod frost_points;
mod grid_faults;
mod heat;
mod mirrored;
mod odd_places;
mod past;
mod place;
mod profile_faults;
mod random_profiles;
mod records;
mod soil;
mod whole_range;
