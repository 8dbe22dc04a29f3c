//! A climate that differs from another as it is said.

use lammas_agronomy::profile::{Differences, Humidity, Profile, differences};

use super::super::pointer::Trouble;
use super::super::said::DifferencesSaid;
use crate::fact::step::Step;

/// The differences as they are meant: what is not said does not differ.
#[must_use]
pub fn meant(said: &DifferencesSaid) -> Differences {
    let DifferencesSaid {
        nights_k,
        afternoons_k,
        summer_afternoons_k,
        last_frost_days,
        first_frost_days,
        frost_pocket,
        warm_wall,
        roof,
    } = *said;
    Differences {
        nights_k: nights_k.unwrap_or(0.0),
        afternoons_k: afternoons_k.unwrap_or(0.0),
        summer_afternoons_k: summer_afternoons_k.unwrap_or(0.0),
        last_frost_days,
        first_frost_days,
        frost_pocket: frost_pocket == Some(true),
        warm_wall: warm_wall == Some(true),
        roof: roof == Some(true),
    }
}

/// The profile of a climate that differs from one (which has passed its check) in what is said. Normals that moved are
/// rounded to 0.01, so that the profile is the same as when it is said whole.
///
/// # Errors
/// Every difference that can't be, its pointer beginning with `base`; at `base` itself what can't be for all of them
/// together.
pub fn differing(from: &Profile, said: &DifferencesSaid, base: &str) -> Result<Profile, Vec<Trouble>> {
    let mut profile = differences(from, &meant(said)).map_err(|faults| {
        let trouble = |fault: lammas_agronomy::profile::ProfileFault| {
            let field = fault.path.trim_start_matches('/');
            if field.ends_with("_k") || field.ends_with("_frost_days") {
                Trouble::new(format!("{base}{}", fault.path), fault.words)
            } else {
                Trouble::new(base, format!("with these differences {}", fault.words))
            }
        };
        faults.into_iter().map(trouble).collect::<Vec<_>>()
    })?;
    let normals = &mut profile.normals;
    let mut years = vec![&mut normals.tmin_c, &mut normals.tmax_c];
    if let Some(Humidity::DewPoint(year)) = &mut normals.humidity {
        years.push(year);
    }
    years.extend(&mut normals.wind_ms);
    for value in years.into_iter().flatten().chain(&mut profile.extreme_min_c) {
        *value = Step::new(1, 100).round(*value);
    }
    Ok(profile)
}

#[cfg(test)]
mod tests {
    use super::super::super::profile_said;
    use super::super::profile;
    use super::*;

    fn inland() -> Profile {
        let wave = |mean_c: f64| {
            std::array::from_fn(|month| mean_c - 12.0 * libm::cos((month as f64 - 0.5) / 6.0 * std::f64::consts::PI))
                .map(|value: f64| (value * 10.0).round() / 10.0)
        };
        Profile::of_temperatures(44.0, wave(3.0), wave(16.0))
    }

    #[test]
    fn a_differing_profile_that_was_said_whole_is_the_same() {
        let said = DifferencesSaid {
            nights_k: Some(-1.25),
            summer_afternoons_k: Some(-4.0),
            first_frost_days: Some(-21),
            roof: Some(true),
            ..DifferencesSaid::default()
        };
        let cooler = differing(&inland(), &said, "/climate/differences").unwrap();
        assert_ne!(cooler, inland());
        assert_eq!(profile(&profile_said::said(&cooler), "/climate"), Ok(cooler));
    }

    #[test]
    fn what_cannot_be_is_named_at_its_place_or_at_the_whole() {
        let places = |from: &Profile, said: &DifferencesSaid| -> Vec<String> {
            differing(from, said, "/d").unwrap_err().into_iter().map(|trouble| trouble.pointer).collect()
        };
        let far = DifferencesSaid { nights_k: Some(-40.0), first_frost_days: Some(200), ..DifferencesSaid::default() };
        assert_eq!(places(&inland(), &far), ["/d/nights_k", "/d/first_frost_days"]);
        let ice = Profile::of_temperatures(-78.0, [-85.0; 12], [-60.0; 12]);
        let colder = DifferencesSaid { nights_k: Some(-10.0), ..DifferencesSaid::default() };
        let found = differing(&ice, &colder, "/d").unwrap_err();
        assert_eq!(found[0].pointer, "/d");
        assert!(found[0].detail.starts_with("with these differences tmin_c"), "{}", found[0].detail);
    }
}
