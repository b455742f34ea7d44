"""The decision behind a serve: who must receive, the lanes ranked, how deep, and the change-up."""

from __future__ import annotations

from knowledge.court import Lane as CourtLane
from knowledge.dataclass import dataclass
from knowledge.effects import Decision, Option, OptionId
from knowledge.engine import Part, Ranking, rank
from knowledge.evidence import Profile
from knowledge.flight import Shot, scatter_factor
from knowledge.game import places, receiver, server
from knowledge.planning.sizes import SERVE_SHARE, SERVING_CHANCE
from knowledge.planning.weighing import driver_of
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import serve_sizes as sizes
from knowledge.tactics.conditions import marks_weak
from knowledge.tactics.serve_effects import (
    DEEP,
    MID_BOX,
    ServeQuestion,
    depth_effects,
    lane_effects,
)
from knowledge.tactics.serve_lanes import Lane
from knowledge.tactics.serve_return_depth import (
    DepthRow,
    best_depth,
    every_half_foot,
)
from knowledge.tactics.serve_scatter import scatter_of
from knowledge.tactics.shot_success import Ball, our_scatter
from knowledge.tactics.wind_along import wind_along_mps
from knowledge.vocabulary import PlayerId, Side, Trait

NOBODY = OnCourt(profile=Profile(player=PlayerId(-1), name=""))
"""A receiver of whom we know nothing, not even the name."""

DEPTH_ROW = DepthRow(
    worth=sizes.DEEP,
    last_ft=sizes.LAST_FT,
    mid_ft=sizes.MID_BOX_FT,
    aims_ft=every_half_foot(*sizes.AIMS_FT),
)

LABELS = {Lane.WIDE: "wide", Lane.T: "down the T", Lane.BODY: "into the body"}


@dataclass(frozen=True, slots=True, kw_only=True)
class ServeAnswer:
    """The lanes ranked for one receiver in one court, and the depth."""

    question: ServeQuestion
    ranking: Ranking
    depth: Ranking

    @property
    def lane(self) -> Lane:
        return Lane(self.ranking.best.option.id)

    @property
    def is_deep(self) -> bool:
        """Whether to aim deep: the usual advice stands unless mid-box is clearly better."""
        if marks_weak(self.question.server, Trait.SERVE):
            return False
        return self.depth.best.option.id == DEEP or self.depth.gain() < sizes.LITTLE

    @property
    def aim_ft(self) -> float:
        """How far inside the baseline to aim."""
        return self.question.depth.inside_ft if self.is_deep else sizes.MID_BOX_FT

    @property
    def driver(self) -> Part | None:
        """The largest help for this lane that notes on the receiver stand behind and settle."""
        return driver_of(self.ranking.best.parts, (self.question.receiver,))


def answer_serve(situation: Situation, one: OnCourt, court: Side) -> ServeAnswer:
    """Where to serve at this receiver in this court, as they see it.

    A server whose own profile marks the serve as weak has one target: the middle of the box.
    """
    serves = server_of(situation)
    ours = our_scatter(serves, Trait.SERVE, situation.level)
    question = ServeQuestion(
        receiver=one,
        court=court,
        server=serves,
        scatter=scatter_of(_trait_factor(serves), situation.wind),
        depth=best_depth(DEPTH_ROW, _ball(situation), ours, SERVING_CHANCE),
        wind=situation.wind,
        their_formation=situation.their_formation,
    )
    lanes = (Lane.BODY,) if marks_weak(serves, Trait.SERVE) else tuple(Lane)
    ranking = rank(
        Decision(
            options=tuple(Option(id=OptionId(lane), label=LABELS[lane]) for lane in lanes),
            effects=lane_effects(question, lanes),
            neutral=SERVING_CHANCE,
            share=SERVE_SHARE,
        ),
        situation,
    )
    return ServeAnswer(question=question, ranking=ranking, depth=_depth(question, situation))


def _trait_factor(server: OnCourt | None) -> float:
    """What notes on our server make of the scatter across; the usual one is of any level."""
    return scatter_factor(0.0 if server is None else server.profile.skill(Trait.SERVE).level)


def _ball(situation: Situation) -> Ball:
    height_m, from_net_m = sizes.MET_M
    wind_mps = wind_along_mps(situation.wind, situation.asked.facts.wind_mps)
    return Ball(
        shot=Shot.SERVE,
        height_m=height_m,
        from_net_m=from_net_m,
        lane=CourtLane.CROSS,
        wind_mps=wind_mps,
    )


def _depth(question: ServeQuestion, situation: Situation) -> Ranking:
    """Depth adds the same to every lane, so it is a choice of its own."""
    decision = Decision(
        options=(Option(id=DEEP, label="deep"), Option(id=MID_BOX, label="middle of the box")),
        effects=depth_effects(question),
        neutral=SERVING_CHANCE,
        share=SERVE_SHARE,
    )
    return rank(decision, situation)


def server_of(situation: Situation) -> OnCourt | None:
    """Who of ours serves: by the score, else who asks; the one we have if all of ours are weak."""
    game = situation.game
    by_score = server(game) if game is not None and game.we_serve else None
    for player in (by_score, situation.striker, situation.asker):
        found = None if player is None else situation.find(player)
        if found is not None and found in situation.ours:
            return found
    weak = [one for one in situation.ours if marks_weak(one, Trait.SERVE)]
    return weak[0] if weak and len(weak) == len(situation.ours) else None


def receivers(situation: Situation) -> tuple[OnCourt, ...]:
    """Who receives: the one the score binds, else who is asked about, else both."""
    bound = receiver_at_score(situation)
    if bound is not None:
        return (bound,)
    asked = tuple(one for one in situation.theirs if one.player in situation.asked.about)
    return asked or situation.theirs or (NOBODY,)


def receiver_at_score(situation: Situation) -> OnCourt | None:
    game = situation.game
    who = receiver(game) if game is not None and game.we_serve else None
    return None if who is None else situation.find(who)


def court_of(situation: Situation) -> Side | None:
    """The court they receive in: ours that we serve from, as each pair counts its own."""
    game = situation.game
    at = places(game) if game is not None and game.we_serve else None
    return situation.asked.striker_side if at is None else at.receiving.bound_court
