"""Two players told of together: "Hale not Ruiz serves short", "both lob, Hale more than Ruiz"."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.clauses import Clause
from bot.chat.forms import any_of
from bot.chat.note_figures import is_number
from bot.chat.note_line import NoteLine
from bot.chat.note_negations import is_contrast
from bot.chat.said import Claim, Mention
from bot.chat.trait_lexicon import NAME
from bot.chat.words import Word

_LEAST = 2
"""Names and pronouns of a note that tells of two."""

_NOT = (("and", "not"), ("not",), ("rather", "than"), ("instead", "of"), ("never",))
_LEAVES_OPEN = frozenset(["is", "are", "does", "do", "did", "was", "were", "can", "if", "or"])
"""Before a "not" it denies what was told, or asks: "hale is not ruiz"."""
_NOT_THEM_BUT = frozenset(["but", "its", "it", "is", "was", "that", "thats"])
_OPENS = frozenset(["no", "nope", "sorry", "wait", "actually", "oops"])
_MORE = frozenset(
    [
        *("more", "even", "much", "way", "far", "a", "bit", "lot", "little", "worse", "less", "so"),
        *("most", "worst", "the", "still", "though", "tho", "of", "all"),
    ]
)
_IS = frozenset(
    ["is", "s", "plays", "looks", "exactly", "just", "much", "pretty", "kinda", "a", "lot"]
)
_ALIKE = (("like",), ("the", "same", "as"), ("same", "as"), ("similar", "to"))
_BUT = frozenset(["but", "only", "except", "just", "though", "tho"])
_LEADS = frozenset(["but", "and", "though", "while", "whereas", "especially", "with", "so"])
_COUNTED = frozenset(["made", "hit", "of", "out", "for", "in", "only", "just", NAME])


def without_rival(
    said: Sequence[Word], mentions: Sequence[Mention]
) -> tuple[Sequence[Word], Sequence[Mention]]:
    """The words without a second name that only sets off the first.

    "Hale not Ruiz serves short", "not Ruiz, Hale serves short" and "Hale serves short, not Ruiz"
    tell of Hale; "both hate pace, Hale more than Ruiz" of both, who were named before.
    """
    aside = set_off(said, mentions)
    if aside is not None and not said[_no_before(said, aside)].gap.strip():
        return _cut(said, mentions, said[_no_before(said, aside)].span[0], said[-1].span[1])
    named = sorted((one for one in mentions if not one.pronoun), key=lambda one: one.span)
    for first, second in pairwise(named):
        between = tuple(_words(said, first.span[1], second.span[0]))
        if _is_not_them(said, first, second):
            return _cut(said, mentions, said[0].span[0], first.span[1])
        after = _words(said, second.span[1])
        if between in _NOT and after and first.players != second.players:
            return _cut(said, mentions, first.span[1], second.span[1])
        if _is_measure(between, after) and first.players != second.players:
            return said, tuple(one for one in mentions if one is not second)
        if between[-1:] == ("than",) and not after and _MORE.issuperset(between[:-1]):
            return _without_more(said, mentions, (first, second))
    last = named[-1:]
    if last and _is_more(_words(said, last[0].span[1])):
        return _without_more(said, mentions, last)
    return said, mentions


def set_off(said: Sequence[Word], mentions: Sequence[Mention]) -> Mention | None:
    """Whom a note of another ends with: Ruiz of "hale poaches not ruiz"; None of anybody else.

    Of the two nothing but who it is may be told behind: "hale lobs, not ruiz i mixed them up".
    """
    named = sorted((one for one in mentions if not one.pronoun), key=lambda one: one.span)
    if len(named) < _LEAST or named[-1].players == named[-2].players:
        return None
    first, second = named[-2:]
    between = _words(said, first.span[1], second.span[0])
    no = next((one for one in _NOT if tuple(between[-len(one) :]) == one), ())
    told = between[: len(between) - len(no)]
    behind = " ".join(_words(said, second.span[1]))
    is_last = not behind or any_of("names_mixed_up", first=True, last=True).search(behind)
    return second if no and told and is_last and not _LEAVES_OPEN & {*told[-1:]} else None


def _no_before(said: Sequence[Word], aside: Mention) -> int:
    """Where the "not" before that name begins. Behind a comma it is a contrast, told of both."""
    before = [word.folded for word in said if word.span[0] < aside.span[0]]
    return len(before) - len(next(one for one in _NOT if tuple(before[-len(one) :]) == one))


def _is_not_them(said: Sequence[Word], first: Mention, second: Mention) -> bool:
    """Whether the message begins "not Ruiz, it is Hale" and goes on."""
    before = _words(said, 0, first.span[0])
    begins = before[-1:] == ["not"] and _OPENS.issuperset(before[:-1])
    between = _NOT_THEM_BUT.issuperset(_words(said, first.span[1], second.span[0]))
    is_other = first.players != second.players
    return begins and between and is_other and bool(_words(said, second.span[1]))


def _is_measure(between: Sequence[str], after: Sequence[str]) -> bool:
    """Whether "same as Ruiz but slower" follows: Ruiz is what the first is measured by."""
    alike = next((one for one in _ALIKE if tuple(between[-len(one) :]) == one), None)
    leads = between[: -len(alike)] if alike else ()
    return alike is not None and _IS.issuperset(leads) and bool(_BUT & {*after[:1]})


def _words(said: Sequence[Word], start: int, stop: int | None = None) -> list[str]:
    """The words from one character up to another, or to the end."""
    return [
        word.folded
        for word in said
        if start <= word.span[0] and (stop is None or word.span[0] < stop)
    ]


def _is_more(words: Sequence[str]) -> bool:
    return bool({"more", "worse", "most", "worst"} & set(words)) and _MORE.issuperset(words)


def _without_more(
    said: Sequence[Word], mentions: Sequence[Mention], told: Sequence[Mention]
) -> tuple[Sequence[Word], Sequence[Mention]]:
    """Without who does it more, where all were spoken of together before."""
    start = _lead(said, told[0].span[0])
    before = {player for one in mentions if one.span[0] < start for player in one.players}
    if len(before) < _LEAST or not before.issuperset(one for each in told for one in each.players):
        return said, mentions
    return _cut(said, mentions, start, said[-1].span[1])


def _lead(said: Sequence[Word], start: int) -> int:
    """Where "but Hale more than Ruiz" begins."""
    before = [word for word in said if word.span[0] < start]
    return before[-1].span[0] if before and before[-1].folded in _LEADS else start


def _cut(
    said: Sequence[Word], mentions: Sequence[Mention], start: int, stop: int
) -> tuple[Sequence[Word], Sequence[Mention]]:
    gone = range(start, stop)
    return (
        [word for word in said if word.span[0] not in gone],
        tuple(one for one in mentions if one.span[0] not in gone or one.span == (0, 0)),
    )


def apart(parts: Iterable[Clause], line: Sequence[str]) -> Iterator[Clause]:
    """The clauses, each cut where a name begins a contrast: "hale stacks | ruiz doesn't"."""
    for part in parts:
        at = next((at for at in range(part.start + 1, part.stop) if _begins(at, part, line)), None)
        if at is None:
            yield part
        else:
            yield replace(part, stop=at)
            yield Clause(start=at, stop=part.stop, joined=True, turned=part.turned)


def _begins(at: int, part: Clause, line: Sequence[str]) -> bool:
    if line[at] != NAME or line[at - 1] == NAME or _LEADS.issuperset(line[part.start : at]):
        return False
    return is_told_by_contrast(line[at : part.stop])


def is_told_by_contrast(words: Sequence[str]) -> bool:
    """Whether nothing but a name and "doesn't", or a count, tells of another what was just said."""
    counts = NAME in words and is_number(words[-1])
    counts = counts and all(one in _COUNTED | _LEADS or is_number(one) for one in words)
    return is_contrast(words) or counts


def shared(claims: Iterable[Claim], note: NoteLine) -> tuple[Claim, ...]:
    """The claims, what is said of two players at once being true of both."""
    told = tuple(claims)
    if len({each for one in note.whose for each in one.players}) < _LEAST:
        return tuple(dict.fromkeys(told))
    known = {(one.player, one.trait) for one in told}
    more = [
        replace(one, player=player)
        for one in told
        for player in note.subjects.at(_place(one, note))
        if (player, one.trait) not in known and one.player in note.subjects.at(_place(one, note))
    ]
    return tuple(dict.fromkeys([*told, *more]))


def _place(claim: Claim, note: NoteLine) -> int:
    return next((at for at, word in enumerate(note.said) if word.span[0] >= claim.span[0]), 0)
