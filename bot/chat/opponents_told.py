"""Whom we play next, told without "next:": by the round, or as what is right after a slip.

"qf now v lochlan/mireille", "semi is okafor/lindqvist again", "hang on its okafor next not ruiz":
names among words of a schedule and of taking back, and nothing else.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.announced_names import PAIR, named_in_full
from bot.chat.forms import any_of, word_set
from bot.chat.message import Message
from bot.chat.numbers import number_of
from bot.chat.said import Certainty, Mention
from bot.chat.words import Word
from knowledge.regex import regex

_SCORE = regex(r"\d ?[-–] ?\d")
_AGAINST = frozenset(["v", "vs", "versus", "against", "facing"])
_MEETING = frozenset(["and", "n"])
_TOGETHER = frozenset(["with", "w"])
_ONE = ("announced.opponents", "announced.bracket")
_CUES = (*_ONE, "announced.opponents_pair", "announced.opponents_new")
"""What tells of one name of the book, of a pair of it, of a pair that nobody knows: ever less."""

_OF_A_SCHEDULE = word_set("of_a_schedule") | word_set("around_opponents")


def denied(said: Sequence[Word], mentions: Sequence[Mention]) -> tuple[Mention, ...]:
    """Whom we do not play: Ruiz and Hale of "its okafor next, not ruiz and hale"."""
    found: list[Mention] = []
    for at, word in enumerate(said):
        before = [one.folded for one in said[:at]]
        named = next((one for one in mentions if one.span[0] == word.span[0]), None)
        joins = bool(before) and (before[-1] in _MEETING or bool(set(word.gap) & set("/&+")))
        goes_on = joins and bool(found) and said[at - 1].span[0] >= found[-1].span[0]
        if named is not None and (before[-1:] == ["not"] or goes_on):
            found.append(named)
    return tuple(found)


def opponents_told(message: Message, named: Sequence[Mention]) -> tuple[Mention, ...]:
    """The opponents, if the message tells nothing but who comes next; else nobody.

    `named` are the names of it that are not ours.
    """
    if not _told(message.said, *_CUES):
        return ()
    not_them = denied(message.said, named)
    said = [word for word in message.said if not _is_of(word, not_them)]
    if _SCORE.search(message.text) or message.asks or message.note.claims:
        return ()
    start = next((at for at, word in enumerate(said) if _names(word, named)), len(said))
    known = [one for one in message.mentions if one not in not_them and not one.pronoun]
    wanted = [one for one in named if one not in not_them and not is_schedules(one)]
    if start == len(said):
        return ()
    found = named_in_full(message.text, said[start:], known, wanted)
    if not 0 < len(found) <= PAIR or not set(wanted) <= {*found, *_inside(wanted, found)}:
        return ()
    around = [word for word in said if not _is_of(word, found)]
    is_all = tells_only_of(found, said)
    return found if is_all and _comes_next(around, found, start) else ()


def tells_only_of(named: Sequence[Mention], said: Sequence[Word]) -> bool:
    """Whether beside these names only words of a schedule and of taking back are said."""
    return all(_is_of_schedule(word) for word in said if not _is_of(word, named))


def _comes_next(around: Sequence[Word], found: Sequence[Mention], start: int) -> bool:
    before = around[start - 1].folded if start else ""
    is_new = any(one.certainty is Certainty.NOBODY for one in found)
    if is_new and len(found) < PAIR:
        return before in _AGAINST
    cues = _CUES if is_new else _CUES[:-1] if len(found) == PAIR else _ONE
    # "Playing with Okafor" is our own pair.
    return before not in _TOGETHER and _told(around, *cues)


def _told(said: Sequence[Word], *forms: str) -> bool:
    line = " ".join(word.folded for word in said)
    return any(any_of(form).search(line) for form in forms)


def _is_of(word: Word, mentions: Sequence[Mention]) -> bool:
    return any(one.span[0] <= word.span[0] < one.span[1] for one in mentions)


def _inside(mentions: Sequence[Mention], found: Sequence[Mention]) -> list[Mention]:
    """Those of them that are a part of a name read in full."""
    return [
        one for one in mentions if any(each.span[0] <= one.span[0] < each.span[1] for each in found)
    ]


def is_schedules(one: Mention) -> bool:
    """Whether a word of a schedule was taken for a name that nobody bears: "semi"."""
    return one.certainty is Certainty.NOBODY and all(
        _is_schedule_word(part) for part in one.typed.lower().split()
    )


def _names(word: Word, named: Sequence[Mention]) -> bool:
    """Whether a name begins here: one of the book, or a word that is neither plain nor a plan's."""
    sure = [one for one in named if one.certainty is not Certainty.NOBODY]
    return any(one.span[0] == word.span[0] for one in sure) or not _is_of_schedule(word)


def _is_of_schedule(word: Word) -> bool:
    folded = word.folded
    is_figure = any(letter.isdigit() for letter in folded) or number_of(folded) is not None
    return is_figure or _is_schedule_word(folded)


def _is_schedule_word(folded: str) -> bool:
    return folded in _OF_A_SCHEDULE
