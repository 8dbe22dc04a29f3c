//! The canonical form: JSON after RFC 8785, keys sorted, numbers as integers or decimals of at most six places.

use serde_json::Value;

/// The canonical text of a value. Optional keys that are left out must be left out of the value as well.
#[must_use]
pub fn text(value: &Value) -> String {
    let mut out = String::new();
    write(value, &mut out);
    out
}

fn write(value: &Value, out: &mut String) {
    match value {
        Value::Null => out.push_str("null"),
        Value::Bool(yes) => out.push_str(if *yes { "true" } else { "false" }),
        Value::Number(number) => out.push_str(&decimal(number)),
        Value::String(text) => string(text, out),
        Value::Array(items) => {
            out.push('[');
            for (at, item) in items.iter().enumerate() {
                if at > 0 {
                    out.push(',');
                }
                write(item, out);
            }
            out.push(']');
        }
        Value::Object(map) => {
            let mut keys: Vec<(&String, &Value)> = map.iter().collect();
            // RFC 8785 sorts by UTF-16 code units.
            keys.sort_by(|(a, _), (b, _)| a.encode_utf16().cmp(b.encode_utf16()));
            out.push('{');
            for (at, (key, item)) in keys.into_iter().enumerate() {
                if at > 0 {
                    out.push(',');
                }
                string(key, out);
                out.push(':');
                write(item, out);
            }
            out.push('}');
        }
    }
}

fn string(text: &str, out: &mut String) {
    // The escapes of serde_json are those of RFC 8785.
    out.push_str(&Value::String(text.to_owned()).to_string());
}

fn decimal(number: &serde_json::Number) -> String {
    if let Some(whole) = number.as_i64() {
        return whole.to_string();
    }
    if let Some(whole) = number.as_u64() {
        return whole.to_string();
    }
    let value = number.as_f64().unwrap_or(0.0);
    let text = format!("{value:.6}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn keys_are_sorted_and_numbers_have_one_form() {
        let value = json!({"b": 1.50, "a": [1.0, -0.0, 2, 0.1], "ä": "\u{1}\"", "A": null});
        assert_eq!(text(&value), "{\"A\":null,\"a\":[1,0,2,0.1],\"b\":1.5,\"ä\":\"\\u0001\\\"\"}");
    }
}
