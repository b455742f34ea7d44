"""What was noted in words that no trait covers, as a report gives it."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.advice import Advice, Reason
from knowledge.planning.aged import aged
from knowledge.planning.names import first_that_fits, pair_name
from knowledge.planning.probes import hand_choices, probes
from knowledge.situation import OnCourt, Situation
from knowledge.sources import book
from knowledge.vocabulary import Topic, Trait

MOST_IN_WORDS = 3
"""Notes kept as words, where no trait is known."""

MOST_OF_WORDS = 40
"""Characters of such a note."""


MOST_OF_A_COUNT = 60
"""The same of one that is asked for by what it counts."""


def in_words(
    people: Sequence[OnCourt], situation: Situation, trait: Trait | None = None
) -> tuple[Reason, ...]:
    """Notes in their own words: those that no trait was read from, or those of the trait."""
    names = {one.player: one.name for one in people}
    most = MOST_OF_WORDS if trait is None else MOST_OF_A_COUNT
    return tuple(
        Reason(
            text=f"{names[one.player]}: “{shortened(one.words, most)}”",
            source=aged(book(notes=1), one.day, situation.today),
        )
        for one in situation.kept_words
        if one.player in names and one.trait is trait
    )


def only_words(people: Sequence[OnCourt], words: tuple[Reason, ...]) -> Advice:
    """The report on people of whom no trait is known, but these words."""
    who = pair_name(people)
    call = (f"Your own words on {who}, no trait yet.", "Your own words on them, no trait yet.")
    return Advice(
        topic=Topic.OPPONENT_REPORT,
        call=first_that_fits(call),
        lines=(*words[:MOST_IN_WORDS], *probes(people)[:1]),
        choices=hand_choices(people, Topic.OPPONENT_REPORT),
    )


def shortened(words: str, most: int = MOST_OF_WORDS) -> str:
    """The words within a line or two of a phone."""
    return words if len(words) <= most else f"{words[: most - 1].rstrip()}…"
