"""What of a message tells about somebody: statements, and the parts of it that do not ask."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from bot.chat.asking import asks
from bot.chat.clauses import NOT_TO_DO
from bot.chat.forms import word_set
from bot.chat.question import Mention, NoteSaid
from bot.chat.unknown_names import begins_a_clause, has_predicate
from bot.chat.words import Word
from knowledge.vocabulary import PlayerId

_PART_MARKS = frozenset(",.;!?\n")
SHORTEST_PART = 3
"""Words of a part that asks or tells by itself; a shorter one ("right?") goes with the last."""

LONGEST_TELLING = 12
"""Words of a part that is plainly a note; a longer one sets the scene of its question."""

_OPENINGS = frozenset(["and", "but", "so", "ok", "okay", "note", "also"])
_JOINING = frozenset(["and", "n", "plus", "both", "s"])
_SUBJECTS = frozenset(["he", "she", "hes", "shes"])
_OWNERS = frozenset(["his", "her"])
_SKILLS = word_set("owned_skills")
_AIMS = frozenset(
    ["attack", "target", "avoid", "exploit", "pound", "pick", "test", "punish", "respect", "feed"]
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A sentence or comma clause: words `start` up to `stop`, and whether it asks."""

    start: int
    stop: int
    asks: bool


def tells_of(said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether one of these is said to be or do something, or is to be attacked: a statement."""
    places = [_places(one, said) for one in mentions]
    named = {at for span in places for at in span}
    return any(_is_subject(said, span, named) or _is_target(said, span) for span in places if span)


def tells_of_focus(said: Sequence[Word]) -> bool:
    """Whether "he" or "her backhand" opens the message as the subject of a statement."""
    first = said[0].folded if said else ""
    if first in _OWNERS:
        return len(said) > 1 and said[1].folded in _SKILLS
    return first in {"hes", "shes"} or (first in _SUBJECTS and has_predicate(said, 1))


def telling_note(
    text: str, said: Sequence[Word], note: NoteSaid, ours: Sequence[PlayerId]
) -> NoteSaid | None:
    """What a message plainly notes of the other side beside its question; None without it."""
    parts = _parts(text, said)
    telling = [part for part in parts if _tells(part, said, note.mentions)]
    if not any(part.asks for part in parts):
        return None
    spans = [(said[part.start].span[0], said[part.stop - 1].span[1]) for part in telling]
    claims = tuple(
        one
        for one in note.claims
        if one.player not in ours and any(a <= one.span[0] and one.span[1] <= b for a, b in spans)
    )
    kept = tuple(words for words in note.kept if any(words in text[a:b] for a, b in spans))
    return replace(note, claims=claims, kept=kept) if claims else None


def _places(mention: Mention, said: Sequence[Word]) -> range:
    start, stop = mention.span
    inside = [at for at, word in enumerate(said) if start <= word.span[0] < stop]
    return range(inside[0], inside[-1] + 1) if inside else range(0)


def _is_subject(said: Sequence[Word], span: range, named: set[int]) -> bool:
    after = span.stop
    while after < len(said) and (after in named or said[after].folded in _JOINING):
        after += 1
    if after < len(said) and "(" in said[after].gap:
        return begins_a_clause(said, span.start)
    return begins_a_clause(said, span.start) and has_predicate(said, after)


def _is_target(said: Sequence[Word], span: range) -> bool:
    """`attack Hale's backhand`, `don't dink okafors backhand`: what we should do about it."""
    ahead = said[span.stop].folded if span.stop < len(said) else ""
    owned = ahead in _SKILLS and said[span.stop - 1].folded.endswith("s")
    owned = owned or (ahead in _SKILLS and said[span.stop - 1].is_possessive)
    first = [word.folded for word in said[: span.start]]
    dont = first[:1] in (["dont"], ["never"]) and first[1:2] and first[1] in NOT_TO_DO
    return owned and (dont or first[:1] in [[one] for one in _AIMS])


def _parts(text: str, said: Sequence[Word]) -> list[Part]:
    """The sentences and comma clauses; one too short to ask by itself goes with the one before."""
    cuts = [at for at, word in enumerate(said) if at and set(word.gap) & _PART_MARKS]
    edges = [0, *cuts, len(said)]
    parts: list[Part] = []
    for start, stop in pairwise(edges):
        end = said[stop].span[0] if stop < len(said) else len(text)
        asking = asks(text[said[start].span[0] : end], said[start:stop])
        if parts and stop - start < SHORTEST_PART and asking:
            last = parts.pop()
            start = last.start
        parts.append(Part(start=start, stop=stop, asks=asking))
    return parts


def _tells(part: Part, said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether a part opens with somebody and says a short thing of them: "hale poaches a lot"."""
    words = [word.folded for word in said[part.start : part.stop]]
    opens = part.start + (words[0] in _OPENINGS)
    about = any(opens in _places(one, said)[:1] for one in mentions)
    return about and not part.asks and len(words) <= LONGEST_TELLING and "or" not in words
