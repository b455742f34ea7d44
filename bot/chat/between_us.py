"""What stands between the two of us: "whos weaker me or kath", "agreed we keep it low".

Both are the pair's card: it shares the court out by ball and ranks nobody, and shows the eight
things that it keeps where something else was agreed. Neither asks of opponents, nor is a note.
"""

from __future__ import annotations

from bot.chat.agreements_said import agreement_said
from bot.chat.message import Message, is_ours
from bot.chat.named_line import named_line
from bot.chat.numbers import groups
from bot.chat.said import Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_ONE = r"(?:me|i|N|my partner)"
_US = rf"(?:{_ONE} or {_ONE}|(?:out )?of (?:us|the two of us|our two|us two)|between us|us two)"
_RANK = r"(?:weaker|weakest|worse|worst|better|best|stronger|strongest)"
_ASKS_RANK = regex(
    r"(?:(?:so|ok|and|be honest|honestly) )*(?:"
    rf"(?:whos?|which)(?: is| one| of us| s)* (?:the )?{_RANK}(?: (?:player|one|link))?(?: {_US})?"
    rf"|(?:am i|is {_ONE}) (?:the )?{_RANK}(?: (?:player|one))? than {_ONE})"
)
_OF_US = regex(r"\b(?:us|me|i|my partner|N or N)\b")

_AGREED = regex(
    r"(?:(?:so|ok|okay|right|and|btw) )*(?:we(?: have)? (?:(?:just|both|all) )*(?:agreed|decided)"
    r"|weve (?:just )?(?:agreed|decided)|agreed) (?:that we|we|to|on)\b .+"
)
_COLON = regex(r"\s*(?:we )?agreed\s*:\s*\w.*")
_OF_A_CALL = regex(
    r"\b(?:was|were|out|fault|call\w*|lines?|point|rally|score|won|lost|replay|over|meet|court)\b"
)
"""What is settled with the other side, or of the day, and not how the two of us play."""


_A_SIDE = r"(?:on |at |in )?(?:the )?(?:left|right)(?: side)?"
_WHICH_SIDE = regex(
    rf"(?:(?:so|ok|and|hey) )*(?:(?:should|do|shall|would|will) i (?:go|play|be) {_A_SIDE} or"
    rf" {_A_SIDE}|{_A_SIDE} or {_A_SIDE} for me)(?: (?:then|today|better|with (?:her|him|N)))*"
)
"""Before a match it asks which of us plays there; in one, where the score has us stand."""


def between_us(message: Message, chat: ChatView) -> Question | None:
    """The card of our pair; None for any other message."""
    line = named_line(message.said, message.mentions)
    asks_side = not chat.match_on and _WHICH_SIDE.fullmatch(line) is not None
    if not (asks_side or _ranks_us(line, message, chat) or _settles_else(line, message)):
        return None
    slots = find_slots(message.said, (), message.told)
    return Question(text=message.text, topic=Topic.PAIR_UP, confidence=CERTAIN, slots=slots)


def _ranks_us(line: str, message: Message, chat: ChatView) -> bool:
    if not all(is_ours(one, chat.ours) for one in message.mentions):
        return False
    return _ASKS_RANK.fullmatch(line) is not None and _OF_US.search(line) is not None


def _settles_else(line: str, message: Message) -> bool:
    """Whether we agreed on something that is none of what the pair's card keeps."""
    said = _AGREED.fullmatch(line) or _COLON.fullmatch(message.text.casefold())
    if said is None or "?" in message.text or agreement_said(message.text, message.said):
        return False
    is_told = bool(message.note.claims) or message.note.about_body
    return not is_told and not groups(message.said) and _OF_A_CALL.search(line) is None
