//! Somebody in the middle of a pairing, and somebody new who has not paired yet.

use std::collections::BTreeSet;

use holdfast_core::PairDid;
use holdfast_core::exchange::CarriedFile;
use holdfast_core::journal::Role;
use holdfast_core::trust::{
    Certificate, Invitation, Keys, Message, NONCE_BYTES, Opening, PublicKeys, Recovery, Reply,
    WORDS, commitment, word_numbers,
};
use rand::RngExt;

use super::carrier::{NEVER, Passed, exchange};
use super::{Done, MAREN, World, failed};
use crate::pairing::{line_of, scan};
use crate::{Device, Writer};

/// Whoever stands in between, with keys of their own.
struct Middle {
    paper: Keys,
    keys: Keys,
    nonce: [u8; NONCE_BYTES],
}

impl Middle {
    /// A certificate of theirs over a key that opens: whose that is, nobody proves.
    fn certificate(&self, open: [u8; 32]) -> Certificate {
        let PublicKeys { sign, .. } = self.keys.public();
        Certificate::sign(&self.paper, &PublicKeys { sign, open }, 1)
    }

    fn own(&self) -> Certificate {
        self.certificate(self.keys.public().open)
    }

    fn reply(&self) -> Reply {
        Reply { certificate: self.own(), nonce: self.nonce, name: "Cleo".into() }
    }

    fn opening(&self) -> Opening {
        Opening { certificate: self.own(), nonce: self.nonce }
    }
}

fn said(numbers: [u8; 4]) -> String {
    numbers.map(|number| WORDS[usize::from(number)]).join(" ")
}

impl World {
    /// Somebody new, with a device that nobody has met.
    fn somebody_new(&mut self) -> Result<Device, String> {
        let home = self.folder("new");
        let chance = self.chance.random_range(3..190);
        Device::start(home, "Cleo", Role::Athlete, chance).map_err(failed("start"))
    }

    /// The coach and somebody new pair, and somebody stands between their devices. They have listened: in the end the
    /// words do not match, and nobody is taken in.
    pub(super) fn somebody_in_the_middle(&mut self) -> Done {
        let Some(coach) = self.seat_of(MAREN) else { return Ok(()) };
        let new = self.somebody_new()?;
        let middle = Middle {
            paper: Recovery::new(self.chance.random()).keys(),
            keys: Keys::new(&self.chance.random(), &self.chance.random()),
            nonce: self.chance.random(),
        };
        let chance: Vec<u8> = (0..32).map(|_| self.chance.random()).collect();
        let which = self.chance.random_range(0..3);
        let coach = &self.seats[coach].device;
        let told = match which {
            0 => opens_for_the_coach(coach, &new, &middle, chance),
            1 => answers_first(coach, &new, &middle, chance),
            _ => pairs_with_both(coach, &new, &middle, chance),
        };
        coach.pair(PairDid::Stop).and_then(|_| new.pair(PairDid::Stop)).map_err(failed("pair"))?;
        let joined = new.holdfast.who().map_err(failed("who"))?.in_crew;
        self.tell(format!("somebody stands in the middle of a pairing: {which}"));
        match (told, joined) {
            (Err(why), _) => Err(format!("in the middle of a pairing: {why}")),
            (Ok(()), true) => Err("somebody new joined whoever stood in the middle".to_owned()),
            (Ok(()), false) => Ok(()),
        }
    }

    /// Somebody without a crew meets a leaf that is sealed to them: no crew comes about by that.
    pub(super) fn somebody_new_looks(&mut self) -> Done {
        let new = self.somebody_new()?;
        let line = self.flag();
        let stranger = self.stranger();
        let own = Writer::at(&new);
        let leaf = stranger.writes((stranger.crew(), own.person()), None, &[line]);
        let CarriedFile { name, content } = stranger.seals(&leaf, &[&own]);
        let mut files = self.files.clone();
        files.insert(name, content);
        let mut passed = Passed::default();
        let looked = exchange(&new, &mut files, NEVER, &mut self.chance, &mut passed);
        let joined = new.holdfast.who().map_err(failed("who"))?.in_crew;
        self.tell("somebody new looks at the carrier".to_owned());
        match looked.is_ok() || joined {
            true => Err("somebody new joined by a leaf".to_owned()),
            false => Ok(()),
        }
    }
}

fn invited(coach: &Device, chance: Vec<u8>) -> Result<(PairDid, Invitation), String> {
    let shown = coach.pair(PairDid::Invite { chance }).map_err(failed("invite"))?;
    let code = shown.code.clone().unwrap_or_default();
    let invitation = Invitation::read_text(&code).map_err(|fault| fault.to_string())?;
    Ok((scan(&shown, 7), invitation))
}

fn shows(text: String) -> PairDid {
    PairDid::Scan { text, chance: vec![9; 32] }
}

/// The new device has the coach's own code, and gets an opening that is not the coach's.
fn opens_for_the_coach(
    coach: &Device,
    new: &Device,
    middle: &Middle,
    chance: Vec<u8>,
) -> Result<(), String> {
    let (code, invitation) = invited(coach, chance)?;
    new.pair(code).map_err(failed("answer"))?;
    let certificate = middle.certificate(invitation.open);
    let opening = Opening { certificate, nonce: middle.nonce };
    match new.pair(shows(opening.text())) {
        Err(_) => Ok(()),
        Ok(_) => Err("an opening was taken that the code did not promise".to_owned()),
    }
}

/// Two devices answer one code.
fn answers_first(
    coach: &Device,
    new: &Device,
    middle: &Middle,
    chance: Vec<u8>,
) -> Result<(), String> {
    let (code, _) = invited(coach, chance)?;
    let answered = new.pair(code).map_err(failed("answer"))?;
    let opened = coach.pair(shows(middle.reply().text())).map_err(failed("open"))?;
    if coach.pair(scan(&answered, 8)).is_ok() {
        return Err("a code was opened for two answers".to_owned());
    }
    let compared = new.pair(scan(&opened, 8)).map_err(failed("compare"))?;
    if line_of(&opened, &compared).is_some() {
        return Err("the words match those of another device".to_owned());
    }
    new.pair(PairDid::Match { matches: false, share_earlier: false }).map_err(failed("match"))?;
    coach.pair(PairDid::Pick { line: None, label: None }).map_err(failed("pick")).map(drop)
}

/// Each pairs with whoever stands in the middle, who would have to make the words the same: so nobody may know them before
/// the coach has opened the code.
fn pairs_with_both(
    coach: &Device,
    new: &Device,
    middle: &Middle,
    chance: Vec<u8>,
) -> Result<(), String> {
    let (_, invitation) = invited(coach, chance)?;
    let foreseen = said(word_numbers(&invitation, &middle.reply(), &middle.opening()));
    let opened = coach.pair(shows(middle.reply().text())).map_err(failed("open"))?;
    if opened.lines.contains(&foreseen) {
        return Err("the words are known before the code is opened".to_owned());
    }
    let Opening { certificate, nonce } = middle.opening();
    let open = certificate.device_keys().open;
    let own = Invitation { open, commitment: commitment(&certificate, &nonce) };
    new.pair(shows(own.text())).map_err(failed("answer"))?;
    let compared = new.pair(shows(middle.opening().text())).map_err(failed("compare"))?;
    let lines: BTreeSet<&String> = opened.lines.iter().collect();
    if lines.contains(&compared.words.join(" ")) {
        return Err("the words match across whoever stands in the middle".to_owned());
    }
    new.pair(PairDid::Match { matches: false, share_earlier: false }).map_err(failed("match"))?;
    coach.pair(PairDid::Pick { line: None, label: None }).map_err(failed("pick")).map(drop)
}
