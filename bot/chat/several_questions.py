"""Several questions in one message: cut only where each part is surely a question of its own."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.asking import asks
from bot.chat.message import Message, mentions_within, opponents, read_message
from bot.chat.said import Mention, Question
from bot.chat.settled_topics import settled_topic
from bot.chat.topic_question import sure_question
from bot.chat.view import ChatView
from bot.chat.words import Word, words_in
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.rulebook import find_rule
from knowledge.tactics.lob_meaning import asks_of_their_lob
from knowledge.vocabulary import Topic

PARTS_READ_AT_MOST = 6
"""Parts of one message that are read; whatever follows goes with the last of them."""

SHORTEST_PART = 3
"""Words of a part with an asking form; "and where?" and "who lobs" lean on what stands before."""

_ENDS = frozenset("?!;\n")


_JOINERS = words_in("and also plus then n oh ok okay so too or but next second secondly finally")
_BESIDES = words_in("and also plus then n oh second secondly finally next")
"""Of the joiners, those that add a question; "or" and "but" only turn the one before."""

_ASKED_OF = {
    "who": words_in(
        "takes take has have gets get got covers cover is are should do does did serves stands"
        " plays goes hits runs receives starts calls can shud taking covering serving"
    ),
    "whos": words_in("got getting taking covering serving"),
    "where": words_in("do does did should shud is are can am the my our to"),
    "wheres": words_in("the my our"),
    "what": words_in("do does did should shud is are can side the our my are"),
    "whats": words_in("the our my a their"),
    "hows": words_in("my our the"),
    "which": words_in("side one of way shot player end wing foot do should"),
    "whom": words_in("do does should shall"),
    "how": words_in("do does should shud many much long far deep are is can to"),
    "when": words_in("do does should shud can is are"),
    "why": words_in("do does is are did am should"),
}
"""How a question opens that stands alone; "when he lobs" and "where they stand" do not."""

_VERBS = words_in("should shud shall can could do does did is are am would will may")
_SUBJECTS = words_in("i we it he she they you my our his her their the that this there")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Part:
    """Words `start` up to `stop` of the message, and the question that they are."""

    start: int
    stop: int
    question: Question | None


def several_questions(message: Message, chat: ChatView) -> tuple[Question, ...]:
    """The questions of the message in order; nothing where it asks only one thing."""
    starts = _starts(message)
    if len(starts) < 2:
        return ()
    alone = replace(chat, last_topic=None)
    edges = [0, *starts[1:PARTS_READ_AT_MOST], len(message.said)]
    parts: list[_Part] = []
    for start, stop in pairwise(edges):
        part = _read(message, start, stop, alone)
        while parts and _is_one(parts[-1], part, chat):
            part = _read(message, parts.pop().start, stop, alone)
        parts.append(part)
    questions = tuple(one.question for one in parts if one.question is not None)
    return questions if len(parts) > 1 and len(questions) == len(parts) else ()


def _is_one(before: _Part, after: _Part, chat: ChatView) -> bool:
    """Whether two parts ask one thing: either is unsure, or both ask the same of the same."""
    first, second = before.question, after.question
    if first is None or second is None:
        return True
    named, then = (
        {one.players or one.typed for one in opponents(question.slots.mentions, chat)}
        for question in (first, second)
    )
    if first.topic is Topic.LOB and asks_of_their_lob(first.text) != asks_of_their_lob(second.text):
        return False  # "should i lob ruiz and who covers lobs": ours, and theirs
    if first.topic is second.topic is Topic.RULES_QUESTION:
        return not _are_two_rules(first.text, second.text)
    return first.topic is second.topic and not (named and then and not named & then)


def _are_two_rules(first: str, second: str) -> bool:
    """ "Fault? and do we have to win by 2": either is sure of a rule of its own."""
    found = (find_rule(first), find_rule(second))
    rules = {one.rule.name for one in found if one.rule is not None and one.is_sure}
    return len(rules) == len(found)


def asked_behind(message: Message, chat: ChatView) -> tuple[Question, ...]:
    """The one question behind what is told: "he called it in, and do we need to win by 2"."""
    starts = _starts(message)
    if len(starts) != 1 or starts[0] < SHORTEST_PART:
        return ()
    part = _read(message, starts[0], len(message.said), replace(chat, last_topic=None))
    asked = part.question
    if asked is None or _LEANS.search(asked.text):
        return ()
    is_rule = asked.topic is Topic.RULES_QUESTION
    return () if is_rule and not find_rule(asked.text).is_sure else (asked,)


_LEANS = regex(r"\b(?:it|that|this|again|then|replay|redo|do about|can we do|now)\b", re.IGNORECASE)
"""Words that lean on what was told: that is one question with it."""


def _starts(message: Message) -> list[int]:
    """Where questions of the message begin, its own first."""
    said = message.said
    found: list[int] = []
    last = 0
    for at in range(len(said)):
        if found and at - last < SHORTEST_PART:
            continue
        if _opens(said, at, message.mentions) and (not at or _stands_apart(said, at)):
            found.append(_with_joiners(said, at))
            last = at
    fits = len(said) - last >= SHORTEST_PART
    return found if fits else found[:-1]


def _with_joiners(said: Sequence[Word], at: int) -> int:
    """The place with the "and also" before it."""
    while at and said[at - 1].folded in _JOINERS and not set(said[at].gap) & _ENDS:
        at -= 1
    return at


def _opens(said: Sequence[Word], at: int, mentions: Sequence[Mention]) -> bool:
    """Whether a question that stands alone opens here: "where do", "who takes", "should we"."""
    if at + 1 >= len(said):
        return False
    word, following = said[at].folded, said[at + 1].folded
    if following in _ASKED_OF.get(word, ()):
        return True
    is_name = any(one.span[0] == said[at + 1].span[0] for one in mentions)
    return word in _VERBS and (following in _SUBJECTS or is_name)


def _stands_apart(said: Sequence[Word], at: int) -> bool:
    """Whether a mark, an "and" or, in dictation, nothing but an asking word parts it."""
    begins = _with_joiners(said, at)
    gap = said[begins].gap
    joiners = [word.folded for word in said[begins:at]]
    if set(gap) & _ENDS or ". " in gap:
        return "or" not in joiners
    if joiners:
        return all(word in _BESIDES for word in joiners)
    # "Okafor knows where to serve": without a word of asking nothing but a pause parts it.
    is_asked = said[at].folded in _ASKED_OF and said[at + 1].folded != "to"
    return "," in gap or is_asked


def _read(message: Message, start: int, stop: int, chat: ChatView) -> _Part:
    """The part with its question, if that is sure alone."""
    part = part_of(message, start, stop, chat)
    if not asks(part.text, part.said):
        return _Part(start=start, stop=stop, question=None)
    return _Part(start=start, stop=stop, question=settled_topic(part) or sure_question(part, chat))


def part_of(message: Message, start: int, stop: int, chat: ChatView) -> Message:
    """Words `start` up to `stop` as a message of their own; "him" still means who it meant."""
    while start + 1 < stop and message.said[start].folded in _JOINERS:
        start += 1
    begin = message.said[start].span[0] if start else 0
    end = message.said[stop].span[0] if stop < len(message.said) else len(message.text)
    mentions = mentions_within(message.mentions, begin, end)
    return read_message(message.text[begin:end].rstrip(), chat, mentions=mentions)
