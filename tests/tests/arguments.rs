//! The arguments of a message stand in the order in which English names its variables.

use std::collections::BTreeMap;
use std::fs;
use std::str::FromStr;

use holdfast_tests::sources::{folder, sources};
use proc_macro2::{Delimiter, TokenStream, TokenTree};

/// The variables of each message of a file, in the order in which they are first named.
fn variables(text: &str) -> BTreeMap<String, Vec<String>> {
    let mut all: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let mut message = None;
    for line in text.lines() {
        let begins = line.starts_with(|first: char| first.is_ascii_lowercase());
        let rest = match line.split_once(" =") {
            Some((name, rest)) if begins => {
                message = Some(name.replace('-', "_"));
                rest
            }
            _ if line.starts_with([' ', '}']) => line,
            _ => continue,
        };
        let Some(name) = &message else { continue };
        let known = all.entry(name.clone()).or_default();
        for part in rest.split('$').skip(1) {
            let end = part.find(|c: char| !(c.is_ascii_alphanumeric() || c == '-'));
            let variable = part[..end.unwrap_or(part.len())].replace('-', "_");
            if !known.contains(&variable) {
                known.push(variable);
            }
        }
    }
    all
}

/// Calls in a file: what stands before the last `::`, the name, and the arguments that are no more than a name.
fn calls(of: TokenStream, found: &mut Vec<(String, String, Vec<Option<String>>)>) {
    let all: Vec<TokenTree> = of.into_iter().collect();
    for (at, tree) in all.iter().enumerate() {
        let TokenTree::Group(group) = tree else { continue };
        calls(group.stream(), found);
        let before = all.get(at.saturating_sub(4)..at).unwrap_or_default();
        let [
            TokenTree::Ident(of),
            TokenTree::Punct(_),
            TokenTree::Punct(colon),
            TokenTree::Ident(name),
        ] = before
        else {
            continue;
        };
        if group.delimiter() == Delimiter::Parenthesis && colon.as_char() == ':' {
            found.push((of.to_string(), name.to_string(), names(group.stream())));
        }
    }
}

/// The arguments of a call: the name of each that is one, borrowed or not.
fn names(of: TokenStream) -> Vec<Option<String>> {
    let all: Vec<TokenTree> = of.into_iter().collect();
    let comma = |tree: &TokenTree| matches!(tree, TokenTree::Punct(mark) if mark.as_char() == ',');
    let name = |tokens: &[TokenTree]| match tokens {
        [TokenTree::Ident(name)] => Some(name.to_string()),
        [TokenTree::Punct(mark), TokenTree::Ident(name)] if mark.as_char() == '&' => {
            Some(name.to_string())
        }
        _ => None,
    };
    all.split(comma).map(name).collect()
}

/// Where an argument is called as another variable of its message than the one it is given for.
fn swapped(variables: &[String], arguments: &[Option<String>]) -> bool {
    variables.iter().zip(arguments).any(|(variable, argument)| {
        argument.as_ref().is_some_and(|name| name != variable && variables.contains(name))
    })
}

/// Under which names a file uses the catalogue's modules.
fn called(text: &str, module: &str) -> Vec<String> {
    let alias = |line: &str| {
        let (_, alias) = line.split_once(&format!("{module} as "))?;
        Some(alias.split([';', ',', '}']).next()?.to_owned())
    };
    let uses = text.lines().filter(|line| line.starts_with("use crate::say::"));
    std::iter::once(module.to_owned()).chain(uses.filter_map(alias)).collect()
}

#[test]
fn no_argument_stands_in_the_place_of_another() {
    let mut seen = 0;
    for of in ["core", "desk"] {
        let mut messages = Vec::new();
        for file in fs::read_dir(folder(of).join("messages/en")).unwrap() {
            let path = file.unwrap().path();
            let module = path.file_stem().unwrap().to_str().unwrap().replace('-', "_");
            messages.push((module, variables(&fs::read_to_string(path).unwrap())));
        }
        for path in sources(&folder(of).join("src")) {
            let text = fs::read_to_string(&path).unwrap();
            let mut found = Vec::new();
            calls(TokenStream::from_str(&text).unwrap(), &mut found);
            for (module, of) in &messages {
                let called = called(&text, module);
                for (before, name, arguments) in &found {
                    let Some(variables) = of.get(name).filter(|_| called.contains(before)) else {
                        continue;
                    };
                    seen += usize::from(variables.len() > 1);
                    let told = format!("{}: {module}::{name}({variables:?})", path.display());
                    assert!(!swapped(variables, arguments), "{told} is given {arguments:?}");
                }
            }
        }
    }
    assert!(seen > 300, "only {seen} calls were read");
}

#[test]
fn a_swapped_pair_is_seen() {
    let of =
        variables("# $x\na-b = { $folder } of { $sets ->\n    [one] { $name }\n}\nc = { $name }\n");
    assert_eq!(of["a_b"], ["folder", "sets", "name"]);
    let mut found = Vec::new();
    calls(TokenStream::from_str("f(say::m::a_b(name, 1, &folder))").unwrap(), &mut found);
    let (before, name, arguments) = found.iter().find(|(before, ..)| before == "m").unwrap();
    assert_eq!((before.as_str(), name.as_str()), ("m", "a_b"));
    assert!(swapped(&of["a_b"], arguments));
    assert!(!swapped(&of["a_b"], &[Some("folder".into()), None, None]));
    assert_eq!(called("use crate::say::{m as say, tap};", "m"), ["m", "say"]);
}
