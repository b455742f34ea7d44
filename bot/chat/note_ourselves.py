"""Where a note speaks of whoever types it ("im right handed") or of our own strokes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from bot.chat.forms import word_set
from bot.chat.note_sides import tells_a_fact, tells_my_hand
from bot.chat.said import Certainty, Claim, Mention
from bot.chat.unknown_names import begins_a_clause
from bot.chat.words import Word
from knowledge.vocabulary import TRAITS, PlayerId, TraitKind

_SKILLS = word_set("owned_skills")
_WORDS_TO_THE_SKILL = 2
_WORDS_TO_A_FACT = 4
_PLAY = frozenset([("am",), ("play",), ("prefer",)])


def ourselves(said: Sequence[Word], asker: PlayerId | None) -> Mapping[int, tuple[Mention, ...]]:
    """The places where such a clause begins, and who speaks; nobody where that is not known."""
    found: dict[int, tuple[Mention, ...]] = {}
    for place, word in enumerate(said):
        if is_myself(said, place) and tells_a_fact(said, place):
            found[place] = _speaker(word, asker)
        if not begins_a_clause(said, place):
            continue
        if is_myself(said, place) or (word.folded == "my" and _owns(said, place)):
            found[place] = _speaker(word, asker)
        elif word.folded == "our" and _owns(said, place):
            found[place] = ()
    return found


def is_myself(said: Sequence[Word], place: int) -> bool:
    """`im ...`, `i play ...`: only facts (hand, side) are kept of it, since moments pass.

    Where a fact follows it need open no clause: "bronagh lefty im righty", "her lefty me righty".
    """
    pair = tuple(word.folded for word in said[place : place + 2])
    is_of_me = pair[:1] == ("me",) and (
        tells_a_fact(said[: place + 2], place) or tells_my_hand(said, place)
    )
    return pair[:1] == ("im",) or (pair[:1] == ("i",) and pair[1:] in _PLAY) or is_of_me


def facts_of_myself(
    said: Sequence[Word], begun: Iterable[int], claims: Iterable[Claim]
) -> list[Claim]:
    """What the rules read right behind "im" or "i play": a hand or a side, which nothing unsays.

    `begun` are the places where somebody speaks of themselves. The model of notes, which are of
    opponents, knows little of such clauses.
    """
    opened = [said[at].span[0] for at in begun if is_myself(said, at) and tells_a_fact(said, at)]
    starts = [word.span[0] for word in said]
    return [
        one
        for one in claims
        if TRAITS[one.trait].kind is TraitKind.FACT
        and not one.denied
        and any(0 <= _words_on(starts, at, one.span[0]) <= _WORDS_TO_A_FACT for at in opened)
    ]


def _words_on(starts: Sequence[int], begin: int, end: int) -> int:
    return sum(begin <= at < end for at in starts) if end >= begin else -1


def _owns(said: Sequence[Word], place: int) -> bool:
    ahead = said[place + 1 : place + 1 + _WORDS_TO_THE_SKILL]
    return any(word.folded in _SKILLS for word in ahead)


def _speaker(word: Word, asker: PlayerId | None) -> tuple[Mention, ...]:
    if asker is None:
        return ()
    return (
        Mention(
            typed=word.typed,
            span=word.span,
            certainty=Certainty.SURE,
            players=(asker,),
            pronoun=True,
        ),
    )
