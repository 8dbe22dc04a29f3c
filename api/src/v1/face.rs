//! As what an answer is sent, where there is a choice: JSON, or a picture for those who would rather have one.

use actix_web::HttpRequest;
use actix_web::http::header::ACCEPT;

/// As what an answer is sent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Face {
    /// JSON.
    Json,
    /// SVG.
    Picture,
}

impl Face {
    /// The media type.
    pub(crate) const fn media(self) -> &'static str {
        match self {
            Self::Json => "application/json",
            Self::Picture => "image/svg+xml",
        }
    }
}

/// What the reader would rather have. JSON for those who don't say, and for those who take neither.
pub(crate) fn wanted(request: &HttpRequest) -> Face {
    let headers: Vec<&str> = request.headers().get_all(ACCEPT).filter_map(|value| value.to_str().ok()).collect();
    chosen(&headers.join(","))
}

/// RFC 9110, section 12.5.1: of the ranges that fit a type the most specific one gives its weight. Where both weigh the
/// same, JSON; but a header that names nothing but images and films by kind, as that of an `<img>` does, wants a picture.
fn chosen(header: &str) -> Face {
    let mut json: (u8, f64) = (0, 0.0);
    let mut picture = json;
    let (mut names_images, mut names_others) = (false, false);
    for range in header.split(',').take(64) {
        let mut parts = range.split(';').map(str::trim);
        let name = parts.next().unwrap_or_default().to_ascii_lowercase();
        let given = parts.find_map(|part| part.strip_prefix("q=").or_else(|| part.strip_prefix("Q=")));
        let weight =
            given.and_then(|weight| weight.trim().parse::<f64>().ok()).filter(|weight| (0.0..=1.0).contains(weight));
        let weight = weight.unwrap_or(1.0);
        for (best, kind, whole) in
            [(&mut json, "application/*", Face::Json.media()), (&mut picture, "image/*", Face::Picture.media())]
        {
            let fits = [name == "*/*", name == kind, name == whole];
            if let Some(specific) = fits.iter().rposition(|fits| *fits).and_then(|place| u8::try_from(place + 1).ok())
                && specific > best.0
            {
                *best = (specific, weight);
            }
        }
        match name.split('/').next() {
            Some("image" | "video") => names_images = true,
            Some("*" | "") => {}
            _ => names_others = true,
        }
    }
    let is_picture = picture.1 > json.1 || (picture.1 > 0.0 && picture.1 >= json.1 && names_images && !names_others);
    if is_picture { Face::Picture } else { Face::Json }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_image_gets_the_picture_and_everybody_else_json() {
        for (header, face) in [
            ("", Face::Json),
            ("*/*", Face::Json),
            ("application/json", Face::Json),
            ("text/html", Face::Json),
            ("image/svg+xml", Face::Picture),
            ("IMAGE/SVG+XML", Face::Picture),
            ("image/*", Face::Picture),
            ("image/svg+xml, application/json", Face::Json),
            ("image/svg+xml, application/json;q=0.9", Face::Picture),
            ("image/svg+xml;q=0.4, application/json;q=0.9", Face::Json),
            ("image/svg+xml;q=0", Face::Json),
            ("image/*, image/svg+xml;q=0", Face::Json),
            // What browsers send for an `<img>` (from memory, several makers and years).
            ("image/avif,image/webp,image/apng,image/svg+xml,image/*,*/*;q=0.8", Face::Picture),
            ("image/avif,image/webp,image/png,image/svg+xml,image/*;q=0.8,*/*;q=0.5", Face::Picture),
            ("image/webp,image/avif,video/*;q=0.8,image/png,image/svg+xml,image/*;q=0.8,*/*;q=0.5", Face::Picture),
            ("image/avif,image/webp,*/*", Face::Picture),
            // What they send for a page (from memory).
            ("text/html,application/xhtml+xml,application/xml;q=0.9,image/avif,image/webp,*/*;q=0.8", Face::Json),
        ] {
            assert_eq!(chosen(header), face, "{header}");
        }
    }
}
