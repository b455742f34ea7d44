"""A game told and put right in the same breath: "12-10 we won that no 11-12 they won sorry".

Both halves are a score or a result, with hardly a word beside: neither can be a question or a note.
Read as a whole they were two games.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.games_bare import NTH_GAME
from bot.chat.message import Message, read_message
from bot.chat.numbers import groups
from bot.chat.rally_retold import halves
from bot.chat.said import ResultSaid, SaidScore, ScoreSaid
from bot.chat.scores import is_all_score
from bot.chat.settled_forms import settled
from bot.chat.view import ChatView
from bot.chat.words import Word, folded_line
from knowledge.game import GameFormat
from knowledge.regex import regex

_REGRETS = frozenset(["sorry", "oops", "whoops", "my", "bad", "actually", "instead"])
_ANOTHER_GAME = regex(rf"\b{NTH_GAME}\b|\b(?:then|next|another)\b")
_CALL = 3
"""Numbers of a call, which no game's result has."""


def game_put_right(message: Message, chat: ChatView) -> ScoreSaid | ResultSaid | None:
    """What is told last; None where nothing is told twice, or two games are."""
    if not chat.match_on or chat.forwarded or "?" in message.text:
        return None
    for before, behind in halves(message):
        said = [word for word in message.said if word.span[0] >= behind]
        while said and said[-1].folded in _REGRETS:
            said.pop()
        if not groups(said) or _ANOTHER_GAME.search(folded_line(said)):
            continue
        first = _told(message.text[:before], chat)
        if not isinstance(first, ResultSaid) or not _goes_beyond(said):
            continue
        found = _told(message.text[behind : said[-1].span[1]], chat)
        if found is not None:
            return replace(_as_it_stands(found, chat.format), text=message.text)
    return None


def _told(text: str, chat: ChatView) -> ScoreSaid | ResultSaid | None:
    message = read_message(text, chat)
    if not message.said or message.asks or not is_all_score(message.told.of_score):
        return None
    found = settled(text, message, chat)
    is_score = isinstance(found, ScoreSaid) and found.score is not None
    is_game = isinstance(found, ResultSaid) and len(found.games) == 1
    return found if isinstance(found, ScoreSaid | ResultSaid) and (is_score or is_game) else None


def _goes_beyond(said: Sequence[Word]) -> bool:
    """Whether the numbers put right say more than two points: of "won 11-9 no 11-8" they are the
    same game's, whose winner was told.
    """
    is_bare = len(said) == groups(said)[0].stop - groups(said)[0].start
    return not is_bare or len(groups(said)[0].numbers) == _CALL


def _as_it_stands(found: ScoreSaid | ResultSaid, format: GameFormat) -> ScoreSaid | ResultSaid:
    """ "11-12 they won" ends no game to 11: they won the rally, and whoever did serves next."""
    if not isinstance(found, ResultSaid):
        return found
    ((ours, theirs),) = found.games
    if format.is_won(max(ours, theirs), min(ours, theirs)):
        return found
    score = SaidScore(ours=ours, theirs=theirs, we_serve=found.won)
    return ScoreSaid(text=found.text, score=score, rally_ours=found.won)
