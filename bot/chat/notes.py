"""A note in free text: what it says of whom, and which of its words no trait covers.

A claim needs a trait and a value, each found in the words: leaving something out is better than
inventing it. Every claim keeps the span of the words that carry it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial

from bot.chat.clauses import Clause, clauses
from bot.chat.half_understood import worth_offering
from bot.chat.kept_words import kept_words, negations, places_of_manner
from bot.chat.note_asked import answered
from bot.chat.note_bangs import of_bangers
from bot.chat.note_claims import NOTHING_READ, Judged, only_names_skills, read_clause
from bot.chat.note_corrections import corrected, leaves_denial_open
from bot.chat.note_doubts import before_a_doubt, only_offered, vouched_for
from bot.chat.note_figures import balls_counted
from bot.chat.note_high_balls import of_high_balls
from bot.chat.note_hits import Hits
from bot.chat.note_line import NoteLine, note_line
from bot.chat.note_manner import ALWAYS_SO, condition, condition_of, weight
from bot.chat.note_measures import is_age, is_of_shot, measures
from bot.chat.note_misreadings import is_feigned, is_misread
from bot.chat.note_negations import excepted, is_told_lacking
from bot.chat.note_nerves import without_nerves
from bot.chat.note_offered import offered_rightly
from bot.chat.note_ourselves import is_myself
from bot.chat.note_out_of_phrase import in_their_phrases
from bot.chat.note_own_trouble import without_own_trouble
from bot.chat.note_partners import given_to_partners, without_asides
from bot.chat.note_rattled import is_called_calm, with_rattled
from bot.chat.note_rivals import apart, shared, without_rival
from bot.chat.note_runs_round import without_running_round
from bot.chat.note_seam import at_the_seam
from bot.chat.note_settled import settled
from bot.chat.note_subjects import is_advice
from bot.chat.note_taken_back import with_what_counts
from bot.chat.note_unbothered import without_unbothered
from bot.chat.note_under_pace import under_pace
from bot.chat.note_weighing import Weighed, weigh
from bot.chat.note_witness import is_opinion_of_another
from bot.chat.pointed_out import pointed_elsewhere
from bot.chat.private_words import is_of_play
from bot.chat.said import Claim, Mention, NoteSaid
from bot.chat.trait_lexicon import Role
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.dataclass import dataclass
from knowledge.vocabulary import TRAITS, Seen, Trait, TraitKind


@dataclass(frozen=True, slots=True, kw_only=True)
class _Ruled:
    """What the rules read: claims, the places of the words that carry them, and the clauses.

    `excepted` are traits of which the note says "but not".
    """

    claims: tuple[Claim, ...]
    used: frozenset[int]
    parts: tuple[Clause, ...]
    excepted: frozenset[Trait]


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
    sure = before_a_doubt(said)
    if weighed and len(sure) < len(said):
        return only_offered(read_note(text, sure, mentions, view, weighed=True))
    said = without_own_trouble(without_running_round(said))
    is_open = leaves_denial_open(said, mentions)
    said, mentions = pointed_elsewhere(*corrected(said, mentions))
    instead = with_what_counts(said, mentions, view, partial(read_note, text, weighed=weighed))
    if instead is not None:
        return instead
    said, mentions = without_rival(said, mentions)
    note = note_line(said, mentions, view)
    ruled = _by_rules(note)
    read = Weighed(claims=ruled.claims)
    if weighed:
        read = weigh(note, ruled.parts, ruled.claims, ruled.excepted)
        given = without_asides(given_to_partners(read.claims, note), note)
        read = replace(read, claims=without_unbothered(shared(given, note), note))
        read = of_bangers(note, of_high_balls(note, vouched_for(note, read)))
    kept = (one for one in read.claims if not measures(one, said) and not is_of_shot(one, said))
    kept = (one for one in under_pace(kept, note) if not is_age(one, said))
    kept = (one for one in kept if not (is_open and one.denied))
    kept = (one for one in at_the_seam(kept, note) if not (weighed and is_feigned(one, note)))
    doubted = (replace(one, claim=at_the_seam([one.claim], note)[0]) for one in read.doubted)
    doubted = (one for one in doubted if not is_misread(one.claim, note))
    doubted = (one for one in doubted if not is_called_calm(one.claim, note))
    doubted = (one for one in doubted if not is_age(one.claim, said))
    read = replace(
        read,
        claims=with_rattled(
            without_nerves(
                in_their_phrases((one for one in kept if not is_misread(one, note)), note), note
            ),
            note,
            view.ours,
        ),
        doubted=tuple(
            replace(one, claim=claim)
            for one in doubted
            for claim in in_their_phrases((one.claim,), note)
        ),
    )
    read = offered_rightly(note, read)
    used = _covered(note, ruled, read.claims) | set(range(note.opening))
    told_by = is_opinion_of_another(said, mentions)
    heard = view.forwarded or told_by or note.hits.has(Role.HEARSAY)
    named = (*note.whose, *_speaking(read.claims, note.ourselves))
    return NoteSaid(
        text=text,
        mentions=tuple(sorted(named, key=lambda one: one.span)),
        claims=read.claims,
        kept=kept_words(
            text,
            said,
            note.line,
            used,
            manner=places_of_manner(note.hits),
            denying=negations(note.hits) - _places(note, read.claims),
        ),
        seen=Seen.HEARSAY if heard else Seen.LIVE,
        about_body=_is_about_body(note),
        offered=worth_offering(read.doubted, read.claims),
    )


def _is_about_body(note: NoteLine) -> bool:
    told = note.hits.having(Role.BODY)
    return not all(is_of_play(note.line, one.start, one.stop) for one in told)


def ruled_note(note: NoteLine) -> tuple[Claim, ...]:
    """What the rules alone read in a note: what the claim model is given beside its words."""
    return _by_rules(note).claims


def _covered(note: NoteLine, ruled: _Ruled, claims: Sequence[Claim]) -> set[int]:
    """The places of the words that the claims cover, with what says how and when."""
    dropped = [one for one in ruled.claims if one not in claims]
    added = [one for one in claims if one not in ruled.claims]
    used = (set(ruled.used) - _places(note, dropped)) | _places(note, claims)
    for part in ruled.parts:
        if _places(note, added) & set(range(part.start, part.stop)):
            hits = note.hits.inside(part)
            used |= places_of_manner(hits)
            used |= {at for hit in hits.having(Role.TAG) for at in range(hit.start, hit.stop)}
    return used


def _places(note: NoteLine, claims: Sequence[Claim]) -> set[int]:
    spans = [one.span for one in claims]
    return {
        at
        for at, word in enumerate(note.said)
        if any(start <= word.span[0] < stop for start, stop in spans)
    }


def _by_rules(note: NoteLine) -> _Ruled:
    claims: list[tuple[Claim, bool]] = []
    used: set[int] = set()
    exceptions: set[Trait] = set()
    parts = _parts(note)
    for clause, hits, read in _read_parts(note, parts):
        judged, asked = answered(read, clause, note.said)
        but = excepted(hits, note.line, clause.start)
        exceptions |= but | asked
        claims, freed = _without(claims, but, note)
        used -= freed
        if not judged:
            claims = _tagged(claims, hits)
        manner = weight(hits, balls_counted(note.line[clause.start : clause.stop]))
        told = [(one, _whose(note, one, hits, weight=manner)) for one in judged]
        told_of = [one.trait for one in judged] or [claim.trait for claim, _ in claims[-1:]]
        if not ALWAYS_SO.issuperset(told_of):
            used |= {at for hit in hits.having(Role.TAG) for at in range(hit.start, hit.stop)}
        if any(whose for _, whose in told):
            used |= places_of_manner(hits)
        for one, whose in told:
            used |= set(range(one.start, one.stop)) if whose else set()
            claims += [(claim, clause.turned) for claim in whose]
    return _Ruled(
        claims=settled(claims),
        used=frozenset(used),
        parts=parts,
        excepted=frozenset(exceptions),
    )


def _parts(note: NoteLine) -> tuple[Clause, ...]:
    unbroken = [(hit.start, hit.stop) for hit in (*note.hits.traits, *note.hits.others)]
    return tuple(_whole([*apart(clauses(note.said, unbroken), note.line)], note))


def _read_parts(
    note: NoteLine, parts: Sequence[Clause]
) -> Iterator[tuple[Clause, Hits, tuple[Judged, ...]]]:
    """The clauses that describe somebody, in order, with what the rules read in them."""
    reading = NOTHING_READ
    for clause in parts:
        if not _is_of_us(clause, note) and is_advice(note.line[clause.start : clause.stop]):
            continue
        hits = note.hits.inside(clause)
        reading = read_clause(hits, note.line, clause, reading)
        yield clause, hits, reading.judged


def _without(
    claims: list[tuple[Claim, bool]], traits: frozenset[Trait], note: NoteLine
) -> tuple[list[tuple[Claim, bool]], set[int]]:
    """The claims that an exception leaves, and the places of the words it frees."""
    gone = [claim for claim, _ in claims if claim.trait in traits]
    return [each for each in claims if each[0] not in gone], _places(note, gone)


def _tagged(claims: list[tuple[Claim, bool]], hits: Hits) -> list[tuple[Claim, bool]]:
    """A condition in a clause of its own ("when pulled wide") belongs to the claim before it."""
    tag = condition(hits)
    if not claims or tag is None or claims[-1][0].tag is not None:
        return claims
    last, turned = claims[-1]
    return [*claims[:-1], (replace(last, tag=condition_of(last.trait, hits)), turned)]


def _whole(parts: Sequence[Clause], note: NoteLine) -> list[Clause]:
    """Skills without a judgement wait for the next clause: "serve and return | are solid"."""
    whole: list[Clause] = []
    hits = note.hits
    for part in parts:
        waits = whole and only_names_skills(hits.inside(whole[-1]))
        waits = waits and not is_told_lacking(whole[-1], part, note)
        trails = part is parts[-1] and only_names_skills(hits.inside(part))
        if whole and part.joined and (waits or trails):
            whole[-1] = replace(whole[-1], stop=part.stop)
        else:
            whole.append(part)
    return whole


def _is_of_us(clause: Clause, note: NoteLine) -> bool:
    return clause.start in note.ourselves or clause.start + 1 in note.ourselves


def _speaking(
    claims: Sequence[Claim], mine: Mapping[int, tuple[Mention, ...]]
) -> tuple[Mention, ...]:
    """Whoever typed the note, where it claims something of them."""
    told = {claim.player for claim in claims}
    speakers = {one.players: one for each in mine.values() for one in each}
    return tuple(one for players, one in speakers.items() if told & set(players))


def _passes(note: NoteLine, judged: Judged) -> bool:
    """Of "im late on it" nothing stays; of "im right handed" the fact does."""
    begun = max((at for at in note.ourselves if at <= judged.at), default=None)
    if begun is None or TRAITS[judged.trait].kind is TraitKind.FACT:
        return False
    return is_myself(note.said, begun) and note.subjects.at(judged.at) == note.subjects.at(begun)


def _whose(note: NoteLine, judged: Judged, hits: Hits, *, weight: float) -> list[Claim]:
    if _passes(note, judged):
        return []
    span = (note.said[judged.start].span[0], note.said[judged.stop - 1].span[1])
    return [
        Claim(
            player=player,
            trait=judged.trait,
            value=judged.value,
            weight=weight,
            span=span,
            denied=judged.denied,
            tag=condition_of(judged.trait, hits),
        )
        for player in note.subjects.at(judged.at)
    ]
