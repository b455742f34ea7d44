"""Two of them told to play together: "okafor's partner is pat olsen, lefty"."""

from __future__ import annotations

from bot.chat.message import Message, is_ours
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.unknown_names import stands_as_name, without_possessive
from bot.chat.view import ChatView
from knowledge.regex import regex

_TOGETHER = regex(
    r"(?:(?:so|ok|and|fyi|btw) )*(?:@ (?:partner|partners|teammate|pard)(?: (?:today|here|now))?"
    r" (?:is|will be|called|was|today is|now is) @"
    r"|@ (?:plays|is playing|playing|partners|partnered|pairs|is paired|paired|is partnered"
    r"|teams|teamed|is teamed)(?: up)? with @"
    r"|@ (?:is|was) (?:the )?@ (?:partner|partners|teammate|pard)"
    r"|(?:the )?partner of @ is @"
    r"|@ and @ (?:are|play|are playing|is)(?: a)? (?:partners|together|pair|team|teammates))"
)


LONGEST_WITH_NEW = 6
"""Words of a pair of whom one is nobody in the book: with more, an odd word may be anything."""


def _with_new(message: Message, known: Mention) -> list[Mention]:
    """The one known and the only other word that can be a name, in the order typed."""
    new = [
        Mention(
            typed=without_possessive(message.said, at), span=word.span, certainty=Certainty.NOBODY
        )
        for at, word in enumerate(message.said)
        if not known.span[0] <= word.span[0] < known.span[1] and stands_as_name(word)
    ]
    return sorted([known, *new], key=lambda one: one.span)


def pair_said(message: Message, chat: ChatView) -> BookSaid | None:
    """The two named as a pair, with whatever follows about the second; None for any other."""
    named = [one for one in message.mentions if not one.pronoun]
    if len(named) == 1 and len(message.said) <= LONGEST_WITH_NEW:
        named = _with_new(message, named[0])
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
