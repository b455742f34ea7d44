"""A rally or a side-out of the running match told at length: "hale into the net, ours"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.disputed_calls import is_called_in, is_disputed
from bot.chat.forms import word_set
from bot.chat.message import Message, read_message
from bot.chat.numbers import number_of
from bot.chat.on_court import is_of_one_side
from bot.chat.private_words import without_private
from bot.chat.rally_details import RallyReading, read_rally
from bot.chat.rally_opening import opened_by, point_by_deed
from bot.chat.rally_tense import is_reported, tells_what_holds
from bot.chat.rally_told import is_owned, is_side_out, is_unowned, serving_after, won_by_us
from bot.chat.said import RallySaid, SaidScore, ScoreSaid
from bot.chat.score_groups import level_at, score_group
from bot.chat.scores import stray_words
from bot.chat.serve_told import with_sides
from bot.chat.shot_described import describes_a_shot
from bot.chat.side_outs_said import with_lost_rally
from bot.chat.slip_words import CORRECTS
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex
from knowledge.vocabulary import TRAITS, TraitKind

LONGEST_TOLD = 16
"""Words of a rally told with what happened in it; what is longer is a story, and a note."""

STRAY_WORDS_OF_PLAY = 6

WORDS_BESIDE_PLAY = 8
"""Words of no concept in a rally told only by what happened: names, articles and links."""

_THE_POINT = regex(r"(?:^| )(?:the )?(?:point|pt)$")
_ONE_MORE = regex(r"(?:(?:and|yet|so|ok) )*(?:(?:another|one more)\b|(?:point|pt)$)")
"""Not the one that was counted last, however little it says of whose it was."""

_JUDGES = regex(r"\b(?:too good|dangerous)$")
"""What somebody is, said as readily of all the day as of one rally: no outcome alone."""

_OUT_OF_ORDER = regex(r"\bout of (?:order|turn|sequence|rotation)\b")
"""Who served so has hit nothing out; whose rally it is, a rule says first."""

_MARKS = frozenset(",;.!:\n–—")
_OTHERWISE = word_set("not_of_one_rally")
_MANY = word_set("of_many_rallies")


def told_rally(message: Message, chat: ChatView) -> RallySaid | ScoreSaid | None:
    """The rally or side-out, if the message tells of one and of nothing that holds at all times."""
    said = message.told.words
    if message.asks or not 0 < len(said) <= LONGEST_TOLD or score_group(said) or level_at(said):
        return None
    clauses = _clauses(said)
    line = " ".join(clauses)
    if any(_is_out_of_place(word) for word in line.split()) or _OUT_OF_ORDER.search(line):
        return None
    named = tuple(one for one in message.mentions if not one.pronoun)
    owned = is_owned(clauses)
    if not owned and not all(is_of_one_side(one, chat) for one in named):
        return None
    if is_side_out(line):
        we_serve = serving_after(line)
        score = None if we_serve is None else SaidScore(we_serve=we_serve)
        told_so = ScoreSaid(text=message.text, side_out=True, score=score)
        return with_lost_rally(told_so, message, chat)
    if not _says_whose(clauses) and tells_what_holds(message.said, message.mentions):
        return None
    if not _says_whose(clauses) and (_JUDGES.search(line) or _MANY.intersection(line.split())):
        return None
    if not _says_whose(clauses) and describes_a_shot(message.said):
        return None
    if is_called_in(message.said) or (not _says_whose(clauses) and is_disputed(message.said)):
        return None
    if not _says_whose(clauses) and without_private(message.text) != message.text:
        return _beside_a_body(message, chat)
    told = won_by_us(clauses)
    reading = read_rally(message, chat, won_by_us=told)
    won = _won_by_play(reading, said, line) if told is None else told
    won = point_by_deed(clauses) if won is None and not reading.unknown else won
    strays = stray_words(said) - reading.understood
    if won is None or (not owned and strays > STRAY_WORDS_OF_PLAY):
        return None
    corrects = CORRECTS.match(line) is not None
    rally = RallySaid(text=message.text, won_by_us=won, mentions=named, corrects=corrects)
    return with_details(rally, message, chat)


def _beside_a_body(message: Message, chat: ChatView) -> RallySaid | ScoreSaid | None:
    """The rally that is told beside private words: "pain killers" and "shot" hit no winner.

    Something must happen in what is left: of "my calf hurts" that is "my", and nobody's point.
    """
    beside = read_message(without_private(message.text), chat)
    rally = told_rally(beside, chat) if beside.said else None
    if rally is None or (isinstance(rally, RallySaid) and not rally.understood):
        return None
    return replace(rally, text=message.text)


def _won_by_play(reading: RallyReading, said: Sequence[Word], line: str) -> bool | None:
    """Whose a rally was that is told by nothing but what happened in it.

    Who serves, drives and wins "the point" without a name is ours, as in "served wide, point".
    """
    if reading.unknown or len(said) - reading.understood > WORDS_BESIDE_PLAY:
        return None
    if is_reported(said):
        return None
    if reading.won_by_us is None and reading.details.choices and _THE_POINT.search(line):
        return True
    return reading.won_by_us


def _is_out_of_place(word: str) -> bool:
    """A word of what holds at all times, or a number of anything but this one rally."""
    return word in _OTHERWISE or (number_of(word) not in (None, 1, 2)) or word == "two"


def _clauses(said: Sequence[Word]) -> tuple[str, ...]:
    """The lines between the message's marks."""
    lines: list[list[str]] = [[]]
    opened = opened_by(said) if said else 0
    for at, word in enumerate(said):
        is_apart = set(word.gap) & _MARKS or " - " in word.gap
        if lines[-1] and (is_apart or at == opened):
            lines.append([])
        lines[-1].append(word.folded)
    return tuple(with_sides(" ".join(line)) for line in lines)


def with_details(rally: RallySaid, message: Message, chat: ChatView) -> RallySaid:
    """The rally with what else its words tell of it."""
    reading = read_rally(message, chat, won_by_us=rally.won_by_us)
    clauses = _clauses(message.told.words)
    return replace(
        rally,
        says_whose=_says_whose(clauses) or _ONE_MORE.match(clauses[0]) is not None,
        details=reading.details,
        strangers=reading.strangers if chat.theirs else (),
        understood=reading.understood,
        may_note=_tells_a_habit(message, chat),
    )


def _tells_a_habit(message: Message, chat: ChatView) -> bool:
    """ "Okafor poached on it": once is no habit yet, so that it is only offered as a note."""
    named = {player for one in message.mentions if not one.pronoun for player in one.players}
    return bool(named.intersection(chat.theirs)) and any(
        claim.player in chat.theirs and TRAITS[claim.trait].kind is TraitKind.HABIT
        for claim in message.note.claims
    )


def _says_whose(clauses: tuple[str, ...]) -> bool:
    return is_owned(clauses) or is_unowned(clauses)
