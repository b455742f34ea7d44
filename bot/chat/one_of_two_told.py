"""What one of two did, with who it was left open: "halvorsen or was it brackenridge netted two".

It opens with both names, doubts which in so many words ("or was it", "or maybe"), and goes on with
what that one did: nothing of it asks for advice, and "halvorsen or brackenridge?" doubts nothing.
"""

from __future__ import annotations

from bot.chat.message import Message, read_message, weighed_note
from bot.chat.named_line import named_line
from bot.chat.said import Certainty, Mention, NoteSaid
from bot.chat.view import ChatView
from knowledge.regex import regex

_OPENS = regex(
    r"(?:(?:ok|so|and|hm|hmm|um|think|i think|it was|either) )*"
    r"(?P<who>N (?:i think )?or (?:(?:was|is) it|wasnt it|maybe|perhaps|possibly|it (?:was|may be"
    r"|might be)|might have been|i think) (?:it was )?N)\b"
)

_MARKS = frozenset(",;.!:\n")


def one_of_two_told(message: Message, chat: ChatView) -> NoteSaid | None:
    """The note, about whichever of the two it turns out to be; None for anything else."""
    named = [one for one in message.mentions if not one.pronoun]
    if "?" in message.text or chat.forwarded or len(named) != len(("one", "other")):
        return None
    if any(one.certainty is not Certainty.SURE for one in named):
        return None
    found = _OPENS.match(named_line(message.said, tuple(named)))
    if found is None:
        return None
    start, stop = named[0].span[0], named[1].span[1]
    behind = sum(word.span[0] < stop for word in message.said)
    rest = message.said[behind:]
    if not rest or set(rest[0].gap) & _MARKS:
        return None
    if read_message(f"{named[0].typed} {message.text[rest[0].span[0] :]}", chat).asks:
        return None
    either = Mention(
        typed=message.text[start:stop],
        span=(start, stop),
        certainty=Certainty.AMBIGUOUS,
        players=tuple(player for one in named for player in one.players),
    )
    return weighed_note(read_message(message.text, chat, mentions=(either,)), chat)
