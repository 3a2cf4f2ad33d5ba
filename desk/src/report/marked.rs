//! Sentences of the catalogue with elements of the page in them.

use std::fmt;

use askama::filters::{Escaper, Html, HtmlSafe};

/// Text that is escaped already, with elements of our own.
pub(super) struct Marked(String);

/// Where an element goes in a sentence, until the sentence is escaped.
#[derive(Clone, Copy)]
pub(super) struct Slot(usize);

/// A character for private use: if a person's text had it too, an element would stand twice, and nothing
/// would come in that was not escaped.
const EDGE: char = '\u{e000}';

impl fmt::Display for Slot {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{EDGE}{}{EDGE}", self.0)
    }
}

impl Marked {
    /// Says a sentence with elements in it: everything else of it is escaped.
    pub(super) fn new<const N: usize>(
        elements: [Marked; N],
        say: impl FnOnce([Slot; N]) -> String,
    ) -> Marked {
        let mut text = escaped(&say(std::array::from_fn(Slot)));
        for (index, element) in elements.iter().enumerate() {
            text = text.replace(&Slot(index).to_string(), &element.0);
        }
        Marked(text)
    }

    /// A name among other words: which way it is written turns nothing around it.
    pub(super) fn name(name: &str) -> Marked {
        Marked(format!("<bdi>{}</bdi>", escaped(name)))
    }

    /// A date, for machines and for people.
    pub(super) fn date(date: chrono::NaiveDate, words: &str) -> Marked {
        Marked(format!("<time datetime=\"{date}\">{}</time>", escaped(words)))
    }
}

impl fmt::Display for Marked {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Nothing gets in unescaped but the elements above.
impl HtmlSafe for Marked {}

fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    // Writing into a string cannot fail.
    let _ = Html.write_escaped_str(&mut escaped, text);
    escaped
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_looks_like_an_element_stays_words() {
        let say = |[name]: [Slot; 1]| format!("{name} & <i>\"us\"</i>");
        let marked = Marked::new([Marked::name("<b>&\"")], say);
        assert_eq!(
            marked.to_string(),
            "<bdi>&#60;b&#62;&#38;&#34;</bdi> &#38; &#60;i&#62;&#34;us&#34;&#60;/i&#62;"
        );
        // A name with a slot's own characters in it brings in nothing new.
        let name = Marked::name("\u{e000}1\u{e000}");
        let marked = Marked::new([name, Marked::name("<b>")], |[one, two]| format!("{one} {two}"));
        assert!(!marked.to_string().contains("<b>"));
    }
}
