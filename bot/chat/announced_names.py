"""Names where an announcement names a pair ("next: joy ashdown and cy loebner"): each in full.

The place tells that they are names, whatever their words mean elsewhere: Banger, Winters, Al.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import product

from rapidfuzz.distance.DamerauLevenshtein import normalized_similarity

from bot.chat.common_words import is_common, respelled
from bot.chat.forms import word_set
from bot.chat.said import Certainty, Mention
from bot.chat.words import Word, words_in
from knowledge.vocabulary import PlayerId
from scouting_db.known_names import is_no_name
from scouting_db.name_forms import is_particles
from scouting_db.names import Alike, Found, NameIndex, fold

PAIR = 2

LONGEST_NAME = 4
"""Words: Joost van der Meer."""

LIKE = 0.5
"""Share of the letters in which two names agree where one may be meant for the other. Our guess."""

_OPENING = frozenset(
    ["ok", "okay", "so", "um", "uh", "hey", "next", "nxt", "match", "up", "game", "opponents",
     "opponent", "opps", "one", "is", "are", "we", "were", "our", "on", "deck", "play", "playing",
     "after", "that", "this", "then", "have", "got", "face", "facing", "vs", "versus", "v",
     "against", "round", "pair", "team", "its", "womens", "mens", "mixed", "doubles", "dubs"]
)  # fmt: skip
_JOINING = frozenset(["and", "n", "with", "plus", "w"])
_JOINING_MARKS = frozenset("/&+")
_ENDING_MARKS = frozenset(",;:.!?\n()–—")
_GIVEN = word_set("given_names_that_are_words")
_AFTER_NAMES = (word_set("never_in_a_name") | word_set("of_a_schedule")) - _GIVEN | {
    "crt", "cort", "best", "singles", "doubles", "mixed", "tomorrow", "tonight", "please", "pls",
    "half", "soon", "us", "serve", "serves", "serving", "midday", "monday", "tuesday", "wednesday",
    "thursday", "friday", "saturday", "sunday", "tue", "tues", "wed", "thurs", "fri", "sat",
    "weekend", "week", "womens", "mens", "ladies", "backdraw",
}  # fmt: skip
_LOOKS = word_set("told_by_looks")
_ARTICLES = words_in("the a an that")
_LONGEST_LOOKS = 3
"""Words of "tall lad", "big red cap": nobody is called so, but known so till the name is told."""

_NUMBERS = words_in(
    "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen"
    " sixteen seventeen eighteen nineteen twenty thirty forty fifty"
)
"""Behind a name they tell when or where: "berg eleven thirty". Love is a name as well."""
_TOLD = word_set("told_adjectives") | word_set("predicates")


def named_in_full(
    text: str, said: Sequence[Word], known: Sequence[Mention], named: Sequence[Mention]
) -> tuple[Mention, ...]:
    """The opponents `named`, with the names that nobody bears as long as they were typed.

    `known` are all names of the message; the opponents stay as they are where no pair stands.
    """
    sides = [_cut(side) for side in _sides(said) if side]
    is_listed = len(sides) == 2 and "," in sides[1][0].gap
    if (len(sides) == 1 or is_listed) and not all(map(_is_full, sides)):
        return tuple(named)
    found = [_named(text, side, known, of_two=len(sides) == PAIR) for side in sides]
    opponents = [one for one in found if one is not None and (one in named or one not in known)]
    is_read = 0 < len(opponents) == len(sides) <= PAIR
    return tuple(opponents) if is_read else tuple(named)


def _is_full(side: Sequence[Word]) -> bool:
    """A first and a last name that are no everyday words: without an "and" nothing else is sure."""
    return len(side) == 2 and _may_be_first(side[0], alone=False) and not is_common(side[1].folded)


def with_nearest(named: Sequence[Mention], index: NameIndex) -> tuple[Mention, ...]:
    """Names that nobody bears with whom they are near, to be asked about before anyone is added."""
    return tuple(
        replace(one, players=_nearest(one.typed, index))
        if one.certainty is Certainty.NOBODY and not one.players
        else one
        for one in named
    )


def _nearest(typed: str, index: NameIndex) -> tuple[PlayerId, ...]:
    match = index.lookup(typed)
    if isinstance(match, Found):
        return (match.player.player,)
    if isinstance(match, Alike):
        return tuple(row.player for row in match.players)
    rows = match.nearest or match.supposed
    return tuple(row.player for row in rows if _is_like(typed, row.name))


def _is_like(typed: str, name: str) -> bool:
    """Whether a name in full is like another's in one of its words at least, or run together.

    "Bo Kerr" is told in full and nothing like Ben Hale: a tap on him would have us meet him.
    """
    told, borne = fold(typed).split(), fold(name).split()
    if len(told) < PAIR:
        return True
    pairs = [("".join(told), "".join(borne)), *product(told, borne), ("".join(told), borne[-1])]
    return max(normalized_similarity(*pair) for pair in pairs) >= LIKE


def _sides(said: Sequence[Word]) -> list[list[Word]]:
    """The words after the opening, up to what follows names, parted where names are joined."""
    start = next((at for at, word in enumerate(said) if word.folded not in _OPENING), len(said))
    sides: list[list[Word]] = [[]]
    for at, word in enumerate(said[start:], start):
        marks = set(word.gap) if at > start else set()
        is_listed = "," in marks and len(sides) == 1
        if marks & _ENDING_MARKS and not is_listed:
            break
        is_marked = is_listed or bool(marks & _JOINING_MARKS)
        if is_marked or word.folded in _JOINING:
            sides.append([])
        if word.folded in _JOINING:
            continue
        if word.folded in _ARTICLES and not sides[-1] and _by_looks(said[at + 1 :]):
            continue
        is_number = bool(sides[-1]) and word.folded in _NUMBERS
        if is_number or _ends_names(word.folded) or not word.folded.replace("'", "").isalpha():
            break
        sides[-1].append(word)
    return sides


def _ends_names(folded: str) -> bool:
    """Whether it is a word of the schedule, or one mistyped that is nobody's: "tomorow"."""
    return folded in _AFTER_NAMES or is_slip_of_schedule(folded)


def is_slip_of_schedule(folded: str) -> bool:
    """Whether it is such a word mistyped, and nobody's name: "tomorow", "satruday"."""
    return folded not in _AFTER_NAMES and respelled(folded) in _AFTER_NAMES and is_no_name(folded)


def _cut(side: Sequence[Word]) -> Sequence[Word]:
    """The side up to an everyday word that no name ends in: "zubiri tough ones"."""
    if looks := _by_looks(side):
        return looks
    for at, word in enumerate(side):
        is_last = at == 1 and len(side) == 2 and word.folded not in _TOLD
        is_written = word.is_capitalised or not side[0].is_capitalised
        if at and _is_everyday(word) and not (is_last and is_written):
            return side[:at]
    return side[:LONGEST_NAME]


def _by_looks(side: Sequence[Word]) -> Sequence[Word]:
    """ "Tall lad" of "the tall lad in": how somebody looks or what they wear, in a name's place."""
    told = side[:_LONGEST_LOOKS]
    stop = next((at for at, word in enumerate(told) if word.folded in _LOOKS), 0)
    return told[: stop + 1] if stop else ()


def _is_everyday(word: Word) -> bool:
    return is_common(word.folded) and not is_particles(word.folded)


def _named(
    text: str, side: Sequence[Word], known: Sequence[Mention], *, of_two: bool
) -> Mention | None:
    """Whom a side names: somebody of the book, or somebody new; None where it is no name.

    A hyphen joins one surname where the side is one of two; alone it may part the pair itself.
    """
    span = (side[0].span[0], side[-1].span[1])
    inside = [one for one in known if span[0] < one.span[1] and one.span[0] < span[1]]
    in_book = [one for one in inside if one.certainty is not Certainty.NOBODY]
    is_one = of_two and not in_book and _is_hyphenated(side)
    if len(in_book or inside) > 1 and not is_one:
        return None
    if in_book and not _goes_beyond(side, in_book[0]):
        return in_book[0]
    if not in_book and inside and inside[0].span == span:
        return inside[0]
    is_told = bool(_by_looks(side)) or _may_be_first(side[0], alone=len(side) == 1)
    if not in_book and not is_told:
        return None
    near = in_book[0].players if in_book else ()
    return Mention(typed=text[slice(*span)], span=span, certainty=Certainty.NOBODY, players=near)


def _is_hyphenated(side: Sequence[Word]) -> bool:
    """Whether its last words are one surname: "Ferreira-Lund", "Rosa Ferreira-Lund"."""
    return len(side) > 1 and side[-1].gap == "-"


def _goes_beyond(side: Sequence[Word], one: Mention) -> bool:
    """Whether somebody else is named in part like one of the book: Val Stannard, where Bev is."""
    beside = [word for word in side if not one.span[0] <= word.span[0] < one.span[1]]
    return any(not is_common(word.folded) for word in beside)


def _may_be_first(word: Word, *, alone: bool) -> bool:
    is_given = word.folded in _GIVEN and not alone
    return len(word.folded) > 1 and (is_given or not is_common(word.folded))
