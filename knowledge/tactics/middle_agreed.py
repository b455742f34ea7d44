"""The middle as our pair settled it by name, where nobody said who of us plays left.

A name needs no court: "Tom takes the middle" holds before the sides are known.
"""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.advice import Advice, Choice, Confidence, Reason
from knowledge.regex import regex
from knowledge.situation import Agreement, Situation
from knowledge.sources import COMMON_PRACTICE, Source, SourceKind
from knowledge.tactics import middle_words as words
from knowledge.tactics.dink_words import fit
from knowledge.tactics.middle_answer import FAST, SLOW, agreed_owner
from knowledge.tactics.middle_effects import Seat
from knowledge.vocabulary import AgreementKey, BallKind, Side, Topic

AGREED = Source(kind=SourceKind.AGREED, citation="")

_OF_A_COURT = regex(r"\b(?:left|right|cross\w*|across|diagonal|forehands?|backhands?|fh|bh)\b")
"""An agreement of this kind has an owner only once the sides are known."""

SIDES_UNKNOWN = "I don't know who plays left."


def agreed_by_name(situation: Situation, choices: Sequence[Choice]) -> Advice | None:
    """Whom the agreement names for the balls asked about; None where it names nobody for one."""
    agreement = situation.agreements.get(AgreementKey.MIDDLE)
    asked = situation.asked
    if agreement is None or asked.pulled_wide is not None or asked.ball_kind is BallKind.LOB:
        return None
    slow, fast = (_named(agreement, situation, kinds) for kinds in (SLOW, FAST))
    if slow is None or fast is None:
        return None
    kind = asked.ball_kind
    owners = {slow, fast} if kind is None else {slow if kind in SLOW else fast}
    return Advice(
        topic=Topic.COVER_MIDDLE,
        call=_call(slow, fast) if len(owners) > 1 else _call(*owners),
        reasons=(
            Reason(text="As you agreed", source=AGREED),
            Reason(text="Settled beforehand, nobody waits", source=COMMON_PRACTICE),
        ),
        unless=words.IF_WIDE,
        assumed=SIDES_UNKNOWN,
        confidence=Confidence.CLEAR,
        choices=tuple(choices),
    )


def _call(*owners: str) -> str:
    """One owner of all of them, or of the slow ones and the fast ones."""
    if len(owners) == 1:
        said = [f"{owners[0]} takes the middle.", f"Middle: {owners[0]}."]
    else:
        said = [f"Slow: {owners[0]}. Fast: {owners[1]}."]
    return fit((*said, "The middle is settled, as you agreed."))


def _named(agreement: Agreement, situation: Situation, kinds: Sequence[BallKind]) -> str | None:
    """Who of us all these balls are; None where the sides are known, or the words name a court."""
    ours = situation.ours
    unseated = len(ours) == len(Side) and any(one.side is None for one in ours)
    if not unseated or _OF_A_COURT.search(agreement.value.casefold()):
        return None
    # Only names are looked for, so that any seats will do.
    left, right = (
        Seat(side=side, who=who, named=True) for side, who in zip(Side, ours, strict=True)
    )
    of_value = Agreement(key=agreement.key, value=agreement.value, words="")
    owners = {agreed_owner(of_value, (left, right), kind) for kind in kinds}
    owner = owners.pop() if len(owners) == 1 else None
    return next((one.who.name for one in (left, right) if owner == one.side.value), None)
