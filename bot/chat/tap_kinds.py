"""What kind of message a tap stands for, in the `--json` contract; a question unless said here."""

from __future__ import annotations

from bot.chat.payload import Verb
from bot.chat.said import Kind

KIND_OF_TAP = {
    Verb.UNDO: Kind.UNDO,
    Verb.REDO: Kind.UNDO,
    Verb.NOTE: Kind.NOTE,
    Verb.CLAIM: Kind.NOTE,
    Verb.RALLY: Kind.RALLY,
    Verb.ENDED: Kind.RALLY,
    Verb.ENDED_BY: Kind.RALLY,
    Verb.MEANT: Kind.RALLY,
    Verb.TAG: Kind.RALLY,
    Verb.TIMEOUT: Kind.SCORE,
    Verb.SERVE: Kind.SCORE,
    Verb.SCORE: Kind.SCORE,
    Verb.AGREE: Kind.AGREEMENT,
    Verb.MODE: Kind.BOOK,
    Verb.PROFILE: Kind.NOTE,
    Verb.SCOUT: Kind.NOTE,
    Verb.ADD: Kind.BOOK,
    Verb.PAGE: Kind.QUESTION,
    Verb.INVITE: Kind.BOOK,
    Verb.MEMBER: Kind.BOOK,
    Verb.BOOK: Kind.BOOK,
    Verb.FORGET: Kind.BOOK,
    Verb.OVER: Kind.SCORE,
    Verb.ZONE: Kind.BOOK,
    Verb.IMPORT: Kind.BOOK,
}
