//! Taking facts out of a question: only such as are unknown when they are not said, never the weather.

use lammas_engine::question::said::Said;
use proptest::collection::vec;
use proptest::prelude::*;

/// How many things can be hidden.
const THINGS: usize = 24;

/// Which of them are.
pub(crate) fn masks() -> impl Strategy<Value = Vec<bool>> {
    vec(any::<bool>(), THINGS)
}

/// The question with the sizes said: the ones that are assumed hang on the age, so to hide that would be to assume others.
pub(crate) fn with_sizes(said: &Said) -> Said {
    let mut out = said.clone();
    out.plant.height_m.get_or_insert(1.0);
    out.plant.canopy_diameter_m.get_or_insert(0.9);
    out
}

/// The question without what the mask hides. What has a usual value is kept: to hide it would be to say something else.
pub(crate) fn hidden(said: &Said, mask: &[bool]) -> Said {
    let mut out = said.clone();
    let mut things = mask.iter().copied();
    let mut hide = || things.next().unwrap();
    // Age and planting day tell of each other.
    if hide() {
        (out.plant.age_years, out.plant.planted_on) = (None, None);
    }
    if hide() {
        out.plant.trunk_diameter_cm = None;
    }
    // A model would step in for the stage of an apple.
    if hide() && said.plant.kind != "apple" {
        (out.plant.stage, out.plant.stage_since) = (None, None);
    }
    if hide() && said.plant.kind != "apple" {
        out.plant.stage_since = None;
    }
    if hide() {
        out.plant.bearing = None;
    }
    // The leaf follows from the stage when it is not said.
    if hide() && said.plant.kind != "apple" && out.plant.stage.is_none() {
        out.plant.in_leaf = None;
    }
    if hide() && said.plant.kind != "apple" {
        out.plant.traits.remove("flowering");
    }
    if hide() && said.plant.kind != "rose" {
        out.plant.traits.remove("form");
    }
    if hide() {
        out.site.mulched = None;
    }
    if hide() {
        out.site.bees_working = None;
    }
    if hide() {
        out.site.region = None;
    }
    if hide() {
        // Only the country is said.
        out.site.region = out.site.region.map(|region| region.chars().take(2).collect());
    }
    if hide() {
        out.site.soil.ph = None;
    }
    if hide() {
        out.site.soil.texture = None;
    }
    if hide() {
        out.site.soil.drainage = None;
    }
    if hide() {
        out.site.soil.moisture = None;
    }
    if hide() {
        out.water.source_alkaline = None;
    }
    if hide() {
        out.weather.leaf_wet_h = None;
    }
    if hide() {
        out.history = None;
    }
    let Some(condition) = &mut out.condition else { return out };
    if hide() {
        condition.vigour = None;
    }
    if hide() {
        condition.looked_closely = false;
    }
    if hide() {
        condition.not_seen.clear();
    }
    // One by one each entry of a sign may lose what was said beside it; the list goes as a whole.
    let (grade, list) = (hide(), hide());
    for sign in condition.signs.iter_mut().flatten().filter(|_| grade) {
        (sign.severity, sign.share_pct, sign.since) = (None, None, None);
    }
    if list {
        condition.signs = None;
        condition.not_seen.clear();
    }
    out
}
