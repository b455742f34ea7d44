"""The decisions behind the corner and the post: jump or stay, round or over, where to keep off."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.effects import Decision, Effect, Option, OptionId
from knowledge.engine import Ranking, rank
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import ernie_sizes as sizes
from knowledge.tactics.conditions import VOLLEYS, marks_weak
from knowledge.tactics.ernie_effects import (
    ACROSS,
    BEHIND,
    LINE,
    MIDDLE,
    OVER,
    ROUND,
    STAY,
    Corner,
    behind_effects,
    jump_effects,
    keep_off_effects,
    round_effects,
)
from knowledge.tactics.ernie_said import ErnieSaid, Kind, ernie_said
from knowledge.tactics.told_ball import striker_of
from knowledge.vocabulary import Side, Trait


@dataclass(frozen=True, slots=True, kw_only=True)
class ErnieAnswer:
    """What was asked and the options ranked; `corners` are those that somebody of ours can jump.

    `left_out` are jumpers whose volley at that corner our own profile marks as weak.
    """

    said: ErnieSaid
    ranking: Ranking
    corners: tuple[Corner, ...] = ()
    left_out: tuple[Corner, ...] = ()
    line_player: OnCourt | None = None

    @property
    def best(self) -> OptionId:
        return self.ranking.best.option.id

    @property
    def corner(self) -> Corner | None:
        """The corner to jump at; None where another option is better."""
        return next((one for one in self.corners if one.id == self.best), None)


def answer_ernie(situation: Situation) -> ErnieAnswer:
    said = ernie_said(situation)
    match said.kind:
        case Kind.OUR_ERNIE:
            return _ours(said, situation)
        case Kind.OUR_POST:
            return _round(said, situation)
        case _:
            return _theirs(said, situation)


def corners_of(situation: Situation) -> tuple[Corner, ...]:
    """The corners that the question is about: the asker's, that in front of whom it names, or all.

    Our right player faces their left player.
    """
    found = [
        Corner(
            side=side, jumper=_on(situation.ours, side), hitter=_on(situation.theirs, side.other)
        )
        for side in Side
    ]
    known = [one for one in found if one.jumper or one.hitter]
    known = [one for one in known if _is_asked(one, situation)] or _of_the_asker(known, situation)
    return tuple(known) or (
        Corner(side=None, jumper=striker_of(situation), hitter=_named(situation)),
    )


def _is_asked(corner: Corner, situation: Situation) -> bool:
    named, striker = _named(situation), striker_of(situation)
    if named is None and striker is None:
        return True
    if named is not None:
        return corner.hitter is not None and corner.hitter.player == named.player
    return (
        corner.jumper is not None
        and striker is not None
        and (corner.jumper.player == striker.player)
    )


def _of_the_asker(known: list[Corner], situation: Situation) -> list[Corner]:
    """Where whoever is named has no known side: the asker's corner, if that is known."""
    named, striker = _named(situation), striker_of(situation)
    if named is None or striker is None:
        return []
    return [
        Corner(side=one.side, jumper=one.jumper, hitter=named)
        for one in known
        if one.jumper is not None and one.jumper.player == striker.player and one.hitter is None
    ]


def _on(pair: tuple[OnCourt, ...], side: Side) -> OnCourt | None:
    return next((one for one in pair if one.side is side), None)


def _named(situation: Situation) -> OnCourt | None:
    return next((one for one in situation.theirs if one.player in situation.asked.about), None)


def can_volley_there(corner: Corner) -> bool:
    """Whether our own profile leaves the volley that this corner asks for."""
    if corner.wing is not None:
        return not marks_weak(corner.jumper, VOLLEYS[corner.wing])
    both = (Trait.FOREHAND_VOLLEY, Trait.BACKHAND_VOLLEY)
    return not all(marks_weak(corner.jumper, each) for each in both)


def _ours(said: ErnieSaid, situation: Situation) -> ErnieAnswer:
    asked = corners_of(situation)
    corners = tuple(one for one in asked if can_volley_there(one))
    ranking = _ranked(corners, said, situation)
    best = tuple(one for one in corners if one.id == ranking.best.option.id)
    left_out = tuple(one for one in asked if one not in corners)
    return ErnieAnswer(
        said=said,
        ranking=_ranked(best, said, situation) if best else ranking,
        corners=corners,
        left_out=left_out,
    )


def _ranked(corners: tuple[Corner, ...], said: ErnieSaid, situation: Situation) -> Ranking:
    """These jumps against staying: which corner is one question, whether to jump the other."""
    set_up = said.set_up is not False
    effects: list[Effect] = []
    for corner in corners:
        effects += jump_effects(corner, said, situation, set_up=set_up)
    options = [Option(id=one.id, label=f"jump the {one.side or ''} corner") for one in corners]
    decision = Decision(
        options=(*options, Option(id=STAY, label="stay at the line")),
        effects=tuple(effects),
        neutral=sizes.NEUTRAL,
        share=sizes.ERNIE_SHARE,
    )
    return rank(decision, situation)


def _round(said: ErnieSaid, situation: Situation) -> ErnieAnswer:
    line_player = _faces_the_ball(situation)
    decision = Decision(
        options=(
            Option(id=ROUND, label="round the post"),
            Option(id=OVER, label="soft over the net"),
        ),
        effects=tuple(round_effects(said, situation, line_player)),
        neutral=sizes.NEUTRAL,
        share=sizes.POST_SHARE,
    )
    ranking = rank(decision, situation)
    return ErnieAnswer(said=said, ranking=ranking, line_player=line_player)


def _faces_the_ball(situation: Situation) -> OnCourt | None:
    """Their player on the side that our ball goes round: straight in front of our striker."""
    striker = striker_of(situation)
    side = situation.asked.striker_side or (striker.side if striker else None)
    return None if side is None else _on(situation.theirs, side.other)


def _theirs(said: ErnieSaid, situation: Situation) -> ErnieAnswer:
    named = _named(situation)
    those = situation.theirs if named is None else (named,)
    is_post = said.kind is Kind.THEIR_POST
    effects = list(keep_off_effects(those, post=is_post))
    options = [
        Option(id=MIDDLE, label="dink middle"),
        Option(id=ACROSS, label="dink wide across"),
        Option(id=LINE, label="dink down the line"),
    ]
    if said.in_the_air and not is_post:
        options.append(Option(id=BEHIND, label="behind the jumper"))
        effects += behind_effects()
    decision = Decision(
        options=tuple(options),
        effects=tuple(effects),
        neutral=sizes.NEUTRAL,
        share=sizes.POST_SHARE if is_post else sizes.ERNIE_SHARE,
    )
    return ErnieAnswer(said=said, ranking=rank(decision, situation))
