//! Packed texts, and a function for each message.

use std::fmt::Write;

use super::check::find;
use super::message::{Catalogue, Form, Message, Part};
use crate::Language;
use crate::render::{
    ARGUMENT, BRANCH_END, CHOICE, CHOICE_END, EXACT, EXACT_END, FIRST_PLACE, ONE, OTHER,
};

/// What is written for the compiler.
pub(super) struct Generated {
    pub(super) code: String,
    /// By language.
    pub(super) texts: Vec<String>,
}

/// The code of catalogues that were checked.
pub(super) fn generate(all: &[Catalogue]) -> Generated {
    let english = &all[0];
    let mut texts = vec![String::new(); all.len()];
    let mut starts = vec![vec![0]; all.len()];
    let mut code = String::new();
    let mut module = "";
    for (number, message) in english.messages.iter().enumerate() {
        let same: Vec<&Message> = all.iter().filter_map(|all| find(all, message)).collect();
        let variables = variables(&same);
        for ((text, starts), message) in texts.iter_mut().zip(&mut starts).zip(&same) {
            pack(text, &message.parts, &variables);
            starts.push(text.len());
        }
        if module != message.module {
            if !module.is_empty() {
                code += "}\n";
            }
            module = &message.module;
            let name = module.replace('-', "_");
            let _ = writeln!(code, "/// `{module}.ftl`.\npub(crate) mod {name} {{");
            code += "#[allow(unused_imports, reason = \"not every file has variables\")]\n";
            code += "use super::{Arg, Display, PACKED, Whole};\n";
        }
        function(&mut code, number, message, &variables);
    }
    if !module.is_empty() {
        code += "}\n";
    }
    let files: Vec<String> = Language::ALL
        .iter()
        .map(|language| format!("include_str!(concat!(env!(\"OUT_DIR\"), \"/{language}.txt\"))"))
        .collect();
    let _ = writeln!(
        code,
        "static PACKED: Packed = Packed {{ texts: [{}], starts: [{}] }};",
        files.join(", "),
        starts.iter().map(|starts| format!("&{starts:?}")).collect::<Vec<_>>().join(", ")
    );
    Generated { code, texts }
}

/// The variables in the order English names them; one that chooses a form anywhere is a number.
fn variables(same: &[&Message]) -> Vec<(String, bool)> {
    let mut found = same[0].variables();
    for (name, chooses) in same.iter().flat_map(|message| message.variables()) {
        if let Some((_, known)) = found.iter_mut().find(|(known, _)| *known == name) {
            *known |= chooses;
        }
    }
    found
}

fn function(code: &mut String, number: usize, message: &Message, variables: &[(String, bool)]) {
    let mut says = String::new();
    show(&mut says, &message.parts);
    let _ = writeln!(code, "/// `{}`", says.trim());
    for line in message.comment.lines() {
        let _ = writeln!(code, "///\n/// {line}");
    }
    let name = message.id.replace('-', "_");
    if variables.is_empty() {
        let _ =
            writeln!(code, "pub(crate) fn {name}() -> &'static str {{ PACKED.plain({number}) }}");
        return;
    }
    let parameter = |(name, number): &(String, bool)| {
        let kind = if *number { "Whole" } else { "Display" };
        format!("{}: impl {kind}", name.replace('-', "_"))
    };
    let argument = |(name, number): &(String, bool)| {
        let name = name.replace('-', "_");
        if *number {
            format!("Arg::Number({name}.whole())")
        } else {
            format!("Arg::Shown(&{name})")
        }
    };
    let parameters: Vec<String> = variables.iter().map(parameter).collect();
    let arguments: Vec<String> = variables.iter().map(argument).collect();
    let _ = writeln!(
        code,
        "pub(crate) fn {name}({}) -> String {{ PACKED.say({number}, &[{}]) }}",
        parameters.join(", "),
        arguments.join(", ")
    );
}

fn pack(text: &mut String, parts: &[Part], variables: &[(String, bool)]) {
    let place = |name: &String| {
        let at = variables.iter().position(|(known, _)| known == name).unwrap_or_default();
        char::from(FIRST_PLACE + u8::try_from(at).unwrap_or_default())
    };
    for part in parts {
        match part {
            Part::Text(plain) => text.push_str(plain),
            Part::Variable(name) => text.extend([ARGUMENT, place(name)]),
            Part::Choice { of, branches } => {
                text.extend([CHOICE, place(of)]);
                for (form, parts) in branches {
                    match form {
                        Form::One => text.push(ONE),
                        Form::Other => text.push(OTHER),
                        Form::Exactly(number) => {
                            let _ = write!(text, "{EXACT}{number}{EXACT_END}");
                        }
                    }
                    pack(text, parts, variables);
                    text.push(BRANCH_END);
                }
                text.push(CHOICE_END);
            }
        }
    }
}

/// The sentence as a reader of the code sees it.
fn show(says: &mut String, parts: &[Part]) {
    for part in parts {
        match part {
            Part::Text(text) => says.push_str(&text.replace('`', "'")),
            Part::Variable(name) => says.push_str(&format!("{{{name}}}")),
            Part::Choice { of, branches } => {
                says.push_str(&format!("{{{of}:"));
                for (index, (_, parts)) in branches.iter().enumerate() {
                    says.push_str(if index == 0 { " " } else { " | " });
                    show(says, parts);
                }
                says.push('}');
            }
        }
    }
}
