"""Scores as players say them: calls, whose number is whose, and one rally's outcome."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.chat.numbers import Group, is_dictated, number
from bot.chat.other_matches import is_elsewhere, is_of_play
from bot.chat.rally_told import serving_after
from bot.chat.said import RallySaid, SaidScore, ScoreSaid
from bot.chat.score_aside import without_aside
from bot.chat.score_each import call_for, each_side, score_line
from bot.chat.score_groups import level_at, score_group
from bot.chat.score_said_again import after_slip, with_side_kept
from bot.chat.score_serving import (
    served_first,
    server_told,
    serves_first,
    serves_level_call,
    serving_side,
)
from bot.chat.score_words import (
    AHEAD,
    BEHIND,
    CALLED,
    GAME_POINTS,
    HAS_THE_NUMBER,
    IS_THE_NUMBER,
    OUR_RALLY,
    OURS_FIRST,
    POINT_OURS,
    POINT_THEIRS,
    SCORE_WORDS,
    SIDE_OUT,
    SIDE_OUT_SHORT,
    STRAY_WORDS_ALLOWED,
    THAT,
    THEIR_RALLY,
    THEIRS_FIRST,
    THEY_LEAD,
    TO_THEM,
    TO_US,
    WE,
)
from bot.chat.serve_told import side_serving, with_sides
from bot.chat.words import Word
from knowledge.game import ScoreCall, Scoring
from knowledge.regex import regex

_MARKS = frozenset(",;.!?:\n")
_STILL_TO_PLAY = regex(r"\b(?:game|match|set|championship) (?:points?|pts?|ball)\b")
"""`match point us` is about to be played; nobody has won it."""

_AT_A_CALL = regex(
    r"(?:(?:ok|so|at) )*# # #(?: and| so|,)* (?:(?P<side>we|they) )?(?:just )?"
    rf"(?P<how>won|win|got|take|took|lost) {THAT}(?: too| again)?"
)
_OWNED_NOW = regex(r"\b(?:ours|theirs)\b")


def said_score(
    said: Sequence[Word], *, own_first: bool = False
) -> tuple[SaidScore, tuple[int, int]] | None:
    """The score a message contains, and its span; None without one.

    `own_first`: of two numbers the first is ours, unless they are a call or said to be otherwise.
    """
    found = score_group(said)
    line = score_line(without_aside(said, found), found)
    each = each_side(said, line)
    if each is not None:
        return each, (said[0].span[0], said[-1].span[1])
    if found is None:
        return None
    return _read(found, said, line, own_first=own_first), found.span


def score_asked_about(said: Sequence[Word]) -> SaidScore | None:
    """The score a question is about: the last one it says, level ones too (`10 all`).

    Who asks "at 8-9, their serve" speaks of our 8: of two numbers our own comes first.
    """
    level, score = level_at(said), said_score(said, own_first=True)
    if level is not None and (score is None or score[1][1] <= said[level[1]].span[0]):
        return _level_score(said, level[0])
    return None if score is None else score[0]


def score_message(text: str, said: Sequence[Word]) -> ScoreSaid | RallySaid | None:
    """The score or the rally's outcome that a message contains, whatever else it says."""
    line = score_line(said, None)
    whole, said = said, after_slip(said)
    score, level = said_score(said, own_first=True), level_at(said)
    if _tells_of_play(said, level):
        return None
    if level is not None and (score is None or said[level[1]].span[0] < score[1][0]):
        return _level(text, said, level[0])
    if score is not None:
        slipped = said_score(whole[: len(whole) - len(said)], own_first=True)
        kept = with_side_kept(score[0], slipped[0] if slipped else None)
        return ScoreSaid(text=text, score=kept)
    if SIDE_OUT.search(line) or SIDE_OUT_SHORT.match(text):
        return ScoreSaid(text=text, side_out=True, score=_serving_after(line))
    return _rally(text, line) or _rally(text, _last_clause(said))


def rally_beside_call(score: ScoreSaid, said: Sequence[Word]) -> bool | None:
    """Whose rally is told beside a call of three numbers: "7-8-2 they won that one"."""
    is_call = score.score is not None and score.score.call is not None
    found = _AT_A_CALL.fullmatch(score_line(said, None)) if is_call else None
    if found is None:
        return None
    return (found["side"] != "they") is (found["how"] != "lost")


def _tells_of_play(said: Sequence[Word], level: tuple[int, int] | None) -> bool:
    found = score_group(said)
    if found is not None:
        return is_of_play(said, found)
    return level is not None and is_elsewhere(" ".join(word.folded for word in said))


def tells_rally_apart(said: Sequence[Word]) -> bool:
    """Whether the last clause is nothing but whose rally it was: "Tom netted it. Their rally"."""
    clause = _last_clause(said)
    forms = (OUR_RALLY, THEIR_RALLY)
    return clause != score_line(said, None) and any(form.fullmatch(clause) for form in forms)


def _last_clause(said: Sequence[Word]) -> str:
    cuts = [at for at, word in enumerate(said) if at and set(word.gap) & _MARKS]
    return score_line(said[cuts[-1] if cuts else 0 :], None)


def _serving_after(line: str) -> SaidScore | None:
    """Whose serve it is after a side-out, where that is said: "side out, our ball"."""
    we_serve = serving_side(line)
    we_serve = serving_after(with_sides(line)) if we_serve is None else we_serve
    if we_serve is None and (found := _OWNED_NOW.search(line)):
        we_serve = found[0] == "ours"
    return None if we_serve is None else SaidScore(we_serve=we_serve)


def _level(text: str, said: Sequence[Word], level: int) -> ScoreSaid:
    score = _level_score(said, level)
    if score.we_serve is None and score.server is None:
        return ScoreSaid(text=text, all_at=level)
    return ScoreSaid(text=text, score=score)


def _level_score(said: Sequence[Word], level: int) -> SaidScore:
    """`8 all`, and whose serve it is where that is said."""
    line = score_line(said, None)
    we_serve, server = serving_side(line), server_told(said, line)
    if we_serve is None and server is not None:
        we_serve = True if re.search(r"\b(?:us|ours)$", line) else None
    call = None
    if we_serve is not None:
        call = ScoreCall(serving=level, receiving=level, server=server)
    return SaidScore(call=call, ours=level, theirs=level, server=server, we_serve=we_serve)


def _rally(text: str, line: str) -> RallySaid | None:
    line = _STILL_TO_PLAY.sub("@", line)
    ours, theirs = OUR_RALLY.search(line), THEIR_RALLY.search(line)
    if (ours is None) == (theirs is None):
        return None
    return RallySaid(text=text, won_by_us=ours is not None)


def _read(group: Group, said: Sequence[Word], line: str, *, own_first: bool) -> SaidScore:
    first, second = group.numbers[0], group.numbers[1]
    full, line = line, re.sub(r"# (?:# )*#", "# #", line)
    server = group.numbers[2] if len(group.numbers) == 3 else server_told(said, line)
    if group.numbers == (0, 0) and serves_first(line):
        server = None
    we_serve = served_first(line) if (first, second) == (0, 0) else None
    we_serve = serving_side(line) if we_serve is None else we_serve
    we_serve = side_serving(full) if we_serve is None else we_serve
    if we_serve is None and server is not None:
        # Whoever calls a server serves: "3-1-2 them", "3 1 for them, i mean second server".
        we_serve = True if TO_US.search(line) else False if TO_THEM.search(line) else None
    if we_serve is None and len(group.numbers) == 3 and first == second:
        we_serve = serves_level_call(line)
    named = _named_number(group, said)
    if named is not None and we_serve is None and len(group.numbers) == 3 and first != second:
        we_serve = named == first
    ours = (
        named
        if named is not None
        else _our_number(
            first,
            second,
            line,
            we_serve=we_serve,
            is_call=len(group.numbers) == 3,
            own_first=own_first and we_serve is not None,
        )
    )
    if ours is None:
        as_typed = ScoreCall(serving=first, receiving=second, server=server)
        return SaidScore(call=as_typed, server=server, we_serve=we_serve)
    theirs = second if ours == first else first
    call = call_for(ours, theirs, server, we_serve)
    return SaidScore(call=call, ours=ours, theirs=theirs, server=server, we_serve=we_serve)


def ends_with_point(line: str) -> bool | None:
    """Whether the point that may end the game is ours; None where none is told, or both are."""
    ours, theirs = POINT_OURS.search(line) is not None, POINT_THEIRS.search(line) is not None
    return None if ours is theirs else ours


def with_point_served(score: ScoreSaid, said: Sequence[Word], scoring: Scoring) -> ScoreSaid:
    """In side-out scoring only who serves has a game or match point: "4-10 match point them"."""
    point_ours = ends_with_point(score_line(said, None))
    found = score.score
    if found is None or found.we_serve is not None or point_ours is None:
        return score
    if found.ours is None or found.theirs is None or scoring is not Scoring.SIDE_OUT:
        return score
    if (found.ours > found.theirs) is not point_ours:
        return score
    call = call_for(found.ours, found.theirs, found.server, point_ours)
    return replace(score, score=replace(found, call=call, we_serve=point_ours))


def _named_number(group: Group, said: Sequence[Word]) -> int | None:
    """Ours where it is said again: `4-9, us four`, `9-10-1, we're the 9`, `7-8, theirs the 8`."""
    first, second = group.numbers[:2]
    for place in range(group.stop, len(said)):
        value = number(said[place])
        if first == second or value not in (first, second):
            continue
        before = with_sides(
            " ".join(word.folded for word in said[max(group.stop, place - 3) : place])
        )
        after = " ".join(word.folded for word in said[place + 1 : place + 3])
        whose = HAS_THE_NUMBER.search(before) or IS_THE_NUMBER.match(after)
        if whose is not None:
            is_ours = re.match(rf"{WE}\b", whose[0].removeprefix("is ")) is not None
            return value if is_ours else second if value == first else first
    return None


def _our_number(
    first: int,
    second: int,
    line: str,
    *,
    we_serve: bool | None,
    is_call: bool,
    own_first: bool,
) -> int | None:
    """Which of the two is ours: from up or down, from whom the line names, from the call."""
    they_lead = THEY_LEAD.search(line) is not None
    if AHEAD.search(line) or BEHIND.search(line):
        we_are_ahead = (AHEAD.search(line) is not None) is not they_lead
        return max(first, second) if we_are_ahead else min(first, second)
    points = GAME_POINTS.search(line)
    if points is not None:
        return max(first, second) if points["whose"] == "we" else min(first, second)
    point_ours = ends_with_point(line)
    if point_ours is not None and first != second and we_serve is None:
        return max(first, second) if point_ours else min(first, second)
    if is_call and we_serve is not None:
        return first if we_serve else second
    if not is_call and (TO_US.search(line) or TO_THEM.search(line)):
        return max(first, second) if TO_US.search(line) else min(first, second)
    if TO_US.search(line):
        return first
    if THEIRS_FIRST.search(line):
        return second
    if OURS_FIRST.search(line):
        return first
    if own_first and not is_call and not CALLED.search(line):
        return first
    if we_serve is not None:
        return first if we_serve else second
    return None


def is_all_score(said: Sequence[Word]) -> bool:
    """Whether hardly a word of the message is about anything but the score."""
    return stray_words(said) <= STRAY_WORDS_ALLOWED


def stray_words(said: Sequence[Word]) -> int:
    """How many words speak of something beside the score."""
    return sum(
        1
        for word in said
        if number(word) is None and not is_dictated(word) and word.folded not in SCORE_WORDS
    )
