"""Who serves now, said of the running match: "its our serve", "tom is serving"."""

from __future__ import annotations

import re

from bot.chat.message import Message
from bot.chat.question import Certainty, SaidScore, ScoreSaid, ServerSaid
from bot.chat.slip_words import SLIP
from bot.chat.view import ChatView

_BE = r"(?:is |are |was |re |s )?"
_NOW = r"(?: now| here| again| next)?"
_IT = r"(?:its|it is|it|thats|that is|that)"
_DOES = rf"{_BE}(?:(?:the )?ones? )?(?:serving|serves?|to serve|servin|at serve|on serve){_NOW}"
_OURS = re.compile(
    rf"(?:{_IT} )?(?:our|my|we) (?:serve|service|ball){_NOW}|we {_DOES}|were (?:the ones )?"
    rf"serving{_NOW}|im serving{_NOW}|i {_DOES}|they {_BE}(?:receiv(?:e|ing)|return(?:ing)?){_NOW}"
    rf"|{_IT} (?:us|we|me) (?:serving|to serve){_NOW}|we have the serve{_NOW}"
)
_THEIRS = re.compile(
    rf"(?:{_IT} )?(?:their|they) (?:serve|service|ball){_NOW}|they {_DOES}|theyre (?:the ones )?"
    rf"serving{_NOW}|we {_BE}(?:receiv(?:e|ing)|return(?:ing)?){_NOW}"
    rf"|were (?:receiving|returning){_NOW}|{_IT} (?:them|they) (?:serving|to serve){_NOW}"
    rf"|they have the serve{_NOW}"
)
_BY_NAME = re.compile(rf"(?:{_IT} )?@ (?:{_DOES}|serve{_NOW}|to serve|has the (?:serve|ball))")


def serving_said(message: Message, chat: ChatView) -> ScoreSaid | ServerSaid | None:
    """The message, if it says who serves in the running match, and nothing else."""
    if not chat.match_on or "?" in message.text:
        return None
    named = [one for one in message.mentions if not one.pronoun]
    if len(named) == 1:
        return _by_name(message, chat)
    if named:
        return None
    line = _bare(" ".join(word.folded for word in message.said))
    ours, theirs = _OURS.fullmatch(line), _THEIRS.fullmatch(line)
    if (ours is None) == (theirs is None):
        return None
    return ScoreSaid(text=message.text, score=SaidScore(we_serve=ours is not None))


def _by_name(message: Message, chat: ChatView) -> ServerSaid | None:
    mention = next(one for one in message.mentions if not one.pronoun)
    if mention.certainty is not Certainty.SURE:
        return None
    if mention.players[0] not in {*chat.ours, *chat.theirs}:
        return None
    line: list[str] = []
    for word in message.said:
        is_name = mention.span[0] <= word.span[0] < mention.span[1]
        if not is_name or line[-1:] != ["@"]:
            line.append("@" if is_name else word.folded)
    if _BY_NAME.fullmatch(_bare(" ".join(line))) is None:
        return None
    return ServerSaid(text=message.text, mention=mention)


def _bare(line: str) -> str:
    """The line without words that only lead up to it."""
    return re.sub(rf"^(?:{SLIP}|(?:so|and|now|btw) )+", "", line)
