"""The eight things that a new pair settles: the question, the answers to tap, and our default."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from knowledge.dataclass import dataclass
from knowledge.situation import Familiarity, Formation, OnCourt, Situation
from knowledge.tactics.middle_answer import Owner, answer_middle
from knowledge.tactics.serve_misses import misses_fewer
from knowledge.tactics.stack_answer import StackAnswer, answer_stack
from knowledge.tactics.stack_said import agreed_left
from knowledge.vocabulary import AgreementKey, BallKind, PlayerId, Side, Topic, Trait

Pair = tuple[OnCourt, OnCourt]

ONE, OTHER = "one", "other"
"""Codes of answers that name a player: the first of the pair, or the second."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """One way to settle an item: its code in a button, the button's label, the words agreed."""

    code: str
    label: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One thing to settle: what is asked, and its answers, our default first."""

    key: AgreementKey
    asks: str
    answers: tuple[Answer, ...]

    @property
    def default(self) -> Answer:
        return self.answers[0]

    def answer(self, code: str) -> Answer | None:
        """The answer of that code; None for one that is no answer to this."""
        return next((one for one in self.answers if one.code == code), None)


def items_of(situation: Situation, pair: Pair) -> tuple[Item, ...]:
    """All eight, in the order in which they are asked."""
    left, right = _left_and_right(situation, pair)
    defaults = _defaults(situation, pair, left, right)
    asked = _asked(situation, pair, left, right)
    return tuple(
        Item(key=key, asks=asks, answers=_default_first(answers, defaults[key]))
        for key, (asks, answers) in asked.items()
    )


def _default_first(answers: tuple[Answer, ...], code: str) -> tuple[Answer, ...]:
    return tuple(sorted(answers, key=lambda one: one.code != code))


def _named(words: str, pair: Pair) -> tuple[Answer, ...]:
    """An answer for each of the two; `words` with {name}."""
    return tuple(
        Answer(code=code, label=one.name, words=words.format(name=one.name, partner=two.name))
        for code, one, two in ((ONE, *pair), (OTHER, *pair[::-1]))
    )


def _asked(
    situation: Situation, pair: Pair, left: OnCourt, right: OnCourt
) -> Mapping[AgreementKey, tuple[str, tuple[Answer, ...]]]:
    fast = _fast(situation, left, right)
    key = AgreementKey
    return MappingProxyType(
        {
            key.SIDES: ("Who plays left?", _named("{name} left, {partner} right", pair)),
            key.STACK: (
                "Stack?",
                (
                    Answer(code="none", label="no stack", words="straight, no stack"),
                    Answer(code="serve", label="on serve", words="stack on serve"),
                    Answer(code="both", label="both", words="stack on serve and return"),
                    Answer(code="signal", label="signal", words="stack on serve, signal on return"),
                ),
            ),
            key.MIDDLE: (
                "Who takes the middle?",
                (
                    Answer(code="cross", label=f"slow cross, fast {fast}", words=_MIDDLE + fast),
                    *_named("{name} takes the middle", pair),
                ),
            ),
            key.LOBS: (
                "Who runs for a lob?",
                (
                    Answer(code="cross", label="cross player", words="the cross player runs"),
                    Answer(code="own", label="each their own", words="each runs for their own"),
                ),
            ),
            key.FIRST_SERVER: ("Who serves first?", _named("{name} serves first", pair)),
            key.POACH_SIGNAL: (
                "Poach signal?",
                (
                    Answer(code="fist", label="fist stay, open go", words="fist stay, open go"),
                    Answer(code="say", label="say it", words="say it before"),
                    Answer(code="none", label="none", words="no signal, just call"),
                ),
            ),
            key.TIMEOUT_CALLER: (
                "Who calls time-outs?",
                (
                    Answer(code="either", label="either", words="either calls"),
                    *_named("{name} calls", pair),
                ),
            ),
            key.OUT_CALLER: (
                'Who says "out" and "bounce"?',
                (
                    Answer(code="partner", label="not the hitter", words="partner says it"),
                    Answer(code="both", label="both shout", words="both shout"),
                ),
            ),
        }
    )


_MIDDLE: Final = "slow cross, fast "

_STACKS: Final = MappingProxyType(
    {
        Formation.STACK_ON_SERVE: "serve",
        Formation.STACK_ALWAYS: "both",
        Formation.ON_SIGNAL: "signal",
    }
)


def _stacking(situation: Situation, pair: Pair) -> StackAnswer:
    """What the page on stacking says of these two, who are new together unless somebody says."""
    return answer_stack(
        replace(
            situation,
            topic=Topic.STACK_OR_NOT,
            ours=pair,
            familiarity=situation.familiarity or Familiarity.NEW,
        )
    )


def _left_and_right(situation: Situation, pair: Pair) -> Pair:
    """Who is better left: as agreed, as played, or by what a stack gains with either there."""
    agreed = agreed_left(replace(situation, ours=pair))
    known = next((one for one in pair if one.side is Side.LEFT), None)
    left = next((one for one in pair if one.player == agreed), known) or _better_left(
        situation, pair
    )
    return left, next(one for one in pair if one.player != left.player)


def _better_left(situation: Situation, pair: Pair) -> OnCourt:
    answer = _stacking(situation, pair)
    home = {
        one.player: one_plan.chance
        for one in pair
        for one_plan in answer.ranking.ranked
        if one_plan.option.id == f"{Formation.STACK_ALWAYS}@{one.player}"
    }
    return max(pair, key=lambda one: home[one.player])


def _defaults(
    situation: Situation, pair: Pair, left: OnCourt, right: OnCourt
) -> Mapping[AgreementKey, str]:
    key = AgreementKey
    return {
        key.SIDES: _code(pair, left.player),
        key.STACK: _STACKS.get(_stacking(situation, pair).plan.formation, "none"),
        key.MIDDLE: _middle(situation, pair, left, right),
        key.LOBS: "cross",
        key.FIRST_SERVER: _code(pair, _first_server(situation, left, right)),
        key.POACH_SIGNAL: "fist",
        key.TIMEOUT_CALLER: _timeouts(pair),
        key.OUT_CALLER: "partner",
    }


def _code(pair: Pair, player: PlayerId) -> str:
    return ONE if pair[0].player == player else OTHER


def _first_server(situation: Situation, left: OnCourt, right: OnCourt) -> PlayerId:
    """The one on the right stands there at 0 anyway; the left one with the clearly better serve,
    or where the other's is noted as weak. Misses said of both go first.
    """
    surer = misses_fewer(situation.asked.words, (left, right))
    if surer is not None:
        return surer.player
    levels = [one.profile.skill(Trait.SERVE).level for one in (left, right)]
    is_better = levels[0] > max(0.0, levels[1]) or levels[1] < min(0.0, levels[0])
    return left.player if is_better else right.player


def _timeouts(pair: Pair) -> str:
    """Whoever is noted for talking well, and the other not."""
    levels = [one.profile.skill(Trait.COMMUNICATION).level for one in pair]
    if levels[0] == levels[1] or max(levels) <= 0:
        return "either"
    return ONE if levels[0] > levels[1] else OTHER


def _seated(situation: Situation, left: OnCourt, right: OnCourt) -> Situation:
    ours = replace(left, side=Side.LEFT), replace(right, side=Side.RIGHT)
    return replace(situation, topic=Topic.COVER_MIDDLE, ours=ours, agreements={})


def _owner(situation: Situation, left: OnCourt, right: OnCourt, kind: BallKind) -> Owner:
    """Who takes this ball by the page on the middle."""
    return answer_middle(_seated(situation, left, right)).of(kind).owner


def _fast(situation: Situation, left: OnCourt, right: OnCourt) -> str:
    owner = _owner(situation, left, right, BallKind.SPEED_UP)
    return {Owner.LEFT: left.name, Owner.RIGHT: right.name}.get(owner, "forehand")


def _middle(situation: Situation, pair: Pair, left: OnCourt, right: OnCourt) -> str:
    """By the same page: one who takes slow and fast takes all of it."""
    slow, fast = (
        _owner(situation, left, right, kind) for kind in (BallKind.DINK, BallKind.SPEED_UP)
    )
    if slow is fast and slow in (Owner.LEFT, Owner.RIGHT):
        return _code(pair, left.player if slow is Owner.LEFT else right.player)
    return "cross"
