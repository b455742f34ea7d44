"""How an answer about whom to play at is said, and which phase a question means."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from types import MappingProxyType

from knowledge.advice import Reason
from knowledge.engine import Part
from knowledge.general_rule import LINE_LIMIT
from knowledge.planning.names import first_that_fits
from knowledge.planning.weighing import said_of
from knowledge.regex import regex
from knowledge.situation import OnCourt
from knowledge.sources import COMMON_PRACTICE, Source, rule
from knowledge.tactics.standing_words import capital
from knowledge.tactics.target_answer import Target
from knowledge.tactics.target_phases import TargetPhase
from knowledge.vocabulary import Trait

LABEL: Mapping[TargetPhase, str] = MappingProxyType(
    {
        TargetPhase.RETURN: "Return",
        TargetPhase.THIRD: "Third",
        TargetPhase.DINKS: "Dinks",
        TargetPhase.HANDS: "Hands",
        TargetPhase.LOBS: "Lobs",
        TargetPhase.LATE: "Late",
    }
)

_SAID: Mapping[TargetPhase, re.Pattern[str]] = MappingProxyType(
    {
        TargetPhase.THIRD: regex(r"\b(?:third|thirds|3rd|3rds|drop|drops)\b"),
        TargetPhase.DINKS: regex(r"\b(?:dink\w*|kitchen|soft game|nvz)\b"),
        TargetPhase.HANDS: regex(
            r"\b(?:hands?|speed\s?ups?|speed it|attack\w*|fire ?fights?|firefight\w*|counter\w*)\b"
        ),
        TargetPhase.LOBS: regex(r"\blob\w*\b"),
        TargetPhase.RETURN: regex(r"\breturn\w*\b"),
        TargetPhase.LATE: regex(
            r"\b(?:tired|tires|nervous|nerves|tight|cracks?|chokes?|fresh|cooked|legs|pressure)\b"
        ),
    }
)

_SERVE = regex(r"\bserv(?:e|es|ing)\b(?! ?(?:return|er))")
_MIXED = regex(r"\b(?:mixed|girl|woman|women|lady|wife|husband|female|the guy|the man)\b")

SERVE_CALL = "Serve who stands there: pick the depth, not the player."
RECEIVER = Reason(text="The receiver is fixed by the score", source=rule("4.B"))

UNKNOWN_CALL = "Play both and look: who is late at what?"
PROBES: tuple[Reason, ...] = (
    Reason(text="Two returns at each: whose third floats?", source=COMMON_PRACTICE),
    Reason(text="A dink to each backhand: who pops it up?", source=COMMON_PRACTICE),
    Reason(text="One speed-up at each hip: who is late?", source=COMMON_PRACTICE),
)
MEANWHILE = "Till you know: deep returns, middle thirds."

EVEN_CALL = "Play both alike: nothing sets one apart."
RECHECK = "Check again after each game."


def phase_said(words: str) -> TargetPhase | None:
    """The phase that a question names; None for all of them."""
    said = words.casefold()
    return next((phase for phase, pattern in _SAID.items() if pattern.search(said)), None)


def serve_said(words: str) -> bool:
    return bool(_SERVE.search(words.casefold()))


def mixed_said(words: str) -> bool:
    return bool(_MIXED.search(words.casefold()))


def table_call(shown: Sequence[Target]) -> str:
    """The phases with their targets, as many as fit: the most valuable ones, in rally order."""
    by_worth = sorted(shown, key=lambda one: -one.per_100)
    lines: list[str] = []
    for count in range(len(by_worth), 0, -1):
        chosen = [one for one in shown if one in by_worth[:count]]
        for placed in (set(TargetPhase), {TargetPhase.DINKS}, set()):
            cells = (_cell(one, with_place=one.phase in placed) for one in chosen)
            lines.append(" ".join(cells))
    return first_that_fits(lines)


def _cell(target: Target, *, with_place: bool) -> str:
    return f"{LABEL[target.phase]}: {aimed(target, with_place=with_place)}."


def aimed(target: Target, *, with_place: bool = True) -> str:
    """ "Okafor's backhand", or the name alone; "even" for neither."""
    if target.one is None:
        return "even"
    if is_behind(target):
        return f"behind {target.one.name}"
    place = target.place.place if with_place else ""
    return f"{target.one.name}'s {place}" if place else target.one.name


def is_behind(target: Target) -> bool:
    """Whether it goes where a poacher comes from, as the third's own page says, not at him."""
    scale = None if target.driver is None else target.driver.effect.scale
    is_theirs = scale is not None and target.one is not None and scale.player == target.one.player
    is_poacher = scale is not None and scale.trait is Trait.POACHING
    return target.phase is TargetPhase.THIRD and is_theirs and is_poacher


def _is_of_the_other(target: Target) -> bool:
    """Whether the reason is what a ball at the partner would lose: the target covers it."""
    other, part = target.other, target.driver
    return other is not None and part is not None and f"|of {other.player}|" in str(part.effect.id)


_VERB: Mapping[TargetPhase, str] = MappingProxyType(
    {
        TargetPhase.RETURN: "return deep at",
        TargetPhase.THIRD: "play thirds",
        TargetPhase.DINKS: "dink",
        TargetPhase.HANDS: "speed up at",
        TargetPhase.LOBS: "lob",
        TargetPhase.LATE: "make it long on",
    }
)

_OFTEN: Mapping[TargetPhase, str] = MappingProxyType({TargetPhase.LOBS: "once or twice a game"})

_EVEN: Mapping[TargetPhase, str] = MappingProxyType(
    {
        TargetPhase.RETURN: "Return deep middle: neither third is worse.",
        TargetPhase.THIRD: "Play thirds to the middle: neither is worse.",
        TargetPhase.DINKS: "Dink the middle: neither is clearly weaker.",
        TargetPhase.HANDS: "Speed up in front of you: neither is slower.",
        TargetPhase.LOBS: "Leave the lob: neither invites it.",
        TargetPhase.LATE: "Play both late on: neither is known to crack.",
    }
)

NOT_OURS: Mapping[TargetPhase, str] = MappingProxyType(
    {
        TargetPhase.RETURN: "Return deep middle: aim at nobody.",
        TargetPhase.THIRD: "Play thirds to the middle: aim at nobody.",
        TargetPhase.DINKS: "Dink the middle: aim at nobody.",
        TargetPhase.HANDS: "Keep dinking: let them speed up first.",
        TargetPhase.LOBS: "Leave the lob: it isn't your shot.",
        TargetPhase.LATE: "Play both late on: neither is known to crack.",
    }
)
"""Where both of us have the shot marked as weak."""


def phase_call(target: Target) -> str:
    """The call where one phase was asked about."""
    if target.one is None:
        return _EVEN[target.phase]
    often = _OFTEN.get(target.phase, f"about {tenths(target.share)} of 10")
    candidates = []
    for with_place in (True, False):
        where = aimed(target, with_place=with_place)
        if target.phase is TargetPhase.THIRD and not is_behind(target):
            where = f"at {where}"
        said = f"{_VERB[target.phase]} {where}"
        said = f"{target.only.name}: {said}" if target.only else capital(said)
        candidates += [f"{said}, {often}.", f"{said}."]
    return first_that_fits(candidates)


def tenths(share: float) -> int:
    """Of ten balls, rounded down: a little less feeding is the safer side."""
    return int(10 * share + 1e-9)


def ground(target: Target) -> Reason | None:
    """Why this one: a weakness of theirs, or a strength of the partner to keep away from."""
    part = target.driver
    scale = None if part is None else part.effect.scale
    if target.one is None or part is None or scale is None:
        return None
    said = said_of(part.effect)
    is_own = scale.player == target.one.player
    about = target.one if is_own else target.other
    name = "" if about is None else about.name
    where = LABEL[target.phase]
    if is_own and _is_of_the_other(target) and target.other is not None:
        at_other = f"at {target.other.name}, {name} {said}"
        text = first_that_fits((f"{where}: {at_other}", at_other, said), limit=LINE_LIMIT)
        return Reason(text=text, source=_source(target))
    whom = aimed(target) if is_behind(target) else name
    text = first_that_fits(
        (
            f"{where}: {whom}, {said}" if is_own else f"{where}: not {name}, {said}",
            f"{name}: {said}",
            said,
        )
        if not said.endswith(f" on {name}")
        else (f"{where}: {said}", said, f"{where}: {said.removesuffix(f' on {name}')} there"),
        limit=LINE_LIMIT,
    )
    return Reason(text=text, source=_source(target))


def _source(target: Target) -> Source:
    scale = None if target.driver is None else target.driver.effect.scale
    if scale is None or not scale.estimate.evidence:
        return COMMON_PRACTICE
    return scale.estimate.source


AT_THE_NET = frozenset({TargetPhase.DINKS, TargetPhase.HANDS, TargetPhase.LATE})
"""Where a partner can squeeze in; behind a return or a third he can only come forward."""


def fade_sign(shown: Sequence[Target]) -> str:
    """What fades it, and the answer to it: the partner most likely to help, by the notes."""
    near = [one for one in shown if one.phase in AT_THE_NET]
    target = max(near or shown[:1], key=lambda one: one.cover)
    name = "the partner" if target.other is None else target.other.name
    if target.phase is TargetPhase.RETURN:
        what = ("crashes in", "return there")
    elif target.phase is TargetPhase.LOBS:
        what = ("runs for it", "stop lobbing")
    else:
        what = ("squeezes", "hit behind once")
    sign, answer = what
    return first_that_fits(
        (
            f"When {name} {sign}: {answer}",
            f"{name} {sign}? {answer.capitalize()}",
            f"The partner {sign}? {answer.capitalize()}",
        ),
        limit=LINE_LIMIT,
    )


def number(target: Target) -> str:
    """The share, and why not all of them."""
    few = tenths(target.share)
    if target.phase is TargetPhase.LOBS:
        return "Surprise is the shot: two a game at most."
    return f"{few} of 10, not all: all 10 and the edge is gone."


def slight_call(one: OnCourt) -> str:
    """Both alike, with whom a note favours."""
    return first_that_fits((f"Both alike, a shade more at {one.name}.", EVEN_CALL))


def slightly(leaning: tuple[OnCourt, Part]) -> Reason:
    """What favours them."""
    effect = leaning[1].effect
    return Reason(text=effect.because, source=effect.source)
