"""Who only tells of somebody: Mira of "mira says the guy on the left cheats to the middle"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.common_words import is_common
from bot.chat.said import Mention
from bot.chat.words import Word
from knowledge.regex import regex

_SEEN = (
    r"(?:says?|said|thinks?|thought|reckons?|reckoned|swears?|swore|claims?|claimed|told (?:me|us)"
    r"|tells (?:me|us)|noticed|notices|saw|sees|heard|mentioned|feels|believes)"
)
_PERSON = (
    r"(?:guys?|girl|lady|man|woman|one|ones|player|dude|kid|lefty|righty|partner|opponent|person"
    r"|blonde?|redhead|fella|bloke|chap)"
)
_TELLS_OF_ANOTHER = regex(
    rf"(?:just |also |always )*{_SEEN} (?:that )?(?:the|that|this|their|his|her)"
    rf" (?:\w+ ){{0,2}}?{_PERSON}\b(?! (?:of|says|thinks) )"
)
"""Behind a name: somebody else, who is not named, follows. "Says the wrong thing" tells of them."""


_NAME = "@"
_TELLS_OF_ONE_NAMED = regex(
    rf"(?:{_NAME} )*(?:my |our |the )?(?P<who>{_NAME}|\w+) (?:just |also |always |keeps )*"
    rf"(?:{_SEEN}|saying|insists?)(?: that)?(?: (?:the|both|both of|neither))? {_NAME}(?![^ ])"
)
"""What opens a message that tells what somebody else thinks of whoever is named next."""

_WITNESSES = frozenset(
    [_NAME, "partner", "people", "everyone", "everybody", "somebody", "someone", "coach", "folks"]
)


MAY_TELL = 2
"""Names at the beginning of which one may be the witness: there is one more once it is settled."""

LONGEST_OPENING = 12
"""Words behind a name that say whether it only tells."""


def without_witness(said: Sequence[Word], mentions: Sequence[Mention]) -> tuple[Mention, ...]:
    """The mentions without whoever the message opens with and who only tells of another.

    Nor does a "their" behind it mean whoever tells.
    """
    named = [one for one in mentions if not one.pronoun]
    first = sorted(named, key=lambda one: one.span)[:MAY_TELL]
    witness = next((one for one in first if _only_tells(one, said, first)), None)
    if witness is None:
        return tuple(mentions)
    others = (one for one in named if one.span != witness.span)
    return tuple(one for one in others if not one.players or one.players != witness.players)


def _only_tells(one: Mention, said: Sequence[Word], first: Sequence[Mention]) -> bool:
    """Whether nothing but a name stands before, as we put it there once it is known whose it is."""
    begins, ends = one.span
    at = next((at for at, word in enumerate(said) if word.span[0] >= ends), len(said))
    before = [word.span[0] for word in said[:at] if word.span[0] < begins]
    opens = all(any(each.span[0] <= place < each.span[1] for each in first) for place in before)
    behind = " ".join(word.folded for word in said[at : at + LONGEST_OPENING])
    return opens and _TELLS_OF_ANOTHER.match(behind) is not None


def is_opinion_of_another(said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether somebody else is said to think it: "tom says hale is slow"."""
    named = [one.span for one in mentions if not one.pronoun]
    line = (
        _NAME if any(start <= word.span[0] < stop for start, stop in named) else word.folded
        for word in said[:LONGEST_OPENING]
    )
    found = _TELLS_OF_ONE_NAMED.match(" ".join(line))
    return found is not None and (found["who"] in _WITNESSES or not is_common(found["who"]))


_HEARD = regex(
    r"(?:(?:and|so|ok|also) )*(?:(?:i|we|ive|weve) (?:(?:just|also|have|only) )*"
    r"(?:heard|hear|(?:was|were|been) told)|word is|(?:they|people|folks) say|rumou?r has it)\b"
)


def is_hearsay(said: Sequence[Word]) -> bool:
    """Whether it opens by saying that others told it: "i heard that hale is slow"."""
    return _HEARD.match(" ".join(word.folded for word in said[:LONGEST_OPENING])) is not None


def is_told_by_another(said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether somebody is named who tells of another."""
    return len(without_witness(said, mentions)) < len(mentions)
