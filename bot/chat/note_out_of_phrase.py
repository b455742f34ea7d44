"""Claims made of a word torn out of its phrase: "off a high ball" tells nothing of an overhead.

Such a claim goes; where the phrase says the contrary ("only three were deep"), it is turned.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.note_as_told import as_told
from bot.chat.note_body_side import is_of_a_body_side
from bot.chat.note_figures import is_number
from bot.chat.note_hits import SKILLS, Hit
from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.trait_lexicon import NAME, TRAIT_OF_STROKE, Role
from knowledge.vocabulary import Trait, Value

_OFF = frozenset(["off", "from"])
_OF_A_BALL = frozenset(
    ["a", "an", "the", "any", "every", "each", "all", "that", "my", "our", "your", "their"]
)
_ALONG = frozenset(["line", "dtl", "cross", "crosscourt", "court"])
"""Where a shot goes, to which no player moves."""
_HITS = frozenset(["hit", "hits", "hitting", "goes", "go", "going", "plays", "always", "only"])

HALF_AS_SURE = 0.5
"""What a mere comparison weighs, like a note that hedges."""

_IN_CASE = frozenset(["when", "whenever", "if", "once", "unless", "against", "vs", "versus"])
_AS_SOON_AS = ("as", "soon", "as")
_OWN = frozenset(["his", "her", "their", "hes", "shes", "he", "she", "they", "theyre", NAME])
_THEIR_PARTNER = frozenset(["partner", "partners", "mate", "teammate"])
_GOES_IN = frozenset(
    [
        *("behind", "up", "forward", "forwards", "net", "kitchen", "crash", "crashes"),
        *("crashing", "charges", "follows", "rushes"),
    ]
)
_WORDS_TO_A_SERVE = 3
_MARKS = frozenset(",;:.!?()\n—–|")

_PUTS = frozenset(["has", "have", "got", "hits", "hit", "puts", "put", "uses", "adds", "gets"])
_MEETS = frozenset(["with", "against", "vs", "to", "for", "on", "no", "handles", "reads", "likes"])
_WORDS_TO_SPIN = 4

_FEW = frozenset(["few", "couple", "handful", "some", "half", "any", "one"])
_ONLY = frozenset(["only", "just", "barely", "hardly", "merely", "maybe"])
_NONE = frozenset(["none", "hardly", "barely"])
_CAME = frozenset(
    ["was", "were", "is", "are", "went", "landed", "came", "got", "stayed", "had", "been", "looked"]
)
_WORDS_TO_A_JUDGEMENT = 6
_WORDS_FROM_CAME = 3
"""Words between "only three" and "deep". All of these reaches: common practice, no source."""


def in_their_phrases(claims: Iterable[Claim], note: NoteLine) -> tuple[Claim, ...]:
    """The claims that their phrases bear out, those turned that say the contrary."""
    told = tuple(claims)
    turned = (_turned(one, note) for one in told if not any(torn(one, note) for torn in _TORN))
    return as_told(dict.fromkeys(turned), note)


def _is_of_the_ball_met(claim: Claim, note: NoteLine) -> bool:
    """ "Drives it well off a high ball": another shot's ball, and no shot of its own."""
    if _OFF.isdisjoint(note.line):
        return False
    own = _own_hits(claim, note)
    return bool(own) and all(_is_met(one, note) for one in own)


def _is_met(hit: Hit, note: NoteLine) -> bool:
    at = hit.start
    while at and note.line[at - 1] in _OF_A_BALL:
        at -= 1
    if not at or note.line[at - 1] not in _OFF:
        return False
    shots = note.hits.having(*SKILLS)
    return any(0 < at - one.stop < _WORDS_TO_SPIN for one in shots)


def _is_where_it_goes(claim: Claim, note: NoteLine) -> bool:
    """ "Never hits down the line, always cross": the ball goes there, nobody poaches."""
    if _ALONG.isdisjoint(note.line):
        return False
    words = set(_own_words(claim, note))
    if claim.trait in (Trait.GETS_LOW, Trait.FOOTWORK_KITCHEN_FAULTS):
        return _is_down_the_line(claim, note)
    if claim.trait not in (Trait.POACHING, Trait.SQUEEZES_MIDDLE) or not words & _ALONG:
        return False
    is_poached = any(one.meaning.trait is claim.trait for one in _over(claim, note))
    return not is_poached and bool(_HITS & set(note.line))


def _is_down_the_line(claim: Claim, note: NoteLine) -> bool:
    """Whether "down the line" alone speaks for a claim of bending or of the kitchen line."""
    told = " ".join(note.line[at] for at in _places(claim, note))
    told += " " + " ".join(note.line[_places(claim, note)[-1] + 1 :][:2])
    return "down the line" in told


def _is_the_case(claim: Claim, note: NoteLine) -> bool:
    """ "Misses returns when the serve is deep", "as soon as his partner hits a drop": what is told
    is what they do then."""
    if _IN_CASE.isdisjoint(note.line) and "soon" not in note.line:
        return False
    place = _place(claim, note)
    case = _case_before(place, note)
    if case is None:
        return False
    between = note.line[case:place]
    if _THEIR_PARTNER & set(note.line[case : case + 2]):
        return claim.trait is not Trait.CRASH or not _goes_in(note.line)
    serves = [one for one in _own_hits(claim, note) if one.start < case + _WORDS_TO_A_SERVE]
    return claim.trait is Trait.SERVE and bool(serves) and not _OWN & set(between)


def _goes_in(words: Sequence[str]) -> bool:
    """ "Runs in when his partner drives", not "poaches in the middle"."""
    return bool(_GOES_IN & set(words)) or any(
        one == "in" and after != "the" for one, after in pairwise([*words, ""])
    )


def _case_before(place: int, note: NoteLine) -> int | None:
    """Where the words behind the last "when" before the place begin, in the same breath."""
    for at in range(min(place, len(note.line)), 0, -1):
        if note.line[at - 1] in _IN_CASE or tuple(note.line[max(0, at - 3) : at]) == _AS_SOON_AS:
            return at
        if at < len(note.line) and set(note.said[at].gap) & _MARKS:
            return None
        if note.line[at - 1] == NAME or note.line[at - 1] in {"but", "and"}:
            return None
    return None


def _is_own_spin(claim: Claim, note: NoteLine) -> bool:
    """ "Has a wicked spin serve": the spin is put on, not met."""
    if claim.trait is not Trait.HANDLES_SPIN or claim.value is not Value.STRENGTH or claim.denied:
        return False
    own = _own_hits(claim, note)
    before = [
        word for one in own for word in note.line[max(0, one.start - _WORDS_TO_SPIN) : one.start]
    ]
    is_put = bool(_PUTS & set(before)) or any(_leads_a_shot(one, note) for one in own)
    return bool(own) and is_put and not _MEETS & {*before, *_own_words(claim, note)}


def _is_the_measure(claim: Claim, note: NoteLine) -> bool:
    """ "Neither is as quick as Hale": Hale is what the others are measured by."""
    if claim.value is not Value.WEAKNESS or {"than", "as"}.isdisjoint(note.line):
        return False
    named = [one for one in note.whose if claim.player in one.players]
    starts = [
        at for at, word in enumerate(note.said) if word.span[0] in {one.span[0] for one in named}
    ]
    return bool(starts) and all(_is_measured_by(at, note) for at in starts)


def _is_measured_by(at: int, note: NoteLine) -> bool:
    before = note.line[max(0, at - _WORDS_TO_SPIN) : at]
    return before[-1:] == ["than"] or (before[-1:] == ["as"] and "as" in before[:-1])


def _leads_a_shot(hit: Hit, note: NoteLine) -> bool:
    return any(one.start == hit.stop for one in note.hits.having(*SKILLS))


_TORN: tuple[Callable[[Claim, NoteLine], bool], ...] = (
    _is_of_the_ball_met,
    _is_where_it_goes,
    _is_the_case,
    _is_own_spin,
    _is_the_measure,
)


def _turned(claim: Claim, note: NoteLine) -> Claim:
    if claim.denied:
        return claim
    if _is_lob_hit_at_another(claim, note):
        return replace(claim, trait=Trait.LOB)
    if is_of_a_body_side(claim, note):
        return replace(claim, trait=Trait.BODY_JAM)
    if claim.value is Value.OFTEN and _is_missed(claim, note):
        return replace(claim, value=Value.WEAKNESS)
    if claim.value is Value.STRENGTH and _is_true_of_few(claim, note):
        return replace(claim, value=Value.WEAKNESS)
    if claim.value is Value.WEAKNESS and _is_only_less(claim, note):
        return replace(claim, weight=min(claim.weight, HALF_AS_SURE))
    return claim


def _is_only_less(claim: Claim, note: NoteLine) -> bool:
    """ "Not as quick as Okafor" is slower, and not yet slow."""
    if "as" not in note.line:
        return False
    places = _places(claim, note)
    behind = places[-1] + 1 if places else 0
    ends = tuple(note.line[max(0, behind - 1) : behind + 2])
    return ("as", NAME) in pairwise(ends) and "as" in note.line[max(0, behind - 4) : behind - 1]


def _is_lob_hit_at_another(claim: Claim, note: NoteLine) -> bool:
    """ "Okafor hit a great lob over Sven" tells of Okafor's lob."""
    own = [one for one in _over(claim, note) if note.line[one.stop - 1] == NAME]
    if claim.trait is not Trait.LOB_DEFENSE or not own:
        return False
    over = note.said[own[-1].stop - 1].span[0]
    mine = [one.span[0] for one in note.whose if claim.player in one.players]
    return any(at < note.said[own[-1].start].span[0] for at in mine) and over not in mine


def _is_missed(claim: Claim, note: NoteLine) -> bool:
    """ "Keeps missing her drops": often, but missed."""
    place = _place(claim, note)
    while place > 0 and note.line[place - 1] in _OWN:
        place -= 1
    return any(
        hit.stop == place and hit.meaning.is_verb and note.line[hit.stop - 1] in _MISSING
        for hit in note.hits.having(Role.BAD)
    )


_MISSING = frozenset(
    ["missing", "misses", "missed", "netting", "nets", "netted", "dumping", "dumps", "botching"]
)


def _is_true_of_few(claim: Claim, note: NoteLine) -> bool:
    """ "But only three were deep"."""
    if (_ONLY | _NONE).isdisjoint(note.line):
        return False
    start, stop = claim.span
    for hit in (*note.hits.having(Role.GOOD), *_own_hits(claim, note)):
        inside = any(start <= word.span[0] < stop for word in note.said[hit.start : hit.stop])
        is_depth = claim.trait is Trait.RETURN_DEPTH and "deep" in note.line[hit.start : hit.stop]
        if (inside or is_depth) and _tells_few(note.line[: hit.stop - 1]):
            return True
    return False


def _tells_few(before: Sequence[str]) -> bool:
    """Whether "only three were" or "none of them were" ends these words."""
    reached = range(max(0, len(before) - 1 - _WORDS_TO_A_JUDGEMENT), len(before) - 1)
    if not _CAME & set(before[-_WORDS_FROM_CAME:]):
        return False
    return any(
        before[at] in _NONE
        or (before[at] in _ONLY and (is_number(before[at + 1]) or before[at + 1] in _FEW))
        for at in reached
    )


def _own_hits(claim: Claim, note: NoteLine) -> list[Hit]:
    """What the lexicon found of the claim's trait in its words."""
    families = {family for (family, _), trait in TRAIT_OF_STROKE.items() if trait is claim.trait}
    return [
        one
        for one in _over(claim, note)
        if one.meaning.trait is claim.trait or one.meaning.family in families
    ]


def _over(claim: Claim, note: NoteLine) -> list[Hit]:
    places = set(_places(claim, note))
    return [one for one in note.hits.traits if places & set(range(one.start, one.stop))]


def _own_words(claim: Claim, note: NoteLine) -> list[str]:
    return [note.line[at] for at in _places(claim, note)]


def _places(claim: Claim, note: NoteLine) -> list[int]:
    start, stop = claim.span
    return [at for at, word in enumerate(note.said) if start <= word.span[0] < stop]


def _place(claim: Claim, note: NoteLine) -> int:
    return next(iter(_places(claim, note)), len(note.line))
