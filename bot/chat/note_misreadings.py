"""Claims that the words around them take back: "misses returns deep", "a cheater on line calls"."""

from __future__ import annotations

from bot.chat.note_brief import is_of_the_answer
from bot.chat.note_case import is_of_a_case
from bot.chat.note_done_to_us import is_done_to_us
from bot.chat.note_hit_from import is_hit_from
from bot.chat.note_line import NoteLine
from bot.chat.note_misses import is_no_weakness
from bot.chat.note_opinions import found_in
from bot.chat.note_place_taken import is_place_taken
from bot.chat.note_runs_round import only_runs_round
from bot.chat.note_touch import DINKS, is_soft_alone
from bot.chat.note_wing_of import is_wing_of_another
from bot.chat.said import Claim
from bot.chat.trait_lexicon import NAME, Family, Role
from bot.chat.words import words_in
from knowledge.regex import regex
from knowledge.struck import is_struck
from knowledge.vocabulary import Trait, Value

_MARKS = frozenset(",;:.!?()\n—–|")
_NEAR = 4
"""Words from a dink to what is said of it: "a dink that is very soft". Common practice."""

_SIDES = frozenset({Trait.SIDE_PLAYED, Trait.MOVES_LEFT, Trait.MOVES_RIGHT})

_TO = frozenset(["to", "at", "on", "into", "near", "by", "around", "behind"])
_PLACES = frozenset(
    [
        *("feet", "foot", "toes", "shoelaces", "body", "hip", "hips", "chest", "shoulder", "knees"),
        *("backhand", "forehand", "bh", "fh", "left", "right", "middle", "sideline", "wing"),
    ]
)
_WORDS_OF_A_PLACE = 4
"""Of "to her left foot". Common practice, no source."""

_EXCLAIMED = words_in("oh ok okay and so ah um uh well yeah")
_GOES_ON = words_in(
    "and yeah yes no wait btw also by so but well i he she they hes shes theyre ok okay my"
) | {NAME}
"""What "oh" is followed by where it names no stroke."""
_OF_BLOWS = frozenset({Trait.BODY_JAM, Trait.HANDLES_PACE})

_HIT_SHORT = frozenset(["it", "them", "everything", "all", "balls", "those", "these"])
_BEFORE_SHORT = frozenset(
    [
        *("always", "too", "very", "so", "often", "mostly", "usually", "really", "quite", "way"),
        *("just", "only", "pretty", "rather", "far", "constantly", "never", "up"),
    ]
)
_LEAST_BEFORE = 2
"""Words before "it short": somebody and what they do to it. "All short" begins a list."""

_CALLED = frozenset(["call", "calls", "calling", "called"])
_OF_LINES = frozenset(["line", "hook", "out"])
_OUT = frozenset(["out", "outs"])
_CHEATS = frozenset(["cheat", "cheats", "cheating", "cheated", "hooks", "hooking"])
_COVERS = words_in("cover covers covering covered guard guards guarding")
_SIDEWAYS = words_in("to toward towards any either over way wing side fh bh backhand forehand left"
                     " right middle in")  # fmt: skip
_SMALL = frozenset(["on", "the", "his", "her", "their", "all", "with"])
_LINES = frozenset(["lines", "call", "calls"])
_CALLS_FAR = 4
"""Words from "calls" to its "out": "calls every close ball out". Common practice, no source."""
_LATE = frozenset(["late", "last"])
_NEVER = frozenset(["never", "not", "isnt", "until", "before"])
_LEAVES = words_in(
    "leave leaves leaving left let lets letting watch watches watching stop stops stands freezes"
    " hesitates bails"
)
_FEIGNS = frozenset(["fake", "fakes", "faking", "faked", "feints", "pretends"])
_ONLY = frozenset(["only", "just"])
_RETURNED_SHORT = regex(
    r"(?<!not )(?<!never )(?<!dont )\breturn(?:s|ed|ing)? (?:it )?"
    r"(?:(?:way|too|so|very|really) )*short"
)
_HOW = frozenset(["his", "her", "their", "the", "too", "many", "some", "most", "easy"])
"""Words that may stand between "misses" and what is missed."""


def is_misread(claim: Claim, note: NoteLine) -> bool:
    """Whether the claim is none: what is missed is no strength, and line calls are no talk."""
    return (
        _is_missed(claim, note)
        or _is_of_line_calls(claim, note)
        or _is_called_too_late(claim, note)
        or _is_only_soft(claim, note)
        or _is_of_a_place(claim, note)
        or _is_aimed(claim, note)
        or _is_only_exclaimed(claim, note)
        or _is_of_a_ball(claim, note)
        or _is_of_a_blow(claim, note)
        or _is_all_they_have(claim, note)
        or is_of_the_answer(claim, note)
        or _is_short(claim, note)
        or is_wing_of_another(claim, note)
        or is_hit_from(claim, note)
        or is_of_a_case(claim, note)
        or is_done_to_us(claim, note)
        or only_runs_round(claim, note)
        or _is_of_a_sideline(claim, note)
        or is_place_taken(claim, note)
        or is_no_weakness(claim, note)
    )


def is_feigned(claim: Claim, note: NoteLine) -> bool:
    """ "Fakes the erne": what is only shown is not done, though it is told of them."""
    if claim.value is not Value.OFTEN:
        return False
    place = _place(claim, note)
    before = [word for word in note.line[max(0, place - 2) : place] if word not in _SMALL]
    return before[-1:] != [] and before[-1] in _FEIGNS


def _is_all_they_have(claim: Claim, note: NoteLine) -> bool:
    """ "Bh can't hit a volley, only dinks": a wing alone was read as its dinks, which they have."""
    if claim.trait not in DINKS or claim.value is not Value.WEAKNESS or claim.denied:
        return False
    dinks = [hit for hit in note.hits.having(Role.STROKE) if hit.meaning.family is Family.DINK]
    named = any(claim.span[0] <= note.said[hit.start].span[0] < claim.span[1] for hit in dinks)
    return not named and any(
        hit.start > 0
        and note.line[hit.start - 1] in _ONLY
        and (hit.stop == len(note.said) or bool(set(note.said[hit.stop].gap) & _MARKS))
        for hit in dinks
    )


def _is_only_exclaimed(claim: Claim, note: NoteLine) -> bool:
    """ "Oh and he doesn't like her side": the "oh" that opens is no overhead.

    It is one where it is said how it is ("oh is weak", "oh weak").
    """
    if claim.trait is not Trait.OVERHEAD:
        return False
    start, stop = claim.span
    own = [at for at, word in enumerate(note.said) if start <= word.span[0] < stop]
    strokes = note.hits.having(Role.STROKE, Role.NOUN)
    told = [
        at
        for at in own
        if note.said[at].folded == "oh" or any(hit.start <= at < hit.stop for hit in strokes)
    ]
    return bool(told) and all(_exclaims(at, note) for at in told)


def _exclaims(at: int, note: NoteLine) -> bool:
    behind = note.line[at + 1 : at + 2]
    leads = all(word.folded in _EXCLAIMED for word in note.said[:at])
    return note.said[at].folded == "oh" and leads and bool({*behind} & _GOES_ON)


def _is_of_a_ball(claim: Claim, note: NoteLine) -> bool:
    """ "Slices it always short": the ball is short, nobody's body."""
    if claim.trait is not Trait.HEIGHT or claim.value is not Value.SHORT:
        return False
    place = at = _place(claim, note)
    while at > 0 and note.line[at - 1] in _BEFORE_SHORT:
        at -= 1
    is_apart = any(set(one.gap) & _MARKS for one in note.said[at : place + 1])
    before = note.line[:at]
    is_hit = len(before) >= _LEAST_BEFORE and before[-1] in _HIT_SHORT and before[-2] != "of"
    return is_hit and not is_apart


def _is_of_a_blow(claim: Claim, note: NoteLine) -> bool:
    """ "Hit her in the chest, she says it is ok": how she is, and not how she meets such balls."""
    return claim.trait in _OF_BLOWS and is_struck(" ".join(word.typed for word in note.said))


def _is_aimed(claim: Claim, note: NoteLine) -> bool:
    """ "Serves wide to the ad side", "the erne from the left": where a shot goes or is hit, and not
    the side somebody plays."""
    if claim.trait not in _SIDES:
        return False
    place = _place(claim, note)
    before = list(note.line[max(0, place - _WORDS_OF_A_PLACE) : place])
    if before[-1:] == ["the"]:
        before.pop()
    if before[-1:] in (["from"], ["off"]):
        hit_there = note.hits.having(Role.STROKE, Role.NOUN, Role.HABIT)
        return any(hit.start < place for hit in hit_there)
    if claim.trait is not Trait.SIDE_PLAYED or before[-1:] not in (["to"], ["into"], ["at"]):
        return False
    return any(hit.stop <= place for hit in note.hits.having(Role.STROKE, Role.NOUN))


def _is_of_a_place(claim: Claim, note: NoteLine) -> bool:
    """ "Can't handle dinks to her feet": where the dinks come, which is no want of patience."""
    if claim.trait is not Trait.PATIENCE or claim.value is not Value.WEAKNESS:
        return False
    behind = [note.line[at] for at, word in enumerate(note.said) if word.span[0] >= claim.span[1]][
        :_WORDS_OF_A_PLACE
    ]
    return behind[:1] != [] and behind[0] in _TO and bool(_PLACES & set(behind))


def _is_short(claim: Claim, note: NoteLine) -> bool:
    """ "Returned short twice": no return is deep there."""
    if claim.trait is not Trait.RETURN_DEPTH or claim.value is not Value.STRENGTH or claim.denied:
        return False
    short = list(found_in(note.line, _RETURNED_SHORT))
    players = {player for start, _ in short for player in note.subjects.at(start)}
    return claim.player in players and "deep" not in note.line


def _is_of_a_sideline(claim: Claim, note: NoteLine) -> bool:
    """ "Never covers the line": the sideline is left open, and no kitchen line is stepped on."""
    if claim.trait is not Trait.FOOTWORK_KITCHEN_FAULTS:
        return False
    start, stop = claim.span
    own = {word.folded for word in note.said if start <= word.span[0] < stop}
    return "line" in own and bool(_COVERS & own)


def _is_only_soft(claim: Claim, note: NoteLine) -> bool:
    """ "A very soft dink": nothing near it is bad but that it is soft, which praises a dink."""
    if claim.trait not in DINKS or claim.value is not Value.WEAKNESS or claim.denied:
        return False
    place = _place(claim, note)
    near = range(max(0, place - _NEAR), min(len(note.line), place + _NEAR))
    soft = any(is_soft_alone(note.line[at : at + 1], note.line[:at]) for at in near)
    bad = [hit for hit in note.hits.having(Role.BAD) if hit.start in near]
    return soft and all(is_soft_alone(note.line[one.start : one.stop], ()) for one in bad)


def _is_missed(claim: Claim, note: NoteLine) -> bool:
    """ "Misses returns deep": where the misses go, and not how deep the returns are."""
    if claim.value is not Value.STRENGTH or claim.denied:
        return False
    place = _place(claim, note)
    while place > 0 and note.line[place - 1] in _HOW:
        place -= 1
    is_apart = place < len(note.said) and bool(set(note.said[place].gap) & _MARKS)
    bad = (hit for hit in note.hits.having(Role.BAD) if hit.meaning.is_verb)
    return not is_apart and any(hit.stop == place for hit in bad)


def _is_of_line_calls(claim: Claim, note: NoteLine) -> bool:
    """ "Calls everything out", "a cheater on line calls", "cheats lines": that is no play."""
    start, stop = claim.span
    places = [at for at, word in enumerate(note.said) if start <= word.span[0] < stop]
    if any(_cheats_lines(note, at) for at in places):
        return True
    if claim.trait is Trait.READY_POSITION and any(_only_cheats(note, at) for at in places):
        return True
    if claim.trait is not Trait.COMMUNICATION:
        return False
    called = [at for at in places if note.line[at] in _CALLED]
    return bool(called) and all(
        (at > 0 and note.line[at - 1] in _OF_LINES) or _calls_it_out(note, at) for at in called
    )


def _is_called_too_late(claim: Claim, note: NoteLine) -> bool:
    """ "Leaves me the middle ball and then yells yours", "calls it late": that helps no partner."""
    is_praised = claim.value is Value.STRENGTH and not claim.denied
    if claim.trait is not Trait.COMMUNICATION or not is_praised:
        return False
    place = _place(claim, note)
    behind = note.line[place : place + _CALLS_FAR + 1]
    before = note.line[:place]
    late = any(one in _LATE and not _NEVER & {*behind[:at]} for at, one in enumerate(behind))
    gives_away = "yours" in behind and "mine" not in behind
    leaves = any(
        one in _LEAVES and "know" not in before[at : at + 3] for at, one in enumerate(before)
    )
    return late or (gives_away and leaves)


def _cheats_lines(note: NoteLine, at: int) -> bool:
    """Whether lines are what is cheated on; "cheats to the line" is where somebody stands."""
    ahead = [word for word in note.line[at + 1 : at + 4] if word not in _SMALL]
    is_of_lines = ahead[:1] != [] and ahead[0] in _LINES
    return note.line[at] in _CHEATS and (is_of_lines or ahead[:2] == ["line", "calls"])


def _only_cheats(note: NoteLine, at: int) -> bool:
    """ "Lena never cheats" tells how honest she is; who cheats to a side stands there."""
    return note.line[at] in _CHEATS and not _SIDEWAYS & {*note.line[at + 1 : at + 3]}


def _calls_it_out(note: NoteLine, at: int) -> bool:
    ahead = range(at + 1, min(at + 1 + _CALLS_FAR, len(note.said)))
    for place in ahead:
        if set(note.said[place].gap) & _MARKS:
            return False
        if note.line[place] in _OUT:
            return True
    return False


def _place(claim: Claim, note: NoteLine) -> int:
    return next(
        (at for at, word in enumerate(note.said) if word.span[0] >= claim.span[0]), len(note.said)
    )
