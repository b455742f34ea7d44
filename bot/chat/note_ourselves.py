"""Where a note speaks of whoever types it ("im right handed") or of our own strokes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bot.chat.forms import word_set
from bot.chat.note_sides import tells_a_fact
from bot.chat.said import Certainty, Mention
from bot.chat.unknown_names import begins_a_clause
from bot.chat.words import Word
from knowledge.vocabulary import PlayerId

_SKILLS = word_set("owned_skills")
_WORDS_TO_THE_SKILL = 2
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
    is_of_me = pair[:1] == ("me",) and tells_a_fact(said[: place + 2], place)
    return pair[:1] == ("im",) or (pair[:1] == ("i",) and pair[1:] in _PLAY) or is_of_me


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
