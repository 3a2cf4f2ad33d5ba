//! Where something of a plan is written.

use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// The way to a value from the top of the plan.
#[derive(Clone, Debug, Default)]
pub(super) struct Path<'p> {
    steps: Vec<Step<'p>>,
}

#[derive(Clone, Copy, Debug)]
enum Step<'p> {
    Key(&'p str),
    Index(usize),
}

impl<'p> Path<'p> {
    /// The plan itself.
    pub(super) fn new() -> Path<'p> {
        Path::default()
    }

    /// What stands under a key of a table.
    pub(super) fn key(&self, key: &'p str) -> Path<'p> {
        self.then(Step::Key(key))
    }

    /// An entry of a list, counted from 0. Where one value stands in place of a list, that value.
    pub(super) fn index(&self, index: usize) -> Path<'p> {
        self.then(Step::Index(index))
    }

    fn then(&self, step: Step<'p>) -> Path<'p> {
        let mut steps = self.steps.clone();
        steps.push(step);
        Path { steps }
    }
}

/// The byte where the value starts, or the nearest part around it that is written.
pub(super) fn place(tree: &DeTable<'_>, path: &Path<'_>) -> usize {
    let mut steps = path.steps.iter();
    let Some(Step::Key(first)) = steps.next() else { return 0 };
    let Some(mut value) = tree.get(*first) else { return 0 };
    for step in steps {
        match next(value, step) {
            Some(inner) => value = inner,
            None => break,
        }
    }
    value.span().start
}

fn next<'v>(value: &'v Spanned<DeValue<'v>>, step: &Step<'_>) -> Option<&'v Spanned<DeValue<'v>>> {
    match (value.get_ref(), step) {
        (DeValue::Table(table), Step::Key(key)) => table.get(*key),
        (DeValue::Array(list), Step::Index(index)) => list.get(*index),
        _ => None,
    }
}
