"""The score asked for in one breath with something else: "plan and whats the score", "what do we
change and who serves after"."""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.view import ChatView
from knowledge.regex import regex

_WHO_SERVES = (
    r"who(?:'s|\u2019s|s| is)? serv(?:es?|ing)"
    r"(?: now| next| then| after(?: that| this| (?:the |this )?(?:time[ -]?out|break|pause))?)+"
)
_SCORE = (
    r"(?:what(?:'s|\u2019s|s| is| was)? the (?:current )?score(?: now| again| please| pls)*"
    rf"|{_WHO_SERVES})"
)
_LAST = regex(rf"(?i)^(?P<rest>.+?)[\s,.?!]*\b(?:and|plus|also|then|btw)[\s,]+{_SCORE}[\s?.!]*$")
_FIRST = regex(
    rf"(?i)^(?:(?:so|ok|hey)\s+)*{_SCORE}[\s,.?!]*\b(?:and|plus|also|then)\s+"
    r"(?P<rest>(?!whom? (?:do|does|are|is) (?:they|he|she) serv).+)$"
)


def beside_the_score(message: Message, chat: ChatView) -> str | None:
    """What is said beside the question for the score; None where that is not asked."""
    if not chat.match_on or chat.forwarded:
        return None
    found = _LAST.match(message.text) or _FIRST.match(message.text)
    return None if found is None else found["rest"]
