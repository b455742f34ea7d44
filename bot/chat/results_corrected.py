"""The result of a match that is over, said again as it should be: "no, 15-12", "no, we lost"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.forms import word_set
from bot.chat.message import Message, read_message
from bot.chat.numbers import groups, number
from bot.chat.results_said import result_said
from bot.chat.said import Certainty, Mention, ResultSaid
from bot.chat.turned_round import turned_round
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex

_CORRECTS = regex(
    r"\b(?:no|nope|sorry|wait|oops|whoops|actually|correct(?:ion|ed)?|change|fix|edit|update|wrong"
    r"|meant|i mean|rather|typo|mistake|should|make (?:it|that)|hang on|hold on|not)\b"
    r"|^(?:(?:ok|oh|and|so|but) )*"
    r"(?:it|that|the (?:result|score)|the last (?:one|match|game)) was\b"
)
_BESIDE = word_set("beside_a_result")
"""Words that say nothing of a result put right but that it is one."""

_SIDES = frozenset(["us", "we", "our", "ours", "me", "i", "weve", "they", "them", "theirs"])
_LOST = frozenset(["lost", "lose", "loss"])
_WON = frozenset(["won", "win"])
_BEFORE_ONE = frozenset(["that", "this", "the", "last", "previous"])
_NOT_THEM = frozenset(["not", "of", "than"])
"""Before the numbers that it was not: "15-12 not 15-11", "instead of 15-11"."""


def result_corrected(message: Message, chat: ChatView) -> ResultSaid | None:
    """The result, if the message puts right the one told last and says nothing else."""
    format = chat.over_format
    if format is None or "?" in message.text or chat.forwarded:
        return None
    turned = turned_round(" ".join(word.folded for word in message.told.words))
    if turned is not None:
        # To a coach "they" is either pair: that it was the other way says enough.
        won = None if turned.says_they and chat.own_pairs else turned.won
        return ResultSaid(text=message.text, won=won, corrects=True, turned=True)
    if not _CORRECTS.search(" ".join(word.folded for word in message.said)):
        return None
    numbers = _heard_as_a_name(message)
    if numbers is not None:
        message = read_message(f"no, final {message.text[numbers:]}", chat)
    named = tuple(one for one in message.mentions if not one.pronoun)
    said = _without_names(message.told.words, named)
    kept = [word for word in _without_denied(_without_that_one(said)) if not _says_nothing(word)]
    words = [word.folded for word in kept]
    if any(number(word) is None and word.folded not in _SIDES | _WON | _LOST for word in kept):
        return None
    if not any(number(word) is not None for word in kept):
        won = _who_won(words)
        is_told = won is not None and len(words) <= len(("we", "won", "us"))
        return (
            ResultSaid(text=message.text, won=won, mentions=named, corrects=True)
            if is_told
            else None
        )
    read = read_message(" ".join(words if {*words} & (_WON | _LOST) else ["final", *words]), chat)
    found = result_said(read.text, read.told.words, of_score=read.told.of_score, format=format)
    if found is None or not found.games:
        return None
    return replace(found, text=message.text, mentions=named, corrects=True)


def _without_that_one(said: Sequence[Word]) -> list[Word]:
    """The words without the "one" of "that one", "the last one", which is no number."""
    before = ["", *(word.folded for word in said)]
    return [
        word
        for word, last in zip(said, before, strict=False)
        if not (word.typed.lower() == "one" and last in _BEFORE_ONE)
    ]


def _heard_as_a_name(message: Message) -> int | None:
    """Where numbers stand that were heard as somebody unknown: "sorry fourteen sixteen"."""
    for one in message.mentions:
        inside = [word for word in message.said if one.span[0] <= word.span[0] < one.span[1]]
        if one.certainty is Certainty.NOBODY and all(number(word) is not None for word in inside):
            return one.span[0]
    return None


def _without_names(said: Sequence[Word], named: Sequence[Mention]) -> list[Word]:
    """The words without names that only say which match: whoever won or lost stays, as a side."""
    following = [*(word.folded for word in said[1:]), ""]
    return [
        word
        for word, then in zip(said, following, strict=True)
        if then in _WON | _LOST
        or not any(one.span[0] <= word.span[0] < one.span[1] for one in named)
    ]


def _says_nothing(word: Word) -> bool:
    return number(word) is None and word.folded in _BESIDE


def _without_denied(said: Sequence[Word]) -> list[Word]:
    """The words without the numbers that it was not; of "15-11 to 15-12" the second stay."""
    found = groups(said)
    denied = {
        at
        for group in found
        if group.start and said[group.start - 1].folded in _NOT_THEM
        for at in range(group.start, group.stop)
    }
    for before, after in pairwise(found):
        if [word.folded for word in said[before.stop : after.start]] == ["to"]:
            denied.update(range(before.start, before.stop))
    return [word for at, word in enumerate(said) if at not in denied]


def _who_won(words: Sequence[str]) -> bool | None:
    """Whether we did, by "we lost", "they won", "won"."""
    said = {*words}
    if bool(said & _WON) is bool(said & _LOST):
        return None
    theirs = bool(said & {"they", "them"}) and not said & {"we", "i"}
    return bool(said & _WON) is not theirs
