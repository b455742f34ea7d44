"""What we chose in a told rally: serve aim, return target, third shot, dink and attack targets.

Options are the ones that advice about the same topic weighs, so that what was chosen can be
counted for them: `wide`, `t`, `body` or a wing for a serve; `at:PLAYER` or `middle` for a return;
`drop`, `drive`, `lob` for a third; `PLAYER:middle`, `PLAYER:sideline`, `soft` for a dink; and
`PLAYER:attack`, `paddle:PLAYER`, `other:PLAYER` or `chest` for an attack. A hip told as right or
left is `right_hip:PLAYER` until it is known which hand that player hits with.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.rally_acts import Act
from bot.chat.said import ToldChoice
from knowledge.tactics.attack_spots import CHEST, OTHER_HIP, PADDLE_HIP
from knowledge.tactics.dink_aims import SOFT
from knowledge.vocabulary import PlayerId, Stroke, Topic

_SERVED = ("wide", "t", "body")
_THIRDS = (Stroke.DROP, Stroke.DRIVE, Stroke.LOB)
_SPOTS = ("middle", "sideline")


def choices_of(acts: Sequence[Act], won: bool | None) -> tuple[ToldChoice, ...]:
    """The last told of each topic; only what one of us did, or nobody is named for."""
    found: dict[Topic, ToldChoice] = {}
    for at, act in enumerate(acts):
        if act.ours is False:
            continue
        before = acts[at - 1] if at else None
        is_missed = "wide" in act.endings and at == len(acts) - 1 and won is False
        for choice in (
            _serve(act, is_missed=is_missed),
            _return(act),
            _third(act, before),
            _dink(act),
            _attack(act),
        ):
            if choice is not None:
                found[choice.topic] = choice
    return tuple(found.values())


def _serve(act: Act, *, is_missed: bool) -> ToldChoice | None:
    if Stroke.SERVE not in act.strokes or "error" in act.endings or is_missed:
        return None
    aims = act.aims | (act.endings & {"wide"})
    aim = next((one for one in _SERVED if one in aims), None)
    aim = aim or (None if act.wing is None else act.wing.value)
    return None if aim is None else ToldChoice(topic=Topic.AIM_SERVE, option=aim)


def _return(act: Act) -> ToldChoice | None:
    if Stroke.RETURN not in act.strokes or "error" in act.endings:
        return None
    if act.at is not None and act.at.ours is False and act.at.player is not None:
        return ToldChoice(
            topic=Topic.AIM_RETURN, option=f"at:{act.at.player}", against=act.at.player
        )
    return ToldChoice(topic=Topic.AIM_RETURN, option="middle") if "middle" in act.aims else None


def _third(act: Act, before: Act | None) -> ToldChoice | None:
    """A third is named so, or comes right after their return."""
    kind = next((one for one in _THIRDS if one in act.strokes), None)
    is_named = Stroke.THIRD in act.strokes
    follows = before is not None and Stroke.RETURN in before.strokes and before.ours is not True
    if kind is None or not (is_named or follows):
        return None
    return ToldChoice(topic=Topic.THIRD_SHOT, option=kind.value)


def _dink(act: Act) -> ToldChoice | None:
    if Stroke.DINK not in act.strokes:
        return None
    target, spot = _opponent(act), next((one for one in _SPOTS if one in act.aims), None)
    if target is not None and spot is not None:
        return ToldChoice(topic=Topic.AIM_DINK, option=f"{target}:{spot}", against=target)
    return ToldChoice(topic=Topic.AIM_DINK, option=SOFT) if "soft" in act.aims else None


def _attack(act: Act) -> ToldChoice | None:
    target = _opponent(act)
    if Stroke.SPEED_UP not in act.strokes or target is None:
        return None
    if "paddle_hip" in act.aims:
        option = f"{PADDLE_HIP}:{target}"
    elif "other_hip" in act.aims:
        option = f"{OTHER_HIP}:{target}"
    elif "chest" in act.aims:
        option = CHEST
    else:
        hip = next((one for one in ("right_hip", "left_hip") if one in act.aims), None)
        option = f"{target}:attack" if hip is None else f"{hip}:{target}"
    return ToldChoice(topic=Topic.AIM_ATTACK, option=option, against=target)


def _opponent(act: Act) -> PlayerId | None:
    return act.at.player if act.at is not None and act.at.ours is False else None
