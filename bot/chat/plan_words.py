"""What a message wants of a plan beyond a plan: the one given before, plan B, what is new, a copy.

Narrow forms over the words with names taken out: "N" stands for a name or a chain of names.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.message import Message, is_ours
from bot.chat.plan_changes import change_asked, habit_asked, poacher_met
from bot.chat.plan_forms import AGAINST, END, FORMS, HIM, PLAN, POLITE, SEND, SHOW, THE, WAS
from bot.chat.plan_loose import meant_loosely
from bot.chat.said import Mention, PlanAsk, PlanSaid, Question, Understood
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_RULES = tuple((what, regex(rf"{form}{END}")) for what, form in FORMS)

_ANY_PLAN = regex(r"\b(?:(?:game ?)?(?:pla+n+s?|paln|pln|plna|plam)|planb)\b")
LONGEST_LOOSE = 12
"""Words of a message in which one word beside "plan" settles what is wanted of it."""

_BESIDE: Sequence[tuple[PlanAsk, str]] = (
    (PlanAsk.STUDENT, r"students?|pupils?|learners?|lesson|no notes|without (?:\w+ )?notes"),
    (
        PlanAsk.SHARE,
        r"send|snd|sned|forward|fwd|share|text|message|msg|e?mail|copy (?:of|for|to)"
        r"|for (?:my partner|him|her|N) to (?:read|see|have)",
    ),
    (
        PlanAsk.PLAN_B,
        r"planb|pla+n+ b|b plan|paln b|pln b|backup|back up|fallback"
        r"|(?:if|when|once|after) they (?:change|adjust|adapt|catch on|figure)"
        r"|(?:alternative|alternate|another|different|plan b) plan"
        r"|(?:if|when) (?:the |our |this )?plan (?:a )?(?:\w+ )?(?:fails?|works?|stops?|breaks?)",
    ),
    (
        PlanAsk.AGAIN,
        r"again|agian|once more|did we use|last (?:weeks?|time|match|meeting|game)"
        r"|old|previous|earlier|repeat|recall"
        r"|stored|saved|plans? (?:that )?we (?:had|made|used)|remind|plan was$",
    ),
)
_BESIDE_RULES = tuple((what, regex(rf"\b(?:{words})\b")) for what, words in _BESIDE)

_STATES = regex(
    r"^(?:(?:so|ok|and) )*(?:(?:our|the|my) )?(?:new )?plan (?:is|was) (?!again)(?:to )?\w"
)
"""A plan told and not asked for: "our plan is to lob"."""


_ELSEWHERE = regex(
    r"\b\d{1,2} \d{1,2}\b|\bnew (?:plan|one)\b|\bpl?an? ?a (?:and|n|nd|or|for|with) |\btried\b"
)
"""A score asks what to change now; "plan A and plan B" and "a new one" ask for the plan itself."""


def _loosely(line: str, message: Message) -> PlanAsk | None:
    """What one word beside "plan" wants, in a short message that notes nothing."""
    is_short = len(message.said) <= LONGEST_LOOSE
    if not is_short or not _ANY_PLAN.search(line) or message.note.claims:
        return None
    if _STATES.match(line) or _ELSEWHERE.search(line):
        return None
    return next((what for what, rule in _BESIDE_RULES if rule.search(line)), None)


def _meant(line: str, message: Message, chat: ChatView) -> PlanAsk | None:
    if _STATES.match(line) or _ELSEWHERE.search(line):
        return None
    return meant_loosely(line, message, chat.ours)


_REMINDS = (
    rf"{POLITE}(?:(?:remind (?:me|us)(?: of)?|reminder(?: of)?|one (?:line|word)|quick one|"
    rf"last (?:line|word))(?: {THE}{PLAN}(?: reminder)?)?|{THE}{PLAN} reminder)"
)
_PLAN_WHEN = rf"(?:{POLITE}(?:{WAS}|{SHOW})?{THE}{PLAN}{AGAINST})"
_BEFORE = r"(?: (?:before|b4|as|when|while|just before|right before))?"
_CUE_SERVING = regex(
    rf"(?:{_REMINDS}{_BEFORE}|{_PLAN_WHEN} (?:when|while|as))"
    rf" (?:we|i|were|we are|im) (?:serve|serving|start){END}"
)
_CUE_RECEIVING = regex(
    rf"(?:{_REMINDS}{_BEFORE}|{_PLAN_WHEN} (?:when|while|as))"
    rf" (?:(?:they|theyre|they are) (?:serve|serving)"
    rf"|(?:we|i|were|im|we are) (?:return|receive|recieve|returning|receiving)){END}"
)


_BEFORE_A_RALLY = regex(
    r"\bbefore (?:(?:each|every|any|the|our|my|next) )+(?:serve|return|rally|point)\b"
)
"""`remind us of the plan before each serve`: a cue, as `reminders_said` reads it."""


def plan_said(message: Message, chat: ChatView) -> Understood | None:
    """What such a message wants; None for a plain question of a plan, and for all else."""
    if chat.forwarded:
        return _our_own(message)
    line = line_of(message.said, message.mentions)
    if _LINE_EACH.search(line) and not message.note.claims and len(line.split()) <= LONGEST_EACH:
        return _cue(message, serving=None)
    serving = _serving(line)
    if serving is None:
        serving = _cue_said(line, message)
    if serving is not None:
        return _cue(message, serving=serving)
    if _BEFORE_A_RALLY.search(line):
        return None
    what = next((what for what, rule in _RULES if rule.fullmatch(line)), None)
    may_be = what in (None, PlanAsk.PLAN_B)
    after_plan = chat.last_topic is Topic.GAME_PLAN
    if may_be and not after_plan and poacher_met(line):
        return _habit(message)
    change = change_asked(line, after_plan=after_plan) if may_be else ""
    if change and _speaks_of_plans(line, chat):
        what = PlanAsk.PLAN_B
    what = what or _loosely(line, message) or _sends_it(line, chat) or _meant(line, message, chat)
    if what is PlanAsk.PLAN_B and not change and habit_asked(line):
        return _habit(message)
    if what is None and _sends_an_answer(line, message, chat):
        return PlanSaid(text=message.text, what=PlanAsk.SHARE, of_no_plan=True)
    if what is None or (what is PlanAsk.SINCE and not _speaks_of_plans(line, chat)):
        return None
    named = tuple(one for one in message.mentions if not one.pronoun)
    return PlanSaid(
        text=message.text,
        what=what,
        mentions=named,
        earlier=_EARLIER.search(line) is not None,
        change=change,
    )


def _habit(message: Message) -> Question:
    """The answer to what they do, which is no plan."""
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(text=message.text, topic=Topic.ANSWER_PATTERN, confidence=CERTAIN, slots=slots)


_EARLIER = regex(
    r"\b(?:last (?:time|match|week|meeting|game)|old|previous|earlier|yesterday|back then"
    r"|from before|(?:mon|tues|wednes|thurs|fri|satur|sun)day)\b"
)
"""Words for the plan of the last meeting, and not the one given a minute ago."""


_OUR_MESSAGE = regex(r"^(?:For .{1,60}: p|P)lan (?:for practice )?vs .+\n1 ")


def _our_own(message: Message) -> PlanSaid | None:
    """A plan that we wrote and that comes back forwarded is no note on anybody."""
    if not _OUR_MESSAGE.search(message.text):
        return None
    title = message.text.partition("\n")[0]
    named = tuple(one for one in message.mentions if not one.pronoun and one.span[1] <= len(title))
    return PlanSaid(text=message.text, what=PlanAsk.AGAIN, mentions=named)


_AS_COPY = r"(?: (?:like|as|in) (?:an? )?(?:copy|message|text|msg))?"
_SENDS_IT = regex(
    rf"{POLITE}{SEND} (?:it|this|that)(?: (?:to|with|for) {HIM})?{_AS_COPY}{END}"
    rf"|{POLITE}{SEND} {HIM} (?:it|this|that){_AS_COPY}{END}"
    rf"|{POLITE}(?:(?:a|the|one) )?copy (?:of (?:it|this|that) )?(?:to|for) {HIM}{END}"
)
_SO_THAT_WE_SEND = regex(
    rf"{POLITE}(?:say|put|write|word|phrase|make|give|get)(?: me| us)? (?:it|this|that)"
    rf"(?: \w+){{0,3}}? (?:so|that|to)(?: that)?(?: (?:i|we))?(?: can| could)? {SEND}"
    rf"(?: (?:it|this|that))?(?: on)?(?: (?:to|with|for))?(?: {HIM})?{END}"
    r"(?: (?:because |since |as |and )?(?:he|she|they|N|who)(?: \w+){1,8})?"
)
"""`say it so i can text it to tom, he reads little`."""


def _sends_it(line: str, chat: ChatView) -> PlanAsk | None:
    """ "Send it to Tom" right after a plan."""
    is_plan = chat.last_topic is Topic.GAME_PLAN
    return PlanAsk.SHARE if is_plan and _is_to_send(line) else None


def _is_to_send(line: str) -> bool:
    return bool(_SENDS_IT.fullmatch(line) or _SO_THAT_WE_SEND.fullmatch(line))


def _sends_an_answer(line: str, message: Message, chat: ChatView) -> bool:
    """Whether another answer is to be sent on; "send it to Lindqvist" is about the ball."""
    named = [one for one in message.mentions if not one.pronoun]
    is_to_ours = bool(named) and all(is_ours(one, chat.ours) for one in named)
    if named and not is_to_ours:
        return False
    return bool(_SO_THAT_WE_SEND.fullmatch(line) or (is_to_ours and _SENDS_IT.fullmatch(line)))


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


_CHAIN = regex(r"\bN(?: (?:and |n |und |with |or )?N)+\b")


_LINE_EACH = regex(
    r"\b(?:one|a) (?:short )?(?:line|word|sentence|thing) (?:for N (?:and )?(?:one|another|a line)"
    r" for N|for each|each)\b"
)
"""`a plan for both, one line for mira and one for tom`: a bench has a cue for each."""
LONGEST_EACH = 20

_NOW_SERVING = regex(
    r"\b(?:(?:we|were|we are|i|im) (?:serve|serving)\b(?! first)|on (?:our|my) serve\b)"
)
_NOW_RECEIVING = regex(
    r"\b(?:(?:they|theyre|they are) (?:serve|serving)"
    r"|(?:we|were|we are|im) (?:receive|recieve|receiving|recieving)|on their serve)\b"
)


_CUE_WORD = regex(r"\b(?:cue|(?:one|a|short|quick) (?:line|word|thing|reminder|thought|one))\b")
_RALLY_WE_SERVE = regex(
    r"\b(?:we|i|im|were|we are|i am)(?: (?:about|up|going|ready) to)? (?:serve|serving)\b"
    r"|\bcue (?:on |for |when )?serv\w*|^(?:ok |so )?serving\b|\b(?:my|our) serve\b"
)
_RALLY_THEY_SERVE = regex(
    r"\b(?:receiving|recieving|receive|recieve|returning)\b"
    r"|\b(?:before|on|for) (?:my|our|the|this|i|we) return\b"
    r"|\bthey(?:re| are)?(?: about to)? (?:serve|serving)\b"
)


def _cue_said(line: str, message: Message) -> bool | None:
    """Of a cue asked for, whether it is for a rally that we serve, or that they serve."""
    is_short = len(message.said) <= LONGEST_LOOSE
    if not is_short or not _CUE_WORD.search(line) or message.note.claims:
        return None
    we, they = _RALLY_WE_SERVE.search(line), _RALLY_THEY_SERVE.search(line)
    return None if bool(we) is bool(they) else we is not None


def _serving(line: str) -> bool | None:
    """Whether the plan is wanted for a rally that we serve, or that they serve."""
    if _CUE_SERVING.fullmatch(line):
        return True
    if _CUE_RECEIVING.fullmatch(line):
        return False
    if not _ANY_PLAN.search(line) or len(line.split()) > LONGEST_LOOSE or _STATES.match(line):
        return None
    serving, receiving = _NOW_SERVING.search(line), _NOW_RECEIVING.search(line)
    return None if bool(serving) is bool(receiving) else serving is not None


def _cue(message: Message, *, serving: bool | None) -> Question:
    slots = find_slots(message.said, message.mentions, message.told)
    return Question(
        text=message.text,
        topic=Topic.CUE,
        confidence=CERTAIN,
        slots=replace(slots, serving=serving),
    )
