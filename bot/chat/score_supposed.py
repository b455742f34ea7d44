"""A score that a question only supposes: "win chance at 3-9", "and at 9-3".

Whoever supposes one says their own points first; who serves changes nothing of that.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.message import Message
from bot.chat.said import Question, SaidScore, ScoreSaid, Understood
from bot.chat.words import words_in
from knowledge.game import GameState
from knowledge.vocabulary import Topic

_AT = words_in("at from")
_STANDS = words_in(
    "we were us they theyre it its is are was now score game still stuck up down back here sitting"
    " tied level even ok so and"
)
"""What tells before "at" that it stands so: "we're at 9-3-1, whats our chance"."""


def only_asked_about(told: Understood, asked: Sequence[Question], message: Message) -> bool:
    """ "At 10-10 receiving what chance to win": a case to look at, not how it stands."""
    if not isinstance(told, ScoreSaid) or {one.topic for one in asked} != {Topic.WIN_CHANCE}:
        return False
    said = [word.folded for word in message.said]
    at = next((place for place, word in enumerate(said) if word.isdigit()), 0)
    return at > 0 and said[at - 1] in _AT and (at == 1 or said[at - 2] not in _STANDS)


def ours_first(score: SaidScore, known: GameState) -> SaidScore:
    """The score with the first number ours, and a call of three numbers as our own.

    One that says whose is whose stays as it is, and so does the very call that stands.
    """
    call = score.call
    if call is None or score.ours is not None or score.we_serve is not None or call == known.call:
        return score
    ours, theirs = call.serving, call.receiving
    if call.server is None:
        return replace(score, call=None, ours=ours, theirs=theirs)
    return replace(score, ours=ours, theirs=theirs, server=call.server, we_serve=True)


def cannot_follow(score: SaidScore, known: GameState) -> bool:
    """Whether nobody can have come to it since the score that stands, whosever the numbers are."""
    call = score.call
    if call is None or score.ours is not None:
        return False
    first, second = call.serving, call.receiving
    as_ours = first >= known.ours and second >= known.theirs
    as_theirs = second >= known.ours and first >= known.theirs
    return not (as_ours or as_theirs)
