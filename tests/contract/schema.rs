//! Values against the document's schemas (JSON Schema 2020-12, which OpenAPI 3.1 uses).

use jsonschema::{Draft, Validator};
use serde_json::{Value, json};

/// What of a value does not fit a schema of the document.
pub(crate) fn misfits(document: &Value, schema: &Value, value: &Value) -> Vec<String> {
    let whole = json!({"$schema": "https://json-schema.org/draft/2020-12/schema", "allOf": [schema],
        "components": document["components"]});
    let validator: Validator =
        jsonschema::options().with_draft(Draft::Draft202012).build(&whole).expect("the document's schemas are sound");
    validator.iter_errors(value).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

#[test]
fn a_value_that_does_not_fit_is_found() {
    let document = crate::document::document();
    let schema = json!({"$ref": "#/components/schemas/Problem"});
    let sound = json!({"type": "about:blank", "title": "x", "status": 418});
    assert_eq!(misfits(&document, &schema, &sound), Vec::<String>::new());
    assert_eq!(misfits(&document, &schema, &json!({"type": 3, "title": "x", "status": 200})).len(), 2);
}
