"""Who takes the ball down the middle: by kind of ball, hands, courts, and what we agreed."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.effects import Truth
from knowledge.engine import Part, confidence_of
from knowledge.situation import Familiarity, OnCourt, Situation, Wind
from knowledge.sources import COMMON_PRACTICE, Source, SourceKind
from knowledge.tactics import middle_words as words
from knowledge.tactics.conditions import WEAK_LEVEL
from knowledge.tactics.middle_agreed import agreed_by_name
from knowledge.tactics.middle_answer import (
    DISAGREES_FROM,
    FAST,
    SLOW,
    MiddleAnswer,
    Owner,
    Taken,
    answer_middle,
)
from knowledge.tactics.middle_both_ways import both_ways, seated_as_meeting
from knowledge.tactics.middle_effects import (
    MIDDLE_SHARE,
    NO_HESITATION_NEW,
    NO_HESITATION_REGULAR,
    MiddleBall,
    Seat,
    place_of,
)
from knowledge.tactics.middle_picture import picture
from knowledge.tactics.middle_seam import shift_ft
from knowledge.tactics.middle_times import IN_TIME, slack_ms
from knowledge.tactics.said_hands import SaidHands, said_hands, supposing
from knowledge.vocabulary import BallKind, Hand, PlayerId, Side, Topic, Trait, Value, Wing

TURN_AND_RUN = "Turn and run for a lob; never backpedal."
AGREED = Source(kind=SourceKind.AGREED, citation="")
REASONS_AT_MOST = 3
CHOICES_AT_MOST = 6
LEAST_SAID_POINTS = 0.5
"""What moves a call by less than this is no reason for it."""

AGREEMENT_SHOWN = 34
"""Characters of an agreement's own words that fit a reason line."""


def advise(situation: Situation) -> Advice:
    """An owner for every kind of ball, with the agreement kept where there is one."""
    said = said_hands(situation)
    situation = seated_as_meeting(situation) if said is None else supposing(situation, said)
    answer = answer_middle(situation)
    choices = _choices(answer, situation)
    settled = agreed_by_name(situation, choices)
    settled = settled or (both_ways(situation, choices) if said is None else None)
    if settled is not None:
        return _in_the_wind(settled, situation)
    asked = situation.asked.ball_kind
    call = words.call(answer, asked)
    return Advice(
        topic=Topic.COVER_MIDDLE,
        call=call,
        reasons=_reasons(answer, asked, situation)[:REASONS_AT_MOST],
        number=_number(answer, situation),
        unless=None if answer.pulled_wide else _unless(situation),
        assumed=_assumed(answer, situation) if said is None else _as_said(said),
        confidence=_confidence(answer, asked),
        numbers=_numbers(answer, situation),
        choices=choices,
        caution=TURN_AND_RUN if asked is BallKind.LOB else None,
        picture=picture(answer, call, asked),
        more=_more(answer),
    )


def _unless(situation: Situation) -> str:
    return words.IF_WIDE if situation.wind in (None, Wind.NONE) else words.IN_WIND


def _in_the_wind(advice: Advice, situation: Situation) -> Advice:
    """Who takes it stays; when to call it and what to let bounce does not."""
    blows = situation.wind not in (None, Wind.NONE)
    return replace(advice, unless=words.IN_WIND) if blows else advice


def _shown(answer: MiddleAnswer, asked: BallKind | None) -> list[Taken]:
    """The balls that the call speaks of."""
    kinds = (asked,) if asked else (*SLOW, *FAST)
    return [answer.of(kind) for kind in kinds]


def _reasons(
    answer: MiddleAnswer, asked: BallKind | None, situation: Situation
) -> tuple[Reason, ...]:
    shown = _shown(answer, asked)
    found = _agreement(answer, shown)
    if answer.pulled_wide is not None:
        moved = words.moved(answer.pulled_wide, shift_ft(answer, asked))
        found.append(Reason(text=moved, source=IN_TIME))
    found += _from_notes(shown)
    found += _two_alike(answer)
    for taken in shown:
        if taken.agreed is None:
            found += [
                Reason(text=part.effect.because, source=part.effect.source)
                for part in taken.ranking.best.parts
                if _may_say(answer, taken, part)
            ][:1]
    if any(_rests_on_a_guessed_hand(answer, taken) for taken in shown):
        found.append(Reason(text="A right-hander's forehand is there", source=COMMON_PRACTICE))
    found += _their_habit(situation)
    return tuple(dict.fromkeys(found))


def _agreement(answer: MiddleAnswer, shown: list[Taken]) -> list[Reason]:
    agreement = answer.agreement
    if agreement is None or answer.pulled_wide is not None:
        return []
    said = agreement.words or agreement.value
    quoted = f"You agreed: {said}" if len(said) <= AGREEMENT_SHOWN else "As you agreed"
    if all(taken.agreed is None for taken in shown) and len(said) > AGREEMENT_SHOWN:
        quoted = "Your agreement names no side I know"
    found = [Reason(text=quoted, source=AGREED)]
    worst = max(shown, key=lambda taken: taken.lost_by_agreement)
    if worst.agreed is not None and worst.lost_by_agreement >= DISAGREES_FROM:
        found.append(Reason(text=words.rather(answer, worst), source=COMMON_PRACTICE))
    return found


def _from_notes(shown: list[Taken]) -> list[Reason]:
    """What notes on our own players say for the owner, largest first."""
    parts = [
        part
        for taken in shown
        if taken.agreed is None
        for part in taken.ranking.best.parts
        if part.evidence and part.points > 0 and part.truth is Truth.YES
    ]
    parts.sort(key=lambda part: -part.points)
    return [Reason(text=part.effect.because, source=part.source) for part in parts[:1]]


def _may_say(answer: MiddleAnswer, taken: Taken, part: Part) -> bool:
    """A rule's own reason for a rule, a player's for a player; nothing that rests on a guess."""
    if part.points < LEAST_SAID_POINTS or part.truth is Truth.NO or part.evidence:
        return False
    is_cross = part.effect.id.startswith("cross")
    if taken.owner in (Owner.CROSS, Owner.FRONT) and answer.hitter_side is None:
        return is_cross
    return part.truth is Truth.YES and (answer.hitter_side is not None or not is_cross)


def _rests_on_a_guessed_hand(answer: MiddleAnswer, taken: Taken) -> bool:
    """A left court or its player that wins because most people are right-handed.

    On the right court a right-hander has the backhand there.
    """
    seat = answer.player(taken.owner)
    is_guessed = seat is not None and seat.wing is None and seat.side is Side.LEFT
    return taken.agreed is None and is_guessed


def _likely_wing(seat: Seat) -> Wing | None:
    """The wing in the middle; of a named court it is a right-hander's where no hand is known."""
    if seat.wing is not None or not seat.named:
        return seat.wing
    return Wing.FOREHAND if seat.side is Side.LEFT else Wing.BACKHAND


def _two_alike(answer: MiddleAnswer) -> list[Reason]:
    wings = tuple(_likely_wing(seat) for seat in answer.seats)
    if wings == (Wing.FOREHAND, Wing.FOREHAND):
        return [Reason(text="Two forehands meet: say it early", source=COMMON_PRACTICE)]
    if wings == (Wing.BACKHAND, Wing.BACKHAND):
        return [
            Reason(text="Two backhands meet: swap sides, or name an owner", source=COMMON_PRACTICE)
        ]
    return []


def _their_habit(situation: Situation) -> list[Reason]:
    for one in situation.theirs:
        estimate = one.profile.skill(Trait.SPEED_UP)
        if estimate.level >= -WEAK_LEVEL:
            return [Reason(text=f"{one.name} speeds up well: be set", source=estimate.source)]
    return []


def _number(answer: MiddleAnswer, situation: Situation) -> str | None:
    lob = f"Lob in the middle: {words.who(answer, answer.of(BallKind.LOB))}."
    if situation.familiarity is Familiarity.NEW:
        return f"New pair: call it out loud, +{NO_HESITATION_NEW:.0f} in 100. {lob}"
    return None if situation.asked.ball_kind is BallKind.LOB else lob


def _assumed(answer: MiddleAnswer, situation: Situation) -> str | None:
    lefties = [one.name for one in situation.ours if one.hand is Hand.LEFT]
    unknown = [seat.who.name for seat in answer.seats if seat.wing is None]
    if not all(seat.named for seat in answer.seats):
        if unknown and lefties and all(lefties):
            lefty = " and ".join(lefties)
            return f"Who plays left? Taken as two right-handers, but {lefty} is lefty."
        hands = "; taking both as right-handed" if unknown else ""
        return f"I don't know who plays left{hands}."
    return f"Taking {' and '.join(unknown)} as right-handed." if unknown else None


def _as_said(said: SaidHands) -> str:
    """Whom the answer is for, where the question told hands."""
    if said.fits_us:
        return f"As you said: {said.words}."
    return f"For a pair {said.words}: your book has you otherwise."


def _confidence(answer: MiddleAnswer, asked: BallKind | None) -> Confidence:
    if all(wing is None for wing in answer.wings) and answer.pulled_wide is None:
        return Confidence.GENERAL_RULE
    if any(taken.agreed for taken in _shown(answer, asked)):
        return Confidence.CLEAR  # a decision made beforehand is worth more than who takes it
    return confidence_of(min(taken.p_best for taken in _shown(answer, asked)))


def _numbers(answer: MiddleAnswer, situation: Situation) -> MappingProxyType[str, float]:
    is_new = situation.familiarity is Familiarity.NEW
    numbers = {
        "share": MIDDLE_SHARE,
        "no_hesitation_points": NO_HESITATION_NEW if is_new else NO_HESITATION_REGULAR,
    }
    if answer.pulled_wide is not None:
        numbers["seam_moves_right_ft"] = shift_ft(answer, situation.asked.ball_kind)
    for taken in answer.taken:
        numbers |= {
            f"{taken.kind}_{seat.side}_slack_ms": _slack_ms(answer, seat, taken)
            for seat in answer.seats
        }
        numbers[f"{taken.kind}_points"] = taken.gain
        numbers[f"{taken.kind}_p_best"] = taken.p_best
        numbers[f"{taken.kind}_chance"] = taken.chance(taken.owner)
    return MappingProxyType(numbers)


def _slack_ms(answer: MiddleAnswer, seat: Seat, taken: Taken) -> float:
    """This player's time to spare on the ball, over the courts it may come from."""
    wide = None if answer.pulled_wide is None else answer.pulled_wide.who.player
    places = [
        place_of(seat, MiddleBall(kind=taken.kind, hitter_side=hitter, pulled_wide=wide))
        for hitter, _ in taken.rankings
    ]
    return sum(slack_ms(place, seat.who.profile) for place in places) / len(places)


def _choices(answer: MiddleAnswer, situation: Situation) -> tuple[Choice, ...]:
    found: list[Choice] = []
    unsided = [one for one in situation.ours if one.side is None]
    found += [_choice(f"{one.name} left", MatchFact.SIDE, Side.LEFT, one.player) for one in unsided]
    found += [
        _choice(f"{one.name} is lefty", Trait.HAND, Value.LEFT, one.player)
        for one in situation.ours
        if one.hand is None
    ]
    if answer.pulled_wide is None:
        found += [_pulled(one) for one in situation.ours if one.side is not None]
    if situation.asked.ball_kind is None:
        found.append(_choice("speed-up", MatchFact.BALL_KIND, BallKind.SPEED_UP))
    if situation.familiarity is None:
        found.append(_choice("new pair", MatchFact.FAMILIARITY, Familiarity.NEW))
    return tuple(found[:CHOICES_AT_MOST])


def _pulled(one: OnCourt) -> Choice:
    return _choice(f"{one.name} pulled wide", MatchFact.PULLED_WIDE, Value.YES, one.player)


def _choice(label: str, fact: str, value: str, about: PlayerId | None = None) -> Choice:
    return Choice(
        label=label, topic=Topic.COVER_MIDDLE, fact=str(fact), value=str(value), about=about
    )


def _more(answer: MiddleAnswer) -> tuple[str, ...]:
    """Each kind of ball on a line of its own."""
    return tuple(
        f"{words.KIND[taken.kind].capitalize()}: {words.who(answer, taken)} ({why})"
        for taken in answer.taken
        for why in (f"{taken.gain:+.1f} in 100" if taken.agreed is None else "agreed",)
    )
