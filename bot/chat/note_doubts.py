"""What a note says without vouching for it: "not sure if hale is a lefty", "tom thinks hale is slow
but i dont agree", "dont read much into it", "they were good dinks from us".

What is only doubted may be offered; what somebody disagrees with or what is ours is no claim.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import takewhile
from typing import Final

from bot.chat.half_understood import MOST_OFFERED, Doubted
from bot.chat.note_hits import JUDGEMENTS, SKILLS
from bot.chat.note_line import NoteLine
from bot.chat.note_opinions import found_in
from bot.chat.note_weighing import Weighed
from bot.chat.said import Claim, NoteSaid
from bot.chat.trait_lexicon import NAME
from bot.chat.words import Word
from knowledge.regex import regex

_ENDS = frozenset(".;!?\n()")
_TURNS = frozenset(["but", "though", "tho", "although", "however", "whereas", "yet"])

_THEM = rf"(?:{NAME}|he|she|they|hes|shes|theyre|his|her|their)"
_UNSURE = (
    r"(?:not (?:too |so |really |quite |entirely |all that |100 |a hundred percent )?"
    r"(?:sure|certain|convinced|positive|clear)|unsure|dont know|do not know|dunno|no idea"
    r"|(?:cant|couldnt|cannot) (?:tell|say|see|remember)|hard to (?:tell|say|know)|wonder(?:ing)?"
    r"|who knows|idk)"
)
_OPEN: Final = regex(
    rf"\b(?:{_UNSURE} (?:yet |really |honestly )?(?:if|whether)\b"
    r"|(?:not (?:too |so |really |quite )?(?:sure|certain|convinced|positive)|unsure)(?: that)?"
    rf"(?= {_THEM}(?![^ ])))"
)
"""Behind it stands what is not known."""

_LEFT_OPEN: Final = regex(
    r"(?:(?:but|though|tho|and) )?(?:(?:im|i am|i) )?(?:really |still )?not "
    r"(?:(?:so|too|really|quite|entirely|100|totally|completely|all that|very) )*"
    r"(?:sure|certain|positive)(?: (?:about (?:it|that|this)|of (?:it|that)|though|tho|yet))* "
)
"""What a note may end with: "castellan lobs a lot, i am not sure"."""

_EITHER: Final = regex(rf"\b{_UNSURE} which\b")
"""Before it stand two things of which one is so."""

_DISCOUNTED: Final = regex(
    r"\b(?:(?:dont|do not|wouldnt|shouldnt) (?:read|make) (?:too |that )?much (?:into|of|out of)"
    r"|(?:dont|do not|wouldnt) (?:count|trust|weigh) (?:it|that|this|those|them)(?: (?:too )?much)?"
    r"|(?:doesnt|does not|dont|didnt) mean (?:too )?(?:much|anything|a thing)"
    r"|(?:a )?(?:grain|pinch|pinches) of salt|(?:dont|do not) quote me"
    r"|(?:just|only|pure|sheer|mostly) (?:bad |good |dumb )?luck|(?:a |total )?fluke)\b"
)
_DISAGREED: Final = regex(
    rf"(?<!\byou )(?<!\bu )(?<!\bthey )(?<!{NAME} )\b(?:(?:i |we |id )?"
    r"(?:(?:dont|do not|didnt|cant) (?:really |quite )?"
    r"(?:agree|think so|buy (?:it|that)|see it(?: that way)?|believe (?:it|that|him|her|them))"
    r"|disagree|beg to differ|wouldnt (?:say so|go that far)))(?! (?:that|coming)\b)(?![^ ])"
)
_CALLED_WRONG: Final = regex(
    r"\b(?:thats|that is|its|that was|but) (?:just |plain |total |complete |absolute )?"
    r"(?:wrong|rubbish|nonsense|bs|bull|not true|not so|untrue|crap)(?![^ ])"
)
"""Only of what somebody else is said to think: "his backhand, thats rubbish" judges a backhand."""

_OPINION_OF_OTHERS: Final = regex(
    r"[^ ]+ (?:always |just |also |keeps? )*(?:says|saying|thinks|reckons|swears|believes|claims"
    r"|insists|told (?:me|us))(?![^ ])"
    rf"|(?:{NAME}|partner|people|everyone|everybody|they|folks|guys)"
    r" (?:say|said|think|thought|reckon|reckoned|swore|believed?|claim|claimed)(?![^ ])"
)
_OURS = frozenset(["us", "me", "ours", "mine", "myself"])
_FROM = frozenset(["from", "by", "of"])

Stretch = tuple[int, int]
"""Words from the first up to the second."""


def before_a_doubt(said: Sequence[Word]) -> Sequence[Word]:
    """The words before a last "i am not sure", which parts itself by a mark or a "but"."""
    for at in range(1, len(said)):
        parted = said[at].gap.strip() or said[at].folded in _TURNS
        if parted and _LEFT_OPEN.fullmatch(" ".join(word.folded for word in said[at:]) + " "):
            return said[:at]
    return said


def only_offered(note: NoteSaid) -> NoteSaid:
    """The note with nothing claimed: what it says may be tapped."""
    offered = [one for one in (*note.claims, *note.offered) if not one.denied]
    return replace(note, claims=(), offered=tuple(offered[:MOST_OFFERED]))


def vouched_for(note: NoteLine, read: Weighed) -> Weighed:
    """The reading without what the note leaves open, takes for wrong or tells of us."""
    no_claim = [*_disagreed(note), *_ours(note)]
    left_open = [*_open(note)]
    if not no_claim and not left_open:
        return read
    claims = [one for one in read.claims if not _is_in(one, no_claim, note)]
    doubted = [one for one in read.doubted if not _is_in(one.claim, no_claim, note)]
    opened = [one for one in claims if _is_in(one, left_open, note)]
    return replace(
        read,
        claims=tuple(one for one in claims if one not in opened),
        doubted=(*(Doubted(claim=one, chance=1.0) for one in opened), *doubted),
    )


def _open(note: NoteLine) -> Iterator[Stretch]:
    for _, stop in found_in(_typed(note), _OPEN):
        yield stop, _ending(note, stop)
    for start, _ in found_in(_typed(note), _EITHER):
        yield _beginning(note, start), start
    for start, _ in found_in(_typed(note), _DISCOUNTED):
        yield _sentence(note, start), start


def _disagreed(note: NoteLine) -> Iterator[Stretch]:
    """What others think, or else what stands before, where whoever writes does not."""
    told = list(found_in(_typed(note), _OPINION_OF_OTHERS))
    for start, _ in found_in(_typed(note), _DISAGREED):
        first = _sentence(note, start)
        yield max((at for at, _ in told if first <= at < start), default=first), start
    for start, _ in found_in(_typed(note), _CALLED_WRONG):
        yield from ((at, start) for at, _ in told[-1:] if at < start)


def _ours(note: NoteLine) -> Iterator[Stretch]:
    """ "Really good dinks | from us": a stroke just judged, and whose it was."""
    for at in range(1, len(note.line) - 1):
        if note.line[at] not in _FROM or note.line[at + 1] not in _OURS:
            continue
        stop = at
        shots = note.hits.having(*SKILLS)
        while any(hit.stop == stop for hit in shots):
            stop = min(hit.start for hit in shots if hit.stop == stop)
        judged = [hit for hit in note.hits.having(*JUDGEMENTS) if not hit.meaning.is_verb]
        first = [hit.start for hit in judged if hit.stop == stop < at]
        if first:
            yield min(first), at + 2


def _sentence(note: NoteLine, place: int) -> int:
    """Where what stands before the place begins, whatever turns it: "slow but dont count it"."""
    marks = (at for at in range(place - 1, 0, -1) if set(note.said[at].gap) & _ENDS)
    return next(marks, 0)


def _beginning(note: NoteLine, place: int) -> int:
    """The same, from a "but" on."""
    return next((at for at in range(place - 1, 0, -1) if _parts(note, at)), 0)


def _ending(note: NoteLine, place: int) -> int:
    ahead = takewhile(lambda at: not _parts(note, at), range(place, len(note.line)))
    return max(ahead, default=place - 1) + 1


def _parts(note: NoteLine, at: int) -> bool:
    return bool(set(note.said[at].gap) & _ENDS) or note.line[at] in _TURNS


def _is_in(claim: Claim, stretches: Sequence[Stretch], note: NoteLine) -> bool:
    """Whether words of the claim stand there."""
    start, stop = claim.span
    own = {at for at, word in enumerate(note.said) if start <= word.span[0] < stop}
    return any(not own.isdisjoint(range(first, end)) for first, end in stretches)


def _typed(note: NoteLine) -> list[str]:
    """The words as typed, names out: what is looked for here is no slip of another word."""
    return [
        NAME if read == NAME else word.folded
        for word, read in zip(note.said, note.line, strict=True)
    ]
