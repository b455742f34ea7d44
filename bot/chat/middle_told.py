"""Whose the middle is, said outright: "the middle is tom's", "my fh is bigger so middle is mine".

Of our two that is what we settle, no scouting and no nickname. It takes "is whose", or a reason
with "so" before who takes it: "tom takes mid" alone tells what he does. Nothing more may be told,
and whoever asks settles nothing.
"""

from __future__ import annotations

from bot.chat.message import Message, is_ours
from bot.chat.named_line import named_line
from bot.chat.said import AgreementSaid
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import AgreementKey, PlayerId

_LEAD = r"(?:(?:ok|okay|so|and|btw|right|well|note|new|rule|deal|tbh|today) )*"
_MIDDLE = r"(?:the |our )?(?:middles?|mids?|seam)(?: balls?)?"
_REASON = (
    r"(?:(?!(?:who|whose|what|should|if|shall|do|does|can)\b)\w+ ){2,12}(?:so|hence|therefore) "
)
_TAIL = (
    r"(?: (?:always|from now on|today|for today|for now|now|please|pls|ok|okay|then|again|tbh"
    r"|all day|(?:on|for) (?:everything|all|every ball|all balls)|every ball|every time))*"
)
_IS = r"(?:(?:is|are|s|stays|stay|belongs to|belong to|goes to|go to|always|all|now) )+"
_TAKES = r"(?:always )?(?:takes?|has|have|gets?|owns?|covers?|plays?) "
_WHOSE = regex(
    rf"{_LEAD}(?:(?:{_REASON})?{_MIDDLE} {_IS}(?P<whose>N|mine|me)"
    rf"|{_REASON}(?P<who>N|i) {_TAKES}(?:all )?{_MIDDLE}){_TAIL}"
)
_OURSELVES = frozenset(["mine", "me", "i"])


def middle_told(message: Message, chat: ChatView) -> AgreementSaid | None:
    """That the middle is the one's or the other's of us; None for any other message."""
    asks = message.asks or "?" in message.text
    if (
        asks
        or message.note.about_body
        or not all(is_ours(one, chat.ours) for one in message.mentions)
    ):
        return None
    found = _WHOSE.fullmatch(named_line(message.said, message.mentions))
    owner = None if found is None else _owner(found["whose"] or found["who"], message, chat)
    name = next((row.name for row in chat.roster if row.player == owner), None)
    if name is None:
        return None
    value = f"{name.split()[0]} takes the middle"
    return AgreementSaid(text=message.text, key=AgreementKey.MIDDLE, value=value)


def _owner(whose: str, message: Message, chat: ChatView) -> PlayerId | None:
    """Whom the last name or "mine" means."""
    if whose in _OURSELVES:
        return chat.asker if chat.asker in chat.ours else None
    players = message.mentions[-1].players
    return players[0] if len(players) == 1 else None
