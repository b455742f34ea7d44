"""A note in free text: what it says of whom, and which of its words no trait covers.

A claim needs a trait and a value, each found in the words: leaving something out is better than
inventing it. Every claim keeps the span of the words that carry it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from bot.chat.clauses import Clause, clauses
from bot.chat.common_words import is_common, respelled
from bot.chat.kept_words import kept_words, places_of_manner
from bot.chat.note_claims import NOTHING_READ, Judged, only_names_skills, read_clause
from bot.chat.note_hits import Hits, find_hits
from bot.chat.note_negations import excepted
from bot.chat.note_pairs import NAME
from bot.chat.note_subjects import Subjects, is_advice
from bot.chat.question import Certainty, Claim, Mention, NoteSaid
from bot.chat.trait_lexicon import Role, trait_phrases
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.vocabulary import Seen, Tag, Trait, Value

HEDGED_WEIGHT = 0.45
"""What "maybe" leaves of a claim. Common practice, no source (engineering notes 1.3)."""

STRONG_WEIGHT = 1.5
MILD_WEIGHT = 0.5

_MARKS = frozenset(",;:.!?()\n—–|")

_CONTRARY = {Value.STRENGTH: Value.WEAKNESS, Value.WEAKNESS: Value.STRENGTH}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Note:
    said: Sequence[Word]
    line: Sequence[str]
    hits: Hits
    subjects: Subjects


def read_note(
    text: str, said: Sequence[Word], mentions: Sequence[Mention], view: ChatView
) -> NoteSaid:
    """The note with every claim found; words that no claim covers are kept."""
    whose = tuple(mentions) or _implied(view)
    line = _line(said, whose)
    hits = find_hits(line, _breaks(said))
    note = _Note(said=said, line=line, hits=hits, subjects=Subjects(said, whose))
    claims, used = _claims(note)
    heard = view.forwarded or hits.has(Role.HEARSAY)
    return NoteSaid(
        text=text,
        mentions=whose,
        claims=claims,
        kept=kept_words(text, said, line, used, places_of_manner(hits)),
        seen=Seen.HEARSAY if heard else Seen.LIVE,
        about_body=hits.has(Role.BODY),
    )


def _breaks(said: Sequence[Word]) -> list[int]:
    return [place for place, word in enumerate(said) if place and set(word.gap) & _MARKS]


def _implied(view: ChatView) -> tuple[Mention, ...]:
    """Nobody named: the one player spoken of just now, if it is only one."""
    if len(view.focus) != 1:
        return ()
    return (
        Mention(typed="", span=(0, 0), certainty=Certainty.SURE, players=view.focus, pronoun=True),
    )


def _line(said: Sequence[Word], mentions: Sequence[Mention]) -> list[str]:
    spans = [one.span for one in mentions if not one.pronoun]
    return [
        NAME if any(start <= word.span[0] < stop for start, stop in spans) else _plain(word.folded)
        for word in said
    ]


def _plain(folded: str) -> str:
    """`missin` as `missing`, `bachand` as `backhand`."""
    if folded == "w":
        return "with"
    known = is_common(folded) or folded in trait_phrases().words
    return folded if known else respelled(folded)


def _claims(note: _Note) -> tuple[tuple[Claim, ...], set[int]]:
    unbroken = [(hit.start, hit.stop) for hit in (*note.hits.traits, *note.hits.others)]
    claims: list[tuple[Claim, bool]] = []
    used: set[int] = set()
    reading = NOTHING_READ
    for clause in _whole(clauses(note.said, unbroken), note.hits):
        hits = note.hits.inside(clause)
        if is_advice(note.line[clause.start : clause.stop]):
            continue
        claims, freed = _without(claims, excepted(hits, note.line, clause.start), note)
        used -= freed
        reading = read_clause(hits, note.line, clause, reading)
        if not reading.judged:
            claims = _tagged(claims, hits)
        told = [(judged, _whose(note, judged, hits)) for judged in reading.judged]
        if claims or reading.judged:
            used |= {at for hit in hits.having(Role.TAG) for at in range(hit.start, hit.stop)}
        if any(whose for _, whose in told):
            used |= places_of_manner(hits)
        for judged, whose in told:
            used |= set(range(judged.start, judged.stop)) if whose else set()
            claims += [(one, clause.turned) for one in whose]
    return _settled(claims), used


def _without(
    claims: list[tuple[Claim, bool]], traits: frozenset[Trait], note: _Note
) -> tuple[list[tuple[Claim, bool]], set[int]]:
    """The claims that an exception leaves, and the places of the words it frees."""
    gone = [claim for claim, _ in claims if claim.trait in traits]
    freed = {
        at
        for at, word in enumerate(note.said)
        if any(one.span[0] <= word.span[0] < one.span[1] for one in gone)
    }
    return [each for each in claims if each[0] not in gone], freed


def _tagged(claims: list[tuple[Claim, bool]], hits: Hits) -> list[tuple[Claim, bool]]:
    """A condition in a clause of its own ("when pulled wide") belongs to the claim before it."""
    tag = _first([hit.meaning.tag for hit in hits.having(Role.TAG)])
    if not claims or tag is None or claims[-1][0].tag is not None:
        return claims
    last, turned = claims[-1]
    return [*claims[:-1], (replace(last, tag=tag), turned)]


def _whole(parts: Sequence[Clause], hits: Hits) -> list[Clause]:
    """Skills without a judgement wait for the next clause: "serve and return | are solid"."""
    whole: list[Clause] = []
    for part in parts:
        waits = whole and only_names_skills(hits.inside(whole[-1]))
        trails = part is parts[-1] and only_names_skills(hits.inside(part))
        if whole and part.joined and (waits or trails):
            whole[-1] = replace(whole[-1], stop=part.stop)
        else:
            whole.append(part)
    return whole


def _whose(note: _Note, judged: Judged, hits: Hits) -> list[Claim]:
    tags = [hit.meaning.tag for hit in hits.having(Role.TAG)]
    span = (note.said[judged.start].span[0], note.said[judged.stop - 1].span[1])
    return [
        Claim(
            player=player,
            trait=judged.trait,
            value=judged.value,
            weight=_weight(hits),
            span=span,
            denied=judged.denied,
            tag=_first(tags),
        )
        for player in note.subjects.at(judged.at)
    ]


def _weight(hits: Hits) -> float:
    strength = MILD_WEIGHT if hits.has(Role.LESS) else STRONG_WEIGHT if hits.has(Role.MORE) else 1.0
    return strength * (HEDGED_WEIGHT if hits.has(Role.HEDGE) else 1.0)


def _first(tags: Sequence[Tag | None]) -> Tag | None:
    return next((tag for tag in tags if tag is not None), None)


def _settled(claims: Sequence[tuple[Claim, bool]]) -> tuple[Claim, ...]:
    """Each claim once; of a skill taken both ways the first, after a "but" the last."""
    last: dict[tuple[object, ...], Claim] = {}
    for claim, turned in claims:
        contrary = (claim.player, claim.trait, _CONTRARY.get(claim.value), claim.denied)
        if contrary in last and not turned:
            continue
        last.pop(contrary, None)
        last.setdefault((claim.player, claim.trait, claim.value, claim.denied), claim)
    said = {(one.player, one.trait) for one in last.values() if not one.denied}
    return tuple(
        one for one in last.values() if not (one.denied and (one.player, one.trait) in said)
    )
