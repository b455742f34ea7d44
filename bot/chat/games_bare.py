"""A game told as won or lost without its points: "we won game one", "first game gone"."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import RemarkSaid, ScoreRemark
from bot.chat.serve_told import OURS, THEIRS, with_sides
from bot.chat.view import ChatView
from bot.chat.words import words_in
from knowledge.regex import regex

NTH_GAME = (
    r"(?:(?:the |our )?(?:first|second|third|1st|2nd|3rd|opener)(?: (?:game|set|one))?"
    r"|(?:the )?(?:game|set) (?:number )?(?:one|two|three|[123])|g[123]"
    r"|(?:the|that|this) (?:game|set))"
)
"""A game by its number, "the second", "game two"."""

_ENDED = r"(?:won|win|took|take|got|grabbed|nicked|closed out|lost|lose|dropped|blew)"
_BARE = regex(
    r"(?:(?:ok|so|and|well|yes|yay|ugh|damn|oh|lol) )*"
    rf"(?:(?:@ (?:just |have |has )?)?{_ENDED} {NTH_GAME}"
    rf"|{NTH_GAME} (?:is |was |goes |went |to |for )*(?:@|gone|lost|won|done))"
    r"(?: (?:lol|ugh|damn|yay|though|at least|again))*"
)

_LEVEL = (1, 1)
_BESIDE_LEVEL = words_in(
    "so ok and now then we they are were re its it is thats that games game sets all tied level"
    " even split going go to on into in a the third decider one each lol phew time for"
)
"""Words that only lead to "one game all", or on from it."""


def bare_game(message: Message, chat: ChatView) -> RemarkSaid | None:
    """The message, if a game's winner is all it tells: without its points no game can be kept."""
    if not chat.match_on or "?" in message.text:
        return None
    if _tells_games_level(message):
        remark = ScoreRemark.GAME_WITHOUT_POINTS
        return RemarkSaid(text=message.text, remark=remark, number=sum(_LEVEL))
    line = with_sides(" ".join(word.folded for word in message.told.words))
    if _BARE.fullmatch(THEIRS.sub("@", OURS.sub("@", line))) is None:
        return None
    return RemarkSaid(text=message.text, remark=ScoreRemark.GAME_WITHOUT_POINTS)


def _tells_games_level(message: Message) -> bool:
    """ "We split, one game all", and no more."""
    games = message.told.games
    if message.asks or games is None or games.games != _LEVEL:
        return False
    beside = (word.folded for at, word in enumerate(message.told.words) if at not in games.places)
    return _BESIDE_LEVEL.issuperset(beside)
