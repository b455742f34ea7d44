"""Two of them told to play together: "okafor's partner is pat olsen, lefty"."""

from __future__ import annotations

from bot.chat.message import Message, is_ours
from bot.chat.said import BookSaid, BookVerb
from bot.chat.view import ChatView
from knowledge.regex import regex

_TOGETHER = regex(
    r"(?:(?:so|ok|and|fyi|btw) )*(?:@ (?:partner|partners|teammate|pard)(?: (?:today|here|now))?"
    r" (?:is|will be|called|was|today is|now is) @"
    r"|@ (?:plays|is playing|playing|partners|partnered|pairs|is paired|paired|is partnered"
    r"|teams|teamed|is teamed)(?: up)? with @"
    r"|@ and @ (?:are|play|are playing|is)(?: a)? (?:partners|together|pair|team|teammates))"
)


def pair_said(message: Message, chat: ChatView) -> BookSaid | None:
    """The two named as a pair, with whatever follows about the second; None for any other."""
    named = [one for one in message.mentions if not one.pronoun]
    if len(named) != 2 or "?" in message.text or any(is_ours(one, chat.ours) for one in named):
        return None
    line: list[str] = []
    for word in message.said:
        is_name = any(one.span[0] <= word.span[0] < one.span[1] for one in named)
        if not is_name:
            line.append(word.folded)
        elif line[-1:] != ["@"]:
            line.append("@")
    found = _TOGETHER.match(" ".join(line))
    if found is None:
        return None
    told = message.text[named[1].span[1] :] if found[0].endswith("@") else ""
    return BookSaid(text=message.text, verb=BookVerb.PAIR, words=told, mentions=tuple(named))
