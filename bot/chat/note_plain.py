"""Claims so plainly worded that no doubt of the model outweighs them: "great drop, poor drive".

In a note that is a bare list of an adjective and a skill, then the next, nothing else is there that
might turn what the adjectives say.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from bot.chat.claim_model import SKILL
from bot.chat.clauses import Clause
from bot.chat.note_hits import BIG, JUDGEMENTS, SKILLS, Hit, Hits
from bot.chat.note_line import NoteLine
from bot.chat.note_rivals import is_told_by_contrast
from bot.chat.said import Claim
from bot.chat.trait_lexicon import NAME, Role
from knowledge.vocabulary import TRAITS

_BESIDE = frozenset(
    [NAME, "and", "n", "but", "plus", "he", "she", "has", "hes", "shes", "got", "a"]
)
"""Words that may stand in such a list beside the adjectives and skills."""

_SAYS_NOTHING = frozenset(
    [
        *("note", "wait", "is", "are", "her", "his", "their", "they", "the", "an", "on", "at"),
        *("very", "really", "so", "too"),
    ]
)


def plain_claims(
    note: NoteLine, parts: Sequence[Clause], ruled: Iterable[Claim]
) -> tuple[Claim, ...]:
    """The claims of the rules that are an adjective and the skill right behind it, in a list of two
    or more, and what tells of another in a word what was just said: "hale stacks, ruiz doesn't".
    """
    told = tuple(ruled)
    contrasts = [part for part in parts if is_told_by_contrast(note.line[part.start : part.stop])]
    turned = tuple(one for one in told for part in contrasts if _own_words(one, note, part))
    lists = [part for part in parts if _is_listed(note, part)]
    listed = [(one, part) for one in told for part in lists if _own_words(one, note, part)]
    if len({one.span for one, _ in listed}) < 2:
        return turned
    return (*turned, *(one for one, part in listed if _is_plain(one, note, part)))


def with_plain(claims: Sequence[Claim], plain: Sequence[Claim]) -> list[Claim]:
    """Plain words stand, in the place of their contrary where the model took them for that."""
    contrary = {
        (one.player, one.trait, value)
        for one in plain
        for value in TRAITS[one.trait].values
        if value is not one.value and (value in SKILL) is (one.value in SKILL)
    }
    kept = [one for one in claims if (one.player, one.trait, one.value) not in contrary]
    return [*kept, *(one for one in plain if one not in kept)]


def is_all_told(note: NoteLine, part: Clause) -> bool:
    """Whether the rules know every word there, so that nothing else may turn what they read."""
    hits = note.hits.inside(part)
    told = {at for hit in (*hits.traits, *hits.others) for at in range(hit.start, hit.stop)}
    return all(
        at in told or note.line[at] in _BESIDE or note.line[at] in _SAYS_NOTHING
        for at in range(part.start, part.stop)
    )


def is_plain(clause: Clause, ruled: Claim | None, note: NoteLine) -> bool:
    """Whether the rules know every word of the clause, or of what stands between two commas around
    what they read.
    """
    if ruled is None or is_all_told(note, clause):
        return is_all_told(note, clause)
    begins = next(at for at, word in enumerate(note.said) if word.span[1] > ruled.span[0])
    between = between_commas(note, begins, begins + 1)
    return between.stop - between.start < len(note.said) and is_all_told(note, between)


def between_commas(note: NoteLine, start: int, stop: int) -> Clause:
    """The words around these up to the next commas."""
    begins = [at for at in range(start + 1) if "," in note.said[at].gap]
    ends = [at for at in range(stop, len(note.said)) if "," in note.said[at].gap]
    return Clause(start=max(begins, default=0), stop=min(ends, default=len(note.said)))


def _is_listed(note: NoteLine, part: Clause) -> bool:
    hits = note.hits.inside(part)
    told = {at for hit in _telling(hits) for at in range(hit.start, hit.stop)}
    return all(
        at in told or note.line[at] in _BESIDE for at in range(part.start, part.stop)
    ) and not hits.has(Role.FORMER)


def _telling(hits: Hits) -> list[Hit]:
    return [hit for hit in hits.having(*SKILLS, *JUDGEMENTS) if not hit.meaning.is_verb]


def _own_words(claim: Claim, note: NoteLine, part: Clause) -> list[int]:
    """The places of the claim's words in that part of the note."""
    start, stop = claim.span
    return [at for at in range(part.start, part.stop) if start <= note.said[at].span[0] < stop]


def _is_plain(claim: Claim, note: NoteLine, part: Clause) -> bool:
    """Whether its words are an adjective and then nothing but the skill."""
    own = _own_words(claim, note, part)
    if claim.denied:
        return False
    hits = note.hits.inside(part)
    judging = [hit for hit in hits.having(*JUDGEMENTS) if hit.start in own]
    if not judging and note.line[own[0]] in BIG:
        return True  # "big backhand" is a skill that says how good it is
    leads = [hit for hit in judging if hit.start == own[0] and hit.stop <= own[-1]]
    goes_on = any(hit.start == own[-1] + 1 for hit in hits.having(*SKILLS))  # "floaty bh | drop"
    return len(judging) == len(leads) == 1 and not goes_on
