"""What asks us to keep, as a note, what was said just before: "write it down", "note that"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.said import WriteDownSaid
from bot.chat.words import Word
from knowledge.regex import regex

_IT = r"(?:it|that|this|that one|this one|them)"
_FORM = regex(
    r"(?:(?:yes|yeah|yep|ok|okay|no|please|pls|just|so|then|can you|could you|i said) )*"
    rf"(?:(?:write|put|jot|take|get) {_IT} down|(?:write|put) down {_IT}|note {_IT}(?: down)?"
    rf"|(?:save|keep|store|put|log|record|take|write) {_IT} (?:down )?as a note"
    rf"|(?:make|take) a note(?: of {_IT})?"
    r"|(?:that|it|this)s? (?:is |was )?(?:meant (?:as|to be) )?a note"
    r"(?: not a question)?|write down)"
    r"(?: (?:please|pls|then|now|for me|as a note))*"
)


def write_down_said(text: str, said: Sequence[Word]) -> WriteDownSaid | None:
    """The message, where it is nothing but that."""
    spoken = " ".join(word.folded for word in said)
    return None if _FORM.fullmatch(spoken) is None else WriteDownSaid(text=text)
