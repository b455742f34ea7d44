"""Voices written for what a question settles, and how what understanding settles is scored.

A slot counts as found where it is settled as labelled, and as wrong where it is settled
otherwise or no label has it: a missed slot costs an answer its point, a wrong one its truth.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from voices import EVENING, PEOPLE, SLOT_CASES

from bot.chat.said import NoteSaid, OneOfUs, Question, Slots, Unclear, Understood
from bot.chat.understand import understand
from knowledge.situation import Wind
from knowledge.vocabulary import BallKind, BallQuality, PlayerId, Topic

_WINDS: Mapping[Wind | None, str] = {
    Wind.BEHIND_US: "with",
    Wind.AGAINST_US: "against",
    Wind.ACROSS: "across",
    Wind.SOME: "some",
}
_HEIGHTS: Mapping[BallQuality | None, str] = {
    BallQuality.STRETCHED: "low",
    BallQuality.NEUTRAL: "net",
    BallQuality.EASY: "high",
}
_PACES: Mapping[BallKind | None, str] = {
    BallKind.DRIVE: "fast",
    BallKind.SPEED_UP: "fast",
    BallKind.FLOATING: "slow",
    BallKind.DINK: "slow",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class SlotScore:
    """Per slot: how often a label has it, how often it was found, and settled otherwise."""

    labelled: Counter[str]
    found: Counter[str]
    wrong: Counter[str]
    faults: tuple[str, ...]

    @property
    def found_share(self) -> float:
        return self.found.total() / self.labelled.total()

    @property
    def wrong_share(self) -> float:
        """Of all that was settled."""
        return self.wrong.total() / (self.found.total() + self.wrong.total())


def slot_cases(voice: str) -> Iterator[Mapping[str, Any]]:
    lines = (SLOT_CASES / f"{voice}.slots.jsonl").read_text(encoding="utf-8").splitlines()
    return (json.loads(line) for line in lines if line.strip())


def score_slots(*voices: str) -> SlotScore:
    labelled, found, wrong = Counter[str](), Counter[str](), Counter[str]()
    faults: list[str] = []
    for case in (one for voice in voices for one in slot_cases(voice)):
        got = settled_by(case["text"])
        right = _labelled(case["slots"])
        for slot in right.keys() | got.keys():
            if slot not in right and not _is_compared(slot, case["slots"]):
                continue
            kind = slot.split()[0]
            labelled[kind] += slot in right
            if right.get(slot) == got.get(slot):
                found[kind] += 1
                continue
            wrong[kind] += slot in got
            faults.append(f"{case['text']!r} {slot}: {right.get(slot)}, read {got.get(slot)}")
    return SlotScore(labelled=labelled, found=found, wrong=wrong, faults=tuple(faults))


def settled_by(text: str) -> dict[str, Any]:
    """What a message settles, under the names of the labels; claims one by one."""
    understood = understand(text, chat=EVENING)
    asked = next((one for one in understood if isinstance(one, Question | Unclear)), None)
    slots = {} if asked is None else _settled(asked.slots)
    of_serve = isinstance(asked, Question) and asked.topic in (Topic.AIM_SERVE, Topic.AIM_RETURN)
    if of_serve and "ours" not in slots:
        slots.pop("we_serve", None)  # the question itself says it, the labels leave it unsaid
    return slots | dict(_claims(understood))


def _labelled(label: Mapping[str, Any]) -> dict[str, Any]:
    right = {slot: value for slot, value in label.items() if slot not in _APART}
    if "opponents" in right:
        right["opponents"] = frozenset(right["opponents"])
    claims = [tuple(one) for one in label.get("note_claims", ())]
    hands = [(player, "hand", hand) for player, hand in label.get("hand", {}).items()]
    return right | {f"claim {who} {trait}": value for who, trait, value in [*claims, *hands]}


_APART = frozenset(["questions", "note_claims", "hand"])
"""Several questions are scored elsewhere; claims and hands one by one."""


def _is_compared(slot: str, label: Mapping[str, Any]) -> bool:
    """Whether a slot that no label has is wrong: of balls the labels hold only height and pace.

    A dink is slow and a drive fast without anybody saying so, and who is pulled wide is
    stretched; a claim beyond the labels is the note's, which has figures of its own.
    """
    if slot == "ball_height":
        return "pulled_wide" not in label
    return slot != "ball_pace" and not slot.startswith("claim")


def _settled(slots: Slots) -> dict[str, Any]:
    named = [one for one in slots.mentions if not one.pronoun and one.players]
    ours = [one.players[0] for one in named if one.players[0] in EVENING.ours]
    theirs = [one.players[0] for one in named if one.players[0] not in EVENING.ours]
    score, format = slots.score, slots.format_said
    said = {
        "opponents": frozenset(map(_name, theirs)) or None,
        "partner_named": _name(ours[0]) if ours else None,
        **_points(slots),
        "server": score.server if score else None,
        "we_serve": slots.serving,
        "wing": slots.wing,
        "target": format.target if format else None,
        "best_of": format.best_of if format else None,
        "ball_height": "lob" if slots.ball_kind is BallKind.LOB else _HEIGHTS.get(slots.ball),
        "ball_pace": _PACES.get(slots.ball_kind),
        "wind": _WINDS.get(slots.wind),
        "sun": slots.sun,
        "pulled_wide": _wide(slots.pulled_wide),
    }
    return {slot: value for slot, value in said.items() if value is not None}


def _wide(who: PlayerId | OneOfUs | None) -> str | None:
    if isinstance(who, OneOfUs):
        return "me" if who is OneOfUs.ASKER else "partner"
    return None if who is None else _name(who)


def _points(slots: Slots) -> dict[str, int | None]:
    """Ours and theirs; as in an answer a bare score is our own call unless they serve."""
    score = slots.score
    if score is None or score.ours is not None or score.call is None:
        return {} if score is None else {"ours": score.ours, "theirs": score.theirs}
    points = (score.call.serving, score.call.receiving)
    ours, theirs = points[::-1] if slots.serving is False else points
    return {"ours": ours, "theirs": theirs}


def _claims(understood: tuple[Understood, ...]) -> Iterator[tuple[str, str]]:
    for said in understood:
        for one in said.claims if isinstance(said, NoteSaid) else ():
            yield f"claim {_name(one.player)} {one.trait.value}", one.value.value


def _name(player: PlayerId) -> str:
    """The surname of theirs, the first name of ours, as the labels have them."""
    first, _, last = PEOPLE[player - 1].removesuffix(" (Bones)").partition(" ")
    return first if player in EVENING.ours else last
