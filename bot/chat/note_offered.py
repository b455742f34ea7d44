"""What a note only may say: a claim too two-faced to make, and which of the doubted to offer.

"Her drop sits" praises or blames; whoever hides a backhand or waits with the paddle low may be weak
there. And a button never says the contrary of the note, nor puts two partners on one side.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from bot.chat.half_understood import Doubted
from bot.chat.note_line import NoteLine
from bot.chat.note_negations import denied
from bot.chat.note_opinions import found_in
from bot.chat.note_weighing import Weighed
from bot.chat.said import Claim
from bot.chat.trait_lexicon import Role
from knowledge.regex import regex
from knowledge.vocabulary import Trait, Value

_SITS: Final = frozenset(["sit", "sits", "sat", "sitting"])
_WHERE_IT_SITS: Final = frozenset(
    ["up", "high", "there", "short", "fat", "long", "for", "and", "in", "like", "too"]
)
_SOFT: Final = frozenset(
    {Trait.THIRD_SHOT_DROP, Trait.RESET, Trait.FOREHAND_DINK, Trait.BACKHAND_DINK}
)
_PADDLE_LOW: Final = regex(
    r"\bpaddles?(?: (?:is|are|always|too|very|so|way|hangs|stays|held|hanging))* (?:low|down)\b"
)
_OF_A_LOW_PADDLE: Final = frozenset({Trait.READY_POSITION, Trait.GETS_LOW})
_HIDES: Final = regex(
    r"\b(?:hid(?:es?|ing)|(?:runs?|running|goes|moves|steps|ran) (?:round|around)"
    r"|protect(?:s|ing)?|avoid(?:s|ing)?) (?:his|her|the|their) (?:backhand|bh)\b"
)

_DISLIKES_OVERHEAD: Final = regex(
    r"\b(?:(?:does not|doesnt|dont|do not) (?:really )?(?:like|want|enjoy)|hates|dislikes|avoids"
    r"|struggles with) (?:(?:the|his|her|their|a|any|hitting|to hit) )*(?:(?:backhand|bh)s? "
    r"(?:over (?:the|his|her) (?:head|shoulder)|overheads?|smash(?:es)?)"
    r"|(?:balls? |ones? )?over (?:the|his|her) (?:backhand|bh) shoulder)\b"
)
_MAY_BE_WEAK: Final = (
    (Trait.COUNTER, _PADDLE_LOW),
    (Trait.BACKHAND_DINK, _HIDES),
    (Trait.OVERHEAD, _DISLIKES_OVERHEAD),
)


def offered_rightly(note: NoteLine, read: Weighed) -> Weighed:
    """The reading with what is two-faced offered only, and nothing offered against the note."""
    read = _without_low_paddles(note, read)
    unsure = [one for one in read.claims if _only_sits(one, note)]
    is_praised = bool(note.hits.having(Role.GOOD))
    seen = [*_seen(note)]
    doubted = [
        *(Doubted(claim=one, chance=1.0) for one in unsure if not is_praised),
        *seen,
        *(one for one in read.doubted if not _is_taken_back(one, note) and not _is_of(one, seen)),
    ]
    claims = tuple(one for one in read.claims if one not in unsure)
    kept = (one for one in doubted if not _is_their_partners_side(one.claim, claims))
    return replace(read, claims=claims, doubted=tuple(kept))


def _without_low_paddles(note: NoteLine, read: Weighed) -> Weighed:
    """The reading without how a paddle held low waits, or who bends because of it."""
    if next(found_in(note.line, _PADDLE_LOW), None) is None:
        return read
    claims = tuple(one for one in read.claims if one.trait not in _OF_A_LOW_PADDLE)
    doubted = tuple(one for one in read.doubted if one.claim.trait not in _OF_A_LOW_PADDLE)
    return replace(read, claims=claims, doubted=doubted)


def _only_sits(claim: Claim, note: NoteLine) -> bool:
    """ "Her drop sits": up for us to hit, or well, and nothing else judges it."""
    if claim.trait not in _SOFT or claim.value is not Value.WEAKNESS or claim.denied:
        return False
    start, stop = claim.span
    own = [at for at, word in enumerate(note.said) if start <= word.span[0] < stop]
    behind = range(own[0], min(len(note.line), own[-1] + 2)) if own else range(0)
    sits = [at for at in behind if note.line[at] in _SITS]
    judged = (hit for hit in note.hits.having(Role.BAD) if hit.start in behind)
    return bool(sits) and next(judged, None) is None and not _says_where(sits[-1], note)


def _says_where(at: int, note: NoteLine) -> bool:
    ahead = at + 1
    is_apart = ahead >= len(note.line) or bool(note.said[ahead].gap.strip())
    return not is_apart and note.line[ahead] in _WHERE_IT_SITS


def _is_taken_back(one: Doubted, note: NoteLine) -> bool:
    """ "Not weak under high balls any more": a weakness that the note denies wherever it judges."""
    bad = note.hits.having(Role.BAD)
    turned = denied(note.hits.having(Role.NOT), bad, note.line)
    return one.claim.value is Value.WEAKNESS and bool(bad) and len(turned) == len(bad)


def _seen(note: NoteLine) -> Iterator[Doubted]:
    """What a paddle held low and a backhand hidden may say of whoever does it."""
    for trait, form in _MAY_BE_WEAK:
        for start, stop in found_in(note.line, form):
            span = (note.said[start].span[0], note.said[stop - 1].span[1])
            for player in note.subjects.at(start):
                weak = Claim(
                    player=player, trait=trait, value=Value.WEAKNESS, weight=1.0, span=span
                )
                yield Doubted(claim=weak, chance=1.0)


def _is_of(one: Doubted, seen: Sequence[Doubted]) -> bool:
    """Whether a weak wing is only read out of words that speak of overheads."""
    overheads = [each.claim for each in seen if each.claim.trait is Trait.OVERHEAD]
    is_wing = one.claim.trait is Trait.BACKHAND_DINK
    return is_wing and any(each.player == one.claim.player for each in overheads)


def _is_their_partners_side(claim: Claim, claims: tuple[Claim, ...]) -> bool:
    """Whether the note gives the same side to somebody else."""
    return claim.trait is Trait.SIDE_PLAYED and any(
        one.trait is claim.trait and one.value is claim.value and one.player != claim.player
        for one in claims
    )
