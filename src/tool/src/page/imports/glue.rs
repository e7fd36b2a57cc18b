//! What the binding's JS says of an import that has no class.

/// `__wbg_then_0d9fe2c7b1857d32` without its last part, which changes with every version.
pub(super) fn without_hash(shim: &str) -> &str {
    match shim.rsplit_once('_') {
        Some((name, hash)) if hash.len() == 16 && hash.bytes().all(|byte| byte.is_ascii_hexdigit()) => name,
        _ => shim,
    }
}

/// A function that belongs to no class, with the object it is called on, as the glue writes it: `Reflect.set`.
pub(super) fn with_namespace(glue: &str, shim: &str, name: &str) -> String {
    let written = || {
        let (_, body) = glue.split_once(&format!("{shim}: function"))?;
        let (before, _) = body.split_once(&format!("{name}("))?;
        let namespace =
            before.rsplit(|letter: char| !letter.is_alphanumeric() && !"._$".contains(letter)).next()?;
        // What lies further off belongs to another function.
        (before.len() < 400).then(|| format!("{namespace}{name}"))
    };
    written().unwrap_or_else(|| name.to_owned())
}

/// An import that is bound anew for each type it is used with has only a number for a name. The glue says what it does:
/// it turns a value of Rust into one of JS, or it calls what its first line calls.
pub(super) fn generic(glue: &str, shim: &str) -> Option<String> {
    shim.strip_prefix("__wbindgen_generic_")?;
    let (_, body) = glue.split_once(&format!("{shim}: function"))?;
    let (_, body) = body.split_once("{\n")?;
    let line = body.lines().next()?.trim();
    Some(match line.strip_prefix("// Cast intrinsic for `") {
        Some(types) => format!("cast {}", types.split([' ', '{', '`']).next()?.trim_end_matches('(')),
        None => line.trim_start_matches("const ret = ").to_owned(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_loses_its_hash_and_nothing_else() {
        assert_eq!(without_hash("__wbg_then_0d9fe2c7b1857d32"), "__wbg_then");
        assert_eq!(without_hash("__wbindgen_init_externref_table"), "__wbindgen_init_externref_table");
    }

    #[test]
    fn a_free_function_is_named_with_its_object() {
        let glue =
            "__wbg_set_12: function() { return handleError(function (arg0) {\nconst ret = Reflect.set(arg0);";
        assert_eq!(with_namespace(glue, "__wbg_set_12", "set"), "Reflect.set");
        assert_eq!(with_namespace("__wbg_f_1: function(arg0) {\nfetch(arg0)", "__wbg_f_1", "fetch"), "fetch");
        assert_eq!(with_namespace(glue, "__wbg_other_12", "set"), "set");
    }

    #[test]
    fn a_numbered_import_is_named_by_what_it_does() {
        let glue = "__wbindgen_generic_0001: function(arg0, arg1) {\n// Cast intrinsic for `Ref(String) -> Externref`.\n\
                    __wbindgen_generic_0002: function(arg0, arg1) {\nconst ret = arg0.then(arg1);\n";
        assert_eq!(generic(glue, "__wbindgen_generic_0001").as_deref(), Some("cast Ref(String)"));
        assert_eq!(generic(glue, "__wbindgen_generic_0002").as_deref(), Some("arg0.then(arg1);"));
        assert_eq!(generic(glue, "__wbindgen_throw"), None);
    }
}
