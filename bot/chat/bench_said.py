"""What is asked about one of ours by name, as from the bench: "should noor squeeze the middle"."""

from __future__ import annotations

from typing import Final

from bot.chat.message import Message, is_ours
from bot.chat.said import Mention, Question
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from knowledge.planning.cue_for import THEM_ALL
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_NAME = "(?:ourname)"
_LEAD = r"(?:(?:so|ok|okay|and|then|now|coach|hey|wait|but) )*"
_ASKS_IF = (
    r"(?:should|shall|can|could|does|is it time for|do i (?:tell|have|want|get)|do we want"
    r"|have|let)"
)
_SQUEEZES = (
    r"(?:to )?(?:just |also )?(?:(?:squeeze|pinch|cheat)(?: (?:over|in|more|the|to|middle|mid"
    r"|center|centre|a bit|a step|now|then|there))*|(?:slide|shift) (?:over|in|to the middle)"
    rf"|help(?: (?:out|more|now|then|there|her|him|{_NAME}))*|step in(?: (?:more|now|then))*)"
)
_WHOM = (
    rf"(?:{_NAME}(?: (?:and|n|or|then) {_NAME})?|both(?: of them)?|each(?: of them)?|each one"
    rf"|{THEM_ALL})"
)
_WHEN = (
    r"(?: (?:only|now|pls|please|again|quick|next|then|too|between points|between rallies"
    r"|in the (?:break|timeout|time out)|(?:before|on) (?:the|this|her|his|every) (?:serve|return"
    r"|point|rally)|at the (?:break|change)|tonite|tonight|today|tomorrow"
    r"|right now|here|when (?:she|he) (?:serves|returns|receives)))*"
)
_CUE_FOR = regex(
    rf"{_LEAD}(?:(?:give|tell|send|need) (?:me )?)?(?:(?:a|an|one|1|the|quick|short|good|single) )*"
    rf"(?:(?:one line|shout|coaching) )?(?:cue|shout|line|word|message|msg|thought|one liner)s?"
    rf"(?: lines?)? (?:for|to|at) {_WHOM}{_WHEN}"
    rf"|{_LEAD}what (?:do|should|can|could|would|shall) i"
    rf" (?:tell|say to|(?:shout|yell|call) (?:to|at)) {_WHOM}{_WHEN}"
)
_LINES_TO_SHOUT = regex(
    r"(?:\w+ ){0,5}?(?:two|three|four|2|3|4|few|couple|some)(?: of)?(?: \w+)? (?:things|lines|cues"
    r"|words|reminders)(?: (?:that|which))?(?: (?:i|we) (?:can|could|should))?(?: to)?"
    r" (?:shout|say|tell|yell|call out|remind)\b(?: \w+){0,4}"
)
"""`tell me three things to shout`: cues, not the plan that a coach has read already."""

_OURS_SUCK = regex(
    r"(?:(?:so|ok|man|ugh|coach|wow|damn|hey) )*(?:our|my) (?:third |3rd |third shot )?"
    r"(?:drops?|thirds?|3rds?|dinks?)(?: (?:are|is|just|all|really|so|kinda|have been|totally))*"
    r" (?:sucks?|stinks?|awful|terrible|trash|garbage|horrible|bad|off|broken|gone|ass|a mess"
    r"|not (?:working|there|good)|falling apart)"
    r"(?: (?:today|now|right now|so far|again|help|what now|tonight|this (?:game|match)))*"
)
"""`our drops suck today`: what to change, not when to play one."""

_SETTLED: Final = (
    (
        regex(rf"{_LEAD}(?:{_ASKS_IF} {_NAME}|{_NAME} should) {_SQUEEZES}"),
        Topic.BEING_TARGETED,
    ),
    (_CUE_FOR, Topic.CUE),
    (_LINES_TO_SHOUT, Topic.CUE),
    (_OURS_SUCK, Topic.ADJUST),
)


def bench_said(message: Message, chat: ChatView) -> Question | None:
    """The question of a bench about one or both of ours; None for anything else."""
    named = [one for one in message.mentions if is_ours(one, chat.ours) and not one.pronoun]
    line = _with_ours(message, named)
    topic = next((topic for form, topic in _SETTLED if form.fullmatch(line)), None)
    if topic is None:
        return None
    # "Them" of a bench are its own two, whoever was spoken of before.
    about = tuple(named) if topic is Topic.CUE else message.mentions
    slots = find_slots(message.said, about, message.told)
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)


def _with_ours(message: Message, named: list[Mention]) -> str:
    """The folded words with each of ours as one word, however long the name is."""
    words: list[str] = []
    for word in message.said:
        of = next((one for one in named if one.span[0] <= word.span[0] < one.span[1]), None)
        if of is None:
            words.append(word.folded)
        elif word.span[0] == of.span[0]:
            words.append("ourname")
    return " ".join(words)
