"""How the last match against somebody ended, asked for: "did we beat hale last time"."""

from __future__ import annotations

from bot.chat.message import Message, is_ours
from bot.chat.plan_words import line_of
from bot.chat.said import BookSaid, BookVerb
from bot.chat.view import ChatView
from knowledge.regex import regex

_WE = r"(?:we|us|i)"
_AGAINST = r"(?:against|vs|versus|v|with|to|over|from)"
_LAST = (
    r"(?:(?:the |our )?last (?:time|match|meeting|game|week|month)|before|ever|already|yesterday"
    r"|when we (?:last )?(?:met|played)|(?:mon|tues|wednes|thurs|fri|satur|sun)day)"
)
_DONE = (
    r"(?:beat|beaten|win|won|lose|lost|get beaten by|got beaten by|played?|faced?|meet|met"
    r"|had|have)"
)
_THEM = r"(?:N|them)"
_ASKS = regex(
    r"(?:(?:so|ok|and|hey|wait) )*(?:"
    rf"(?:did|have|had) {_WE} (?:ever )?{_DONE}(?: {_LAST})?(?: {_AGAINST})? {_THEM}(?: {_LAST})*"
    rf"|(?:what|whats) (?:was )?(?:the |our )?(?:score|result)(?: {_LAST})?"
    rf" {_AGAINST} {_THEM}(?: {_LAST})*"
    rf"|(?:the |our )?(?:score|result|record)s?(?: {_LAST})? {_AGAINST} {_THEM}(?: {_LAST})*"
    rf"|(?:what|how much|how bad(?:ly)?) did {_WE} (?:win|lose|beat)(?: (?:to|against|vs))? {_THEM}"
    r"(?: by)?"
    rf"|who won(?: {_LAST})? (?:against|vs|versus|v|with) {_THEM}(?: {_LAST})*"
    rf"|how did (?:{_WE}|it) (?:do|go|end|finish)(?: {_LAST} (?:against|vs|with) {_THEM}"
    rf"|(?: against| vs| with) {_THEM} {_LAST})"
    rf"|when (?:did {_WE} last (?:play|meet|face|beat)|was the last time {_WE}"
    r" (?:played|met|faced|beat)|(?:did|have) we (?:last )?(?:play|played|meet|met))"
    rf"(?: against)? {_THEM}(?: {_LAST})?"
    r")"
)
"""The whole of the message, N for a chain of names."""


def last_meeting_said(message: Message, chat: ChatView) -> BookSaid | None:
    """The question; None where one of ours is named, or more is said."""
    named = tuple(one for one in message.mentions if not one.pronoun) or message.mentions
    if not named or any(is_ours(one, chat.ours) for one in named):
        return None
    if not _ASKS.fullmatch(line_of(message.said, message.mentions)):
        return None
    return BookSaid(text=message.text, verb=BookVerb.LAST_MEETING, mentions=named)
