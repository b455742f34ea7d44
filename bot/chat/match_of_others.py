"""Points and games that are not of the match that is on: "saskia and wim are up 9-4 over there"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from bot.chat.announcements import begins_as_match
from bot.chat.common_words import is_common
from bot.chat.forms import any_of
from bot.chat.message import Message
from bot.chat.note_or_question import begins_as_note
from bot.chat.numbers import number
from bot.chat.other_matches import is_elsewhere
from bot.chat.results_games import games_told
from bot.chat.results_said import result_said
from bot.chat.said import Certainty, Mention, NoteSaid
from bot.chat.score_groups import level_at, score_group
from bot.chat.scores import is_all_score, score_message
from bot.chat.two_others_told import is_of_two_others
from bot.chat.unknown_names import begins_a_clause, may_bear_a_name
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex

_OTHER, _PLAYING, _NUMBER = "@", "%", "#"
"""In the line searched: somebody who is not in this match, somebody who is, and a number."""

_AND = frozenset(["and", "n", "plus"])
_JOINING = frozenset("/&+")
SHORTEST_NAME = 3
"""Letters of a name that the book does not know yet."""

_SCORES = regex(
    rf"{_OTHER} (?:(?:is|are|was|were|re|s|has|have|had|just|now|already|still|got|both|go|went"
    r"|to|on|the|all) )*"
    r"(?:#(?= )|up|down|ahead|behind|lead|leads|leading|led|trail|trails|trailing|won|win|wins|lost"
    r"|lose|loses|beat|beats|took|take|takes|dropped|at|level|finished|final)(?!\w)"
    rf"|# # (?:for |to )?{_OTHER}(?: (?:on|over|at|in|now)\b|$)"
)
_AGAINST = regex(
    rf"\b(?:beat|beats|beaten by|lost to|lose to|fell to|over|against|vs|versus|from|to|by)"
    rf" {_OTHER}"
)
_US = regex(r"\b(?:we|us|our|ours|were|weve|im|i|me)\b")


def match_of_others(message: Message, chat: ChatView) -> NoteSaid | None:
    """The note that such a message is; None where its numbers may be those of our match now."""
    if message.asks or chat.forwarded or "?" in message.text:
        return None
    if begins_as_note(message.said) or begins_as_match(message.said) or not _has_numbers(message):
        return None
    if not (
        _is_told_elsewhere(message)
        or _is_of_another_pair(message, chat)
        or _is_of_two_others(message, chat)
    ):
        return None
    known = tuple(one for one in message.mentions if one.certainty is Certainty.SURE)
    return replace(message.note, mentions=known, offered=(), may_ask=(), is_of_others=True)


def _has_numbers(message: Message) -> bool:
    of_score = message.told.of_score
    return bool(
        score_group(of_score) or games_told(message.told.words) or level_at(of_score) is not None
    )


def _is_told_elsewhere(message: Message) -> bool:
    """Another court, or another day: `watching court 3, 8-3`, `they beat us last month 11-5`."""
    line = " ".join(word.folded for word in message.told.words)
    if any_of("other_matches.day").search(line):
        return True
    there = any_of("other_matches.there").search(line) or is_elsewhere(line)
    return bool(there) and _US.search(line) is None


def _is_of_another_pair(message: Message, chat: ChatView) -> bool:
    """Whether who scores, or who was beaten, is nobody of the match that is on."""
    if not (chat.match_on and chat.theirs) or chat.match_awaited:
        return False  # those of a match that waits for its names are nobody's "others"
    line = _line(message, chat)
    if _OTHER not in line or not _tells_points(message, chat):
        return False
    is_against = _AGAINST.search(line) is not None
    if _PLAYING in line or _US.search(line):
        return is_against
    return is_against or _SCORES.search(line) is not None


def _is_of_two_others(message: Message, chat: ChatView) -> bool:
    """Whether both sides of a result are told, and neither is us."""
    if chat.match_awaited or chat.pool_on:
        return False
    line = _line(message, chat)
    return _US.search(line) is None and is_of_two_others(line)


def _tells_points(message: Message, chat: ChatView) -> bool:
    """Whether it would be taken as a score or a result, and not as a note with numbers in it.

    A result against somebody else is one of the pool's, where a pool is on.
    """
    of_score = message.told.of_score
    if message.note.claims and not is_all_score(of_score):
        return False
    if result_said(message.text, message.told.words, of_score=of_score) is not None:
        return not chat.pool_on
    return score_message(message.text, of_score) is not None


def _line(message: Message, chat: ChatView) -> str:
    """The words with whoever is named as one sign, a pair as one too: "@ are up # # over there"."""
    tokens = list[str]()
    for word, sign in zip(message.said, _signs(message, chat), strict=True):
        token = sign or (_NUMBER if number(word) is not None else word.folded)
        joins = len(tokens) > 1 and tokens[-1] in _AND and tokens[-2] == token
        if sign and (joins or tokens[-1:] == [token]):
            del tokens[len(tokens) - joins :]
            continue
        tokens.append(token)
    return " ".join(tokens)


def _signs(message: Message, chat: ChatView) -> list[str]:
    playing = {*chat.ours, *chat.theirs}
    signs = [""] * len(message.said)
    for at, word in enumerate(message.said):
        named = _named_at(message, word)
        if named is not None and not named.pronoun:
            is_near = bool(playing.intersection((*named.players, *named.supposed)))
            signs[at] = _PLAYING if is_near else _OTHER
    for first, last in _strangers(message.said, signs):
        signs[first] = signs[last] = _OTHER
    return signs


def _named_at(message: Message, word: Word) -> Mention | None:
    found = (one for one in message.mentions if one.span[0] <= word.span[0] < one.span[1])
    return next(found, None)


def _strangers(said: Sequence[Word], signs: Sequence[str]) -> Iterator[tuple[int, int]]:
    """Where a pair opens a clause that is nobody in the book: "bram/lotte up 9-4"."""
    for first in range(len(said) - 1):
        joined = bool(_JOINING & set(said[first + 1].gap))
        last = first + 1 if joined else first + 2
        if last >= len(said) or not (joined or said[first + 1].folded in _AND):
            continue
        pair = [at for at in (first, last) if signs[at] != _OTHER]
        is_new = all(not signs[at] and _is_no_common_word(said[at]) for at in pair)
        is_named = is_new and any(may_bear_a_name(said[at]) for at in pair)
        if is_named and begins_a_clause(said, first):
            yield first, last


def _is_no_common_word(word: Word) -> bool:
    is_long = word.folded.isalpha() and len(word.folded) >= SHORTEST_NAME
    return is_long and not is_common(word.folded)
