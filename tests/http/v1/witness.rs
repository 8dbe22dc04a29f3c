//! A question that shows a finding of `lammas check` shows it to whoever asks it over HTTP.

use lammas::sets::embedded;
use lammas_engine::check::check_and_prove;
use lammas_engine::read::PackFile;
use lammas_tests::server::{Server, small};
use serde_json::Value;

/// Defects planted into the shipped set: do and don't, a guard that leaves a work no day, a work behind a safer one.
const PLANTED: &str = "
- id: any.planted-avoid
  kind: avoid
  job: deadhead
  title: {en: \"No deadheading\", es: \"Sin quitar flores\"}
  for: {plant: rose}
  when: \"signs has spent-blooms\"
  evidence: common-practice
  strength: avoid
  why: {en: \"Planted here.\", es: \"Plantado aquí.\"}
  sources: [common-practice]
- id: guard.planted
  kind: avoid
  title: {en: \"Never move it\", es: \"Nunca lo mueva\"}
  for: {plant: rose}
  blocks: {rules: [rose.repot]}
  evidence: common-practice
  strength: avoid
  why: {en: \"Planted here.\", es: \"Plantado aquí.\"}
  sources: [common-practice]
- id: rose.planted-cover
  job: protect-frost
  title: {en: \"Cover it\", es: \"Cúbralo\"}
  for: {plant: rose}
  clashes: [rose.cuttings-summer]
  evidence: common-practice
  strength: do
  why: {en: \"Planted here.\", es: \"Plantado aquí.\"}
  steps: {en: [\"Cover it.\"], es: [\"Cúbralo.\"]}
  sources: [common-practice]
";

fn ids<'a>(answer: &'a Value, list: &str) -> Vec<&'a str> {
    answer[list].as_array().into_iter().flatten().filter_map(|entry| entry["id"].as_str()).collect()
}

#[test]
fn what_is_proven_of_a_set_is_shown_by_its_answers() {
    let mut files = embedded::files();
    files.push(PackFile { path: "rules/planted.yaml".to_owned(), text: PLANTED.to_owned() });
    let folder = std::env::temp_dir().join(format!("lammas-witness-{}", std::process::id()));
    for file in &files {
        let path = folder.join(&file.path);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        std::fs::write(path, &file.text).expect("written");
    }
    let (checked, _) = check_and_prove(&files);
    let mut settings = small();
    settings.rules.packs = vec![folder.clone()];
    let server = Server::with(settings, |_| {});
    let mut shown = Vec::new();
    for fault in &checked.faults {
        let Some(witness) = &fault.witness else { continue };
        let answer = server.post_text("/v1/advice", &witness.request).ok();
        let (tasks, held) = (ids(&answer, "tasks"), ids(&answer, "held"));
        let named: Vec<&str> = fault.message.split('`').skip(1).step_by(2).collect();
        let (first, second) = (named[0], named.get(1).copied().unwrap_or_default());
        match fault.code {
            "contradiction" => assert!(tasks.contains(&second) && held.contains(&first), "{fault}\n{answer:#}"),
            "never-applies" => assert!(!tasks.contains(&first) && held.contains(&first), "{fault}\n{answer:#}"),
            "masked" => assert!(tasks.contains(&second) && held.contains(&first), "{fault}\n{answer:#}"),
            _ => panic!("{fault}"),
        }
        shown.push(fault.code);
    }
    std::fs::remove_dir_all(&folder).expect("removed");
    for code in ["contradiction", "never-applies", "masked"] {
        assert!(shown.contains(&code), "{code} is not among {shown:?}");
    }
}
