"""How the match stands, told before a question: "4-7-1 they serve, should we call a timeout"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from bot.chat.forms import word_set
from bot.chat.message import Message, read_message
from bot.chat.rally_clauses import told_rally
from bot.chat.said import RallySaid, ScoreSaid
from bot.chat.scores import score_message, stray_words
from bot.chat.view import ChatView
from bot.chat.words import Word, words

_MARKS = frozenset(",;:.!?\n–—")
_GOES_ON = word_set("question_goes_on")
"""Words that a question may begin with where no mark stands before it."""

_ONLY_SUPPOSED = word_set("only_supposed")
"""Before a score that nobody has: "at 9-8-2, what do i serve"."""

_WERE = "were"
"""`we're` as phones type it; anything else that were so is supposed."""

STRAY_BESIDE_A_RALLY = 3
"""Words of a rally told that no score knows: "lost that one"."""

_NAMES_A_RALLY = frozenset(["point", "rally", "sideout", "side", "pt"])


def told_before(message: Message, chat: ChatView) -> ScoreSaid | RallySaid | None:
    """The score or the rally that a message in a match tells before it asks; the longest there is.

    Only where nothing else stands before the question, or a whole call stands apart, and nothing
    is supposed: who asks about another score than the one we have keeps the one we have.
    """
    if not (chat.match_on and message.asks) or chat.forwarded:
        return None
    cuts = [*_cuts(message.said)]
    for at in reversed(cuts):
        told = _told(message, 0, at, chat)
        if told is not None and (isinstance(told, ScoreSaid) or _names_a_rally(told)):
            return told
    for start, at in reversed([*pairwise(cuts)]):
        told = _told(message, start, at, chat)
        if isinstance(told, ScoreSaid) and told.score is not None and told.score.server is not None:
            return told
    return None


def perhaps_told_before(message: Message, chat: ChatView) -> RallySaid | None:
    """Who won, told before the question in words that may speak of a rally or of a game: "lost
    that one, what do we change"."""
    if not (chat.match_on and message.asks) or chat.forwarded:
        return None
    for at in reversed([*_cuts(message.said)]):
        told = _told(message, 0, at, chat, stray=STRAY_BESIDE_A_RALLY)
        if isinstance(told, RallySaid):
            return told
    return None


def _names_a_rally(told: RallySaid) -> bool:
    """Whether a rally is called one."""
    return any(word.folded in _NAMES_A_RALLY for word in words(told.text))


def _cuts(said: Sequence[Word]) -> Iterator[int]:
    """Where the question may begin, or another clause before it."""
    for at, word in enumerate(said):
        if at and (word.folded in _GOES_ON or set(word.gap) & _MARKS):
            yield at


def _told(
    message: Message, start: int, stop: int, chat: ChatView, *, stray: int = 0
) -> ScoreSaid | RallySaid | None:
    """The score or rally that these words tell; `stray` of them may speak of something else."""
    said = message.said[start:stop]
    if stray_words(said) > stray or _is_supposed(said):
        return None
    text = message.text[said[0].span[0] : said[-1].span[1]]
    part = read_message(text, chat)
    if part.asks or any(not one.pronoun for one in part.mentions):
        return None
    told = score_message(text, part.told.of_score) or told_rally(part, chat)
    return told if isinstance(told, ScoreSaid | RallySaid) else None


def _is_supposed(said: Sequence[Word]) -> bool:
    return any(
        word.folded in _ONLY_SUPPOSED and not (at == 0 and word.folded == _WERE)
        for at, word in enumerate(said)
    )
