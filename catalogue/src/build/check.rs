//! What must be alike in all languages.

use super::message::{Catalogue, Form, Message, Part};
use crate::Language;

/// Every language has the same messages in the same files with the same variables, and every choice its
/// plural forms.
pub(super) fn check(all: &[Catalogue]) -> Result<(), String> {
    let mut problems = Vec::new();
    let named: Vec<(Language, &Catalogue)> = Language::ALL.into_iter().zip(all).collect();
    for (language, catalogue) in &named {
        for message in &catalogue.messages {
            let (module, id) = (&message.module, &message.id);
            let mut wrong =
                |what: String| problems.push(format!("{language}/{module}: {id}: {what}"));
            forms(&message.parts, &mut wrong);
            for (other, catalogue) in &named {
                match find(catalogue, message) {
                    None => wrong(format!("is not in {other}/{module}")),
                    Some(same) if names(same) != names(message) => wrong(format!(
                        "has the variables {:?}, in {other} {:?}",
                        names(message),
                        names(same)
                    )),
                    Some(_) => {}
                }
            }
        }
    }
    if problems.is_empty() { Ok(()) } else { Err(problems.join("\n")) }
}

/// The same message in another language.
pub(super) fn find<'a>(catalogue: &'a Catalogue, message: &Message) -> Option<&'a Message> {
    let same = |other: &&Message| other.module == message.module && other.id == message.id;
    catalogue.messages.iter().find(same)
}

fn names(message: &Message) -> Vec<String> {
    let mut names: Vec<String> = message.variables().into_iter().map(|(name, _)| name).collect();
    names.sort();
    names
}

fn forms(parts: &[Part], wrong: &mut impl FnMut(String)) {
    for part in parts {
        let Part::Choice { of, branches } = part else { continue };
        for form in [Form::One, Form::Other] {
            if branches.iter().filter(|(found, _)| *found == form).count() != 1 {
                wrong(format!("${of} needs the form {form:?} once"));
            }
        }
        branches.iter().for_each(|(_, parts)| forms(parts, wrong));
    }
}
