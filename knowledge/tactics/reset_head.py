"""Clearing the head: a reset, one thing to keep, one to change, words to say, the next ball."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from types import MappingProxyType

from knowledge.advice import CALL_LIMIT, Advice, Choice, Confidence, Reason
from knowledge.cautions import HEAT_DEFERS
from knowledge.dataclass import dataclass
from knowledge.distress import Distress, distress_of
from knowledge.general_rule import LINE_LIMIT, fitting, load_entries, load_table, optional_line
from knowledge.planning.names import first_that_fits, pair_name
from knowledge.planning.plan_lines import plan_lines
from knowledge.regex import regex
from knowledge.said_phrases import Phrases
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import crowd_trouble
from knowledge.tactics.bad_stretch import BadStretch, bad_stretch, luck_or_leak
from knowledge.tactics.symptoms import read_phrases, told_in
from knowledge.tactics.weather_said import folded, minutes_said
from knowledge.vocabulary import Topic

OTHERWISE = "general"
"""The entry for words that name nothing in particular."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadReset:
    """What happened, and what helps: a routine, one thing to keep, one to change, words to say.

    `in_play` stands for it while a game is on, which leaves a minute and no more.
    """

    id: str
    call: str
    keep: str
    change: str
    say: str
    unless: str | None = None
    caution: str | None = None
    in_play: HeadReset | None = None


def advise(situation: Situation) -> Advice:
    """The reset that the words ask for; people who can help where they tell of distress."""
    distress = _distress(situation)
    if distress is not None:
        return _people_first(distress)
    if crowd_trouble.shouted_at(situation.asked.words):
        return crowd_trouble.advise(situation.asked.words)
    reset = find_reset(situation)
    if (before := _words_for(situation)) is not None:
        return _words_first(before, situation)
    stretch = bad_stretch(situation)
    lines = (reset.keep, _change(reset, stretch), reset.say)
    if _ASKS_FOR_WORDS.search(folded(situation.asked.words)):
        lines = (reset.say, *lines[:-1])
    return Advice(
        topic=Topic.RESET_HEAD,
        call=reset.call,
        reasons=tuple(Reason(text=line, source=COMMON_PRACTICE) for line in lines),
        number=None if stretch is None else luck_or_leak(stretch),
        unless=reset.unless or _next_ball(situation),
        assumed=_until_the_next(situation.asked.words),
        caution=reset.caution or (HEAT_DEFERS if situation.asked.hot else None),
        numbers={} if stretch is None else {"stretch_chance": stretch.chance},
        choices=_choices(situation),
    )


_SAYS = "Say: "
_ASKS_FOR_WORDS = regex(r"\bwhat (?:do|should|can|could|shall|must) i (?:say|tell)\b")
_WANTS_WORDS = regex(
    r"(?:(?:so|ok|okay|and|but|then) )*(?:what|how) (?:do|should|can|could|would|shall) i"
    r" (?:say|tell|put it)(?:(?: to)? \w+(?: \w+)?)?(?: (?:now|then|though|right now))*"
)


def _distress(situation: Situation) -> Distress | None:
    """What the words tell of, or those before them where they only go on: "what do i say"."""
    asked = situation.asked
    goes_on = _wants_words(asked.words) or find_reset(situation).id == OTHERWISE
    told = [asked.words, *reversed((asked.before or "").splitlines() if goes_on else [])]
    ours, theirs = ([one.name for one in pair] for pair in (situation.ours, situation.theirs))
    found = (distress_of(line, ours=ours, theirs=theirs) for line in told)
    return next((one for one in found if one is not None), None)


def _words_for(situation: Situation) -> HeadReset | None:
    """What the question before told of somebody, where only the words to say are asked for now."""
    asked = situation.asked
    if not asked.before or not _wants_words(asked.words):
        return None
    told = [line for line in reversed(asked.before.splitlines()) if not _wants_words(line)]
    found = (find_reset(replace(situation, asked=replace(asked, words=line))) for line in told)
    return next((reset for reset in found if reset.id != OTHERWISE), None)


def _wants_words(line: str) -> bool:
    return _WANTS_WORDS.fullmatch(folded(line).rstrip(" ?!.")) is not None


def _words_first(reset: HeadReset, situation: Situation) -> Advice:
    """One kind line to say, then what helps with it."""
    said = reset.say.removeprefix(_SAYS)
    lines = (reset.call.rstrip("."), reset.keep)
    return Advice(
        topic=Topic.RESET_HEAD,
        call=f"{_SAYS}{said}{'' if said.endswith('?') else '.'}",
        reasons=tuple(Reason(text=line, source=COMMON_PRACTICE) for line in lines),
        unless=reset.unless or _next_ball(situation),
        caution=reset.caution,
        choices=_choices(situation),
    )


def find_reset(situation: Situation) -> HeadReset:
    """The first entry that the words tell of; the general one if none."""
    told = {hit.id for hit in told_in(situation, phrases())}
    found = [reset for reset in resets() if reset.id in told]
    reset = found[0] if found else next(one for one in resets() if one.id == OTHERWISE)
    return reset.in_play if reset.in_play is not None and _is_on(situation) else reset


def _is_on(situation: Situation) -> bool:
    """Whether a game is being played."""
    return situation.match is not None and not situation.match.game.is_over


@cache
def resets() -> tuple[HeadReset, ...]:
    """All entries, the more telling first; RuleDataError if a line does not fit."""
    return tuple(_reset(row) for row in load_entries("knowledge.tactics", "reset_head.toml"))


@cache
def phrases() -> Phrases:
    """How each entry is said."""
    rows = load_entries("knowledge.tactics", "reset_head.toml")
    table = load_table("knowledge.tactics", "reset_head.toml")
    return read_phrases(table, {str(row["id"]): row["says"] for row in rows})


def _reset(row: Mapping[str, object]) -> HeadReset:
    in_play = row.get("in_play")
    return HeadReset(
        id=fitting(row.get("id"), LINE_LIMIT),
        call=fitting(row.get("call"), CALL_LIMIT),
        keep=fitting(row.get("keep"), LINE_LIMIT),
        change=fitting(row.get("change"), LINE_LIMIT),
        say=fitting(row.get("say"), LINE_LIMIT),
        unless=optional_line(row, "unless"),
        caution=optional_line(row, "caution"),
        in_play=_reset({"id": row["id"], **in_play}) if isinstance(in_play, Mapping) else None,
    )


def _change(reset: HeadReset, stretch: BadStretch | None) -> str:
    """The leak where the log shows one, else the entry's own."""
    if stretch is None or stretch.error is None:
        return reset.change
    return first_that_fits((f"Change: {stretch.error}, the same error again",), limit=LINE_LIMIT)


def _next_ball(situation: Situation) -> str:
    """Who comes next and the first ball against them, if the book knows one."""
    who = pair_name(situation.theirs)
    line = next((line for line in plan_lines(situation) if line.is_specific), None)
    if not situation.theirs:
        return "Next opponents? Name them: I give one ball."
    before = "Next ball" if _is_on(situation) else f"Next, {who}"
    if line is None:
        return f"{before}: return deep, thirds to the middle."
    return f"{before}: {line.cue}"


A_FEW_MIN = 15
A_SNACK_MIN = 45
"""Up to so many minutes there is time for water only, then for a bite. Common practice."""


def _until_the_next(words: str) -> str | None:
    """What the time is good for; None where none is said."""
    minutes = minutes_said(words)
    if minutes is None:
        return None
    if minutes <= A_FEW_MIN:
        return f"{minutes:.0f} minutes: sip water, shade, one plan."
    if minutes <= A_SNACK_MIN:
        return f"{minutes:.0f} minutes: drink, shade, a small bite."
    return f"{minutes:.0f} minutes: eat light now, drink, shade."


def _choices(situation: Situation) -> tuple[Choice, ...]:
    plan = Choice(label="game plan", topic=Topic.GAME_PLAN)
    other = (
        Choice(label="time-out?", topic=Topic.TIMEOUT_NOW)
        if _is_on(situation)
        else Choice(label="what to change", topic=Topic.ADJUST)
    )
    return (other, plan)


_KIND_LINES: Mapping[Distress, tuple[str, str, str, str]] = MappingProxyType(
    {
        Distress.HARM: (
            "Stop here. Go to someone you trust, right now.",
            "Stay together: nobody should be alone with it.",
            "In danger? Call your local emergency number.",
            "A crisis line listens too. No match matters now.",
        ),
        Distress.PANIC: (
            "Stop, sit down; let someone stay with you.",
            "Feet on the floor; breathe out slowly.",
            "Chest pain, or it won't pass: emergency number.",
            "Medical staff can help; the match can wait.",
        ),
        Distress.DESPAIR: (
            "Stop for now; sit down with someone you trust.",
            "A match says nothing about what you are worth.",
            "If it stays dark: a doctor or a crisis line.",
            "Thoughts of harm? Local emergency number, now.",
        ),
        Distress.AFRAID: (
            "Step aside now: you needn't stay with that.",
            "Go to the referee, the desk or someone you trust.",
            "Hurt, or threatened? Local emergency number.",
            "A time-out, or to stop altogether, is yours to take.",
        ),
    }
)
"""What to say first: stop, people, and the way to help. I claim nothing medical."""


def _people_first(distress: Distress) -> Advice:
    call, company, urgent, more = _KIND_LINES[distress]
    return Advice(
        topic=Topic.RESET_HEAD,
        call=call,
        number=company,
        unless=urgent,
        caution=more,
        confidence=Confidence.GENERAL_RULE,
    )
