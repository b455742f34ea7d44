"""Who started right, said of the running game: "okafor started right", "tom starts", "tom odd"."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.said import Certainty, Mention, StarterSaid
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.tactics.standing_names import asker_started_right

_STARTS = r"(?:started|starts|start|starting|began|begins|is starting|was starting|will start)"
_PLACE = r"(?: out)?(?: on| at| in)?(?: the| our| their)?"
_RIGHT = regex(
    rf"{_STARTS}(?:{_PLACE} (?:right|even)(?: side| court)?)?|(?:serves|served|serving) first"
    rf"|{_STARTS} (?:the )?serv(?:e|ing)"
)
_LEFT = regex(rf"{_STARTS}{_PLACE} (?:left|odd)(?: side| court)?")
_FILLING = frozenset(["ok", "so", "and", "btw", "this", "game", "now", "today", "we", "have"])


def starter_said(message: Message, chat: ChatView) -> StarterSaid | None:
    """The message, if it says of one player on court who started where, and nothing else."""
    if not chat.match_on or message.asks or len(message.mentions) != 1:
        return None
    mention = message.mentions[0]
    on_court = {*chat.ours, *chat.theirs}
    if mention.certainty is not Certainty.SURE or mention.players[0] not in on_court:
        return None
    line = " ".join(
        word.folded
        for word in message.said
        if not mention.span[0] <= word.span[0] < mention.span[1] and word.folded not in _FILLING
    )
    is_right = _RIGHT.fullmatch(line) is not None
    if not is_right and _LEFT.fullmatch(line) is None:
        return None
    return StarterSaid(text=message.text, mention=mention, is_right=is_right)


def tells_own_start(message: Message) -> bool:
    """Whether the one who writes says where they, or their partner, started."""
    return asker_started_right(message.text) is not None


def own_start(message: Message, chat: ChatView) -> StarterSaid | None:
    """Where who writes started, told of the running match; None where nobody knows who writes."""
    is_right = asker_started_right(message.text)
    if is_right is None or not chat.match_on or chat.asker not in chat.ours:
        return None
    who = Mention(typed="i", span=(0, 0), certainty=Certainty.SURE, players=(chat.asker,))
    return StarterSaid(text=message.text, mention=who, is_right=is_right)
