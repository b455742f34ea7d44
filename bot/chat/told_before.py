"""How the match stands, told before a question: "4-7-1 they serve, should we call a timeout"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import islice, pairwise, takewhile

from bot.chat.forms import word_set
from bot.chat.message import Message, mentions_within, read_message
from bot.chat.numbers import is_dictated, number
from bot.chat.rallies_said import brief_rally
from bot.chat.rally_told import is_side_out
from bot.chat.results_games import games_told
from bot.chat.results_said import result_said
from bot.chat.said import Certainty, Mention, RallySaid, ResultSaid, ScoreSaid
from bot.chat.scores import score_message, stray_words, with_point_served
from bot.chat.serving_said import server_named
from bot.chat.shot_described import describes_a_shot
from bot.chat.side_outs_said import with_side_out
from bot.chat.view import ChatView
from bot.chat.words import Word, folded_line
from knowledge.dataclass import dataclass
from knowledge.regex import regex

_MARKS = frozenset(",;:.!?\n–—")
_GOES_ON = word_set("question_goes_on")
"""Words that a question may begin with where no mark stands before it."""

ASKED_BARE = word_set("asked_bare_behind_a_score")
"""Words that ask by themselves there: "9-8-2 us tgt"."""

_MAY_ASK = _GOES_ON | ASKED_BARE
_ONLY_SUPPOSED = word_set("only_supposed")
"""Before a score that nobody has: "at 9-8-2, what do i serve"."""

_ONLY_WISHED = regex(
    r"\b(?:need|needs|want|wants|wanna|have|has|got|gotta|must|going|gonna|trying|like|hope|hoping"
    r"|could|can|cant|would|will|should|might|may|if|when|to) (?:to |we |they |it )*"
    r"(?:win|lose|take|close|finish|beat)\b"
)
"""Before a result that nobody has yet: "we need to win 11-9, how"."""

_NEVER_OF_A_RALLY = frozenset(["if", "imagine", "say", "suppose", "till", "until", "when"])
"""Before a rally that nobody played; "was" and "at" also tell one: "tom's drive was out"."""

_WERE = "were"
"""`we're` as phones type it; anything else that were so is supposed."""

_SERVES = frozenset(["serve", "serves", "serving", "served"])
"""Who is named beside a score may be the one who serves: "5-4-1 tom is serving"."""

_NO_SCORE_WORDS = frozenset(["makes", "means", "that", "thats", "then", "this"])
_LEADS = _NO_SCORE_WORDS | {"and", "its", "it", "is", "now", "ok", "so"}
"""What a score may be told with in front: "that makes it 6-4-1"."""

_BREAK = frozenset(["time", "timeout", "break", "pause"])
_BESIDE_A_BREAK = _BREAK | _LEADS | {"a", "called", "out", "they", "took", "we"}
"""Of a break named before the score it is taken at: "time-out now, 3-8, what do we change"."""

_ENDS = frozenset(["game", "match", "set", "championship"])
_POINTS = frozenset(["point", "points", "pt", "pts", "ball"])
_NAMES_A_RALLY = frozenset(["point", "rally", "scored", "sideout", "pt"])
_ONLY_WON_OR_LOST = frozenset(["won", "win", "wins", "lost", "lose", "took", "take", "dropped"])
"""What is won without a word that names it may be a game: "lost that one, what do we change"."""

_TAKEN_BACK = regex(
    r"\?\s*(?:(?:ah|oh|ok|um|uh)\W+)*(?:no|nope|wait|sorry|actually|wrong|i mean|i meant)\b"
    r"(?=.*(?:\d|\b(?:won|lost|win|lose|took|was|were|is)\b))",
    re.IGNORECASE | re.DOTALL,
)
"""A doubt and what is right: nothing that stood before it surely counts."""

_WHEN = frozenset(["after", "following", "when", "whenever", "if", "once", "on", "every"])

MOST_CUTS = 6
"""Places looked at, each for the price of a reading: a long message is not read over and over."""

LONGEST_PART = 16
"""Words that may stand before the question and still be nothing but a score. Our own bound."""

LONGEST_RALLY = 8
"""Words of a rally told before a question; what is longer sets the scene. Our own bound."""


SHORTEST_REST = 2
"""Words behind a score that may ask by themselves: "what serve"; "who" leans on those before."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Before:
    """What a message in a match tells before it asks. `told` counts. Where it tells nothing that
    surely does, `won_by_us` says whether we won what may be a rally, a whole game, or only what the
    question is about.
    """

    told: ScoreSaid | RallySaid | ResultSaid | None = None
    won_by_us: bool | None = None


def before_the_question(message: Message, chat: ChatView) -> Before:
    """The score, the rally or the finished games told there; the longest there is.

    Only where nothing else stands before the question, or a whole call stands apart, and nothing
    is supposed: who asks about another score than the one we have keeps the one we have.
    """
    if not (chat.match_on and message.asks) or chat.forwarded or _TAKEN_BACK.search(message.text):
        return Before()
    cuts = [at for at in _cuts(message.said) if at <= LONGEST_PART]
    parts = [_part(message, 0, at, chat) for at in reversed(cuts) if _may_tell(message.said[:at])]
    found = (_told(part, chat) for part in parts)
    told = next((one for one in found if one is not None), None)
    if isinstance(told, RallySaid) and not told.says_whose and describes_a_shot(message.said):
        return Before()
    told = told or _call_apart(message, _cuts(message.said), chat)
    won = (_perhaps_won(part, chat) for part in parts)
    return Before(told=told, won_by_us=next((one for one in won if one is not None), None))


def score_ends(message: Message, chat: ChatView) -> int | None:
    """Where the score ends that a message opens with, before two words more or one that asks."""
    rest = 1 if message.said[-1].folded in ASKED_BARE else SHORTEST_REST
    last = min(LONGEST_PART, len(message.said) - rest)
    for at in reversed([at for at in _cuts(message.said) if at <= last]):
        part = _part(message, 0, at, chat)
        told = None if part.asks else _score(part, chat)
        if isinstance(told, ScoreSaid) and told.score is not None:
            return at
    return None


def result_put_right(message: Message, chat: ChatView) -> ResultSaid | None:
    """ "Won 11-7 15-13? no 11-7 and 11-9": the games as they are put right after the doubt."""
    doubt = _TAKEN_BACK.search(message.text) if chat.match_on and not chat.forwarded else None
    if doubt is None or "?" in message.text[doubt.end() :]:
        return None
    if not games_told(read_message(message.text[doubt.end() :], chat).told.words):
        return None
    doubted = message.text[: doubt.start()].replace("?", ",")
    found = _result(read_message(f"{doubted}, {message.text[doubt.start() + 1 :]}", chat), chat)
    return None if found is None else replace(found, text=message.text)


def _call_apart(message: Message, cuts: Sequence[int], chat: ChatView) -> ScoreSaid | None:
    """A whole call in a clause of its own, whatever stands before it."""
    for start, stop in reversed([*pairwise(cuts)]):
        if stray_words(message.said[start:stop]):
            continue
        part = _part(message, start, stop, chat)
        told = None if part.asks else _score(part, chat)
        if isinstance(told, ScoreSaid) and told.score is not None and told.score.server is not None:
            return told
    return None


def _perhaps_won(part: Message, chat: ChatView) -> bool | None:
    told = None if _is_still_to_play(part.said) else _rally(part, chat)
    is_told = isinstance(told, RallySaid) and (_says_how(told) or _may_be_a_game(part))
    return told.won_by_us if is_told and isinstance(told, RallySaid) else None


def _cuts(said: Sequence[Word]) -> list[int]:
    """Where the question may begin, or another clause before it: the first few such places."""
    places = (
        at
        for at, word in enumerate(said)
        if at and (word.folded in _MAY_ASK or set(word.gap) & _MARKS)
    )
    return [*islice(places, MOST_CUTS)]


def _may_tell(said: Sequence[Word]) -> bool:
    """Whether words are worth a reading: a score and a result have numbers, a rally few words."""
    if len(said) <= LONGEST_RALLY:
        return True
    return any(number(word) is not None or is_dictated(word) for word in said)


def _told(part: Message, chat: ChatView) -> ScoreSaid | RallySaid | ResultSaid | None:
    part = _behind_a_break(part, chat)
    if part.asks or _is_any_side_out(part):
        return None
    score = _score(part, chat)
    if _is_still_to_play(part.said):
        return score if isinstance(score, ScoreSaid) else None
    told = _result(part, chat) or score
    if told is not None:
        return told
    rally = _rally(part, chat)
    return rally if rally is not None and _is_surely_one(rally, part) else None


def _behind_a_break(part: Message, chat: ChatView) -> Message:
    """What is told behind the break; "time-out now" by itself asks whether to take one."""
    before = [*takewhile(lambda word: word.folded in _BESIDE_A_BREAK, part.said)]
    is_break = any(word.folded in _BREAK for word in before) and len(before) < len(part.said)
    return _part(part, len(before), len(part.said), chat) if is_break else part


def _is_any_side_out(part: Message) -> bool:
    """ "After a side out whos server 1": none has happened."""
    return part.said[0].folded in _WHEN and is_side_out(folded_line(part.said))


def _part(message: Message, start: int, stop: int, chat: ChatView) -> Message:
    """Words of the message as one of their own, that names whom the whole names there."""
    begin, end = message.said[start].span[0], message.said[stop - 1].span[1]
    mentions = mentions_within(message.mentions, begin, end)
    return read_message(message.text[begin:end], chat, mentions=mentions)


def _score(part: Message, chat: ChatView) -> ScoreSaid | RallySaid | None:
    """A score, a side-out or whose point it was, with nothing else; names only of who serves."""
    named = [one for one in part.mentions if not one.pronoun]
    said = part.told.of_score if named else part.said
    if stray_words(said) > _leading(said) or _is_supposed(part.said):
        return None
    if named and not (_SERVES.intersection(word.folded for word in said) and _play(named, chat)):
        return None
    told = score_message(part.text, part.told.of_score)
    if isinstance(told, ScoreSaid):
        served = with_point_served(told, part.told.of_score, chat.format.scoring)
        served = with_side_out(served, part.told.of_score, chat.format.scoring)
        return replace(served, served_by=server_named(part, chat))
    return told if _names_a_rally(part) else None


def _leading(said: Sequence[Word]) -> int:
    """Words that only lead to a score, or tell of its last point: "that makes it", "match"."""
    leads = takewhile(lambda word: word.folded in _LEADS, said)
    points = sum(
        before.folded == "match" and word.folded in _POINTS for before, word in pairwise(said)
    )
    return sum(word.folded in _NO_SCORE_WORDS for word in leads) + points


def _result(part: Message, chat: ChatView) -> ResultSaid | None:
    """Finished games with their points: "won that one 11-9", "game one gone 8-11"."""
    line = " ".join(word.folded for word in part.said)
    if any(not one.pronoun for one in part.mentions) or _ONLY_WISHED.search(line):
        return None
    if _is_supposed(part.said):
        return None
    words, of_score = part.told.words, part.told.of_score
    found = result_said(part.text, words, of_score=of_score, format=chat.format)
    return found if found is not None and found.games else None


def _play(named: Sequence[Mention], chat: ChatView) -> bool:
    playing = {*chat.ours, *chat.theirs}
    return all(one.certainty is Certainty.SURE and one.players[0] in playing for one in named)


def _rally(part: Message, chat: ChatView) -> RallySaid | ScoreSaid | None:
    """The rally or the side-out that the words tell as they would alone."""
    if part.asks or len(part.said) > LONGEST_RALLY:
        return None
    if any(word.folded in _NEVER_OF_A_RALLY for word in part.said):
        return None
    rally = brief_rally(part, chat)
    return rally if isinstance(rally, RallySaid | ScoreSaid) else None


def _is_surely_one(rally: RallySaid | ScoreSaid, part: Message) -> bool:
    """Whether it is named as a rally or a point, or told with who ended it and by what stroke.

    Of 1,726 questions that set a scene, as "she pulled me wide, do i slide", none is told so.
    """
    if isinstance(rally, ScoreSaid) or rally.scored or _names_a_rally(part):
        return True
    return _says_how(rally) and rally.details.stroke is not None


def _says_how(rally: RallySaid) -> bool:
    return rally.details.ending is not None and rally.details.by is not None


def _may_be_a_game(part: Message) -> bool:
    said = {word.folded for word in part.said}
    return bool(said & _ONLY_WON_OR_LOST) and not _names_a_rally(part)


def _names_a_rally(part: Message) -> bool:
    return any(word.folded in _NAMES_A_RALLY for word in part.said)


def _is_still_to_play(said: Sequence[Word]) -> bool:
    """ "Game point for them, where do i serve": the point that may end it is about to be played."""
    return any(before.folded in _ENDS and word.folded in _POINTS for before, word in pairwise(said))


def _is_supposed(said: Sequence[Word]) -> bool:
    return any(
        word.folded in _ONLY_SUPPOSED and not (at == 0 and word.folded == _WERE)
        for at, word in enumerate(said)
    )
