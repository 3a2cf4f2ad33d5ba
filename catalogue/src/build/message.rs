//! Messages as they are read from Fluent's own parser: the part of the syntax that is used here.

use fluent_syntax::ast::{
    Entry, Expression, InlineExpression, Pattern, PatternElement, VariantKey,
};
use fluent_syntax::parser;

/// All messages of one language.
#[derive(Default)]
pub(super) struct Catalogue {
    pub(super) messages: Vec<Message>,
}

/// One message.
pub(super) struct Message {
    /// The file it stands in, without its ending.
    pub(super) module: String,
    pub(super) id: String,
    /// What the translator is told.
    pub(super) comment: String,
    pub(super) parts: Vec<Part>,
}

/// A part of a sentence.
pub(super) enum Part {
    Text(String),
    Variable(String),
    /// Branches by the plural form of a variable.
    Choice {
        of: String,
        branches: Vec<(Form, Vec<Part>)>,
    },
}

/// Which numbers a branch is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    One,
    Other,
    Exactly(i64),
}

impl Message {
    /// The variables in the order they are first named, each with whether a form depends on it.
    pub(super) fn variables(&self) -> Vec<(String, bool)> {
        let mut found = Vec::new();
        collect(&self.parts, &mut found);
        found
    }
}

fn collect(parts: &[Part], found: &mut Vec<(String, bool)>) {
    for part in parts {
        let (name, chooses) = match part {
            Part::Text(_) => continue,
            Part::Variable(name) => (name, false),
            Part::Choice { of, .. } => (of, true),
        };
        match found.iter_mut().find(|(known, _)| known == name) {
            Some((_, known)) => *known |= chooses,
            None => found.push((name.clone(), chooses)),
        }
        if let Part::Choice { branches, .. } = part {
            branches.iter().for_each(|(_, parts)| collect(parts, found));
        }
    }
}

/// Reads the messages of a file.
///
/// # Errors
/// What cannot be read, or is not used here, a line each.
pub(super) fn read(module: &str, text: &str) -> Result<Vec<Message>, Vec<String>> {
    let resource = parser::parse(text).map_err(|(_, errors)| {
        let line = |at: usize| 1 + text[..at.min(text.len())].matches('\n').count();
        errors
            .iter()
            .map(|error| format!("line {}: {error}", line(error.pos.start)))
            .collect::<Vec<_>>()
    })?;
    let (mut messages, mut problems): (Vec<Message>, _) = (Vec::new(), Vec::new());
    for entry in &resource.body {
        let message = match entry {
            Entry::Message(message) => message,
            Entry::Comment(_) | Entry::GroupComment(_) | Entry::ResourceComment(_) => continue,
            Entry::Term(term) => {
                problems.push(format!("-{}: terms are not used here", term.id.name));
                continue;
            }
            Entry::Junk { content } => {
                problems.push(format!("not a message: {}", content.trim()));
                continue;
            }
        };
        let id = message.id.name.to_owned();
        if !message.attributes.is_empty() {
            problems.push(format!("{id}: attributes are not used here"));
        }
        if messages.iter().any(|known| known.id == id) {
            problems.push(format!("{id} stands twice"));
        }
        let comment =
            message.comment.as_ref().map_or(String::new(), |comment| comment.content.join("\n"));
        match message.value.as_ref().map(parts) {
            Some(Ok(parts)) => {
                messages.push(Message { module: module.to_owned(), id, comment, parts });
            }
            Some(Err(problem)) => problems.push(format!("{id}: {problem}")),
            None => problems.push(format!("{id} says nothing")),
        }
    }
    if problems.is_empty() { Ok(messages) } else { Err(problems) }
}

fn parts(pattern: &Pattern<&str>) -> Result<Vec<Part>, String> {
    pattern.elements.iter().map(part).collect()
}

fn part(element: &PatternElement<&str>) -> Result<Part, String> {
    match element {
        PatternElement::TextElement { value } => text(value),
        PatternElement::Placeable { expression: Expression::Inline(inline) } => match inline {
            InlineExpression::VariableReference { id } => Ok(Part::Variable(id.name.to_owned())),
            InlineExpression::StringLiteral { value } => text(value),
            other => Err(format!("not used here: {other:?}")),
        },
        PatternElement::Placeable { expression: Expression::Select { selector, variants } } => {
            let InlineExpression::VariableReference { id } = selector else {
                return Err("only a variable can choose a form".into());
            };
            let branch = |variant: &fluent_syntax::ast::Variant<&str>| {
                let form = form(&variant.key, variant.default)?;
                Ok((form, parts(&variant.value)?))
            };
            let branches = variants.iter().map(branch).collect::<Result<Vec<_>, String>>()?;
            Ok(Part::Choice { of: id.name.to_owned(), branches })
        }
    }
}

fn form(key: &VariantKey<&str>, default: bool) -> Result<Form, String> {
    match (key, default) {
        (VariantKey::Identifier { name: "one" }, false) => Ok(Form::One),
        (VariantKey::Identifier { name: "other" }, true) => Ok(Form::Other),
        (VariantKey::NumberLiteral { value }, false) => {
            value.parse().map(Form::Exactly).map_err(|_| format!("{value} is no whole number"))
        }
        _ => Err("a choice has [one], whole numbers, and *[other] as its default".into()),
    }
}

/// A line break in a message is a space; what packing uses as marks cannot stand in one.
fn text(text: &str) -> Result<Part, String> {
    let text = text.replace('\n', " ");
    if text.chars().any(char::is_control) {
        return Err("a control character stands in it".into());
    }
    Ok(Part::Text(text))
}
