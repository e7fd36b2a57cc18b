//! What the binding's JS says of an import: which function it calls, on which object.
//!
//! wasm-bindgen writes each import as a function of its own in one object, line by line:
//!
//! ```text
//! __wbg_set_5337f8ac82364a3f: function() { return handleError(function (arg0, arg1, arg2) {
//!     const ret = Reflect.set(arg0, arg1, arg2);
//!     return ret;
//! }, arguments); },
//! ```

/// The body of an import's function, without its first and last line; nothing if the binding does not hold it.
fn body<'a>(glue: &'a str, shim: &str) -> Option<&'a str> {
    let (_, rest) = glue.split_once(&format!("{shim}: function("))?;
    let (_, rest) = rest.split_once("{\n")?;
    let mut length = 0;
    for line in rest.split_inclusive('\n') {
        if matches!(line.trim(), "}," | "}, arguments); },") {
            return rest.get(..length);
        }
        length += line.len();
    }
    None
}

/// `__wbg_then_0d9fe2c7b1857d32` without its last part, which changes with every version.
pub(super) fn without_hash(shim: &str) -> &str {
    match shim.rsplit_once('_') {
        Some((name, hash)) if hash.len() == 16 && hash.bytes().all(|byte| byte.is_ascii_hexdigit()) => name,
        _ => shim,
    }
}

/// A function that belongs to no class, with the object it is called on, as its own body writes it: `Reflect.set`. A value
/// that the function is handed (`arg0`) names no object. Nothing if the body does not hold the function.
pub(super) fn with_namespace(glue: &str, shim: &str, name: &str) -> Option<String> {
    let body = body(glue, shim)?;
    let is_part = |letter: char| letter.is_alphanumeric() || "._$".contains(letter);
    let start = body.match_indices(name).map(|(at, _)| at).find(|&at| {
        let before = body[..at].chars().next_back();
        let after = body[at + name.len()..].chars().next();
        before.is_none_or(|it| it == '.' || !is_part(it)) && after.is_none_or(|it| !is_part(it))
    })?;
    let before = &body[..start];
    let object = before.rsplit(|letter: char| !is_part(letter)).next().unwrap_or_default();
    let is_argument =
        object.trim_end_matches('.').strip_prefix("arg").is_some_and(|it| it.parse::<u32>().is_ok());
    Some(if is_argument { name.to_owned() } else { format!("{object}{name}") })
}

/// What an import does that wasm-bindgen describes nowhere, by its own name or by its body. Nothing if neither says it.
pub(super) fn undescribed(glue: &str, shim: &str) -> Option<String> {
    if shim.starts_with("__wbindgen_generic_") {
        return generic(body(glue, shim)?);
    }
    // Checks of a value's class, accessors of the global object, and the binding's own helpers have names that say what they do.
    let speaks = ["__wbg_instanceof_", "__wbg_static_accessor_", "__wbindgen_"];
    speaks.iter().any(|start| shim.starts_with(start)).then(|| without_hash(shim).to_owned())
}

/// An import that is bound anew for each type it is used with has only a number for a name. Its body says what it does: it
/// turns a value of Rust into one of JS, or it calls what its first line calls.
fn generic(body: &str) -> Option<String> {
    let line = body.lines().next()?.trim();
    Some(match line.strip_prefix("// Cast intrinsic for `") {
        Some(types) => format!("cast {}", types.split([' ', '{', '`']).next()?.trim_end_matches('(')),
        None => line.trim_start_matches("const ret = ").to_owned(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const GLUE: &str = "\
        __wbg_set_12: function() { return handleError(function (arg0) {\n\
        const ret = Reflect.set(arg0);\n\
        }, arguments); },\n\
        __wbg_fetch_1: function(arg0) {\n\
        fetch(arg0);\n\
        },\n\
        __wbg_queueMicrotask_1: function(arg0) {\n\
        const ret = arg0.queueMicrotask;\n\
        return ret;\n\
        },\n\
        __wbg_open_1: function(arg0) {\n\
        const ret = arg0.reopened(openAll);\n\
        },\n\
        __wbindgen_generic_0001: function(arg0, arg1) {\n\
        // Cast intrinsic for `Ref(String) -> Externref`.\n\
        const ret = getStringFromWasm0(arg0, arg1);\n\
        },\n\
        __wbindgen_generic_0002: function(arg0, arg1) {\n\
        const ret = arg0.then(arg1);\n\
        },\n";

    #[test]
    fn a_name_loses_its_hash_and_nothing_else() {
        assert_eq!(without_hash("__wbg_then_0d9fe2c7b1857d32"), "__wbg_then");
        assert_eq!(without_hash("__wbindgen_init_externref_table"), "__wbindgen_init_externref_table");
    }

    #[test]
    fn a_free_function_is_named_with_its_object() {
        for (shim, name, found) in [
            ("__wbg_set_12", "set", Some("Reflect.set")),
            ("__wbg_fetch_1", "fetch", Some("fetch")),
            ("__wbg_queueMicrotask_1", "queueMicrotask", Some("queueMicrotask")),
            // Another function's body says nothing of this one, nor does a longer word.
            ("__wbg_set_12", "fetch", None),
            ("__wbg_open_1", "open", None),
            ("__wbg_missing_1", "set", None),
        ] {
            assert_eq!(with_namespace(GLUE, shim, name).as_deref(), found, "{shim}, {name}");
        }
    }

    #[test]
    fn an_undescribed_import_is_named_by_what_it_does() {
        for (shim, found) in [
            ("__wbindgen_generic_0001", Some("cast Ref(String)")),
            ("__wbindgen_generic_0002", Some("arg0.then(arg1);")),
            ("__wbg_instanceof_Window_0d9fe2c7b1857d32", Some("__wbg_instanceof_Window")),
            ("__wbindgen_init_externref_table", Some("__wbindgen_init_externref_table")),
            ("__wbindgen_generic_0003", None),
            ("__wbg_fetch_0d9fe2c7b1857d32", None),
        ] {
            assert_eq!(undescribed(GLUE, shim).as_deref(), found, "{shim}");
        }
    }
}
