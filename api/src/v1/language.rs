//! The language of an answer: the one that the request names, else the one that its `accept-language` likes best.

use actix_web::HttpRequest;
use actix_web::http::header::ACCEPT_LANGUAGE;

use super::question::choices::Language;

/// The language of an answer; English when nothing fits.
#[must_use]
pub fn of(named: Option<Language>, request: &HttpRequest) -> Language {
    named.or_else(|| accepted(request)).unwrap_or(Language::En)
}

/// The language that the header likes best among those that are spoken here.
#[must_use]
pub fn accepted(request: &HttpRequest) -> Option<Language> {
    best(request.headers().get(ACCEPT_LANGUAGE)?.to_str().ok()?)
}

/// RFC 9110, section 12.5.4: ranges with weights from 0 to 1; a range fits the languages that begin with it.
fn best(header: &str) -> Option<Language> {
    let mut best: Option<(f64, Language)> = None;
    for range in header.split(',').take(32) {
        let mut parts = range.split(';').map(str::trim);
        let name = parts.next().unwrap_or_default();
        let weight = parts.find_map(|part| part.strip_prefix("q=")?.parse::<f64>().ok()).unwrap_or(1.0);
        let first = name.split('-').next().unwrap_or_default();
        let spoken = Language::ALL.iter().find(|language| language.word().eq_ignore_ascii_case(first) || first == "*");
        if let Some(language) = spoken
            && weight > 0.0
            && best.is_none_or(|(most, _)| weight > most)
        {
            best = Some((weight, *language));
        }
    }
    best.map(|(_, language)| language)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_language_with_the_most_weight_is_spoken() {
        for (header, language) in [
            ("es", Some(Language::Es)),
            ("ES-mx,es;q=0.9,en;q=0.8", Some(Language::Es)),
            ("de, en;q=0.2, es;q=0.7", Some(Language::Es)),
            ("es;q=0, en;q=0.1", Some(Language::En)),
            ("de, fr", None),
            ("*", Some(Language::En)),
            ("", None),
            ("est", None),
        ] {
            assert_eq!(best(header), language, "{header}");
        }
    }
}
