"""Whom a pronoun means: "they", "him", "my partner", by who was named and who is on court."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.note_sides import shares_the_court
from bot.chat.said import Certainty, Mention
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.vocabulary import PlayerId
from scouting_db.sounds import fold

CALLS = dict.fromkeys(("he", "him", "his", "hes"), "he") | dict.fromkeys(
    ("she", "her", "hers", "shes"), "she"
)
_SINGULAR = frozenset(CALLS)
PLURAL = frozenset(["they", "them", "their", "theyre", "both", "em", "these", "those"])
_PARTNER = frozenset(["partner", "partners", "pard", "p", "pardner"])


def pronoun(
    position: int, word: Word, said: Sequence[Word], before: Sequence[Mention], view: ChatView
) -> list[Mention]:
    """A mention for each player that the word stands for; none for any other word."""
    meant = _meant(position, word.folded, said, before, view)
    return [
        Mention(
            typed=word.typed,
            span=word.span,
            certainty=Certainty.SURE,
            players=(player,),
            pronoun=True,
        )
        for player in meant
    ]


def _meant(
    position: int, folded: str, said: Sequence[Word], before: Sequence[Mention], view: ChatView
) -> tuple[PlayerId, ...]:
    sure = [each for each in before if each.certainty is Certainty.SURE]
    named = [each.players[0] for each in sure if not each.pronoun] or [
        each.players[0] for each in sure
    ]
    last = (*named[::-1], *view.focus)
    if folded in _SINGULAR and not set(named) & set(view.theirs) and shares_the_court(said):
        return _beside(view.asker, view)
    if folded in _SINGULAR:
        unsure = any(each.certainty is not Certainty.SURE for each in before)
        return () if unsure and not named else _one_called(folded, last, before, view)
    if folded in PLURAL:
        return _they(named, view)
    if folded in _PARTNER:
        return _partner(position, said, last, before, view)
    return ()


def _one_called(
    folded: str, last: Sequence[PlayerId], before: Sequence[Mention], view: ChatView
) -> tuple[PlayerId, ...]:
    """The last one spoken of who was never called the other: who was he is not she.

    Where all of them were, the other of that pair.
    """
    called = dict(view.called) | calls_in(before)
    fitting = [one for one in last if called.get(one, CALLS[folded]) == CALLS[folded]]
    if fitting:
        return (fitting[0],)
    other = tuple(
        one
        for one in _beside(last[0] if last else None, view)
        if called.get(one, CALLS[folded]) == CALLS[folded]
    )
    return other or tuple(last[:1])


def calls_in(mentions: Sequence[Mention]) -> dict[PlayerId, str]:
    """Whom the pronouns of a message call he, and whom she."""
    return {
        one.players[0]: CALLS[fold(one.typed)]
        for one in mentions
        if one.pronoun and fold(one.typed) in CALLS
    }


def _they(named: Sequence[PlayerId], view: ChatView) -> tuple[PlayerId, ...]:
    if named:
        return tuple(dict.fromkeys(named))
    if len(view.focus) > 1:
        return view.focus
    return view.theirs or view.focus


def _partner(
    position: int,
    said: Sequence[Word],
    last: Sequence[PlayerId],
    before: Sequence[Mention],
    view: ChatView,
) -> tuple[PlayerId, ...]:
    """`my partner` is the other of us; `his partner`, `Hale's partner` the other of that pair."""
    word = said[position - 1] if position else None
    follows_name = bool(word and before and before[-1].span[1] == word.span[1])
    theirs = word is not None and (follows_name or word.folded in _SINGULAR | {"the"})
    return _beside(last[0] if theirs and last else view.asker, view)


def _beside(subject: PlayerId | None, view: ChatView) -> tuple[PlayerId, ...]:
    """The other of the pair that the player is of."""
    pair = next((each for each in (view.theirs, view.ours) if subject in each), ())
    return tuple(each for each in pair if each != subject)
