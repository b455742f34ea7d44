"""The `--json` contract: what a message was understood as and answered with, as one object."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from bot.chat.asked import facts_to_json
from bot.chat.reply import Reply
from bot.chat.said import (
    Claim,
    CorrectionSaid,
    DetailSaid,
    MatchMoved,
    MatchSaid,
    Mention,
    NoteSaid,
    Question,
    RallySaid,
    ResultSaid,
    SaidRates,
    SaidScore,
    ScoreSaid,
    Slots,
    Understood,
)
from bot.chat.turn import Heard
from knowledge.advice import Advice, AdvisedMix
from knowledge.game import GameState
from knowledge.vocabulary import PlayerId
from scouting_db.values import NewObservation

Names = dict[PlayerId, str]


def to_json(
    text: str, heard: Heard, names: Names, *, pictures: Sequence[str] = ()
) -> dict[str, Any]:
    """One line of `seamwise ask --json`; absent things are null."""
    advice: Advice | None = heard.trace.get("advice")
    reply = "\n\n".join(one.text for one in heard.replies)
    return {
        "text": text,
        "kind": heard.kind.value,
        "topic": _topic(heard),
        "slots": _slots(heard.understood, names),
        "observations": _observations(heard, names),
        "reply": reply,
        "call": reply.splitlines()[0] if reply else None,
        "reasons": None
        if advice is None
        else [
            {"text": one.text, "source": str(one.source)} for one in advice.lines or advice.reasons
        ],
        "numbers": _numbers(advice, heard.trace.get("game")),
        "buttons": _buttons(heard.replies),
        "picture": pictures[0] if pictures else None,
    }


def _topic(heard: Heard) -> str | None:
    topic = heard.trace.get("topic")
    if topic is None and isinstance(heard.understood, Question):
        topic = heard.understood.topic
    return None if topic is None else str(topic.value)


def _buttons(replies: Sequence[Reply]) -> list[dict[str, str | None]] | None:
    found = [
        {
            "label": button.label,
            "payload": button.payload,
            "topic": button.topic.value if button.topic else None,
        }
        for reply in replies
        for row in reply.buttons
        for button in row
    ]
    return found or None


def _observations(heard: Heard, names: Names) -> list[dict[str, Any]] | None:
    claims = heard.trace.get("claims")
    if claims is None and not isinstance(heard.understood, NoteSaid):
        return None
    return [_observation(claim, names) for claim in claims or ()]


def _observation(claim: Claim | NewObservation, names: Names) -> dict[str, Any]:
    return {
        "player": names.get(claim.player),
        "trait": claim.trait.value,
        "value": claim.value.value,
        "denied": claim.denied,
        "weight": claim.weight,
        "condition": claim.tag.value if claim.tag else None,
        "span": list(claim.span) if claim.span else None,
    }


def _numbers(advice: Advice | None, game: GameState | None) -> dict[str, float] | None:
    numbers: dict[str, float] = dict(advice.numbers) if advice else {}
    if advice is not None and advice.mix is not None:
        numbers |= _mix_numbers(advice.mix)
    if game is not None:
        numbers |= {"ours": game.ours, "theirs": game.theirs}
        if game.server is not None:
            numbers["server"] = game.server
    return numbers or None


def _mix_numbers(mix: AdvisedMix) -> dict[str, float]:
    """Our share and their best guess of each option, and what varying is worth."""
    numbers = {
        "mix_value": mix.value,
        "mix_worth_points": mix.worth_points,
        "mix_of_ten_loss_points": mix.of_ten_loss_points,
    }
    for one in mix.shares:
        numbers |= {f"mix_share_{one.option}": one.share, f"mix_guess_{one.option}": one.guess}
    if mix.logged_aims:
        numbers["mix_logged_aims"] = mix.logged_aims
    if mix.pattern_loss_points is not None:
        numbers["mix_pattern_loss_points"] = mix.pattern_loss_points
    return numbers


def _slots(understood: Understood | None, names: Names) -> dict[str, Any] | None:
    """Everything the message settled, by the vocabulary's names."""
    found: dict[str, Any]
    match understood:
        case Question():
            found = _question_slots(understood.slots, names)
        case RallySaid() | DetailSaid():
            found = _rally_slots(understood, names)
        case NoteSaid() | CorrectionSaid():
            found = {"players": _named(understood.mentions, names)}
        case MatchSaid():
            found = {
                "opponents": _named(understood.mentions, names),
                "time": f"{understood.at:%H:%M}" if understood.at else None,
                "court": understood.court,
                "format": str(understood.format) if understood.format else None,
            }
        case MatchMoved():
            found = {
                "opponents": _named(understood.mentions, names),
                "time": f"{understood.at:%H:%M}" if understood.at else None,
                "court": understood.court,
            }
        case ScoreSaid():
            found = _score_slots(understood)
        case ResultSaid():
            found = {"games": [list(game) for game in understood.games], "won": understood.won}
        case _:
            found = {}
    kept = {key: value for key, value in found.items() if value not in (None, [])}
    return kept or None


def _rally_slots(said: RallySaid | DetailSaid, names: Names) -> dict[str, Any]:
    """Who won the rally and what else is said of it; options name players by number as stored."""
    told = said.details
    by = None if told.by is None else names.get(told.by)
    side = None if told.by_us is None else ("us" if told.by_us else "them")
    won = None if isinstance(said, DetailSaid) else ("us" if said.won_by_us else "them")
    return {
        "players": _named(said.mentions, names),
        "won_by": won,
        "ending": told.ending,
        "by": by,
        "by_side": side,
        "stroke": told.stroke,
        "wing": told.wing,
        "choices": {one.topic.value: one.option for one in told.choices} or None,
        "return_deep": told.is_deep,
        "third_forward": told.forward,
    }


def _question_slots(slots: Slots, names: Names) -> dict[str, Any]:
    return {
        "opponents": _named(slots.mentions, names),
        "score": _score(slots.score),
        "serving": slots.serving,
        "hand": slots.hand,
        "wing": slots.wing,
        "ball": slots.ball,
        "ball_kind": slots.ball_kind,
        "side": slots.side,
        "format": str(slots.format) if slots.format else None,
        "wind": slots.wind,
        "sun": slots.sun,
        "background": slots.background,
        "rates": _rates(slots.rates),
        "games": None if slots.games is None else list(slots.games),
        "lost_in_a_row": slots.lost_in_a_row,
        "timeouts_left": slots.timeouts_left,
        "tired": slots.tired,
        "hot": slots.hot,
        "has_change": slots.has_change,
        "toss_won": slots.toss_won,
        "they_chose": slots.they_chose,
        "facts": facts_to_json(slots.facts) or None,
    }


def _rates(said: SaidRates | None) -> dict[str, Any] | None:
    if said is None:
        return None
    return {
        "serving": said.serving,
        "receiving": said.receiving,
        "serving_count": _pair(said.serving_count),
        "receiving_count": _pair(said.receiving_count),
        "fault": said.fault,
        "holds": said.holds,
    }


def _pair(said: tuple[int, int] | None) -> list[int] | None:
    return None if said is None else list(said)


def _score_slots(said: ScoreSaid) -> dict[str, Any]:
    return {
        "score": _score(said.score),
        "won_by": None if said.won_by_us is None else ("us" if said.won_by_us else "them"),
        "side_out": said.side_out or None,
        "all": said.all_at,
        "serving": said.score.we_serve if said.score else None,
    }


def _score(score: SaidScore | None) -> str | None:
    if score is None:
        return None
    if score.call is not None:
        return str(score.call)
    parts = [score.ours, score.theirs, score.server]
    return "-".join(str(part) for part in parts if part is not None) or None


def _named(mentions: Sequence[Mention], names: Names) -> list[str]:
    """Names in full where they are settled, as typed where they are not."""
    return [
        names.get(mention.players[0], mention.typed)
        if len(mention.players) == 1 and mention.certainty == "sure"
        else mention.typed
        for mention in mentions
    ]
