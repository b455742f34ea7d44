"""What a rule comes to in the game that is played: rally scoring, its target, its deciding game.

The entries speak of side-out scoring to 11; who plays otherwise is told their own numbers.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from knowledge.advice import Reason
from knowledge.game import GameFormat, MatchState, Scoring
from knowledge.rulebook.entry import Rule, Ruling, rule_named
from knowledge.sources import COMMON_PRACTICE, rule_of_edition

_RALLY, _RALLY_SERVER = "rally scoring", "rally scoring server"
_ENDS_NAMED = frozenset({11, 15, 21})
"""Targets whose end change the rulebook names (2025 edition, 5.B)."""


def in_format(rule: Rule, format: GameFormat | None, match: MatchState | None) -> Rule:
    """The rule as it is in this format, and at this point of the match; else as it stands."""
    told = _TOLD.get(rule.name)
    return rule if format is None or told is None else told(rule, format, match)


def _win_by(rule: Rule, format: GameFormat, _match: MatchState | None) -> Rule:
    is_rally, level = format.scoring is Scoring.RALLY, format.target - 1
    if not is_rally and (format.target, format.win_by, format.cap) == (11, 2, None):
        return rule
    by = "two" if format.win_by == 2 else "one"
    cap = "no cap" if format.cap is None else f"cap {format.cap}"
    now = f"{level}-{level}? Play on until one side leads by {by}."
    if format.cap is not None:
        now = f"{level}-{level}? By {by}, or first to {format.cap}."
    ruling = replace(
        rule.ruling,
        call=f"Win by {by}: this one is to {format.target}, {cap}.",
        reasons=_of(_RALLY).ruling.reasons if is_rally else rule.ruling.reasons[:1],
        now=now,
    )
    return replace(rule, ruling=ruling, unless=rule.unless if format.cap is None else None)


def _ends(rule: Rule, format: GameFormat, match: MatchState | None) -> Rule:
    at, common = format.end_change_at, GameFormat()
    beside = match is None and format.target != common.target
    usual = f", {common.end_change_at} (to {common.target})" if beside else ""
    is_named = format.target in _ENDS_NAMED
    decider = Reason(
        text=f"Deciding or single game: at {at} (to {format.target}){usual}",
        source=rule_of_edition("2025", "5.B") if is_named else COMMON_PRACTICE,
    )
    others = ", ".join(
        f"at {GameFormat(target=target).end_change_at} (to {target})"
        for target in sorted(_ENDS_NAMED - {format.target})
    )
    named = Reason(text=f"A{others[1:]}", source=rule_of_edition("2025", "5.B"))
    ruling = replace(rule.ruling, reasons=(decider, named))
    if match is not None and not match.game.is_over:
        if not match.is_deciding_game:
            ruling = replace(ruling, now="Not in this game: change after it.")
        elif max(match.game.ours, match.game.theirs) < at:
            ruling = replace(ruling, now=f"In this game: when one side reaches {at}.")
    return replace(rule, ruling=ruling)


def _who_scores(rule: Rule, format: GameFormat, _match: MatchState | None) -> Rule:
    if format.scoring is Scoring.SIDE_OUT:
        return rule
    rally = _of(_RALLY)
    ruling = replace(
        rally.ruling,
        call="Score on every rally, whoever serves.",
        now="Receivers won it? A point, and they serve.",
    )
    return replace(rule, ruling=ruling, officiated=None, unless=rally.unless)


def _score_call(rule: Rule, format: GameFormat, _match: MatchState | None) -> Rule:
    if format.has_two_servers:
        return rule
    ruling = replace(
        rule.ruling,
        call="Call two numbers: yours, then theirs.",
        reasons=(
            Reason(text="Serving side, receiving side", source=rule_of_edition("2025", "4.J")),
            Reason(text="One server: no third number", source=rule_of_edition("2025", "4.B.3")),
        ),
    )
    return _ruled(rule, ruling)


def _one_server(rule: Rule, format: GameFormat, _match: MatchState | None) -> Rule:
    return rule if format.scoring is Scoring.SIDE_OUT else _of(_RALLY_SERVER)


def _winning_point(rule: Rule, format: GameFormat, _match: MatchState | None) -> Rule:
    """Who plays it knows that every rally scores: how it ends comes first."""
    if format.scoring is Scoring.SIDE_OUT:
        return rule
    every, *ends = rule.ruling.reasons
    ruling = replace(rule.ruling, reasons=(*ends, every))
    if format.freeze_on_serve:
        ruling = replace(
            ruling,
            call="Serve to win it: here the last point is on serve.",
            now=f"At {format.target - 1} and receiving: win the serve first.",
        )
    return _ruled(rule, ruling)


def _ruled(rule: Rule, ruling: Ruling) -> Rule:
    """The rule with this ruling, a referee's own word of what to do now kept."""
    officiated = rule.officiated
    return replace(
        rule,
        ruling=ruling,
        officiated=None if officiated is None else replace(ruling, now=officiated.now),
    )


def _of(name: str) -> Rule:
    found = rule_named(name)
    assert found is not None, f"the rulebook has {name}"
    return found


_TOLD: Final[Mapping[str, Callable[[Rule, GameFormat, MatchState | None], Rule]]] = (
    MappingProxyType(
        {
            "win by two": _win_by,
            "change ends": _ends,
            "who scores": _who_scores,
            "score call": _score_call,
            "zero zero two": _one_server,
            "rotation": _one_server,
            _RALLY: _winning_point,
        }
    )
)
