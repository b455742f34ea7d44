"""Whom a message speaks of: names of the roster, unknown names, and pronouns, with spans.

A name that is also a common word ("will", "hall") counts only where it is written as a name.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from bot.chat.common_words import is_common
from bot.chat.forms import word_set
from bot.chat.heard_names import heard_at
from bot.chat.name_windows import (
    NEVER_PART_OF_A_NAME,
    SHORTEST_FUZZY,
    has_own_name,
    is_broken,
    may_be_mangled,
    strangers_first,
    supposed_at,
)
from bot.chat.pronouns import pronoun
from bot.chat.said import Certainty, Mention
from bot.chat.timeout_letters import is_timeout_here
from bot.chat.unknown_names import (
    is_written_as_name,
    unknown_name_end,
    without_possessive,
)
from bot.chat.view import ChatView
from bot.chat.words import Word, words
from knowledge.vocabulary import PlayerId
from scouting_db.name_forms import is_particles
from scouting_db.names import Alike, Found, Match, NameIndex, Nobody, fold, likeliest_of
from scouting_db.values import PlayerRow

NAME_WORDS_AT_MOST = 5
"""`joost van der meer senior`: more words than this are no name."""

FUZZY_LOOKUPS_AT_MOST = 40
"""Unknown words looked up in one message, so that noise costs little."""

_SHORT_WILL = ("'ll", "’ll")
_KEPT_INDEXES = 32


_INITIALS_THAT_ARE_WORDS = word_set("words_of_two_letters")
_LETTERS_OF_OURS = frozenset("hjmtz")
"""Letters that are no word typed short, as a, b, c, i, k, n, r, u and the like are."""

_APART = frozenset(" \n/+&(")
_BEFORE_A_LETTER = word_set("before_a_letter")
"""What such a letter belongs to: `can t`, `i m`, `over the T`."""


_indexes: dict[int, NameIndex] = {}


def index_of(view: ChatView) -> NameIndex:
    """The roster's index, kept per book so that a turn need not build it again.

    Of the same roster only, whatever the version: a note changes no name, and two stores may number
    their books alike.
    """
    kept = _indexes.pop(view.book, None)
    # The same tuple as a rule, as views are kept too: then not a name is compared.
    if kept is None or (kept.roster is not view.roster and kept.roster != view.roster):
        while len(_indexes) >= _KEPT_INDEXES:
            _indexes.pop(next(iter(_indexes)))
        kept = NameIndex(view.roster)
    _indexes[view.book] = kept  # the least recently used stands first, and leaves first
    return kept


def find_mentions(said: Sequence[Word], view: ChatView) -> tuple[Mention, ...]:
    """Every name and pronoun in the order typed. "They" gives one mention per player."""
    named = _names(said, view)
    taken = {position for start, stop, _ in named for position in range(start, stop)}
    found = [(start, mention) for start, _, mention in named]
    for position, word in enumerate(said):
        if position not in taken:
            before = sorted((each for each in found if each[0] < position), key=_place)
            seen = [mention for _, mention in before]
            found += [(position, one) for one in pronoun(position, word, said, seen, view)]
    return tuple(mention for _, mention in sorted(found, key=_place))


def _place(found: tuple[int, Mention]) -> int:
    return found[0]


def mentions_of(text: str, view: ChatView) -> tuple[Mention, ...]:
    return find_mentions(words(text), view)


def _names(said: Sequence[Word], view: ChatView) -> list[tuple[int, int, Mention]]:
    index, found, position = index_of(view), [], 0
    budget = iter(range(FUZZY_LOOKUPS_AT_MOST))
    while position < len(said):
        hit = _exact_at(said, position, index) or _one_of_ours(said, position, view)
        hit = hit or heard_at(said, position, index) or _near_at(said, position, index, budget)
        if hit is None:
            position += 1
            continue
        stop, match = hit
        mention = _mention(said[position:stop], match, view)
        if mention.certainty is Certainty.NOBODY:
            mention = replace(mention, typed=_bare(said, position, stop))
        found.append((position, stop, mention))
        position = stop
    return found


def _bare(said: Sequence[Word], start: int, stop: int) -> str:
    """A name that nobody bears as it would be written in the book."""
    before = " ".join(word.typed for word in said[start : stop - 1])
    return f"{before} {without_possessive(said, stop - 1)}".strip()


def _exact_at(said: Sequence[Word], start: int, index: NameIndex) -> tuple[int, Match] | None:
    if not index.begins(said[start].folded) and not index.begins(said[start].folded[:-1]):
        return None
    for stop in range(min(len(said), start + NAME_WORDS_AT_MOST), start, -1):
        window = said[start:stop]
        may_be = _may_be_name(said, start, stop) or _is_short_given(window, index)
        if is_broken(window) or not may_be:
            continue
        for typed in _without_plural(window, index):
            if index.has(typed):
                return _with_mangled_surname(said, start, stop, index) or (
                    stop,
                    index.lookup(typed),
                )
    return None


def _one_of_ours(said: Sequence[Word], position: int, view: ChatView) -> tuple[int, Match] | None:
    """`t is wide`: the letter one of our pair begins with, if it hardly means anything else."""
    letter = said[position].folded
    before = said[position - 1].folded if position else ""
    is_metres = letter == "m" and before.isdigit()
    stands_alone = not position or set(said[position].gap) & _APART
    if letter not in _LETTERS_OF_OURS or not stands_alone:
        return None
    if before in _BEFORE_A_LETTER or is_metres or is_timeout_here(said, position):
        return None
    ours = [row for row in view.roster if row.player in view.ours]
    begun = [row for row in ours if fold(row.name).startswith(letter)]
    return (position + 1, Found(player=begun[0])) if len(begun) == 1 else None


def _with_mangled_surname(
    said: Sequence[Word], start: int, stop: int, index: NameIndex
) -> tuple[int, Match] | None:
    """`Ben Hail`, `van der mere`: a part that we know, and one that only sounds like one."""
    if stop >= len(said):
        return None
    window = said[start : stop + 1]
    is_begun = is_particles("".join(word.folded for word in said[start:stop]))
    is_name = not is_common(window[-1].folded)
    is_surname = is_name and (is_begun or len(window) == 2)
    if is_broken(window) or not (is_surname or (is_begun and len(window) > 2)):
        return None
    match = index.lookup(" ".join(word.folded for word in window))
    is_word = len(window[-1].folded) >= SHORTEST_FUZZY  # no "Brandt RH"
    is_initials = isinstance(match, Found) and window[-1].folded not in _INITIALS_THAT_ARE_WORDS
    is_meant = is_initials or (is_word and likeliest_of(match) is not None)
    return (stop + 1, match) if is_meant else None


def _without_plural(window: Sequence[Word], index: NameIndex) -> Iterator[str]:
    """The words as they are, then `okafors` as `okafor`; but Tomas is no "Tom A" in the plural."""
    typed = " ".join(word.folded for word in window)
    yield typed
    if window[-1].typed.endswith(_SHORT_WILL):
        yield typed.removesuffix("ll")
    singular = typed.removesuffix("s")
    if typed == f"{singular}s" and _is_short_owner(window[-1:], singular, index):
        yield singular
    only_initials = index.has(singular) and not index.has(singular, initials=False)
    if singular != typed and len(typed) >= SHORTEST_FUZZY and not only_initials:
        yield singular


def _is_short_owner(window: Sequence[Word], singular: str, index: NameIndex) -> bool:
    """`jos backhand`: a name of two letters with the s of who owns something."""
    is_word = singular in _INITIALS_THAT_ARE_WORDS or is_common(singular)
    is_short = len(singular) == 2 and singular.isalpha() and not is_word
    return is_short and not is_common(window[0].folded) and index.has(singular, initials=False)


def _may_be_name(said: Sequence[Word], start: int, stop: int) -> bool:
    """Guards exact matches that are common words, or initials such as BH."""
    window = said[start:stop]
    if len(window) > 1:
        edge = window[0].folded in NEVER_PART_OF_A_NAME and "-" not in window[1].gap
        return not edge and any(word.folded not in NEVER_PART_OF_A_NAME for word in window)
    word = window[0]
    if len(word.folded) <= 2:
        is_capitals = word.typed.isupper() and len(word.typed) == 2
        return is_capitals and word.folded not in _INITIALS_THAT_ARE_WORDS
    return not is_common(word.folded) or is_written_as_name(said, start)


def _is_short_given(window: Sequence[Word], index: NameIndex) -> bool:
    """`Jo`, `bo`: a name of two letters that somebody bears, and no everyday word."""
    word = window[0].folded
    is_word = word in _INITIALS_THAT_ARE_WORDS or is_common(word)
    return len(window) == 1 and len(word) == 2 and not is_word and index.has(word, initials=False)


def _near_at(
    said: Sequence[Word], start: int, index: NameIndex, budget: Iterator[int]
) -> tuple[int, Match] | None:
    for stop in range(min(len(said), start + NAME_WORDS_AT_MOST - 1), start, -1):
        window = said[start:stop]
        if is_broken(window) or not may_be_mangled(window) or has_own_name(window, index):
            continue
        if next(budget, None) is None:
            return None
        for typed in _without_plural(window, index):
            match = index.lookup(typed, nearest=False)
            if not isinstance(match, Nobody):
                return strangers_first(said, start, stop, index) or (stop, match)
    end = unknown_name_end(said, start, lambda folded: _is_somebodys(folded, index))
    if end is None:
        return supposed_at(said, start, index, budget)
    return end, index.lookup(" ".join(word.folded for word in said[start:end]))


def _is_somebodys(folded: str, index: NameIndex) -> bool:
    return not isinstance(index.lookup(folded, nearest=False), Nobody)


def _mention(window: Sequence[Word], match: Match, view: ChatView) -> Mention:
    span = (window[0].span[0], window[-1].span[1])
    typed = " ".join(word.typed for word in window)
    match match:
        case Found(player=row):
            return Mention(typed=typed, span=span, certainty=Certainty.SURE, players=(row.player,))
        case Alike(players=rows, likeliest=likeliest, is_clear=is_clear):
            players = tuple(row.player for row in rows)
            spoken_of = None if is_clear else _in_context(players, view)
            rather: tuple[PlayerId, ...] = ()
            written = _written_so(window, rows)
            if spoken_of is not None and written not in (None, spoken_of):
                # Neither the one on court nor the one so spelt is surely meant: we ask.
                spoken_of, likeliest = written if written in view.focus else None, None
            if spoken_of is None and likeliest is not None:
                spoken_of = likeliest.player
                on_court = view.theirs + view.ours
                if spoken_of not in on_court and fold(typed) != fold(likeliest.name):
                    rather = tuple(player for player in players if player != spoken_of)
            if spoken_of is not None:
                return Mention(
                    typed=typed,
                    span=span,
                    certainty=Certainty.SURE,
                    players=(spoken_of,),
                    rather=rather,
                )
            return Mention(typed=typed, span=span, certainty=Certainty.AMBIGUOUS, players=players)
        case Nobody(nearest=rows, supposed=likely):
            return Mention(
                typed=typed,
                span=span,
                certainty=Certainty.NOBODY,
                players=tuple(row.player for row in rows),
                supposed=tuple(row.player for row in likely),
            )


def _written_so(window: Sequence[Word], rows: Sequence[PlayerRow]) -> PlayerId | None:
    """The one of several alike whose surname alone is spelt as typed: a Janssen who is not on court
    need be no Jansen who is. Given names are spelt by ear, and the one on court stays meant."""
    typed = " ".join(word.folded for word in window)
    surnames = {row.player: " ".join(fold(row.name).split()[1:]) for row in rows}
    written = [player for player, name in surnames.items() if name and name in _owned(typed)]
    return written[0] if len(written) == 1 else None


def _owned(typed: str) -> tuple[str, str]:
    return typed, typed.removesuffix("s")


def _in_context(players: Sequence[PlayerId], view: ChatView) -> PlayerId | None:
    """The one of several alike who is on court, or else spoken of just now."""
    for circle in (view.theirs + view.ours, view.focus):
        known = [player for player in players if player in circle]
        if known:
            return known[0] if len(known) == 1 else None
    return None
