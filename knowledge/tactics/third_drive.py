"""At whom to drive a third: asked before the rally, so that the drive itself is settled."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.advice import MAX_REASONS, Advice, Choice, Confidence, MatchFact, Reason
from knowledge.effects import OptionId
from knowledge.engine import Part
from knowledge.planning.names import first_that_fits
from knowledge.planning.probes import hand_choices
from knowledge.planning.thirds import Third, best_third
from knowledge.planning.weighing import is_open, said_of
from knowledge.regex import regex
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import third_words as words
from knowledge.tactics.aim_words import assumed, short, sum_lines
from knowledge.tactics.standing_words import capital
from knowledge.tactics.third_options import DRIVE, MIDDLE, at
from knowledge.tactics.third_picture import picture
from knowledge.tactics.third_reasons import rule_why, wind_reasons
from knowledge.tactics.told_ball import plain_words
from knowledge.tactics.told_reasons import figures, noted_by_name, plain
from knowledge.vocabulary import BallQuality, Topic

CALL_AT_NOBODY = "Drive through the middle, then drop the fifth."
LATE_ONE = "One still coming in? Drive at that one."
"""Never at a set counter: at whoever is on the move, or through the middle (the team's coaching
review, 2.5; common practice, no source)."""

ONLY_SHORT = "Deep or low return? Drop it."

_DRIVE = regex(r"\b(?:drive|drives|driving|rip|bang|blast)\b")
_WHO = regex(r"\b(?:who|whom|whos|which (?:one|of)|target|better one|weaker one)\b")
_WHERE = regex(
    r"\bwhere (?:(?:do|should|shall|can|would|to|i|we|best) )+(?:drive|rip|bang|blast)\b"
)
_NOT_AT_WHOM = regex(
    r"\b(?:they|he|she|their|his|her) (?:\w+ )?(?:drive|drives|driving|bang|rip)\b|"
    r"\bwho(?:s| is| of us)? (?:drives|driving|rips|bangs)\b"
)
_ANOTHER_SHOT = regex(r"\b(?:drops?|lobs?|mix|hits?|covers?|takes?)\b")


def asks_whom_to_drive(situation: Situation) -> bool:
    """Whether it is asked at whom to drive, or one of them is named as the target of a drive."""
    asked = plain_words(situation.asked.words)
    if not _DRIVE.search(asked) or _NOT_AT_WHOM.search(asked) or _ANOTHER_SHOT.search(asked):
        return False
    named = [one for one in situation.theirs if one.player in situation.asked.about]
    is_aimed = named or _WHO.search(asked) or _WHERE.search(asked)
    return bool(is_aimed) and not _is_theirs(asked, named)


def _is_theirs(asked: str, named: Sequence[OnCourt]) -> bool:
    """Whether it is the named one who drives: "rudd drives at me"."""
    names = [plain_words(one.name) for one in named]
    return any(f"{name} {does}" in asked for name in names for does in ("drives", "bangs", "rips"))


def drive_at(situation: Situation, drives: Sequence[Third]) -> Advice:
    """At whom notes send it, or away from whom, with the note; else the rule and the late one."""
    third = best_third(drives)
    against = None if third.target is not None else _against(third, situation)
    spared = None if against is None else against[0]
    rather = _rather(third, spared, situation)
    is_general = third.target is None and against is None
    return Advice(
        topic=Topic.THIRD_SHOT,
        call=_call(third, rather),
        reasons=(*_noted(third, against, situation), *_general_why(drives, situation))[
            :MAX_REASONS
        ],
        unless=ONLY_SHORT,
        assumed=assumed(situation, is_general=True) if is_general else None,
        caution=words.BODY_CAUTION if third.target is not None or rather is not None else None,
        confidence=Confidence.GENERAL_RULE if is_general else Confidence.LEAN,
        numbers=figures(third.weighed.ranking),
        choices=(*_choices(), *hand_choices(situation.theirs, Topic.THIRD_SHOT)),
        picture=None if third.target is None else picture(third, None, situation),
        more=sum_lines(third.weighed.ranking.of(third.option).parts, what="The drive"),
    )


def _call(third: Third, rather: OnCourt | None) -> str:
    if third.target is not None:
        return words.call(third)
    if rather is not None:
        return first_that_fits((f"Drive at {rather.name}, then drop the fifth.", CALL_AT_NOBODY))
    return CALL_AT_NOBODY


def _against(third: Third, situation: Situation) -> tuple[OnCourt, Part] | None:
    """Whom of them notes speak against most, and the part; None where that is neither."""
    found = []
    for one in situation.theirs:
        parts = third.weighed.ranking.of(OptionId(at(DRIVE, one))).parts
        about = (each for each in parts if each.points < 0 and each.evidence and not is_open(each))
        found += [
            (one, part)
            for part in about
            if part.effect.scale is not None and part.effect.scale.player == one.player
        ]
    return min(found, key=lambda each: each[1].points, default=None)


def _rather(third: Third, spared: OnCourt | None, situation: Situation) -> OnCourt | None:
    """The other one, where nothing noted makes the middle the better ball."""
    other = next((one for one in situation.theirs if one != spared), None)
    if spared is None or other is None:
        return None
    ranking = third.weighed.ranking
    at_other, middle = (
        ranking.of(OptionId(one)) for one in (at(DRIVE, other), f"{DRIVE}:{MIDDLE}")
    )
    return other if at_other.logit >= middle.logit else None


def _noted(
    third: Third, against: tuple[OnCourt, Part] | None, situation: Situation
) -> tuple[Reason, ...]:
    if against is not None:
        one, part = against
        said = said_of(part.effect)
        return (Reason(text=short((f"Not {one.name}: {said}", capital(said))), source=part.source),)
    if third.target is None:
        return ()
    return (*noted_by_name(third.weighed.ranking.of(third.option).parts, situation)[:1],)


def _general_why(drives: Sequence[Third], situation: Situation) -> tuple[Reason, ...]:
    _, short_one, *_ = rule_why(situation)
    return (*wind_reasons(list(drives), DRIVE), *plain(LATE_ONE), short_one)


def _choices() -> tuple[Choice, ...]:
    rows = (("short return", BallQuality.EASY), ("deep or stretched", BallQuality.STRETCHED))
    return tuple(
        Choice(label=label, topic=Topic.THIRD_SHOT, fact=MatchFact.BALL.value, value=value.value)
        for label, value in rows
    )
