"""How a name is written: "her last name is aas", "it's benedikt with a k", "not benedict"."""

from __future__ import annotations

import re

from rapidfuzz.distance import DamerauLevenshtein

from bot.chat.forms import word_set
from bot.chat.message import Message
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.view import ChatView
from knowledge.regex import regex
from scouting_db.sounds import fold
from scouting_db.values import PlayerRow

_LEAD = r"(?:(?:no|nope|ok|so|and|sorry|wait|actually|oh|btw|hey|hi|um|uh|but) )*"
_IS = r"(?:is|s|is actually|is really|is spelled|is spelt|is written)"
_NAME = r"(?P<name>[^\W\d]{2,}(?: [^\W\d]{2,})??)"
_LETTERS = r"(?: (?:(?:spelled|spelt|written|thats|like) )*(?P<letters>(?:[a-z] )+[a-z]))?"
_NOT = r"(?: (?:and )?not (?P<other>[^\W\d]+(?: [^\W\d]+)?))"
_SURNAME = regex(
    rf"{_LEAD}(?P<who>[^\W\d]+) (?:(?:last|sur|family) ?name|surname) {_IS}"
    rf" {_NAME}{_LETTERS}{_NOT}?"
)
_NOT_SO = regex(
    rf"{_LEAD}(?:(?P<who>[^\W\d]+)(?: partners?)? name {_IS}"
    rf"|(?:its|it|it is|thats|hes|shes)(?: (?:spelled|spelt|written))?)"
    rf" {_NAME}{_LETTERS}{_NOT}"
)
_LETTER = regex(
    rf"{_LEAD}(?:(?:its|it|it is|thats|hes|shes|spelled|spelt"
    rf"|(?:his|her|my partners?) name {_IS}) )?"
    rf"{_NAME} (?:(?:is|spelled|spelt|written) )*with an? (?P<letter>[a-z])"
    rf"(?: (?:and )?not .*)?"
)
_SOUND_ALIKE = {"c": "k", "k": "c", "s": "z", "z": "s", "i": "y", "y": "i", "v": "w", "w": "v"}
"""What dictation writes for a letter: one of them is changed where the name lacks the one told."""

ALIKE = 0.6
"""From here on two spellings are of one name; a guess of ours: Benedict and Benedikt are 0.88."""


def spelling_told(message: Message, chat: ChatView) -> BookSaid | None:
    """The renaming; None where two people are meant, or nobody of the book is called much so.

    All of the message is that, and the old name is much like the new: who is corrected, or noted
    on, bears another name.
    """
    if chat.forwarded or "?" in message.text:
        return None
    line = " ".join(word.folded for word in message.said)
    found = _SURNAME.fullmatch(line)
    if found is not None:
        row = _named_at(len(line[: found.start("who")].split()), message, chat)
        told = set(found["name"].split())
        if row is None or told & word_set("never_in_a_name"):
            return None
        return _with_surname(row, _spelled(found), message)
    found = _LETTER.fullmatch(line)
    if found is not None:
        return _with_part(
            _with_letter(found["name"], found["letter"]), found["name"], message, chat
        )
    found = _NOT_SO.fullmatch(line)
    return None if found is None else _with_part(_spelled(found), found["other"], message, chat)


def _spelled(found: re.Match[str]) -> str:
    """The name, by its letters where they were told one by one."""
    letters = (found["letters"] or "").replace(" ", "")
    return letters if letters and _likeness(letters, found["name"]) >= ALIKE else found["name"]


def _with_letter(name: str, letter: str) -> str:
    """`benedikt` of "benedict with a k": what was heard may lack the letter told."""
    instead = _SOUND_ALIKE.get(letter, "")
    is_clear = letter not in name and instead and name.count(instead) == 1
    return name.replace(instead, letter) if is_clear else name


def _named_at(place: int, message: Message, chat: ChatView) -> PlayerRow | None:
    start = message.said[place].span[0]
    return next(
        (_row(one, chat) for one in message.mentions if one.span[0] == start),
        None,
    )


def _row(one: Mention, chat: ChatView) -> PlayerRow | None:
    if one.certainty is not Certainty.SURE:
        return None
    return next((row for row in chat.roster if row.player == one.players[0]), None)


def _with_surname(row: PlayerRow, name: str, message: Message) -> BookSaid | None:
    """The surname behind the first name, or in place of the one that it is much like."""
    first, *rest = row.name.split()
    alone = not rest and _likeness(first, name) >= ALIKE
    return _renamed(row, _capital(name) if alone else f"{first} {_capital(name)}", message)


def _with_part(name: str, other: str, message: Message, chat: ChatView) -> BookSaid | None:
    """The part of somebody's name that both spellings are much like is written so from now on."""
    fits = [
        (row, part)
        for row in chat.roster
        for part in row.name.split()
        if _likeness(part, name) >= ALIKE and _likeness(part, other) >= ALIKE
    ]
    is_known = any(fold(part) == fold(name) for row in chat.roster for part in row.name.split())
    if len(fits) != 1 or is_known or " " in name:
        return None
    row, part = fits[0]
    parts = [_capital(name) if one == part else one for one in row.name.split()]
    return _renamed(row, " ".join(parts), message)


def _renamed(row: PlayerRow, name: str, message: Message) -> BookSaid | None:
    if name == row.name:
        return None
    who = Mention(typed=row.name, span=(0, 0), certainty=Certainty.SURE, players=(row.player,))
    return BookSaid(
        text=message.text,
        verb=BookVerb.RENAME_PLAYER,
        words=f"{row.name} to {name}",
        mentions=(who,),
    )


def _capital(name: str) -> str:
    return " ".join(word.capitalize() for word in name.split())


def _likeness(one: str, other: str) -> float:
    return DamerauLevenshtein.normalized_similarity(fold(one), fold(other))
