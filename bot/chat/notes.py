"""A note in free text: what it says of whom, and which of its words no trait covers.

A claim needs a trait and a value, each found in the words: leaving something out is better than
inventing it. Every claim keeps the span of the words that carry it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from bot.chat.claim_model import Weighed, the_claim_model
from bot.chat.clauses import Clause, clauses
from bot.chat.common_words import is_common, respelled
from bot.chat.features import Seen as SeenMessage
from bot.chat.half_understood import Doubted, worth_offering
from bot.chat.kept_words import kept_words, places_of_manner
from bot.chat.note_claims import NOTHING_READ, Judged, only_names_skills, read_clause
from bot.chat.note_corrections import meant
from bot.chat.note_features import see_clause
from bot.chat.note_hits import Hits, find_hits
from bot.chat.note_negations import excepted
from bot.chat.note_ourselves import is_myself, ourselves
from bot.chat.note_pairs import NAME
from bot.chat.note_subjects import Subjects, is_advice
from bot.chat.question import Certainty, Claim, Mention, NoteSaid
from bot.chat.trait_lexicon import Role, trait_phrases
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.vocabulary import TRAITS, Seen, Tag, Trait, TraitKind, Value

HEDGED_WEIGHT = 0.45
"""What "maybe" leaves of a claim. Common practice, no source (engineering notes 1.3)."""

STRONG_WEIGHT = 1.5
MILD_WEIGHT = 0.5

_MARKS = frozenset(",;:.!?()\n—–|")

_OPENING = frozenset(["no", "nope", "wait", "actually", "sorry", "oops", "correction", "oh"])
_NO_MATTER = "wait"
"""Stands for what opens a correction: the "no" of "no, he is strong" denies nothing of it."""

_CONTRARY = {Value.STRENGTH: Value.WEAKNESS, Value.WEAKNESS: Value.STRENGTH}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Note:
    said: Sequence[Word]
    line: Sequence[str]
    hits: Hits
    whose: tuple[Mention, ...]
    subjects: Subjects
    ourselves: Mapping[int, tuple[Mention, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRead:
    """A clause of a note's `line`, what the lexicon found in it, and what the rules made of it."""

    clause: Clause
    line: Sequence[str]
    hits: Hits
    judged: tuple[Judged, ...]

    @property
    def seen(self) -> SeenMessage:
        """The clause as the claim model sees it."""
        return see_clause(self.line, self.hits, self.clause, self.judged)


def read_note(
    text: str,
    said: Sequence[Word],
    mentions: Sequence[Mention],
    view: ChatView,
    *,
    weighed: bool = False,
) -> NoteSaid:
    """The note with every claim found; words that no claim covers are kept.

    The rules alone decide whether a message is a note; once it is one, it is read `weighed`: the
    model of many writers' notes drops what they misread and adds what they overlooked, and what
    it leaves in doubt may be offered.
    """
    note = _note(said, mentions, view)
    claims, doubted, used = _claims(note, weighed=weighed)
    used |= set(range(_opening(said, note.line)))
    heard = view.forwarded or note.hits.has(Role.HEARSAY)
    named = (*note.whose, *_speaking(claims, note.ourselves))
    return NoteSaid(
        text=text,
        mentions=tuple(sorted(named, key=lambda one: one.span)),
        claims=claims,
        kept=kept_words(text, said, note.line, used, places_of_manner(note.hits)),
        seen=Seen.HEARSAY if heard else Seen.LIVE,
        about_body=note.hits.has(Role.BODY),
        offered=worth_offering(doubted, claims),
    )


def parts_read(
    said: Sequence[Word], mentions: Sequence[Mention], view: ChatView
) -> tuple[PartRead, ...]:
    """A note's clauses as the rules read them: what the claim model learns from."""
    return tuple(_read_parts(_note(said, mentions, view)))


def _note(said: Sequence[Word], mentions: Sequence[Mention], view: ChatView) -> _Note:
    mine = ourselves(said, view.asker)
    whose = meant(said, mentions) or (() if 0 in mine else _implied(view))
    line = _line(said, whose)
    return _Note(
        said=said,
        line=line,
        hits=find_hits(line, _breaks(said)),
        whose=whose,
        subjects=Subjects(said, whose, mine),
        ourselves=mine,
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
    line = [
        NAME if any(start <= word.span[0] < stop for start, stop in spans) else _plain(word.folded)
        for word in said
    ]
    opening = _opening(said, line)
    return [_NO_MATTER] * opening + line[opening:]


def _opening(said: Sequence[Word], line: Sequence[str]) -> int:
    """How many words open a correction: two in "wait no okafor is strong", none in "no serve"."""
    words = next((at for at, word in enumerate(line) if word not in _OPENING), 0)
    return words if line[words : words + 1] == [NAME] or (words and said[words].gap.strip()) else 0


def _plain(folded: str) -> str:
    """`missin` as `missing`, `bachand` as `backhand`."""
    if folded == "w":
        return "with"
    known = is_common(folded) or folded in trait_phrases().words
    return folded if known else respelled(folded)


def _claims(note: _Note, *, weighed: bool) -> tuple[tuple[Claim, ...], list[Doubted], set[int]]:
    """The claims made, those in doubt, and the places of the words that the former cover."""
    claims: list[tuple[Claim, bool]] = []
    doubted: list[Doubted] = []
    used: set[int] = set()
    for part in _read_parts(note):
        hits = part.hits
        but = excepted(hits, note.line, part.clause.start)
        claims, freed = _without(claims, but, note)
        used -= freed
        weighing = _weighed(part) if weighed else Weighed(made=part.judged)
        claimed = weighing.made
        doubted = [one for one in doubted if one.claim.trait not in but]
        doubted += [
            Doubted(claim=replace(claim, weight=_hedge(hits)), chance=one.chance)
            for one in weighing.doubted
            for claim in _whose(note, one.judged, hits)
        ]
        if not claimed:
            claims = _tagged(claims, hits)
        told = [(judged, _whose(note, judged, hits)) for judged in claimed]
        if claims or claimed:
            used |= {at for hit in hits.having(Role.TAG) for at in range(hit.start, hit.stop)}
        if any(whose for _, whose in told):
            used |= places_of_manner(hits)
        for judged, whose in told:
            used |= set(range(judged.start, judged.stop)) if whose else set()
            claims += [(one, part.clause.turned) for one in whose]
    return _settled(claims), doubted, used


def _weighed(part: PartRead) -> Weighed:
    once = part.hits.has(Role.FORMER)
    often = part.hits.has(Role.OFTEN) and not part.hits.having(Role.GOOD, Role.BAD)
    return the_claim_model().weigh(part.seen, part.judged, only_rules=once, only_often=often)


def _read_parts(note: _Note) -> Iterator[PartRead]:
    """The clauses that describe somebody, in order, as the rules read them."""
    unbroken = [(hit.start, hit.stop) for hit in (*note.hits.traits, *note.hits.others)]
    reading = NOTHING_READ
    for clause in _whole(clauses(note.said, unbroken), note.hits):
        if not _is_of_us(clause, note) and is_advice(note.line[clause.start : clause.stop]):
            continue
        hits = note.hits.inside(clause)
        reading = read_clause(hits, note.line, clause, reading)
        yield PartRead(clause=clause, line=note.line, hits=hits, judged=reading.judged)


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


def _is_of_us(clause: Clause, note: _Note) -> bool:
    return clause.start in note.ourselves or clause.start + 1 in note.ourselves


def _speaking(
    claims: Sequence[Claim], mine: Mapping[int, tuple[Mention, ...]]
) -> tuple[Mention, ...]:
    """Whoever typed the note, where it claims something of them."""
    told = {claim.player for claim in claims}
    speakers = {one.players: one for each in mine.values() for one in each}
    return tuple(one for players, one in speakers.items() if told & set(players))


def _passes(note: _Note, judged: Judged) -> bool:
    """Of "im late on it" nothing stays; of "im right handed" the fact does."""
    begun = max((at for at in note.ourselves if at <= judged.at), default=None)
    if begun is None or TRAITS[judged.trait].kind is TraitKind.FACT:
        return False
    return is_myself(note.said, begun) and note.subjects.at(judged.at) == note.subjects.at(begun)


def _whose(note: _Note, judged: Judged, hits: Hits) -> list[Claim]:
    if _passes(note, judged):
        return []
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
    return strength * _hedge(hits)


def _hedge(hits: Hits) -> float:
    return HEDGED_WEIGHT if hits.has(Role.HEDGE) else 1.0


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
