//! What the words of a fact consist of.

/// One text in the two languages that the service speaks by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Words {
    /// English.
    pub en: &'static str,
    /// Spanish.
    pub es: &'static str,
}

impl Words {
    /// English and Spanish.
    #[must_use]
    pub const fn new(en: &'static str, es: &'static str) -> Self {
        Self { en, es }
    }

    /// Spanish for `es` and every `es-…`, in either case of letters; else English.
    #[must_use]
    pub fn get(&self, language: &str) -> &'static str {
        let spanish = language.split('-').next().is_some_and(|first| first.eq_ignore_ascii_case("es"));
        if spanish { self.es } else { self.en }
    }
}

/// How a fact is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AskWords {
    /// The question.
    pub question: Words,
    /// How to find it out.
    pub look: Words,
}

/// The words of a fact. Where it takes arguments, they stand as `{name}`, `{aggregate}`, `{series}`, `{days}`,
/// `{temperature}` or `{marker}`; `{days}` is the bare number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FactWords {
    /// Short noun phrase in a reason, without an article: `soil pH`.
    pub name: Words,
    /// One sentence about it.
    pub about: Words,
    /// How it is asked for; none where it never is.
    pub ask: Option<AskWords>,
}

/// English and Spanish.
pub(super) type Pair = [&'static str; 2];

const fn both([en, es]: Pair) -> Words {
    Words::new(en, es)
}

impl FactWords {
    /// Of a fact that nobody is asked for.
    pub(super) const fn told(name: Pair, about: Pair) -> Self {
        Self { name: both(name), about: both(about), ask: None }
    }

    /// The same fact with the question that finds it out, and how to look.
    pub(super) const fn asked(self, question: Pair, look: Pair) -> Self {
        let ask = AskWords { question: both(question), look: both(look) };
        Self { ask: Some(ask), ..self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spanish_is_spoken_to_every_spanish_and_english_to_the_rest() {
        let words = Words::new("soil pH", "pH del suelo");
        for language in ["es", "es-MX", "ES", "es-419"] {
            assert_eq!(words.get(language), "pH del suelo", "{language}");
        }
        for language in ["en", "en-GB", "est", "de", ""] {
            assert_eq!(words.get(language), "soil pH", "{language}");
        }
    }
}
