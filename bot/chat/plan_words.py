"""What a message wants of a plan beyond a plan: the one given before, plan B, what is new, a copy.

Narrow forms over the words with names taken out: "N" stands for a name or a chain of names.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.chat.message import Message
from bot.chat.question import Mention, PlanAsk, PlanSaid, Question, Understood
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.vocabulary import Topic

_PLAN = r"(?:game ?)?(?:plans?|paln|pln|plna|plam|gameplan)"
_THE = r"(?:(?:the|our|my|that|this|a|an|any) )?"
_OLD = r"(?:last|old|earlier|previous|stored|saved|same)"
_ON = r"(?:for|vs|v|versus|against|on|with|about|of)"
_AGAINST = rf"(?: {_ON} (?:N|them|these (?:two|guys)))?"
_POLITE = r"(?:(?:please|pls|plz|ok|okay|hey|so|and|(?:can|could|cn) (?:you|u)|can we|quick) )*"
_END = r"(?: (?:please|pls|plz|thanks|now|again))*"
_SHOW = (
    r"(?:(?:show|give|get|tell|remind|read|pull up|bring up|find|recall|see|repeat)"
    r"(?: me| us)?(?: (?:of|about))? )"
)
_WAS = r"(?:(?:what|wat|wht|whats|which)(?: (?:is|was|were))? )"
_THEN = (
    r"(?:(?:from |as )?last (?:time|match|week|game|meeting)|from before|back then"
    r"|yesterday|(?:from |on )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|before)"
)
_STUDENT = r"(?:(?:a|the|my|our|one of my|some) )?(?:students?|pupils?|learners?|class|clinic)"
_SEND = r"(?:send|snd|sned|forward|fwd|share|text|message|msg|pass|copy|give|write|mail|email)"
_HIM = r"(?:N|him|her|them|my (?:partner|mate|friend)|partner|the partner)"

_FORMS: Sequence[tuple[PlanAsk, str]] = (
    (
        PlanAsk.STUDENT,
        rf"{_POLITE}(?:{_SEND} )?(?:me )?{_THE}{_PLAN}{_AGAINST} (?:to|with|for) {_STUDENT}"
        rf"{_AGAINST}(?: without (?:the |our )?notes(?: on \w+)?)?",
    ),
    (PlanAsk.STUDENT, rf"{_POLITE}{_SEND} {_STUDENT} {_THE}{_PLAN}{_AGAINST}"),
    (PlanAsk.STUDENT, rf"{_POLITE}(?:the |a )?student (?:version|copy) of {_THE}{_PLAN}{_AGAINST}"),
    (PlanAsk.STUDENT, rf"{_POLITE}(?:the |a )?student {_PLAN}{_AGAINST}"),
    (
        PlanAsk.STUDENT,
        rf"{_POLITE}(?:{_SEND} )?{_THE}{_PLAN}{_AGAINST} without (?:the |our |any )?notes?"
        r"(?: on (?:people|them|players|anyone|anybody))?",
    ),
    (
        PlanAsk.SHARE,
        rf"{_POLITE}{_SEND} {_THE}{_PLAN}{_AGAINST}(?: (?:to|with|for) {_HIM})?{_AGAINST}",
    ),
    (PlanAsk.SHARE, rf"{_POLITE}{_SEND} {_HIM} {_THE}{_PLAN}{_AGAINST}"),
    (
        PlanAsk.SHARE,
        rf"{_POLITE}(?:copy of )?{_THE}{_PLAN}{_AGAINST} (?:as|in) (?:a |one )?(?:message|text|msg)"
        rf"(?: (?:to|for) {_HIM})?",
    ),
    (PlanAsk.SHARE, rf"{_POLITE}(?:a )?copy of {_THE}{_PLAN}{_AGAINST}(?: (?:to|for) {_HIM})?"),
    (
        PlanAsk.PLAN_B,
        rf"{_POLITE}(?:{_WAS}|{_SHOW})?{_THE}(?:plan ?b|planb|(?:backup|back up|second|other"
        rf"|fallback) {_PLAN}){_AGAINST}",
    ),
    (
        PlanAsk.PLAN_B,
        r"(?:ok |and |so |but )*(?:(?:what|wat|wht|waht) )?"
        r"(?:if|when) (?:they|N) (?:change|changes|adjust|adjusts"
        r"|adapt|adapts|catch on|switch it up|(?:figure|work) (?:it|us|that|this) out)"
        r"(?: (?:it|things|something|then|what then|what now|what|then what|what do we do))?",
    ),
    (PlanAsk.PLAN_B, rf"(?:and )?when (?:do|should) we (?:switch|change) (?:{_THE})?{_PLAN}"),
    (
        PlanAsk.AGAIN,
        rf"{_POLITE}(?:{_WAS}|{_SHOW})?{_THE}{_OLD} {_PLAN}{_AGAINST}(?: (?:{_THEN}|as {_THEN}))?",
    ),
    (PlanAsk.AGAIN, rf"{_POLITE}(?:{_WAS}|{_SHOW})?{_THE}{_PLAN}{_AGAINST} again"),
    (
        PlanAsk.AGAIN,
        rf"{_POLITE}(?:remind|recall)(?: me| us)?(?: of| about)? {_THE}{_PLAN}{_AGAINST}",
    ),
    (PlanAsk.AGAIN, rf"{_POLITE}(?:{_WAS}|{_SHOW})?{_THE}{_PLAN}{_AGAINST} {_THEN}{_AGAINST}"),
    (
        PlanAsk.AGAIN,
        rf"{_POLITE}(?:{_WAS}|{_SHOW})?{_THE}{_PLAN} (?:that )?we (?:had|made|used|did|played)"
        rf"{_AGAINST}(?: {_THEN})?",
    ),
    (
        PlanAsk.AGAIN,
        rf"{_POLITE}what did we (?:plan|agree to do|do|try)"
        rf"(?: {_THEN})?{_AGAINST}(?: {_THEN})?",
    ),
    (PlanAsk.PLAN_B, rf"{_POLITE}(?:{_WAS}|{_SHOW})?{_THE}(?:backup|back up|fallback)"),
    (PlanAsk.AGAIN, rf"{_POLITE}(?:what|wat|wht) was {_THE}{_PLAN}{_AGAINST}"),
    (
        PlanAsk.SINCE,
        rf"{_POLITE}(?:what|wat|whats|anything|any) (?:has |is |s )?(?:changed|new|different|news)"
        rf"{_AGAINST} since (?:then|last \w+|(?:we )?(?:last )?(?:played?|playd|met|faced)(?: \w+)?"
        rf"|(?:we )?last (?:played?|playd|met|faced)(?: (?:N|them))?|(?:mon|tues|wednes|thurs|fri"
        rf"|satur|sun)day|yesterday){_AGAINST}",
    ),
    (
        PlanAsk.SINCE,
        rf"{_POLITE}(?:(?:what|whats|anything|any|is there anything) (?:is |s )?)?"
        r"(?:new|news|changed)(?: (?:stuff|things?|notes?))?"
        r"(?: (?:on|about|with|of|for)) N(?: since (?:then|last \w+|\w+day))?",
    ),
    (
        PlanAsk.SINCE,
        r"(?:(?:its a |the )?rematch(?: (?:with|vs|against) (?:N|them))?(?: so)? )?"
        r"what (?:will|would|do|might) (?:they|N) (?:probably )?(?:change|try|do differently)"
        r"(?: (?:this time|next time|in the rematch|now))?",
    ),
    (PlanAsk.SINCE, r"(?:its a |the )?rematch(?: (?:with|vs|against) (?:N|them))?"),
)
_RULES = tuple((what, re.compile(rf"{form}{_END}")) for what, form in _FORMS)

_ANY_PLAN = re.compile(r"\b(?:(?:game ?)?(?:pla+n+s?|paln|pln|plna|plam)|planb)\b")
LONGEST_LOOSE = 12
"""Words of a message in which one word beside "plan" settles what is wanted of it."""

_BESIDE: Sequence[tuple[PlanAsk, str]] = (
    (PlanAsk.STUDENT, r"students?|pupils?|learners?|no notes|without (?:\w+ )?notes"),
    (
        PlanAsk.SHARE,
        r"send|snd|sned|forward|fwd|share|text|message|msg|e?mail|copy (?:of|for|to)",
    ),
    (
        PlanAsk.PLAN_B,
        r"planb|pla+n+ b|paln b|pln b|backup|back up|fallback"
        r"|(?:if|when|once|after) they (?:change|adjust|adapt|catch on|figure)",
    ),
    (
        PlanAsk.AGAIN,
        r"again|agian|last (?:time|match|meeting|week|game)|old|previous|earlier|repeat|recall"
        r"|stored|saved|plans? (?:that )?we (?:had|made|used)",
    ),
)
_BESIDE_RULES = tuple((what, re.compile(rf"\b(?:{words})\b")) for what, words in _BESIDE)

_STATES = re.compile(
    r"^(?:(?:so|ok|and) )*(?:our|the|my) (?:new )?plan (?:is|was) (?!again)(?:to )?\w"
)
"""A plan told and not asked for: "our plan is to lob"."""


def _loosely(line: str, message: Message) -> PlanAsk | None:
    """What one word beside "plan" wants, in a short message that notes nothing."""
    is_short = len(message.said) <= LONGEST_LOOSE
    if not is_short or not _ANY_PLAN.search(line) or message.note.claims or _STATES.match(line):
        return None
    return next((what for what, rule in _BESIDE_RULES if rule.search(line)), None)


_REMINDS = (
    rf"{_POLITE}(?:(?:remind (?:me|us)(?: of)?|reminder(?: of)?|one (?:line|word)|quick one|"
    rf"last (?:line|word))(?: {_THE}{_PLAN}(?: reminder)?)?|{_THE}{_PLAN} reminder)"
)
_PLAN_WHEN = rf"(?:{_POLITE}(?:{_WAS}|{_SHOW})?{_THE}{_PLAN}{_AGAINST})"
_BEFORE = r"(?: (?:before|b4|as|when|while|just before|right before))?"
_CUE_SERVING = re.compile(
    rf"(?:{_REMINDS}{_BEFORE}|{_PLAN_WHEN} (?:when|while|as))"
    rf" (?:we|i|were|we are|im) (?:serve|serving|start){_END}"
)
_CUE_RECEIVING = re.compile(
    rf"(?:{_REMINDS}{_BEFORE}|{_PLAN_WHEN} (?:when|while|as))"
    rf" (?:(?:they|theyre|they are) (?:serve|serving)"
    rf"|(?:we|i|were|im|we are) (?:return|receive|returning|receiving)){_END}"
)


def plan_said(message: Message, chat: ChatView) -> Understood | None:
    """What such a message wants; None for a plain question of a plan, and for all else."""
    if chat.forwarded:
        return _our_own(message)
    line = line_of(message.said, message.mentions)
    serving = _serving(line)
    if serving is not None:
        return _cue(message, serving=serving)
    what = next((what for what, rule in _RULES if rule.fullmatch(line)), None)
    what = what or _loosely(line, message)
    if what is None or (what is PlanAsk.SINCE and not _speaks_of_plans(line, chat)):
        return None
    named = tuple(one for one in message.mentions if not one.pronoun)
    return PlanSaid(
        text=message.text,
        what=what,
        mentions=named,
        earlier=_EARLIER.search(line) is not None,
    )


_EARLIER = re.compile(
    r"\b(?:last (?:time|match|week|meeting|game)|old|previous|earlier|yesterday|back then"
    r"|from before|(?:mon|tues|wednes|thurs|fri|satur|sun)day)\b"
)
"""Words for the plan of the last meeting, and not the one given a minute ago."""


_OUR_MESSAGE = re.compile(r"^(?:For .{1,60}: p|P)lan (?:for practice )?vs .+\n1 ")


def _our_own(message: Message) -> PlanSaid | None:
    """A plan that we wrote and that comes back forwarded is no note on anybody."""
    if not _OUR_MESSAGE.search(message.text):
        return None
    title = message.text.partition("\n")[0]
    named = tuple(one for one in message.mentions if not one.pronoun and one.span[1] <= len(title))
    return PlanSaid(text=message.text, what=PlanAsk.AGAIN, mentions=named)


def _speaks_of_plans(line: str, chat: ChatView) -> bool:
    """ "What will they do differently" of nobody, with nobody to play, asks something else."""
    return "N" in line.split() or bool({*chat.theirs, *chat.focus} - {*chat.ours})


def line_of(said: Sequence[Word], mentions: Sequence[Mention]) -> str:
    """The words in a row, with N for every chain of names."""
    spans = [one.span for one in mentions if not one.pronoun]
    words = [
        "N" if any(start <= word.span[0] < stop for start, stop in spans) else word.folded
        for word in said
    ]
    return _CHAIN.sub("N", " ".join(words))


_CHAIN = re.compile(r"\bN(?: (?:and |n |und |with |or )?N)+\b")


def _serving(line: str) -> bool | None:
    if _CUE_SERVING.fullmatch(line):
        return True
    return False if _CUE_RECEIVING.fullmatch(line) else None


def _cue(message: Message, *, serving: bool) -> Question:
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(
        text=message.text,
        topic=Topic.CUE,
        confidence=CERTAIN,
        slots=replace(slots, serving=serving),
    )
