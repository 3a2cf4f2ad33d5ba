//! A coach takes somebody in.

use super::stored::{Now, Stored};
use super::{Device, drawn, refused};
use crate::error::Result;
use crate::exchange::{add_claimed, forgotten, is_another_persons};
use crate::instant::Instant;
use crate::journal::{Admit, Body, Kind, PlanText, Profile, Role};
use crate::planted::{Planted, planted};
use crate::say::pairing as say;
use crate::store::{Draft, Query};
use crate::trust::{Certificate, Invited, InvitedFault, Message, Opened, Opening, Picked, Reply};

/// How long a code can be answered.
const ANSWERABLE_MS: i64 = 10 * 60 * 1000;

impl Device {
    pub(super) fn invite(
        &mut self,
        stored: &mut Stored,
        chance: &[u8],
        at: &Instant,
    ) -> Result<Option<String>> {
        self.require(Role::Coach)?;
        let both: [u8; 32] = drawn(chance)?;
        let (mut nonce, mut lines) = ([0; 16], [0; 16]);
        nonce.copy_from_slice(&both[..16]);
        lines.copy_from_slice(&both[16..]);
        let invited = Invited::new(self.identity.certificate, nonce);
        stored.now = Now::Invited { invited, lines, since_ms: at.wall_ms };
        stored.over = false;
        stored.write(&self.home)?;
        Ok(None)
    }

    /// Takes the answer that a member shows. It is opened once, and that is stored before it is shown.
    pub(super) fn scan_reply(
        &mut self,
        stored: &mut Stored,
        text: &str,
        at: &Instant,
    ) -> Result<Option<String>> {
        let reply = Reply::read_text(text).map_err(|fault| refused(fault.to_string()))?;
        self.replied(stored, std::slice::from_ref(&reply), at)
    }

    /// Takes the answers there are: one, or the invitation ends.
    pub(super) fn replied(
        &mut self,
        stored: &mut Stored,
        replies: &[Reply],
        at: &Instant,
    ) -> Result<Option<String>> {
        // Said before the words are compared, so that nobody is told to have joined in vain.
        let forgotten = forgotten(self.reader(), self.identity.device)?;
        if replies.iter().any(|reply| forgotten.contains(&reply.certificate.person())) {
            return Err(refused(say::forgotten_before()));
        }
        for reply in replies {
            if is_another_persons(self.reader(), &reply.certificate)? {
                return Err(refused(say::device_of_another()));
            }
        }
        let (opened, lines) = match &stored.now {
            Now::Invited { invited, lines, since_ms } => {
                let age = at.wall_ms.saturating_sub(*since_ms);
                if !(0..=ANSWERABLE_MS).contains(&age) {
                    stored.now = Now::Nothing {};
                    stored.write(&self.home)?;
                    return Err(refused(say::code_too_old()));
                }
                match invited.take(replies) {
                    Ok(Some(opened)) => (Box::new(opened), *lines),
                    // Nobody has answered yet.
                    Ok(None) => return Ok(None),
                    Err(fault) => return Err(self.failed(stored, &fault)?),
                }
            }
            Now::Opened { opened, lines } if planted(Planted::OpenedTwice) => {
                let Opening { certificate, nonce } = *opened.opening();
                let invited = Invited::new(certificate, nonce);
                let again = invited.take(replies).ok().flatten();
                (again.map_or_else(|| opened.clone(), Box::new), *lines)
            }
            // The same again changes nothing; another one comes too late.
            Now::Opened { opened, .. } => {
                let other = replies.iter().find_map(|reply| opened.take(reply).err());
                return other.map_or(Ok(None), |fault| Err(refused(fault.to_string())));
            }
            _ => return Err(refused(say::nothing_to_answer())),
        };
        stored.now = Now::Opened { opened, lines };
        stored.write(&self.home)?;
        Ok(None)
    }

    /// Forgets an attempt that failed.
    fn failed(&self, stored: &mut Stored, fault: &InvitedFault) -> Result<crate::error::Error> {
        stored.failed += 1;
        stored.now = Now::Nothing {};
        stored.write(&self.home)?;
        Ok(refused(fault.to_string()))
    }

    pub(super) fn pick(
        &mut self,
        stored: &mut Stored,
        line: Option<u32>,
        label: Option<String>,
        at: &Instant,
    ) -> Result<Option<String>> {
        let Now::Opened { opened, lines } = &stored.now else {
            return Err(refused(say::nothing_to_pick()));
        };
        let picked =
            line.map_or(Picked::None, |line| Picked::Line(line.saturating_sub(1) as usize));
        if !opened.is_right(*lines, picked) {
            stored.failed += 1;
            stored.now = Now::Nothing {};
            stored.write(&self.home)?;
            return Ok(Some(say::words_differ().to_owned()));
        }
        let label = label.unwrap_or_else(|| opened.reply().name.clone());
        let admit = self.admission(opened, &label)?;
        let (person, label) = (admit.person, admit.label.clone());
        let certificate = opened.reply().certificate;
        self.admit(admit, &certificate, at)?;
        stored.failed = 0;
        stored.now = Now::Admitted { person, label };
        stored.write(&self.home)?;
        Ok(None)
    }

    /// What is logged of somebody taken in. No two labels are alike, or nobody could say who is meant.
    fn admission(&self, opened: &Opened, label: &str) -> Result<Admit> {
        let certificate = &opened.reply().certificate;
        let (person, keys) = (certificate.person(), certificate.person_keys());
        let label = super::super::start::valid_name(label)?;
        let others = self.admitted()?;
        if forgotten(self.reader(), self.identity.device)?.contains(&person) {
            return Err(refused(say::forgotten_before()));
        }
        let taken =
            |other: &Admit| other.person != person && crate::plan::is_called(&other.label, &label);
        // Nor like the coach's own name: who is meant by it would be anybody's guess.
        if others.iter().any(taken) || crate::plan::is_called(&self.profile()?.name, &label) {
            return Err(refused(say::label_taken(label)));
        }
        Ok(Admit { person, sign: keys.sign.into(), open: keys.open.into(), label })
    }

    /// Logs it, once: a kill may have come between this and what is stored of the pairing.
    fn admit(&mut self, admit: Admit, certificate: &Certificate, at: &Instant) -> Result<()> {
        // Their device is sealed to from the first leaf on.
        self.store.write(|tx| add_claimed(tx, certificate))?;
        if self.admitted()?.contains(&admit) {
            return self.settle_members();
        }
        let record = Admit::record_of(admit.person);
        let mut drafts = vec![Draft::correct(record, admit)];
        drafts.extend(self.said_elsewhere::<Profile>()?);
        drafts.extend(self.said_elsewhere::<PlanText>()?);
        self.append_and_settle(at, drafts)
    }

    /// What everybody has and another device of this coach wrote, such as a laptop that was lost: said once more on this
    /// one, for a device carries into a new thread what it wrote itself.
    fn said_elsewhere<T: Kind + Into<Body>>(&self) -> Result<Vec<Draft>> {
        let own = self.identity.device;
        let query = Query { person: Some(self.person()), ..Query::default() };
        let logged = query.read::<T>(self.reader())?.into_iter();
        let elsewhere = logged.filter(|logged| logged.id.device != own);
        Ok(elsewhere.map(|logged| Draft::correct(logged.record, logged.body)).collect())
    }

    /// Everybody who was taken in.
    fn admitted(&self) -> Result<Vec<Admit>> {
        let logged = Query::default().read::<Admit>(self.reader())?;
        Ok(logged.into_iter().map(|logged| logged.body).collect())
    }
}
