"""A note in free text: what it says of whom, and which of its words no trait covers.

A claim needs a trait and a value, each found in the words: leaving something out is better than
inventing it. Every claim keeps the span of the words that carry it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from bot.chat.clauses import Clause, clauses
from bot.chat.note_subjects import Subjects, is_advice
from bot.chat.phrase import Found
from bot.chat.question import Certainty, Claim, Mention, NoteSaid
from bot.chat.trait_lexicon import Role, Sense, trait_phrases
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.vocabulary import TRAITS, Seen, Tag, Trait, TraitKind, Value

HEDGED_WEIGHT = 0.45
"""What "maybe" leaves of a claim. Common practice, no source (engineering notes 1.3)."""

STRONG_WEIGHT = 1.5
MILD_WEIGHT = 0.5

NAME = "@"
"""Stands in the line for every word of a name, so that no name is read as a trait."""

_REACH_OF_A_JUDGEMENT = 6
"""Words between a skill and what is said of it. Common practice, no source."""

_REACH_OF_A_NEGATION = 6

_TRAIT_ROLES = frozenset({Role.DIRECT, Role.HABIT, Role.NOUN})
_JUDGEMENTS = frozenset({Role.GOOD, Role.BAD})
_PREDICATES = frozenset({Role.DIRECT, Role.HABIT, Role.GOOD, Role.BAD})

_OPPOSITE = {
    Value.STRENGTH: Value.WEAKNESS,
    Value.WEAKNESS: Value.STRENGTH,
    Value.OFTEN: Value.RARELY,
    Value.RARELY: Value.OFTEN,
}

_EMPTY_WORDS = frozenset(
    "a an the and or n is are was be been to of in on at for with by from as it its he she they his"
    " her their him them that this these those very really so just his hes shes theyre s re and but"
    " too also w has have had got gets get does do i we my our u you your note notes who which there"
    " then than if when all both um uh like well yeah ok okay lol partner".split()  # noqa: SIM905
)

Hit = Found[Sense]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Judged:
    """A trait with its value and the words that carry it, before it is anybody's."""

    trait: Trait
    value: Value
    denied: bool
    start: int
    stop: int
    at: int


def read_note(
    text: str, said: Sequence[Word], mentions: Sequence[Mention], view: ChatView
) -> NoteSaid:
    """The note with every claim found; words that no claim covers are kept."""
    whose = tuple(mentions) or _implied(view)
    line = _line(said, whose)
    hits = trait_phrases().find(line)
    traits = _longest([hit for hit in hits if hit.meaning.role in _TRAIT_ROLES])
    others = _others(hits, traits)
    heard = view.forwarded or any(hit.meaning.role is Role.HEARSAY for hit in hits)
    about_body = any(hit.meaning.role is Role.BODY for hit in hits)
    subjects = Subjects(said, whose)
    claims, used = _claims(said, line, traits, others, subjects)
    return NoteSaid(
        text=text,
        mentions=whose,
        claims=() if about_body else claims,
        kept=_kept(text, said, line, used),
        seen=Seen.HEARSAY if heard else Seen.LIVE,
        about_body=about_body,
    )


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
        NAME if any(start <= word.span[0] < stop for start, stop in spans) else word.folded
        for word in said
    ]


def _longest(hits: Iterable[Hit]) -> list[Hit]:
    """Hits that do not overlap, longer ones first; in order of place."""
    taken: set[int] = set()
    chosen: list[Hit] = []
    for hit in sorted(hits, key=lambda one: (-one.length, one.start)):
        places = set(range(hit.start, hit.stop))
        if not places & taken:
            taken |= places
            chosen.append(hit)
    return sorted(chosen, key=lambda one: one.start)


def _others(hits: Sequence[Hit], traits: Sequence[Hit]) -> list[Hit]:
    """Judgements and negations outside the traits' words; the rest of the hits as they are."""
    covered = {place for hit in traits for place in range(hit.start, hit.stop)}
    weighing = {Role.GOOD, Role.BAD, Role.NOT, Role.NO_NEGATION}
    outside = [
        hit
        for hit in hits
        if hit.meaning.role in weighing and not covered & set(range(hit.start, hit.stop))
    ]
    rest = [hit for hit in hits if hit.meaning.role not in weighing | _TRAIT_ROLES]
    return _longest(outside) + rest


def _claims(
    said: Sequence[Word],
    line: Sequence[str],
    traits: Sequence[Hit],
    others: Sequence[Hit],
    subjects: Subjects,
) -> tuple[tuple[Claim, ...], set[int]]:
    unbroken = [(hit.start, hit.stop) for hit in [*traits, *others]]
    claims: list[Claim] = []
    used: set[int] = set()
    for clause in _whole_clauses(clauses(said, unbroken), traits, others):
        for judged in _judged(clause, line, traits, others):
            used |= set(range(judged.start, judged.stop))
            claims += _whose(said, clause, judged, others, subjects)
    return _once_each(claims), used


def _whole_clauses(
    parts: Sequence[Clause], traits: Sequence[Hit], others: Sequence[Hit]
) -> list[Clause]:
    """Skills without a judgement wait for the next clause: "serve and return | are solid"."""
    whole: list[Clause] = []
    for part in parts:
        waits = whole and part.joined and _only_names_skills(whole[-1], traits, others)
        if waits:
            whole[-1] = replace(whole[-1], stop=part.stop)
        elif (
            whole and part.joined and _only_names_skills(part, traits, others) and part is parts[-1]
        ):
            whole[-1] = replace(whole[-1], stop=part.stop)
        else:
            whole.append(part)
    return whole


def _only_names_skills(clause: Clause, traits: Sequence[Hit], others: Sequence[Hit]) -> bool:
    roles = [hit.meaning.role for hit in _inside(traits, clause)]
    judged = any(hit.meaning.role in _JUDGEMENTS for hit in _inside(others, clause))
    return bool(roles) and set(roles) == {Role.NOUN} and not judged


def _inside(hits: Sequence[Hit], clause: Clause) -> list[Hit]:
    return [hit for hit in hits if clause.start <= hit.start and hit.stop <= clause.stop]


def _judged(
    clause: Clause, line: Sequence[str], traits: Sequence[Hit], others: Sequence[Hit]
) -> list[_Judged]:
    here, around = _inside(traits, clause), _inside(others, clause)
    if is_advice(line[clause.start : clause.stop]):
        return []
    nots = _negations(around)
    judgements = [hit for hit in around if hit.meaning.role in _JUDGEMENTS]
    nouns = [hit for hit in here if hit.meaning.role is Role.NOUN]
    here, judgements = _adjectives_of_nouns(here, nouns, judgements, line)
    predicates = [hit for hit in [*here, *judgements] if hit.meaning.role in _PREDICATES]
    denied = _denied(nots, predicates)
    found = [_direct(hit, denied=hit in denied) for hit in here if hit.meaning.role is Role.DIRECT]
    found += [
        _habit(hit, around, denied=hit in denied) for hit in here if hit.meaning.role is Role.HABIT
    ]
    return found + _skills(nouns, judgements, nots, denied, line)


def _adjectives_of_nouns(
    here: list[Hit], nouns: Sequence[Hit], judgements: list[Hit], line: Sequence[str]
) -> tuple[list[Hit], list[Hit]]:
    """ "Backhand is slow" is about the backhand, not about the feet."""
    kept = list(here)
    for hit in here:
        polarity = {Value.STRENGTH: Role.GOOD, Value.WEAKNESS: Role.BAD}.get(
            hit.meaning.value or Value.YES
        )
        bare = hit.meaning.role is Role.DIRECT and hit.length == 1 and polarity is not None
        if bare and polarity and any(_touches(noun, hit, line) for noun in nouns):
            kept.remove(hit)
            judgements = [*judgements, replace(hit, meaning=Sense(role=polarity))]
    return kept, sorted(judgements, key=lambda one: one.start)


def _touches(noun: Hit, hit: Hit, line: Sequence[str]) -> bool:
    """`slow backhand`, or `backhand is slow` with nothing but small words in between."""
    if hit.stop == noun.start:
        return True
    between = line[noun.stop : hit.start]
    return noun.stop <= hit.start and all(word in _COPULAS for word in between)


_COPULAS = frozenset(
    "is are s re was r looks gets very really so pretty super a too kinda bit always".split()  # noqa: SIM905
)


def _negations(around: Sequence[Hit]) -> list[Hit]:
    guards = {
        place
        for hit in around
        if hit.meaning.role is Role.NO_NEGATION
        for place in range(hit.start, hit.stop)
    }
    return [hit for hit in around if hit.meaning.role is Role.NOT and hit.start not in guards]


def _denied(nots: Sequence[Hit], predicates: Sequence[Hit]) -> list[Hit]:
    """The predicates that a negation reaches: the next one, and those joined to it by "or"."""
    reached: list[Hit] = []
    for no in nots:
        ahead = [hit for hit in predicates if 0 <= hit.start - no.stop < _REACH_OF_A_NEGATION]
        nearest = min(ahead, key=lambda hit: hit.start, default=None)
        if nearest is not None:
            reached = [hit for hit in reached if hit != nearest] + (
                [] if nearest in reached else [nearest]
            )
    return reached


def _direct(hit: Hit, *, denied: bool) -> _Judged:
    sense = hit.meaning
    assert sense.trait is not None and sense.value is not None
    value, only_denied = _under_negation(sense.trait, sense.value, is_verb=False, denied=denied)
    return _Judged(
        trait=sense.trait, value=value, denied=only_denied, start=hit.start, stop=hit.stop,
        at=hit.start,
    )  # fmt: skip


def _under_negation(
    trait: Trait, value: Value, *, is_verb: bool, denied: bool
) -> tuple[Value, bool]:
    """The value said, and whether it is only denied: "not slow" is not yet "quick"."""
    if not denied:
        return value, False
    if TRAITS[trait].kind is TraitKind.FACT:
        return value, True
    if value is Value.WEAKNESS and not is_verb:
        return value, True
    return _OPPOSITE[value], False


def _habit(hit: Hit, around: Sequence[Hit], *, denied: bool) -> _Judged:
    """Often, unless a word near it says rarely or never."""
    sense = hit.meaning
    assert sense.trait is not None
    rarely = denied or any(
        one.meaning.role is Role.RARELY
        and 0 <= hit.start - one.stop < _REACH_OF_A_NEGATION
        or one.meaning.role is Role.RARELY
        and 0 <= one.start - hit.stop < 2
        for one in around
    )
    value = Value.RARELY if rarely else Value.OFTEN
    return _Judged(
        trait=sense.trait, value=value, denied=False, start=hit.start, stop=hit.stop, at=hit.start
    )


def _skills(
    nouns: Sequence[Hit],
    judgements: Sequence[Hit],
    nots: Sequence[Hit],
    denied: Sequence[Hit],
    line: Sequence[str],
) -> list[_Judged]:
    pairs = _pairs(nouns, judgements, line)
    found = [_skill(noun, judgement, denied=judgement in denied) for noun, judgement in pairs]
    without = [noun for noun in nouns if not any(noun is paired for paired, _ in pairs)]
    return found + [_lacking(noun) for noun in without if any(no.stop == noun.start for no in nots)]


def _lacking(noun: Hit) -> _Judged:
    """ "No backhand"."""
    assert noun.meaning.trait is not None
    value = Value.RARELY if Value.RARELY in TRAITS[noun.meaning.trait].values else Value.WEAKNESS
    return _Judged(
        trait=noun.meaning.trait, value=value, denied=False, start=noun.start - 1,
        stop=noun.stop, at=noun.start,
    )  # fmt: skip


def _skill(noun: Hit, judgement: Hit, *, denied: bool) -> _Judged:
    assert noun.meaning.trait is not None
    said = Value.STRENGTH if judgement.meaning.role is Role.GOOD else Value.WEAKNESS
    value, only_denied = _under_negation(
        noun.meaning.trait, said, is_verb=judgement.meaning.is_verb, denied=denied
    )
    return _Judged(
        trait=noun.meaning.trait,
        value=value,
        denied=only_denied,
        start=min(noun.start, judgement.start),
        stop=max(noun.stop, judgement.stop),
        at=noun.start,
    )


def _pairs(
    nouns: Sequence[Hit], judgements: Sequence[Hit], line: Sequence[str]
) -> list[tuple[Hit, Hit]]:
    """Each judgement with the skill before it, or after it; skills in a row share one."""
    pairs: list[tuple[Hit, Hit]] = []
    for judgement in judgements:
        free = [noun for noun in nouns if not any(noun is paired for paired, _ in pairs)]
        noun = _noun_of(judgement, free, line)
        if noun is not None:
            pairs.append((noun, judgement))
    for noun in nouns:
        if not any(noun is paired for paired, _ in pairs):
            shared = _shared(noun, nouns, pairs, line)
            pairs += [(noun, shared)] if shared is not None else []
    return pairs


def _noun_of(judgement: Hit, free: Sequence[Hit], line: Sequence[str]) -> Hit | None:
    before = [noun for noun in free if noun.stop <= judgement.start]
    after = [noun for noun in free if noun.start >= judgement.stop]
    if (
        after
        and after[0].start == judgement.stop
        and not (before and _touches(before[-1], judgement, line))
    ):
        return after[0]
    near = [(judgement.start - noun.stop, noun) for noun in before[-1:]] + [
        (noun.start - judgement.stop, noun) for noun in after[:1]
    ]
    distance, noun = min(near, key=lambda one: one[0], default=(_REACH_OF_A_JUDGEMENT, None))
    return noun if distance < _REACH_OF_A_JUDGEMENT else None


_ROW_WORDS = frozenset(["and", "n", "or", "his", "her", "their", "the", "plus", "both"])


def _shared(
    noun: Hit, nouns: Sequence[Hit], pairs: Sequence[tuple[Hit, Hit]], line: Sequence[str]
) -> Hit | None:
    """The judgement of the skill next in a row of skills ("serve and return are solid")."""
    for other, judgement in pairs:
        first, last = sorted((noun, other), key=lambda one: one.start)
        if all(
            word in _ROW_WORDS or any(one.start <= place < one.stop for one in nouns)
            for place, word in enumerate(line)
            if first.stop <= place < last.start
        ):
            return judgement
    return None


def _whose(
    said: Sequence[Word],
    clause: Clause,
    judged: _Judged,
    others: Sequence[Hit],
    subjects: Subjects,
) -> list[Claim]:
    around = _inside(others, clause)
    weight = _weight(judged, around)
    tags = [hit.meaning.tag for hit in around if hit.meaning.role is Role.TAG]
    span = (said[judged.start].span[0], said[judged.stop - 1].span[1])
    return [
        Claim(
            player=player,
            trait=judged.trait,
            value=judged.value,
            weight=weight,
            span=span,
            denied=judged.denied,
            tag=_tag(tags),
        )
        for player in subjects.at(judged.at)
    ]


def _weight(judged: _Judged, around: Sequence[Hit]) -> float:
    roles = {hit.meaning.role for hit in around}
    strength = MILD_WEIGHT if Role.LESS in roles else STRONG_WEIGHT if Role.MORE in roles else 1.0
    return strength * (HEDGED_WEIGHT if Role.HEDGE in roles else 1.0)


def _tag(tags: Sequence[Tag | None]) -> Tag | None:
    return next((tag for tag in tags if tag is not None), None)


def _once_each(claims: Sequence[Claim]) -> tuple[Claim, ...]:
    """The first claim of each player, trait and value."""
    first: dict[tuple[object, ...], Claim] = {}
    for claim in claims:
        first.setdefault((claim.player, claim.trait, claim.value, claim.denied), claim)
    return tuple(first.values())


def _kept(text: str, said: Sequence[Word], line: Sequence[str], used: set[int]) -> tuple[str, ...]:
    """Stretches of words that no claim covers, without the small words at their ends."""
    kept: list[str] = []
    run: list[int] = []
    for place in range(len(said) + 1):
        ends = place == len(said) or place in used or line[place] == NAME
        broken = not ends and place and set(said[place].gap) & set(".;:!?\n,")
        if ends or broken:
            kept += _trimmed(text, said, run)
            run = []
        if not ends:
            run.append(place)
    return tuple(kept)


def _trimmed(text: str, said: Sequence[Word], run: Sequence[int]) -> list[str]:
    full = [place for place in run if said[place].folded not in _EMPTY_WORDS]
    if not full:
        return []
    return [text[said[full[0]].span[0] : said[full[-1]].span[1]]]
