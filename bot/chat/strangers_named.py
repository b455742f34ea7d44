"""Somebody whom the book does not know, named in small letters where a known one stands as well.

"Okafor slow, kerr erne happy" tells of two, and "where i srv kerr" asks of somebody: a surname that
people commonly bear and that is no word of English or of play. Such a word counts only where a name
must stand, at the head of a clause that tells something of whoever is meant, or right behind whom a
shot goes at: anywhere else ("mind the shell", "what's on file") it is a word we have not seen.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from bot.chat.forms import any_of, word_set
from bot.chat.names import index_of
from bot.chat.notes import read_note
from bot.chat.said import Certainty, Mention
from bot.chat.spoken_line import line_of
from bot.chat.unknown_names import begins_a_clause, has_predicate, is_new_word, is_no_word
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.vocabulary import PlayerId
from scouting_db.known_names import Known, known_first_name, known_surname
from scouting_db.names import Nobody
from scouting_db.sounds import fold
from scouting_db.values import PlayerRow

_SHORTEST = 4
"""Letters: shorter names are words typed short as often ("min", "lin")."""

_SOMEBODY = PlayerId(-2)
"""Stands for whoever is meant while it is asked whether anything is told of them."""

_JOINS_ANOTHER = frozenset(["or", "and", "n"])
_NO_STRANGER = word_set("borne_but_no_stranger")
_LEADS_ON = frozenset(
    [
        *(
            "to",
            "at",
            "for",
            "from",
            "with",
            "w",
            "like",
            "than",
            "vs",
            "against",
            "over",
            "behind",
        ),
        *("when", "if", "while", "because", "of", "on", "a", "an", "the", "is", "called", "named"),
    ]
)
"""What a name belongs to that it stands right behind."""

_ARTICLES = frozenset(["a", "an"])
_SKILLS = word_set("owned_skills")
_AFTER_WHOM = word_set("after_whom_it_is_aimed_at")


def without_things(
    said: Sequence[Word], mentions: tuple[Mention, ...], chat: ChatView
) -> tuple[Mention, ...]:
    """The mentions without what is only a thing: in "lindqvist in a cast" no Castellano is meant.

    Behind "a" or "an" stands nobody cut short, unless a shot of theirs does: "a lindq lob".
    """
    return tuple(one for one in mentions if not _is_a_thing(said, one, chat))


def _is_a_thing(said: Sequence[Word], mention: Mention, chat: ChatView) -> bool:
    if mention.pronoun or not mention.typed.islower() or " " in mention.typed:
        return False
    at = next((at for at, word in enumerate(said) if word.span == mention.span), 0)
    if not at or said[at - 1].folded not in _ARTICLES:
        return False
    named = {part for row in chat.roster if row.player in mention.players for part in _parts(row)}
    is_whole = fold(mention.typed) in named
    owns = at + 1 < len(said) and said[at + 1].folded in _SKILLS
    return not is_whole and not owns


def _parts(row: PlayerRow) -> list[str]:
    return fold(row.name).split()


def with_strangers(
    text: str, said: Sequence[Word], mentions: tuple[Mention, ...], chat: ChatView
) -> tuple[Mention, ...]:
    """The mentions, and everybody whom nothing but their name tells of."""
    odd = [at for at in range(len(said)) if _may_be_one(said, at, mentions)]
    if not odd:
        return mentions
    found = [*mentions]
    for at in odd:
        stranger = _mention(said[at], chat)
        if _is_aimed_at(said, at, found) or _is_told_of(text, said, at, stranger, found, chat):
            found.append(stranger)
    return tuple(sorted(found, key=lambda one: one.span))


def _may_be_one(said: Sequence[Word], at: int, mentions: Sequence[Mention]) -> bool:
    word = said[at]
    is_taken = any(one.span[0] <= word.span[0] < one.span[1] for one in mentions)
    return not is_taken and (_is_a_name(word) or _runs_on(said, at, mentions))


def _is_a_name(word: Word) -> bool:
    """Whether people bear it and nobody says it; "she'll" and "we'll" are typed in two."""
    folded = word.folded
    if len(folded) < _SHORTEST or not word.typed.isalpha() or folded in _NO_STRANGER:
        return False
    if not is_new_word(folded):
        return False
    return Known.COMMONLY is max(known_surname(folded), known_first_name(folded))


def _mention(word: Word, chat: ChatView) -> Mention:
    match = index_of(chat).lookup(word.folded)
    near = match.nearest if isinstance(match, Nobody) else ()
    return Mention(
        typed=word.typed,
        span=word.span,
        certainty=Certainty.NOBODY,
        players=tuple(row.player for row in near),
    )


def _is_aimed_at(said: Sequence[Word], at: int, found: Sequence[Mention]) -> bool:
    """ "Where i srv kerr", "dink tran where", "tran or kerr", "okafor or kerr": right behind a shot
    or the other who may be meant, and nothing but a question behind it."""
    ahead = said[at + 1] if at + 1 < len(said) else None
    if ahead is not None and ahead.gap == " " and ahead.folded not in _AFTER_WHOM:
        return False
    before = line_of(said[:at]).text
    if any_of("aimed_at_somebody", last=True).search(before):
        return True
    is_joined = at > 1 and said[at - 1].folded in _JOINS_ANOTHER
    beside = found if said[at - 1].folded == "or" else [*_strangers(found)]
    return is_joined and any(
        one.span[1] == said[at - 2].span[1] and not one.pronoun for one in beside
    )


def _strangers(found: Sequence[Mention]) -> Iterator[Mention]:
    return (one for one in found if one.certainty is Certainty.NOBODY)


def _runs_on(said: Sequence[Word], at: int, found: Sequence[Mention]) -> bool:
    """ "Gary is the big hitter rashid is steady": behind somebody of whom something was told, a
    first name, or what is no word at all, begins anew with a verb of its own, without a mark."""
    word = said[at]
    if not at or said[at - 1].folded in _LEADS_ON or not has_predicate(said, at + 1):
        return False
    is_first = _is_a_name(word) and known_first_name(word.folded) is Known.COMMONLY
    if not (is_first or is_no_word(word.folded)):
        return False
    before = [one.span[1] for one in found if not one.pronoun and one.span[1] <= said[at].span[0]]
    told = (place for place in range(1, at) if said[place - 1].span[1] in before)
    return any(has_predicate(said, place) and place + 1 < at for place in told)


def _is_told_of(
    text: str,
    said: Sequence[Word],
    at: int,
    stranger: Mention,
    found: Sequence[Mention],
    chat: ChatView,
) -> bool:
    """Whether a clause begins with them and would claim something of whoever bears the name."""
    is_last = at + 1 == len(said)
    if is_last or said[at + 1].gap != " ":
        return False
    if not (begins_a_clause(said, at) or _runs_on(said, at, found)):
        return False
    meant = replace(stranger, certainty=Certainty.SURE, players=(_SOMEBODY,))
    named = sorted((*found, meant), key=lambda one: one.span)
    note = read_note(text, said, named, chat)
    return any(one.player == _SOMEBODY for one in note.claims)
