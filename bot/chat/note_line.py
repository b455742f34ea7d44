"""A note's words ready for reading: names out, slips respelled, the lexicon's phrases found."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from bot.chat.common_words import is_common, respelled
from bot.chat.note_corrections import meant
from bot.chat.note_hits import Hits, find_hits
from bot.chat.note_ourselves import is_myself, ourselves
from bot.chat.note_sides import shares_the_court
from bot.chat.note_subjects import Subjects
from bot.chat.note_witness import without_witness
from bot.chat.pointed_out import points_at
from bot.chat.pronouns import tells_of_two
from bot.chat.said import Certainty, Mention
from bot.chat.told_by_looks import points_across_the_net, points_at_a_stranger
from bot.chat.trait_lexicon import NAME, trait_phrases
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId

_MARKS = frozenset(",;:.!?()\n—–|")

_OPENING = frozenset(["no", "nope", "wait", "actually", "sorry", "oops", "correction", "oh"])
_NO_MATTER = "wait"
"""Stands for what opens a correction: the "no" of "no, he is strong" denies nothing of it."""

_SUBJECTS = frozenset(["he", "she", "hes", "shes"])
_NOT_ENDING = frozenset(["wont", "doesnt", "never", "cant", "cannot", "dont", "didnt", "not"])
_ENDING = frozenset(["stop", "stops", "quit", "quits", "stopping"])
_ALWAYS = "always"
_SIDES = frozenset(["left", "right"])
_PLACES = frozenset(["deep", "short", "back", "wide"])
_WE_ARE = frozenset(["your", "youre", "were", "im", "ur", "you are", "we are", "i am"])
_CASES = frozenset(["when", "whenever", "if", "once", "while"])
_THERE = "there"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteLine:
    """The words as typed and as read (`line`), and whom they are about.

    `whose` are the mentions that count, `ourselves` the places where a clause speaks of whoever
    typed it (`asker`).
    """

    said: Sequence[Word]
    line: Sequence[str]
    hits: Hits
    whose: tuple[Mention, ...]
    subjects: Subjects
    ourselves: Mapping[int, tuple[Mention, ...]]
    asker: PlayerId | None

    @property
    def opening(self) -> int:
        """How many words open a correction."""
        return opening_words(self.said, self.line)


def note_line(said: Sequence[Word], mentions: Sequence[Mention], view: ChatView) -> NoteLine:
    mine = ourselves(said, view.asker)
    whose = _whose(said, mentions, view, speaks_of_us=0 in mine)
    line = _line(said, whose)
    return NoteLine(
        said=said,
        line=line,
        hits=find_hits(line, _breaks(said)),
        whose=whose,
        subjects=Subjects(said, whose, mine),
        ourselves=mine,
        asker=view.asker,
    )


def _whose(
    said: Sequence[Word], mentions: Sequence[Mention], view: ChatView, *, speaks_of_us: bool
) -> tuple[Mention, ...]:
    """Whose it is; nobody's yet where somebody tells of another who is not named."""
    told_of = without_witness(said, mentions)
    if speaks_of_us or len(told_of) < len(mentions):
        return meant(said, told_of)
    return meant(said, told_of) or _implied(said, view)


def _breaks(said: Sequence[Word]) -> list[int]:
    return [place for place, word in enumerate(said) if place and set(word.gap) & _MARKS]


def _implied(said: Sequence[Word], view: ChatView) -> tuple[Mention, ...]:
    """Nobody named: the one player spoken of just now, if it is only one.

    A he and a she whom nobody named are a pair: neither is the one of us who was spoken of. Nor is
    one of us whoever is pointed at instead of named; and whom the looks of "the girl with the cap"
    fit is not known of anybody.
    """
    is_of_others = tells_of_two(said) and {*view.focus} <= {*view.ours}
    if len(view.focus) != 1 or is_of_others:
        return ()
    if {*view.focus} <= {*view.ours} and points_across_the_net(said):
        return ()
    if points_at_a_stranger(said):
        return ()
    return (
        Mention(typed="", span=(0, 0), certainty=Certainty.SURE, players=view.focus, pronoun=True),
    )


def _line(said: Sequence[Word], mentions: Sequence[Mention]) -> list[str]:
    spans = [one.span for one in mentions if not one.pronoun]
    line = [
        NAME if any(start <= word.span[0] < stop for start, stop in spans) else _plain(word.folded)
        for word in said
    ]
    if shares_the_court(said):
        line = _standing(line)
    line = _without_our_place(line, said)
    opening = opening_words(said, line)
    return _unceasing([_NO_MATTER] * opening + line[opening:])


def _standing(line: list[str]) -> list[str]:
    """ "He plays right im left" tells where I play, and of no hand."""
    ahead = [*line[1:], ""]
    return [
        "plays" if word == "im" and after in _SIDES else word
        for word, after in zip(line, ahead, strict=True)
    ]


def _without_our_place(line: list[str], said: Sequence[Word]) -> list[str]:
    """ "His return floats when your deep": how deep we stand, and not how deep the return is."""
    told = list(line)
    for at, word in enumerate(line):
        before = [one.folded for one in said[max(0, at - 3) : at]]
        are_we = bool({*before[-1:], " ".join(before[-2:])} & _WE_ARE)
        if word in _PLACES and are_we and _CASES & set(before):
            told[at] = _THERE
    return told


def _unceasing(line: list[str]) -> list[str]:
    """ "Won't stop poaching" denies that it ends: it is read as "always poaching"."""
    read = list(line)
    for place, (first, second) in enumerate(pairwise(line)):
        if first in _NOT_ENDING and second in _ENDING:
            read[place : place + 2] = [_ALWAYS, _ALWAYS]
    return read


def opening_words(said: Sequence[Word], line: Sequence[str]) -> int:
    """How many words open a correction: two in "wait no okafor is strong", one in "no that was
    okafor" and in "no im right handed", none in "no serve"."""
    first = _who_speaks(said, line)
    words = next((at for at, word in enumerate(line) if at >= first and word not in _OPENING), 0)
    if words == first:
        return 0
    named = words + points_at(line[words:])
    if line[named : named + 1] == [NAME] or (words and said[words].gap.strip()):
        return words
    return words if words < len(said) and _is_answer(said, words) else 0


def _who_speaks(said: Sequence[Word], line: Sequence[str]) -> int:
    """1 where the line opens by saying who speaks, whom it tells nothing of: "marja: no ..."."""
    return int(len(said) > 1 and ":" in said[1].gap and line[0] != NAME)


def _is_answer(said: Sequence[Word], place: int) -> bool:
    """ "No im right handed", "no he is": the words before answer us, and deny nothing of it."""
    return said[place].folded in _SUBJECTS or is_myself(said, place)


def _plain(folded: str) -> str:
    """`missin` as `missing`, `bachand` as `backhand`."""
    if folded == "w":
        return "with"
    known = is_common(folded) or folded in trait_phrases().words
    return folded if known else respelled(folded)
