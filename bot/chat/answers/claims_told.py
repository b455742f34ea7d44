"""What a note claims, in a player's words: "Okafor: left-handed, backhand dink weak"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.answers.desk import Desk
from bot.chat.said import Claim
from knowledge.vocabulary import TRAITS, PlayerId, Trait, Value
from scouting_db.values import NewObservation

SHOWN_CLAIMS = 4
SHOWN_KEPT = 60
"""Characters of kept words that a one-line confirmation shows."""


def claims_line(desk: Desk, claims: Sequence[Claim]) -> str:
    """The claims in a player's words: "Okafor: left-handed, backhand dink weak"."""
    return _by_player(desk, [(one.player, claim_words(one)) for one in claims])


def observed_line(desk: Desk, observed: Sequence[NewObservation]) -> str:
    """The same for what the book holds."""
    return _by_player(desk, [(one.player, claim_words(one)) for one in observed])


def _by_player(desk: Desk, said: Sequence[tuple[PlayerId, str]]) -> str:
    by_player: dict[PlayerId, list[str]] = {}
    for player, words in said:
        by_player.setdefault(player, []).append(words)
    return "; ".join(
        f"{desk.view.short_name(player)}: {_listed(words)}" for player, words in by_player.items()
    )


def _listed(words: Sequence[str]) -> str:
    more = f" +{len(words) - SHOWN_CLAIMS}" if len(words) > SHOWN_CLAIMS else ""
    return ", ".join(words[:SHOWN_CLAIMS]) + more


_FACT_WORDS = {
    (Trait.HAND, Value.LEFT): "left-handed",
    (Trait.HAND, Value.RIGHT): "right-handed",
    (Trait.HAND, Value.AMBIDEXTROUS): "plays with both hands",
    (Trait.SIDE_PLAYED, Value.LEFT): "plays left",
    (Trait.SIDE_PLAYED, Value.RIGHT): "plays right",
    (Trait.TWO_HANDED_BACKHAND, Value.YES): "two-handed backhand",
    (Trait.TWO_HANDED_BACKHAND, Value.NO): "one-handed backhand",
    (Trait.HEIGHT, Value.TALL): "tall",
    (Trait.HEIGHT, Value.SHORT): "short",
}

_VALUE_WORDS = {Value.STRENGTH: "strong", Value.WEAKNESS: "weak"}


def claim_words(claim: Claim | NewObservation) -> str:
    """One claim in a few words."""
    fact = _FACT_WORDS.get((claim.trait, claim.value))
    value = _VALUE_WORDS.get(claim.value, claim.value.value)
    denied = "not " if claim.denied else ""
    label = TRAITS[claim.trait].label
    words = f"{denied}{fact}" if fact else f"{label} {denied}{value}"
    says_more = claim.tag is not None and not set(claim.tag.split()) & set(label.split())
    return f"{words} {claim.tag}" if says_more else words


def cut(words: str) -> str:
    """The words, shortened to a line or two of a phone."""
    return words if len(words) <= SHOWN_KEPT else words[: SHOWN_KEPT - 1].rstrip() + "…"
