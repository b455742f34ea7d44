"""A note told by its place in the list shown just now: "delete the second one", "none of them"."""

from __future__ import annotations

from bot.chat.said import BookSaid, BookVerb
from bot.chat.view import ChatView
from bot.chat.words import folded_line, words
from knowledge.regex import regex

NONE_OF_THEM = 0
"""The place that "none" tells."""

_PLACES = {
    word: place
    for place, told in enumerate(
        ("first 1st 1 one top newest", "second 2nd 2 two", "third 3rd 3 three", "fourth 4th 4 four",
         "fifth 5th 5 five"),
        start=1,
    )
    for word in told.split()
}  # fmt: skip
_PLACE = "|".join(_PLACES)
_AROUND = r"(?:(?:please|pls|ok|no|so|just|yes|then|now) )*"
_GOES = (
    r"(?:delete|remove|erase|drop|scratch|forget|bin|scrap|scrub|cross out|strike(?: out)?"
    r"|take (?:back|out)|get rid of)"
)
_ONE = (
    rf"(?:(?:the|that|this|note|number|no|nr) )*(?P<place>{_PLACE})(?: (?:one|note|line|there))?"
    r"(?: (?:please|pls|too|again))*"
)
_DELETED = regex(rf"{_AROUND}{_GOES} {_ONE}")
_CHOSEN = regex(rf"{_AROUND}{_ONE}")
_NONE = regex(
    r"(?:(?:no|nope|nah|ok|sorry|please|actually|wait) )*"
    r"(?:no|nope|nah|none|neither|nothing|cancel|stop|undo|never ?mind|dont|do not|nvm"
    r"|(?:none|neither|not any|no one|not one) of (?:them|those|these)"
    r"|(?:keep|leave) (?:it|them|him|her|all|both|everything|those|these)(?: all)?"
    r"|(?:dont|do not) (?:delete|forget|erase|do)(?: (?:it|them|him|her|any|anything|that))?)"
)
_TOLD = "place="


def note_of_list(text: str, chat: ChatView) -> BookSaid | None:
    """Which of the notes shown just now is to go; None for whatever says more than that.

    Only where we asked which, a bare "the second one" and a "none" answer it: an undo then takes
    nothing back that was told before.
    """
    if not (chat.notes_shown or chat.asks_what_goes) or chat.forwarded or "?" in text:
        return None
    line = folded_line(words(text))
    if chat.asks_what_goes and _NONE.fullmatch(line):
        return _said(text, NONE_OF_THEM)
    found = _DELETED.fullmatch(line) or (chat.asks_what_goes and _CHOSEN.fullmatch(line)) or None
    place = None if found is None else _PLACES[found["place"]]
    return None if place is None or place > chat.notes_shown else _said(text, place)


def _said(text: str, place: int) -> BookSaid:
    return BookSaid(text=text, verb=BookVerb.DROP_NOTES, words=f"{_TOLD}{place}")


def place_told(words: str) -> int | None:
    """The place that `note_of_list` put into words; None where it did not."""
    told = words.removeprefix(_TOLD)
    return int(told) if told != words else None
