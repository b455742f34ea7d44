"""A report on one side of what is noted: "what's weak about hale", "okafor's strengths"."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum

from knowledge.advice import Advice, Confidence, Reason
from knowledge.planning.known import Known
from knowledge.planning.names import first_that_fits, pair_name
from knowledge.planning.probes import hand_choices, probes
from knowledge.regex import regex
from knowledge.situation import OnCourt
from knowledge.vocabulary import Topic

MOST_LINES = 4
MOST_WORDS = 2
"""Notes kept as words, where none of that side is noted."""

MOST_NAMED = 3
"""Of one player in the call, as far as a line holds them."""


class Asks(StrEnum):
    """Which side is asked for."""

    WEAK = "weak"
    STRONG = "strong"


_WORDS = {
    Asks.WEAK: regex(
        r"\b(?:weak(?:ness|nesses|est|er)?|(?:bad|worst|poor|shaky) at|struggl\w+|holes?|flaws?"
        r"|vulnerab\w+|soft spots?)\b"
    ),
    Asks.STRONG: regex(
        r"\b(?:strengths?|strong(?:est|er)?|(?:good|best|great|dangerous) at|danger(?:s|ous)?"
        r"|threats?|weapons?)\b"
    ),
}


def side_asked(words: str) -> Asks | None:
    """The side that the question asks for; None where it asks for both, or for neither."""
    line = words.casefold().replace("’", "'").replace("'", "")
    found = [side for side, form in _WORDS.items() if form.search(line)]
    return found[0] if len(found) == 1 else None


def one_side(
    people: Sequence[OnCourt],
    known: Sequence[Known],
    side: Asks,
    words: Sequence[Reason] = (),
) -> Advice:
    """What is noted on that side, most useful first, or that nothing is; then the `words` kept of
    them come before what to look for, since they may say it."""
    fitting = [one for one in known if _is_on(one, side)]
    if not fitting:
        return Advice(
            topic=Topic.OPPONENT_REPORT,
            call=_none(people, side),
            lines=(*words[:MOST_WORDS], *probes(people))[:MOST_LINES],
            choices=hand_choices(people, Topic.OPPONENT_REPORT),
        )
    return Advice(
        topic=Topic.OPPONENT_REPORT,
        call=_call(people, fitting),
        lines=tuple(
            Reason(text=f"{one.player.name}: {one.text}", source=one.source)
            for one in fitting[:MOST_LINES]
        ),
        confidence=Confidence.LEAN,
        numbers={f"{one.player.name}.{one.trait}_per_100": one.per_100 for one in fitting},
        choices=hand_choices(people, Topic.OPPONENT_REPORT),
        more=tuple(one.in_full for one in fitting),
    )


def _is_on(one: Known, side: Asks) -> bool:
    """A skill that the notes put there and do not leave open."""
    is_skill = one.estimate is not None and not one.estimate.is_open and not one.habit
    return is_skill and one.up is (side is Asks.STRONG)


def _call(people: Sequence[OnCourt], fitting: Sequence[Known]) -> str:
    by_name: dict[str, list[str]] = {}
    for one in fitting:
        by_name.setdefault(one.player.name, []).append(_said(one))
    parts = (
        "; ".join(f"{name}: {', '.join(said[:most])}" for name, said in by_name.items())
        for most in range(MOST_NAMED, 0, -1)
    )
    return first_that_fits((*(f"{part}." for part in parts), f"{pair_name(people)}: see below."))


def _said(one: Known) -> str:
    """With a question mark where as many notes say the contrary."""
    estimate = one.estimate
    is_even = estimate is not None and estimate.says_yes == estimate.says_no
    return f"{one.said}?" if is_even else one.said


def _none(people: Sequence[OnCourt], side: Asks) -> str:
    kind = "weakness" if side is Asks.WEAK else "strength"
    return first_that_fits(
        (f"No {kind} of {pair_name(people)} is noted. Try them.", f"No {kind} noted. Try them.")
    )
