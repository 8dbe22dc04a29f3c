//! What customers say and which sign they mean: how often the right one is found, and that nothing is guessed.

use lammas_engine::compile::set::Set;
use lammas_engine::words::hear::Hearing;
use proptest::prelude::*;
use serde::Deserialize;

use crate::shipped::set;

const PHRASES: &str = include_str!("../data/words/phrases.yaml");
const LATER: &str = include_str!("../data/words/later.yaml");
const NOTHING: &str = include_str!("../data/words/nothing.yaml");

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Meant {
    sign: String,
    plant: String,
    en: Vec<String>,
    es: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Unmeant {
    en: Vec<String>,
    es: Vec<String>,
}

/// Which phrases a phrase is of.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Of {
    /// Those that the index and the lay words may be tuned on.
    Tuned,
    /// The third that is held back.
    HeldBack,
    /// Those that were written later.
    Later,
}

struct Phrase {
    text: String,
    language: &'static str,
    sign: String,
    plant: String,
    of: Of,
}

fn phrases() -> Vec<Phrase> {
    let read = |text: &str| -> Vec<Meant> { serde_saphyr::from_str(text).unwrap() };
    let mut out: Vec<Phrase> = Vec::new();
    let first = read(PHRASES);
    let count = first.iter().map(|meant| meant.en.len() + meant.es.len()).sum::<usize>();
    for meant in first.into_iter().chain(read(LATER)) {
        for (language, texts) in [("en", meant.en), ("es", meant.es)] {
            for text in texts {
                let of = match out.len() {
                    at if at >= count => Of::Later,
                    at if at % 3 == 2 => Of::HeldBack,
                    _ => Of::Tuned,
                };
                out.push(Phrase { text, language, sign: meant.sign.clone(), plant: meant.plant.clone(), of });
            }
        }
    }
    out
}

/// What became of some phrases, in percent of them.
#[derive(Debug, Default)]
struct Tally {
    first: f64,
    first_three: f64,
    understood: f64,
    unsure: f64,
    wrong: f64,
    /// What was not found among the first three, and what was understood wrongly.
    faults: Vec<String>,
}

fn tally(set: &Set, phrases: &[&Phrase]) -> Tally {
    let mut tally = Tally::default();
    let each = 100.0 / phrases.len() as f64;
    let count = |yes: bool| if yes { each } else { 0.0 };
    for phrase in phrases {
        let is_meant = |sign: u16| set.names.signs.name(sign) == phrase.sign;
        let found = set.words.search(&phrase.text, None, phrase.language);
        let heard = hear(set, &phrase.plant, &phrase.text, phrase.language);
        let is_found = found.iter().take(3).any(|found| is_meant(found.sign));
        let is_wrong = heard.understood.iter().any(|(sign, _)| !is_meant(*sign));
        let is_understood = heard.understood.iter().any(|(sign, _)| is_meant(*sign));
        let could_be = heard.unsure.iter().flat_map(|(_, signs)| signs).any(|sign| is_meant(*sign));
        tally.first += count(found.first().is_some_and(|found| is_meant(found.sign)));
        tally.first_three += count(is_found);
        tally.understood += count(is_understood);
        tally.unsure += count(!is_understood && could_be);
        tally.wrong += count(is_wrong);
        if !is_found || is_wrong {
            tally.faults.push(format!("{} ({}): {heard:?}", phrase.text, phrase.sign));
        }
    }
    tally
}

fn hear(set: &Set, plant: &str, text: &str, language: &str) -> Hearing {
    set.words.hear(text, set.names.plants.number(plant).unwrap(), language)
}

fn understood<'a>(set: &'a Set, hearing: &Hearing) -> Vec<&'a str> {
    hearing.understood.iter().map(|(sign, _)| set.names.signs.name(*sign)).collect()
}

#[test]
fn the_sign_that_customers_mean_is_among_the_first_three_and_no_other_is_understood() {
    let (set, phrases) = (set(), phrases());
    assert!(phrases.len() >= 300, "{} phrases", phrases.len());
    // Those of danger are in a list of their own.
    let usual = set.pack.signs.iter().filter(|sign| !sign.entry.emergency).map(|sign| &sign.entry.id.value);
    for sign in usual {
        assert!(phrases.iter().any(|phrase| phrase.sign == *sign), "no phrase means {sign}");
    }
    for of in [Of::Tuned, Of::HeldBack, Of::Later] {
        let some: Vec<&Phrase> = phrases.iter().filter(|phrase| phrase.of == of).collect();
        let tally = tally(&set, &some);
        let Tally { first, first_three, understood, unsure, wrong, .. } = &tally;
        println!(
            "{of:?}, {} phrases: first {first:.1} %, among three {first_three:.1} %, understood {understood:.1} %, \
             unsure with it {unsure:.1} %, understood wrongly {wrong:.1} %",
            some.len()
        );
        assert!(tally.first_three >= 95.0 && tally.wrong <= 1.0, "{of:?}: {tally:#?}");
        // Who never says anything is never wrong.
        let least = if of == Of::Later { 45.0 } else { 75.0 };
        assert!(tally.understood >= least, "{of:?}: {tally:#?}");
    }
}

#[test]
fn what_means_no_sign_is_never_understood() {
    let set = set();
    let nothing: Unmeant = serde_saphyr::from_str(NOTHING).unwrap();
    for (language, texts) in [("en", nothing.en), ("es", nothing.es)] {
        assert!(texts.len() >= 30);
        for (text, plant) in texts.iter().flat_map(|text| set.names.plants.names().map(move |plant| (text, plant))) {
            let heard = hear(&set, plant, text, language);
            assert!(heard.understood.is_empty(), "{plant}: {text}: {heard:?}");
        }
    }
}

#[test]
fn what_is_denied_is_not_found() {
    let set = set();
    for text in
        ["no spots", "sin manchas", "no tiene pulgones", "there are no holes, webs or spots", "never any aphids"]
    {
        assert_eq!(set.words.search(text, None, "en"), [], "{text}");
    }
    // What a sign itself denies is found by it.
    for (text, sign) in
        [("the buds don't open", "buds-stay-shut"), ("sin acolchado", "bare-soil"), ("no crece", "weak-growth")]
    {
        let found = set.words.search(text, None, "en");
        assert_eq!(found.first().map(|found| set.names.signs.name(found.sign)), Some(sign), "{text}");
    }
}

#[test]
fn a_text_of_several_thoughts_is_understood_thought_by_thought() {
    let set = set();
    for (plant, text, signs) in [
        ("rose", "buds stay shut and brown", vec!["buds-stay-shut"]),
        (
            "rose",
            "Leaves are yellow and sticky, with ants on the stems. Buds won't open.",
            vec!["sticky-leaves", "ants-on-stems", "buds-stay-shut"],
        ),
        ("rose", "no spots, holes or webs, but the buds are brown and closed", vec!["buds-stay-shut"]),
        ("rose", "The leaves aren't yellow but they have black spots", vec!["black-spots"]),
        ("rose", "I see ants and aphids and sticky leaves", vec!["ants-on-stems", "aphid-clusters", "sticky-leaves"]),
        (
            "rose",
            "las hojas están amarillas y pegajosas, con hormigas en el tallo",
            vec!["sticky-leaves", "ants-on-stems"],
        ),
        (
            "rose",
            "no tiene manchas, agujeros ni telarañas, pero los capullos están marrones y cerrados",
            vec!["buds-stay-shut"],
        ),
        ("rose", "pulgones, oídio y mancha negra", vec!["aphid-clusters", "white-powder", "black-spots"]),
        (
            "lawn",
            "white grubs and birds digging up the lawn, turf peels back like carpet",
            vec!["grubs-under-turf", "birds-digging", "turf-lifts"],
        ),
        (
            "citrus",
            "sticky leaves with black soot and brown bumps on twigs, ants everywhere",
            vec!["sticky-leaves", "domed-scales", "ants-on-stems"],
        ),
        ("citrus", "hojas enrolladas con caminitos plateados", vec!["winding-mines"]),
    ] {
        let heard = hear(&set, plant, text, "en");
        assert_eq!(understood(&set, &heard), signs, "{text}: {heard:?}");
    }
}

#[test]
fn words_that_could_be_several_signs_are_never_guessed_at() {
    let set = set();
    for (plant, text) in [
        ("rose", "yellow leaves"),
        ("rose", "hojas amarillas"),
        ("rose", "it is wilting"),
        ("rose", "brown spots on leaves"),
        ("rose", "aphids black spot mildew"),
        ("rose", "I think the soil might be too wet"),
        ("lawn", "my lawn has brown spots"),
        ("citrus", "yellow leaves"),
    ] {
        let heard = hear(&set, plant, text, "en");
        assert!(heard.understood.is_empty() && heard.unsure.len() == 1, "{text}: {heard:?}");
        assert!((1..=4).contains(&heard.unsure[0].1.len()), "{text}: {heard:?}");
    }
    for (plant, text) in [
        ("rose", "buds open fine"),
        ("rose", "the flowers open well"),
        ("rose", "los capullos abren bien"),
        ("rose", "new shoots are strong"),
        ("rose", "white bugs"),
        ("rose", "the soil is wet"),
        ("rose", "bees on the flowers"),
        ("rose", "a slug ate my lettuce"),
        ("citrus", "sap oozing from the trunk"),
        ("citrus", "trunk is white painted"),
        ("lawn", "the grass is long and needs cutting"),
    ] {
        let heard = hear(&set, plant, text, "en");
        assert!(heard.understood.is_empty(), "{text}: {heard:?}");
    }
}

#[test]
fn a_sign_of_another_plant_is_not_understood() {
    let set = set();
    assert_eq!(understood(&set, &hear(&set, "lawn", "footprints stay in the grass", "en")), ["footprints-stay"]);
    assert!(hear(&set, "rose", "footprints stay in the grass", "en").understood.is_empty());
}

#[test]
fn case_accents_order_and_a_slip_of_the_finger_do_not_matter() {
    let set = set();
    let first = |text: &str| set.words.search(text, None, "en").first().map(|found| found.sign);
    for (one, other) in [
        ("Pétalos QUEMADOS", "petalos quemados"),
        ("black spots on leaves", "on leaves spots black"),
        ("sticky leaves", "stikcy leafs"),
        ("hojas con agujeros", "ojas con aguheros"),
        ("blackspot", "black spot"),
    ] {
        assert!(first(one).is_some() && first(one) == first(other), "{one} / {other}");
    }
}

#[test]
fn the_language_is_that_of_the_words_whatever_is_asked_for() {
    let set = set();
    for text in ["manchas negras en las hojas", "black spots on the leaves"] {
        for language in ["en", "es", "es-MX", "fr"] {
            assert_eq!(understood(&set, &hear(&set, "rose", text, language)), ["black-spots"], "{text} {language}");
        }
    }
}

#[test]
fn every_name_and_lay_word_finds_its_sign() {
    let set = set();
    for (language, sign) in ["en", "es"].iter().flat_map(|l| set.pack.signs.iter().map(move |sign| (*l, &sign.entry))) {
        let ways = sign.words.get(language).iter().map(String::as_str).chain([sign.name.get(language)]);
        for way in ways {
            let found = set.words.search(way, None, language);
            let place = found.iter().position(|found| set.names.signs.name(found.sign) == sign.id.value);
            assert!(place.is_some_and(|place| place < 5), "{way} ({}): {place:?}", sign.id.value);
            assert!(!found[place.unwrap()].matched.is_empty(), "{way}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn any_text_is_heard_and_searched_and_its_parts_are_its_own(text in "\\PC{0,600}", plant in 0_u16..4) {
        let set = shared();
        let heard = set.words.hear(&text, plant, "es");
        let parts = heard.understood.iter().map(|(_, t)| t).chain(heard.unsure.iter().map(|(t, _)| t)).chain(&heard.not_understood);
        for part in parts {
            prop_assert!(text.contains(part.as_str()), "{part}");
        }
        let found = set.words.search(&text, None, "en");
        prop_assert!(found.is_sorted_by(|a, b| a.score >= b.score));
    }

    #[test]
    fn phrases_in_any_company_are_heard_alike_every_time(picks in prop::collection::vec(0_usize..300, 1..6)) {
        let (set, phrases) = (shared(), phrases());
        let text = picks.iter().map(|at| phrases[*at].text.as_str()).collect::<Vec<_>>().join(". ");
        let heard = hear(set, "rose", &text, "en");
        prop_assert_eq!(&heard, &hear(set, "rose", &text, "en"));
        let rose: Vec<u16> = set.words.signs_of(set.names.plants.number("rose").unwrap()).collect();
        let signs = heard.understood.iter().map(|(sign, _)| sign).chain(heard.unsure.iter().flat_map(|(_, signs)| signs));
        for sign in signs {
            prop_assert!(rose.contains(sign));
        }
    }
}

fn shared() -> &'static Set {
    static SET: std::sync::LazyLock<Set> = std::sync::LazyLock::new(set);
    &SET
}
