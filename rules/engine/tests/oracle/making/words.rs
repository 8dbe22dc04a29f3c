//! The fixed part of every random pack: words, materials, problems, plants.

use lammas_engine::compile::set::{Set, compile};
use lammas_engine::read::{PackFile, read};

const HEADER: &str = "{name: t, version: 2026.1.1, languages: [en], title: {en: T}}";

const JOBS: [&str; 20] = [
    "amend-soil",
    "clean-up",
    "deadhead",
    "divide",
    "feed",
    "harvest",
    "mow",
    "mulch",
    "plant",
    "propagate",
    "protect-frost",
    "protect-heat",
    "prune",
    "scout",
    "sow",
    "store",
    "thin",
    "transplant",
    "treat-disease",
    "treat-pest",
];
const MORE_JOBS: [&str; 2] = ["train", "water"];
const CLASSES: [&str; 6] = ["nitrogen", "oil", "soap", "sulphur", "copper", "organic"];
const STAGES: [&str; 7] = ["dormant", "bud-break", "bloom", "fruit-growth", "harvest", "late-flush", "leaf-fall"];

const SIGNS: &str = "
- {id: spent-blooms, where: flower, seen: plain, name: {en: S}, look: {en: L}}
- {id: crowded-centre, where: whole-plant, seen: plain, name: {en: S}, look: {en: L}}
- {id: webbing, where: leaf-under, seen: hidden, name: {en: S}, look: {en: L}}
- {id: speckled-leaves, where: leaf-upper, seen: plain, name: {en: S}, look: {en: L}}
- {id: yellow-between-veins, where: leaf-upper, seen: plain, name: {en: S}, look: {en: L}}
- {id: frost-damage, where: shoot-tip, seen: plain, name: {en: S}, look: {en: L}}
- {id: root-rot, where: root, seen: hidden, name: {en: S}, look: {en: L}}
";

const MATERIALS: &str = "
- {id: urea, classes: [nitrogen], name: {en: M}, hazard: low}
- {id: compost, classes: [organic], name: {en: M}, hazard: none}
- {id: oil-spray, classes: [oil], name: {en: M}, hazard: label, keep_apart: [{class: sulphur, days: 14}]}
- {id: soap-spray, classes: [soap], name: {en: M}, hazard: label}
- {id: sulphur-dust, classes: [sulphur], name: {en: M}, hazard: label}
- {id: copper-salt, classes: [copper], name: {en: M}, hazard: restricted, keep_apart: [{material: soap-spray, days: 5}, {job: prune, days: 3}]}
";

const PROBLEMS: &str = "
- id: mites
  kind: pest
  plants: all
  name: {en: P}
  about: {en: A}
  signs: {always: [speckled-leaves], often: [webbing], sometimes: [], never: [root-rot]}
  favours: ['climate.hot_summer', 'mean(tmax, 7 days) > 28 °C']
  threshold: 'share(speckled-leaves) >= 10 %'
  impact: 2
- id: chlorosis
  kind: disorder
  plants: [rose, apple]
  name: {en: P}
  about: {en: A}
  signs: {always: [yellow-between-veins], often: [], sometimes: [crowded-centre], never: [webbing]}
  favours: ['soil.ph > 7.2']
  impact: 1
- id: rot
  kind: disease
  plants: [rose, fern]
  name: {en: P}
  about: {en: A}
  signs: {always: [root-rot], often: [yellow-between-veins], sometimes: [], never: []}
  favours: ['soil.drainage = poor']
  impact: 3
";

const PLANTS: &str = "
- id: rose
  name: {en: R}
  traits:
    - {id: flowering, values: [{id: once, name: {en: O}}, {id: repeat, name: {en: R}}], ask: {en: A}}
    - {id: form, values: [{id: bush, name: {en: B}}, {id: climber, name: {en: C}}], usual: bush, ask: {en: A}}
  stages: [dormant, bud-break, bloom, fruit-growth, harvest, late-flush, leaf-fall]
  in_leaf: [bloom, late-flush]
  size: {height: 1.2 m, canopy_diameter: 0.9 m, grown_after: 3 years}
  water: {factor: 0.6, root_depth: 45 cm, depletion: 0.4}
- id: apple
  name: {en: A}
  traits:
    - {id: flowering, values: [{id: once, name: {en: O}}, {id: repeat, name: {en: R}}], usual: once, ask: {en: A}}
    - {id: form, values: [{id: bush, name: {en: B}}, {id: climber, name: {en: C}}], ask: {en: A}}
  stages: [dormant, bud-break, bloom, fruit-growth, harvest, late-flush, leaf-fall]
  in_leaf: [bloom, fruit-growth, harvest]
  stage_model:
    - {stage: bud-break, begins: 'heat_reached(120 °Cd, 5 °C, from coldest_week)'}
    - {stage: bloom, begins: 'heat_reached(300 °Cd, 5 °C, from coldest_week)'}
    - {stage: fruit-growth, begins: 'heat_reached(300 °Cd, 5 °C, from coldest_week) + 3 weeks'}
    - {stage: harvest, begins: 'warmest_week + 6 weeks'}
    - {stage: leaf-fall, begins: 'falls(tmean, 10 °C) else shortest_day'}
  size: {height: 4 m, canopy_diameter: 3.5 m}
  water: {factor: 0.9, root_depth: 80 cm, depletion: 0.5}
  food_use: yes
- id: fern
  name: {en: F}
  traits:
    - {id: flowering, values: [{id: once, name: {en: O}}, {id: repeat, name: {en: R}}], ask: {en: A}}
    - {id: form, values: [{id: bush, name: {en: B}}, {id: climber, name: {en: C}}], ask: {en: A}}
  stages: [dormant, bud-break, bloom, fruit-growth, harvest, late-flush, leaf-fall]
  in_leaf: []
  size: {height: 60 cm, canopy_diameter: 50 cm}
  water: {factor: 0.8, root_depth: 20 cm, depletion: 0.3}
";

fn names(ids: &[&str]) -> String {
    ids.iter().map(|id| format!("- {{id: {id}, name: {{en: N}}}}\n")).collect()
}

/// The fixed files.
fn files() -> Vec<PackFile> {
    let jobs = names(&JOBS) + &names(&MORE_JOBS);
    let texts = [
        ("pack.yaml", HEADER.to_owned()),
        ("words/jobs.yaml", jobs),
        ("words/classes.yaml", names(&CLASSES)),
        ("words/stages.yaml", names(&STAGES)),
        ("words/outlooks.yaml", names(&["bloom-again"])),
        ("words/signs.yaml", SIGNS.to_owned()),
        ("words/sources.yaml", "- {id: common-practice, title: T, how_read: common practice}".to_owned()),
        ("materials/all.yaml", MATERIALS.to_owned()),
        ("problems/all.yaml", PROBLEMS.to_owned()),
        ("plants/all.yaml", PLANTS.to_owned()),
    ];
    texts.into_iter().map(|(path, text)| PackFile { path: path.to_owned(), text }).collect()
}

/// A compiled set with these rule files.
pub(crate) fn set_of(rule_files: &[(String, String)]) -> Set {
    let mut files = files();
    files.extend(rule_files.iter().map(|(path, text)| PackFile { path: path.clone(), text: text.clone() }));
    let pack = read(&files).unwrap_or_else(|faults| panic!("{faults:#?}\n{rule_files:#?}"));
    let (set, faults) = compile(pack);
    set.unwrap_or_else(|| panic!("{faults:#?}\n{rule_files:#?}"))
}
