"""A note cut into clauses: by marks and by joining words, never inside a phrase of the lexicon."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.words import Word
from knowledge.dataclass import dataclass

_ENDS = frozenset(".;!?\n:()|•")
_ASKS = frozenset("?:")
_ANSWERS = word_set("short_answers")
_COMMAS = frozenset(",/–—+&")
_TURNS = frozenset(
    ["but", "though", "tho", "although", "however", "except", "while", "whereas", "yet", "because",
     "cuz", "bc", "cause", "since", "so", "otherwise", "if", "when", "unless"]
)  # fmt: skip
NOT_TO_DO = frozenset(
    ["speed", "hit", "serve", "lob", "drive", "dink", "go", "get", "give", "leave", "let", "feed",
     "try", "play", "make", "be", "attack", "bang", "target", "return", "engage", "trade", "bother",
     "float", "pop", "use", "block"]
)  # fmt: skip
"""What "don't" forbids us; of a player one says "doesn't"."""

_NOTS = frozenset(["not", "isnt", "arent", "wasnt", "werent", "aint"])
_NOR = (("nor",), ("neither",))
_DOES = (("does",), ("do",), ("did",), ("is",), ("are",), ("can",), ("has",), ("will",))

_JOINS = frozenset(["and", "n", "plus", "then", "also", "w", "with"])


@dataclass(frozen=True, slots=True, kw_only=True)
class Clause:
    """Words `start` up to `stop`; `joined` says that only a comma or "and" parts it from the last.

    `turned` marks a clause after "but", "though" and the like.
    """

    start: int
    stop: int
    joined: bool = False
    turned: bool = False


def clauses(said: Sequence[Word], unbroken: Sequence[tuple[int, int]]) -> tuple[Clause, ...]:
    """The clauses in order; no cut falls inside a stretch of `unbroken` words."""
    inside = {place for start, stop in unbroken for place in range(start + 1, stop)}
    cuts: list[Clause] = []
    start, joined, turned = 0, False, False
    for place, word in enumerate(said):
        whole = not place or place in inside or _answers(said, place) or _is_denied(said, place)
        cut = None if whole else _cut(word) or _advises(said, place) or _likewise(said, place)
        if cut is not None:
            cuts.append(Clause(start=start, stop=place, joined=joined, turned=turned))
            start, joined, turned = place, cut == "join", cut == "turn"
    if said:
        cuts.append(Clause(start=start, stop=len(said), joined=joined, turned=turned))
    return tuple(cuts)


def _is_denied(said: Sequence[Word], place: int) -> bool:
    """ "Not so bad as i said": how bad it is denied to be, and nothing that follows from it."""
    is_so = said[place].folded == "so" and not said[place].gap.strip()
    return is_so and said[place - 1].folded in _NOTS and place + 1 < len(said)


def _answers(said: Sequence[Word], place: int) -> bool:
    """ "Ernie? never": what answers a skill or habit just named belongs to it."""
    if not set(said[place].gap) & _ASKS:
        return False
    end = next((at for at in range(place + 1, len(said)) if set(said[at].gap) & _ENDS), len(said))
    return all(word.folded in _ANSWERS for word in said[place:end])


def _advises(said: Sequence[Word], place: int) -> str | None:
    """ "Hands are insane | don't speed up on her": what we should not do is a new clause."""
    pair = tuple(word.folded for word in said[place : place + 3])
    dont = pair[:1] == ("dont",) and pair[1:2] and pair[1] in NOT_TO_DO
    do_not = pair[:2] == ("do", "not") and pair[2:] and pair[2] in NOT_TO_DO
    return "end" if dont or do_not else None


def _likewise(said: Sequence[Word], place: int) -> str | None:
    """ "Hale doesn't lob | nor does Ruiz": what is denied of another too."""
    pair = tuple(word.folded for word in said[place : place + 2])
    begins = place == 0 or said[place - 1].folded not in _JOINS
    return "join" if begins and pair[:1] in _NOR and pair[1:] in _DOES else None


def _cut(word: Word) -> str | None:
    gap = set(word.gap)
    if gap & _ENDS or " - " in word.gap or any(mark > "\u2fff" for mark in word.gap):
        return "end"
    if word.folded in _TURNS:
        return "turn"
    if gap & _COMMAS or word.folded in _JOINS:
        return "join"
    return None
