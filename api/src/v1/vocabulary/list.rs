//! What the lists of words have in common.

use actix_web::{HttpRequest, HttpResponse};
use serde::{Deserialize, Serialize};
use utoipa::IntoParams;

use crate::problem::Problem;
use crate::v1::language;
use crate::v1::page::{Page, PageQuery};
use crate::v1::question::choices::Language;
use crate::v1::sent::{self, Keep};

/// Which page of a list, in which language.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct ListQuery {
    /// At most so many entries; 50 when left out.
    #[param(required = false, nullable = false, minimum = 1, maximum = 200, example = 50)]
    limit: Option<u16>,
    /// The `next_cursor` of the page before; left out for the first page.
    #[param(required = false, nullable = false, pattern = "^([0-9a-f]{2})+$", example = "61")]
    cursor: Option<String>,
    /// The language of the texts; else the header `accept-language` decides.
    #[param(required = false, nullable = false, example = "en")]
    language: Option<Language>,
}

/// In which language one entry is wanted.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct EntryQuery {
    /// The language of the texts; else the header `accept-language` decides.
    #[param(required = false, nullable = false, example = "en")]
    pub(crate) language: Option<Language>,
}

/// An entry of a list: its key is what it is sorted and paged by.
pub(super) trait Listed {
    fn key(&self) -> &str;
}

macro_rules! pages {
    ($($page:ident of $item:ident by $key:ident, $about:literal;)*) => {$(
        #[doc = $about]
        #[derive(Debug, serde::Serialize, utoipa::ToSchema)]
        pub struct $page {
            /// The entries, in the order of their names; those of a search best first.
            items: Vec<$item>,
            /// Where the next page begins; left out on the last page.
            #[serde(skip_serializing_if = "Option::is_none")]
            #[schema(nullable = false)]
            next_cursor: Option<String>,
        }

        impl From<$crate::v1::page::Page<$item>> for $page {
            fn from(page: $crate::v1::page::Page<$item>) -> Self {
                Self { items: page.items, next_cursor: page.next_cursor }
            }
        }

        impl super::list::Listed for $item {
            fn key(&self) -> &str {
                &self.$key
            }
        }
    )*};
}
pub(super) use pages;

/// One page of the entries that `make` makes in a language.
pub(super) fn answer<T: Listed, P: Serialize + From<Page<T>>>(
    request: &HttpRequest,
    query: ListQuery,
    make: impl FnOnce(&str) -> Vec<T>,
) -> Result<HttpResponse, Problem> {
    let language = language::of(query.language, request);
    let mut entries = make(language.word());
    entries.sort_by(|a, b| a.key().cmp(b.key()));
    let page = PageQuery::new(query.limit, query.cursor).of(entries, Listed::key)?;
    sent_json(request, &P::from(page), language)
}

/// One entry in a language.
pub(super) fn sent_json(
    request: &HttpRequest,
    value: &impl Serialize,
    language: Language,
) -> Result<HttpResponse, Problem> {
    let text = serde_json::to_string(value).map_err(Problem::broken)?;
    Ok(sent::json(request, text, language, Keep::Hour))
}

/// A text that is there only when it says something.
pub(super) fn some(text: &str) -> Option<String> {
    (!text.is_empty()).then(|| text.to_owned())
}
