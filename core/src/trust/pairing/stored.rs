//! Both sides as they are stored: the messages in their own text.

use serde::{Deserialize, Serialize};

use super::message::{Message, MessageFault};

#[derive(Serialize, Deserialize)]
pub(super) struct Opened {
    invitation: String,
    reply: String,
    opening: String,
}

#[derive(Serialize, Deserialize)]
pub(super) struct Answered {
    invitation: String,
    reply: String,
}

impl From<super::Opened> for Opened {
    fn from(of: super::Opened) -> Opened {
        let (invitation, reply, opening) =
            (of.invitation.text(), of.reply.text(), of.opening.text());
        Opened { invitation, reply, opening }
    }
}

impl TryFrom<Opened> for super::Opened {
    type Error = MessageFault;
    fn try_from(of: Opened) -> Result<super::Opened, MessageFault> {
        let (invitation, reply) =
            (Message::read_text(&of.invitation)?, Message::read_text(&of.reply)?);
        Ok(super::Opened { invitation, reply, opening: Message::read_text(&of.opening)? })
    }
}

impl From<super::Answered> for Answered {
    fn from(of: super::Answered) -> Answered {
        Answered { invitation: of.invitation.text(), reply: of.reply.text() }
    }
}

impl TryFrom<Answered> for super::Answered {
    type Error = MessageFault;
    fn try_from(of: Answered) -> Result<super::Answered, MessageFault> {
        Ok(super::Answered {
            invitation: Message::read_text(&of.invitation)?,
            reply: Message::read_text(&of.reply)?,
        })
    }
}
