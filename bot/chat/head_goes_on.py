"""Short words behind a head that was to be cleared: "what do i say", "how do i reset him", "and
me?". Alone the first asks for the score's call and the second for a ball's reset.
"""

from __future__ import annotations

from bot.chat.message import Message, is_ours
from bot.chat.named_line import NAME, named_line
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_LEAD = r"(?:(?:so|ok|okay|and|but|well) )*"
_HIM = rf"(?:him|her|them|my partner|partner|{NAME})"
_NOW = r"(?: (?:now|then|next|down|up|again|here|please|pls|about it))*"
_SAYS = regex(
    rf"{_LEAD}what (?:do|should|can|shall|could|would|to) (?:i )?(?:say|tell)"
    rf"(?: (?:to )?{_HIM})?{_NOW}"
)
_SETTLES = regex(
    rf"{_LEAD}how (?:do|can|should|to) (?:i |we )?(?:reset|calm|settle|cheer|lift|relax) {_HIM}"
    rf"{_NOW}"
)
_ME = regex(
    rf"{_LEAD}(?:(?:what|how) about )?(?:for )?me(?: too| then)?|{_LEAD}how do i calm(?: myself)?"
    rf"(?: down)?"
)


def head_goes_on(message: Message, chat: ChatView) -> Question | None:
    """The question of a head that it is; None where none was spoken of, or an opponent is named."""
    if chat.last_topic is not Topic.RESET_HEAD or not chat.asked_last:
        return None
    named = [one for one in message.mentions if not one.pronoun]
    if not all(is_ours(one, chat.ours) for one in named):
        return None
    line = named_line(message.said, named)
    if not any(form.fullmatch(line) for form in (_SAYS, _SETTLES, _ME)):
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    topic = Topic.RESET_HEAD
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
