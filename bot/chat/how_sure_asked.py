"""How sure a trait of somebody is: "how sure okafor bh weak", "how sure is it that ruiz lobs".

Such a question holds a note: with the asking taken off it claims one trait of one player. Plainly
asked ("is okafor slow?") it is the report's, which tells it with what goes beside it.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.said import Certainty, Claim, CompareAsked, Compared, Mention, Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.trait_holders_said import claims_of
from bot.chat.view import ChatView
from bot.chat.words import words_in
from knowledge.regex import regex
from knowledge.vocabulary import Topic

LONGEST = 7
"""Words that may be asked of a name."""

_LEAD = r"(?:(?:ok|okay|so|and|but|wait|hey|um|hm|no|yes|yeah) )*"
_OF_WHOM = rf"{NAME}(?: s)?"
_SURE = r"(?:sure|certain|confident|reliable)"
_HOW_SURE = regex(
    rf"{_LEAD}how {_SURE}(?: (?:is|are|r|it|that|this|the|we|you|u|i|of|about|on|note|notes))*"
    rf" {_OF_WHOM} (?:is |has |s )?(?P<what>.+)"
)
_ELSE = words_in(
    "where what who whom which why how when should could would can i me my we us our you your if or"
    " not isnt then than against with but and do did will going to"
)
"""Words of a question of another kind, or of more than one thing."""

_NO_TRAIT = words_in("win wins winning beat beats lose loses serve serves serving score")


def how_sure_asked(message: Message, chat: ChatView) -> CompareAsked | Question | None:
    """The trait asked about and of whom; None for any other message.

    How sure we are of something that is no trait ("how sure okafor bh") is the report's.
    """
    named = [one for one in message.mentions if one.certainty is Certainty.SURE]
    if len(named) != 1 or len(message.mentions) != 1 or message.note.about_body:
        return None
    if "?" in message.text.rstrip().rstrip("?"):
        return None
    found = _HOW_SURE.fullmatch(named_line(message.said, message.mentions))
    if found is None:
        return None
    return _asked(message, chat, named[0], found["what"]) or _report(message, found["what"])


def _asked(message: Message, chat: ChatView, whom: Mention, what: str) -> CompareAsked | None:
    words = [word for word in what.split() if word not in ("still", "really", "actually")]
    if len(words) > LONGEST or _ELSE & set(words):
        return None
    claim = _one(claims_of(" ".join(["", *words]), chat)) or _one(
        claims_of(" ".join([" is", *words]), chat)
    )
    if claim is None or claim.denied:
        return None
    return CompareAsked(
        text=message.text,
        what=Compared.ONE,
        sides=((whom,),),
        trait=claim.trait,
        value=claim.value,
    )


def _report(message: Message, what: str) -> Question | None:
    words = what.split()
    if len(words) > LONGEST or (_ELSE | _NO_TRAIT) & set(words):
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    topic = Topic.OPPONENT_REPORT
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)


def _one(claims: Sequence[Claim]) -> Claim | None:
    """What is claimed, where it is of one trait."""
    return claims[0] if len({one.trait for one in claims}) == 1 else None
