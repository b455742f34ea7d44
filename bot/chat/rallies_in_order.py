"""Several rallies told one after another: "lost it then won one then lost two".

The whole message tells whose each was, and nothing else: neither a question nor a note has that
form. With what happened in them, "lost it doug hit my body then won one he netted it", every part
between a "then" tells a rally of its own and says whose.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from bot.chat.message import Message, read_message
from bot.chat.numbers import number
from bot.chat.rallies_said import brief_rally
from bot.chat.rally_clauses import with_details
from bot.chat.said import RallySaid, RemarkSaid, ScoreRemark
from bot.chat.serve_told import with_sides
from bot.chat.slip_words import CORRECTS, SLIP
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.dataclass import dataclass
from knowledge.regex import regex

_RALLY = r"(?:rall(?:y|ies)|points?|pts?|ones?|1)"
_RUNNING = r"(?:in a row|in row|straight|on the trot|running)"
_MANY = rf"(?P<{{0}}>[2-9])(?: more)?(?: (?!1){_RALLY})?(?: {_RUNNING})?"
_NEXT = rf"(?:another|(?:1|one) more|the next|next|the other)(?: {_RALLY})?"
_IT = r"(?:it|that(?: (?:1|rally|point))?|this 1|1|a (?:rally|point|pt)|the (?:rally|point))"
_TOLD = (
    r"(?:(?P<who>we|they|i) )?(?:just |then |have |ve )*"
    r"(?:(?P<won>won|win)|(?P<lost>lost|lose|dropped)|(?P<took>took|got|take|get))"
    rf"(?: (?:{_MANY.format('n')}|(?P<next>{_NEXT})|(?P<it>{_IT})))?(?: (?P<again>again|too|back))?"
)
_OWNED = (
    rf"(?:(?P<more>another|1 more|next) )?(?P<our>our|their) {_RALLY}|(?P<ours>ours|theirs)"
    rf"|(?:{_MANY.format('m')}|(?P<one>{_NEXT}|1|it|that))"
    r" (?:(?:goes|went|was) )?(?:for|to) (?P<to>us|we|them|they)"
)
_ITEM = regex(rf"(?:{_TOLD}|{_OWNED}|(?P<bare>us|them))\b(?: |$)")
_SIDE_OUT = regex(r"\bside ?outs?\b ?")
_JOINS = regex(r"(?:(?:and|then|but|so|now|next|plus|after (?:that|it)|followed by|,)(?: |$))*")
_LEAD = regex(
    rf"(?:{SLIP}|(?:so|and|well|right|ugh|it was|its|that was|since then|so far|update) )*(?=\S)"
)
_BEHIND = frozenset(["now", "sorry", "ugh", "damn", "lol", "again", "so"])
_PARTS = regex(
    r"(?i)[\s,.;]*\b(?:and |but )*(?:then|after that)\b[\s,]*"
    r"|(?<!\bwe)(?<!\bthey)(?<!\bi)(?<!\bjust)[\s,.;]+(?=(?:and |but |so )*"
    r"(?:(?:we|they|i) )?(?:just )?(?:won|lost) (?:it|that|one|another|the next|two|three|[2-9])\b)"
)
"""Where the next of them may begin, in the text."""

_OF_RALLIES = regex(rf"\b(?:more|{_RALLY}|{_RUNNING})\b")
_IN_ORDER = regex(r"\b(?:then|after|next|followed)\b")
"""Without either, "they got 8 we got 4" and "nine for us and six for them" are a score."""

_ANEW = regex(r"\b(?:another|next|again|one more|1 more)\b")
_OURS = frozenset(["we", "i", "our", "ours", "us"])

_BARE = regex(r"(?:^|(?<!for )(?<!to ))\b(?:us|them)\b")
FEWEST_BARE = 3
"""Rallies of "us them us" that only name a side; "us and them" asks about both."""

_SCORE = regex(r"\d\s*[-/:]\s*\d")
"""`won 2-1`: numbers of a score or a match."""

LONGEST_TOLD = 40
"""Words of several rallies with what happened in them. Our own bound."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Run:
    """So many rallies of one side; `is_anew`: surely none of those told before; `is_of_score`: a
    number that a score would have as well.
    """

    ours: bool
    number: int
    is_anew: bool
    says_whose: bool = True
    is_of_score: bool = False


def rallies_in_order(message: Message, chat: ChatView) -> RemarkSaid | None:
    """The rallies, if the message tells of more than one; None where it is one told twice."""
    is_long = len(message.said) > LONGEST_TOLD
    if not chat.match_on or "?" in message.text or is_long or _SCORE.search(message.text):
        return None
    line = _line(message.said)
    whose = _told_plainly(_SIDE_OUT.sub("", line)) or _told_at_length(message, chat)
    if whose is None:
        return None
    # What was counted wrongly before may be one of these, and so may a rally that ended a serve:
    # only the score can tell.
    is_open = CORRECTS.match(line) is not None or _SIDE_OUT.search(line) is not None
    counted = () if is_open else whose
    return RemarkSaid(text=message.text, remark=ScoreRemark.SEVERAL_RALLIES, in_order=counted)


def _told_plainly(line: str) -> tuple[bool, ...] | None:
    found = _LEAD.match(line)
    runs = _runs(line[found.end() :] if found else line)
    told = () if runs is None else tuple(one.ours for one in runs for _ in range(one.number))
    if runs is None or len(told) < len(("one", "another")):
        return None
    if len(told) < FEWEST_BARE and _BARE.search(line):
        return None
    if all(one.is_of_score for one in runs) and not _IN_ORDER.search(line):
        return None
    is_one_again = len({*told}) == 1 and not any(one.is_anew for one in runs)
    return None if is_one_again else told


def _runs(line: str) -> list[_Run] | None:
    """The runs of the line; None where a word is left over."""
    runs: list[_Run] = []
    at, side, before = 0, True, ""
    while at < len(line):
        joined = _JOINS.match(line, at)
        start = at if joined is None else joined.end()
        found = _ITEM.match(line, start)
        if found is None or found.end() == start:
            return runs if set(line[at:].split()) <= _BEHIND else None
        told = _run(found, side, is_behind_then="then" in line[at:start], before=before)
        if told is None:
            return None
        runs.append(told)
        # "They lost it then won one": whoever is named goes on being told of.
        side = _named(found, side)
        at, before = found.end(), found[0].strip()
    return runs


def _named(found: re.Match[str], side: bool) -> bool:
    return side if found["who"] is None else found["who"] in _OURS


def _run(found: re.Match[str], side: bool, *, is_behind_then: bool, before: str) -> _Run | None:
    is_bare = found["it"] is None and found["n"] is None and found["next"] is None
    if found["took"] and is_bare:
        return None
    owner = found["our"] or found["ours"] or found["to"] or found["bare"]
    told = _named(found, side) is not bool(found["lost"])
    ours = told if owner is None else owner in _OURS
    many = int(found["n"] or found["m"] or 1)
    is_repeated = is_bare and found["who"] is None and found[0].strip() == before
    marked = found["next"] or found["again"] or found["more"] or is_repeated or is_behind_then
    has_number = found["m"] or (found["took"] and found["n"])
    is_of_score = bool(has_number) and not _OF_RALLIES.search(found[0])
    return _Run(ours=ours, number=many, is_anew=bool(marked) or many > 1, is_of_score=is_of_score)


def _told_at_length(message: Message, chat: ChatView) -> tuple[bool, ...] | None:
    """Whose the rallies were that the parts tell; every one must say whose, or the next be anew."""
    parts = [part for part in _PARTS.split(message.text) if part.strip(" ,;.")]
    if message.asks or len(parts) < len(("one", "another")):
        return None
    told = [_part(part, chat) for part in parts]
    runs = [run for run in told if run is not None]
    if len(runs) < len(told) or not _are_several(runs):
        return None
    return tuple(one.ours for one in runs for _ in range(one.number))


def _part(text: str, chat: ChatView) -> _Run | None:
    """The rally of a part, or the run: "won one he netted it", "hale served out"."""
    told = read_message(text, chat)
    if not told.said or told.asks:
        return None
    line = _line(told.said)
    opens = _ITEM.match(line)
    run = None if opens is None else _run(opens, True, is_behind_then=False, before="")
    if opens is not None and run is not None:
        behind = len(opens[0].split())
        rest = told.text[told.said[behind].span[0] :] if behind < len(told.said) else ""
        is_told = not rest or _rally(f"{'won' if run.ours else 'lost'} it {rest}", chat)
        return run if is_told else None
    found = _rally(text, chat)
    if found is None:
        return None
    is_anew = _ANEW.search(line) is not None
    return _Run(ours=found.won_by_us, number=1, is_anew=is_anew, says_whose=found.says_whose)


def _rally(text: str, chat: ChatView) -> RallySaid | None:
    told = read_message(text, chat)
    found = None if told.asks else brief_rally(told, chat)
    if not isinstance(found, RallySaid):
        return None
    return found if found.understood else with_details(found, told, chat)


def _are_several(runs: Sequence[_Run]) -> bool:
    """Whether no run only tells again, or how, what the one before it says: "i popped it up then
    they put it away"."""
    return all(
        then.is_anew or (one.says_whose and one.ours is not then.ours)
        for one, then in pairwise(runs)
    )


def _line(said: Sequence[Word]) -> str:
    numbers = ((number(word), word.folded) for word in said)
    return with_sides(" ".join(word if many is None else str(many) for many, word in numbers))
