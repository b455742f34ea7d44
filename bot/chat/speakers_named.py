"""Names that only say who speaks: "Hi Marja here", "forget what marja said", "marja yelled".

A name that the book does not know and that is merely like a player's is nobody across the net where
it introduces itself, or where it says, writes or shouts something: whoever watches with us does.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.said import Certainty, Mention
from bot.chat.words import Word
from knowledge.regex import regex

_SPEAKS = regex(
    r"(?:(?:just|also|always|then|again) )*(?:here|says?|said|wrote|writes|noted|typed"
    r"|told (?:me|us)|thinks?|thought|reckons?|asks?|asked"
    r"|(?:yell|shout|scream|cheer|call|clapp)(?:s|ed|ing)?)(?: |$)"
)
_DOES_NOT_KNOW = regex(r"(?:doesnt|dont|does not|do not|didnt|cant) (?:know|get|see|understand)\b")
_GREETS = regex(r"(?:(?:hi|hey|hello|hiya|yo|its|this is|im|i am|me) ?)*")
_WROTE = regex(r"(?:just |also )*(?:wrote|writes|noted|typed|put down)(?: |$)")
_LONGEST = 4
"""Words behind a name that say whether it speaks."""


def without_speakers(said: Sequence[Word], mentions: tuple[Mention, ...]) -> tuple[Mention, ...]:
    """The mentions without whoever only speaks in the message."""
    return tuple(one for one in mentions if not _only_speaks(one, said, mentions))


def _only_speaks(one: Mention, said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    if one.pronoun:
        return False
    before = " ".join(word.folded for word in said if word.span[0] < one.span[0])
    ahead = [word for word in said if word.span[0] >= one.span[1]][:_LONGEST]
    behind = " ".join(word.folded for word in ahead)
    others = any(not each.pronoun and each.span[0] > one.span[0] for each in mentions)
    if _WROTE.match(behind):
        return True
    if one.certainty is not Certainty.NOBODY or not (one.supposed or behind.startswith("here")):
        return False
    introduces = _GREETS.fullmatch(before) is not None and (
        not ahead
        or (others and ":" in ahead[0].gap)
        or (bool(before) and ("," in ahead[0].gap or ahead[0].folded == "again"))
    )
    return introduces or bool(_SPEAKS.match(behind) or _DOES_NOT_KNOW.match(behind))
