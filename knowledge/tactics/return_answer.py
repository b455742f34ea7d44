"""The decision behind a return: whom at or the middle, and how it is hit."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.effects import Decision, Option, OptionId, Truth
from knowledge.engine import Part, Ranking, rank
from knowledge.game import places, receiver, server
from knowledge.planning.sizes import RECEIVING_CHANCE, RETURN_SHARE
from knowledge.planning.weighing import driver_of
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import return_sizes as sizes
from knowledge.tactics.conditions import marks_weak
from knowledge.tactics.return_depth import DEEP, MID_COURT, depth_effects, depth_row
from knowledge.tactics.return_effects import target_effects
from knowledge.tactics.return_question import (
    CROSSER,
    MIDDLE,
    SEEN,
    SERVER,
    STACKED,
    ReturnQuestion,
    at,
    player_at,
    says_height_m,
    says_inside,
    says_jammed,
    says_short_serve,
    says_stack,
)
from knowledge.tactics.return_styles import style_effects
from knowledge.tactics.return_time import Contact, Flown, Style
from knowledge.tactics.serve_return_depth import best_depth
from knowledge.tactics.shot_success import OurScatter, our_scatter
from knowledge.tactics.wind_along import wind_along_mps
from knowledge.vocabulary import BallQuality, Trait

STYLE_LABELS = {Style.HIGH: "high and deep", Style.HARD: "hard", Style.SLICE: "low slice"}


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnAnswer:
    """The targets ranked, the ways to hit it, and how deep."""

    question: ReturnQuestion
    ranking: Ranking
    styles: Ranking
    depth: Ranking

    @property
    def target(self) -> OnCourt | None:
        """The one to return at; None for the middle."""
        return player_at(self.option, self.question.theirs)

    @property
    def option(self) -> OptionId:
        return self.ranking.best.option.id

    @property
    def style(self) -> Style:
        return Style(self.styles.best.option.id)

    @property
    def is_deep(self) -> bool:
        """Whether to aim deep: the usual advice stands unless mid-court is clearly better."""
        return self.depth.best.option.id == DEEP or self.depth.gain() < sizes.LITTLE

    @property
    def high(self) -> Flown:
        """The high return as aimed."""
        return self.question.high if self.is_deep else self.question.short

    @property
    def aim_ft(self) -> float:
        """How far inside the baseline to aim."""
        return self.question.depth.inside_ft if self.is_deep else sizes.MID_COURT_FT

    @property
    def driver(self) -> Part | None:
        """The largest help for this target that notes on them stand behind and settle."""
        return driver_of(self.ranking.best.parts, self.question.theirs)


def answer_return(situation: Situation) -> ReturnAnswer:
    """Whom to return at and how; the middle where our own return is marked weak or jammed."""
    question = question_of(situation)
    ranking = _targets(question, _options(question), situation)
    target = player_at(ranking.best.option.id, question.theirs)
    if target is not None and not _has_ground(ranking, question):
        ranking = _targets(question, (_MIDDLE,), situation)
        target = None
    return ReturnAnswer(
        question=question,
        ranking=ranking,
        styles=_styles(question, target, situation),
        depth=_depth(question, situation),
    )


def _targets(
    question: ReturnQuestion, options: tuple[Option, ...], situation: Situation
) -> Ranking:
    known = {option.id for option in options}
    return rank(
        Decision(
            options=options,
            effects=tuple(one for one in target_effects(question) if one.on <= known),
            neutral=RECEIVING_CHANCE,
            share=RETURN_SHARE,
        ),
        situation,
    )


def _has_ground(ranking: Ranking, question: ReturnQuestion) -> bool:
    """Whether something is known of a target: a lane alone names nobody."""
    is_seen = any(
        part.effect.id.startswith(SEEN) and part.truth is Truth.YES for part in ranking.best.parts
    )
    return is_seen or driver_of(ranking.best.parts, question.theirs) is not None


def _styles(question: ReturnQuestion, target: OnCourt | None, situation: Situation) -> Ranking:
    """Jammed, or with a weak return of our own, there is only the high one."""
    styles = (Style.HIGH,) if _only_safe(question) else tuple(Style)
    known = {OptionId(style) for style in styles}
    effects = (one for one in style_effects(question, target) if one.on <= known)
    return rank(
        Decision(
            options=tuple(Option(id=OptionId(one), label=STYLE_LABELS[one]) for one in styles),
            effects=tuple(effects),
            neutral=RECEIVING_CHANCE,
            share=RETURN_SHARE,
        ),
        situation,
    )


def _depth(question: ReturnQuestion, situation: Situation) -> Ranking:
    """Depth adds the same to every target, so it is a choice of its own."""
    return rank(
        Decision(
            options=(Option(id=DEEP, label="deep"), Option(id=MID_COURT, label="mid-court")),
            effects=tuple(depth_effects(question)),
            neutral=RECEIVING_CHANCE,
            share=RETURN_SHARE,
        ),
        situation,
    )


def _only_safe(question: ReturnQuestion) -> bool:
    return question.ball is BallQuality.STRETCHED or not able(question)


def able(question: ReturnQuestion) -> tuple[OnCourt | None, ...]:
    """Who of our returners may aim: whoever's own profile does not mark the return as weak."""
    returners = (question.returner,) if question.returner is not None else question.ours or (None,)
    return tuple(one for one in returners if not marks_weak(one, Trait.RETURN))


_MIDDLE = Option(id=MIDDLE, label="deep middle")


def _options(question: ReturnQuestion) -> tuple[Option, ...]:
    found = [_MIDDLE]
    if _only_safe(question):
        return tuple(found)
    found += [Option(id=at(one), label=f"at {one.name}") for one in question.theirs]
    if question.crosser_unknown:
        found.append(Option(id=CROSSER, label="at whoever crosses"))
    if question.server_inside and question.server is None:
        found.append(Option(id=SERVER, label="at the server's feet"))
    return tuple(found)


def question_of(situation: Situation) -> ReturnQuestion:
    game = situation.game
    they_serve = game is not None and not game.we_serve
    at_score = places(game) if game is not None and they_serve else None
    server_id = server(game) if game is not None and they_serve else None
    ball = _ball(situation)
    contact, scatter = _contact(ball, situation), _scatter(ball, situation)
    high = contact.ball(Style.HIGH)
    return ReturnQuestion(
        theirs=situation.theirs,
        ours=situation.ours,
        returner=returner_of(situation),
        returner_side=at_score.ours.bound_court if at_score else situation.asked.striker_side,
        server=None if server_id is None else situation.find(server_id),
        server_court=at_score.serving.bound_court if at_score else None,
        ball=ball,
        stacked=_stacked(situation),
        server_inside=says_inside(situation.asked.words),
        wind=situation.wind,
        contact=contact,
        scatter=scatter,
        depth=best_depth(depth_row(situation), high, scatter, RECEIVING_CHANCE),
    )


def _contact(ball: BallQuality, situation: Situation) -> Contact:
    """Where the return is met: as said, else where a serve of this kind is usually met."""
    height_m, from_net_m = sizes.MET[ball]
    facts = situation.asked.facts
    moves = facts.footing
    said_m = _said_height_m(situation)
    return Contact(
        height_m=height_m if said_m is None else said_m,
        from_net_m=from_net_m if facts.from_net_m is None else facts.from_net_m,
        head_start_s=sizes.HEAD_START_S[ball] if moves is None else sizes.MOVING_S[moves],
        wind_mps=wind_along_mps(situation.wind, facts.wind_mps),
    )


def _said_height_m(situation: Situation) -> float | None:
    found = situation.asked.facts.height_m
    return says_height_m(situation.asked.words) if found is None else found


def _scatter(ball: BallQuality, situation: Situation) -> OurScatter:
    """Our returner's; of two who may return the first, where both returns are weak."""
    returner = returner_of(situation)
    weak = [one for one in situation.ours if marks_weak(one, Trait.RETURN)]
    if returner is None and weak and len(weak) == len(situation.ours):
        returner = weak[0]
    return our_scatter(returner, Trait.RETURN, situation.level).times(sizes.WILDER[ball])


def returner_of(situation: Situation) -> OnCourt | None:
    """Who of ours returns: by the score, else who asks."""
    game = situation.game
    bound = receiver(game) if game is not None and not game.we_serve else None
    for player in (bound, situation.striker, situation.asker):
        found = None if player is None else situation.find(player)
        if found is not None and found in situation.ours:
            return found
    return None


def _stacked(situation: Situation) -> bool:
    if situation.their_formation is not None:
        return situation.their_formation in STACKED
    noted = any(one.profile.habit(Trait.STACKS).level > 0 for one in situation.theirs)
    return noted or says_stack(situation.asked.words)


def _ball(situation: Situation) -> BallQuality:
    """The serve that came: as said, a short one easy, else a usual one.

    A height is a matter of the contact: a low ball off the bounce does not jam us.
    """
    asked = situation.asked
    if says_jammed(asked.words):
        return BallQuality.STRETCHED
    if asked.ball is not None and _said_height_m(situation) is None:
        return asked.ball
    return BallQuality.EASY if says_short_serve(asked.words) else BallQuality.NEUTRAL
