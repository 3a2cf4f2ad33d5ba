//! Plans that were published, each read once.

use std::collections::HashMap;
use std::sync::Arc;

use chrono::NaiveDate;

use super::Device;
use crate::error::Result;
use crate::id::RecordId;
use crate::journal::{Body, EntryId, PlanText, Role, body_of};
use crate::load::Prepared;
use crate::plan::read_plan;
use crate::store::{Query, line_of, people, versions};

/// Blocks by the entry that their text is in; none for a text that this version cannot read.
pub(super) type Plans = HashMap<EntryId, Option<Arc<Prepared>>>;

/// A plan that was published.
#[derive(Clone)]
pub(crate) struct Published {
    pub(crate) id: EntryId,
    pub(crate) block: Arc<Prepared>,
}

impl Device {
    /// Every block published by a coach, in its latest version, the earliest start first.
    fn published(&mut self) -> Result<Vec<Published>> {
        let people = people(self.reader())?;
        let texts = Query::default().read::<PlanText>(self.reader())?;
        self.unread_plans.clear();
        let mut found = Vec::new();
        for text in texts {
            let by_coach = people.get(&text.person).is_some_and(|(_, by)| by.role == Role::Coach);
            if !by_coach {
                continue;
            }
            match self.block(text.id, Some(&text.body))? {
                Some(block) => found.push(Published { id: text.id, block }),
                None => {
                    found.extend(self.last_readable(text.record)?);
                    self.unread_plans.push(text.body.block.clone());
                }
            }
        }
        found.sort_by_key(|plan| (plan.block.starts, plan.id));
        Ok(found)
    }

    /// The latest version of a plan that this version of the app can read.
    fn last_readable(&mut self, record: RecordId) -> Result<Option<Published>> {
        for id in versions(self.reader(), record)? {
            if let Some(block) = self.block(id, None)? {
                return Ok(Some(Published { id, block }));
            }
        }
        Ok(None)
    }

    /// The block of a plan entry, read once.
    pub(crate) fn block(
        &mut self,
        id: EntryId,
        text: Option<&PlanText>,
    ) -> Result<Option<Arc<Prepared>>> {
        if let Some(block) = self.plans.get(&id) {
            return Ok(block.clone());
        }
        let stored = match text {
            Some(text) => Some(text.clone()),
            None => match line_of(self.reader(), id)?.as_deref().and_then(body_of) {
                Some(Body::PlanText(text)) => Some(text),
                _ => None,
            },
        };
        let block = stored.and_then(|text| read_plan(text.text.as_bytes()).ok());
        let block = block.map(|block| Arc::new(Prepared::new(block)));
        self.plans.insert(id, block.clone());
        Ok(block)
    }

    /// The block for a date: the one it falls in, otherwise the last one begun, otherwise the next.
    pub(crate) fn block_for(&mut self, date: NaiveDate) -> Result<Option<Published>> {
        let plans = self.published()?;
        let inside = plans.iter().rfind(|plan| plan.block.week_of(date).is_some());
        let begun = || plans.iter().rfind(|plan| plan.block.starts <= date);
        Ok(inside.or_else(begun).or(plans.first()).cloned())
    }
}
