"""Plans in the book: kept as given, and read again with the last meeting they were given for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from types import MappingProxyType

from bot.chat.answers.desk import Desk
from bot.chat.answers.results import score_of, told_result
from bot.chat.match_log import OF_VIDEO
from knowledge.advice import Advice
from knowledge.given_plan import GivenLine, LastMeeting, Tried
from knowledge.planning.line import Line, Phase
from knowledge.planning.plan_lines import plan_lines
from knowledge.situation import Situation
from knowledge.vocabulary import PlayerId, Topic
from scouting_db.values import MatchRow, MatchState, Micros, PairId, Part, PlanRow, Winner
from scouting_db.zones import local_day, local_time

PLAN_VARIANT = "A"

IS_PLAN = "plan_per_100"
"""The number that only a plan about these people has; without it there was no book."""

WITH_PLAN = frozenset({Topic.GAME_PLAN, Topic.CUE})
"""Topics that read the plan last given."""


def keep_plan(desk: Desk, advice: Advice, situation: Situation) -> None:
    """A game plan about known people is stored, so that it can be recalled and compared."""
    is_plan = advice.topic is Topic.GAME_PLAN and IS_PLAN in advice.numbers
    if is_plan and len(situation.theirs) == 2:
        keep_lines(desk, situation, _lines_of(desk, situation))


def _lines_of(desk: Desk, situation: Situation) -> tuple[Line, ...]:
    """The plan's lines: those of an equal situation are not weighed again."""
    key = ("plan lines", situation.asked)
    return desk.views.advice.recall(key, (situation,), lambda: plan_lines(situation))


def keep_lines(desk: Desk, situation: Situation, lines: Sequence[Line]) -> None:
    """The lines as given now, unless the newest plan has the same."""
    players = [one.player for one in situation.theirs]
    theirs = desk.view.pair_id(players) or desk.pair_of(players)
    given = given_lines(lines)
    before = stored_plan(desk, theirs) if theirs else None
    if before is None or [one.text for one in before.lines] != [one.text for one in given]:
        ours = desk.pair_of([one.player for one in situation.ours])
        desk.book.store_plan(our_pair=ours, their_pair=theirs, variant=PLAN_VARIANT, lines=given)


def given_lines(lines: Sequence[Line]) -> tuple[GivenLine, ...]:
    """The lines as they are kept."""
    return tuple(
        GivenLine(
            do=line.do,
            because=line.because,
            cue=line.cue,
            phase=line.phase.value,
            source=str(line.source),
            evidence=line.evidence,
            per_100=line.per_100,
            we_serve=line.we_serve,
            who=line.who,
            option=line.option,
        )
        for line in lines
    )


def with_plan_memory(desk: Desk, situation: Situation) -> Situation:
    """The situation with the plan last given against this pair, and the last meeting with it."""
    if situation.topic not in WITH_PLAN or len(situation.theirs) != 2:
        return situation
    pair = desk.view.pair_id([one.player for one in situation.theirs])
    if pair is None:
        return situation
    found = stored_plan(desk, pair)
    meeting = last_meeting(desk, pair) if situation.topic is Topic.GAME_PLAN else None
    return replace(situation, given_plan=found.lines if found else (), last_meeting=meeting)


def stored_plan(desk: Desk, pair: PairId, *, before: Micros | None = None) -> PlanRow | None:
    """The plan last given against the pair, up to a moment if one is said."""
    return desk.recall(
        ("plan", pair, before),
        lambda: desk.book.latest_plan(pair, variant=PLAN_VARIANT, before=before),
        Part.SETTLED,
    )


def last_match(desk: Desk, pair: PairId) -> MatchRow | None:
    """The newest finished match against the pair; not the current one, nor what is only video."""
    rows = desk.recall(
        ("matches against", pair), lambda: desk.book.matches_against(pair), Part.MATCHES
    )
    return next((row for row in rows if is_meeting(desk, row)), None)


def is_meeting(desk: Desk, row: MatchRow) -> bool:
    """Over, played and not only seen, and by one of those who speak: a coach has other pairs."""
    if row.state is not MatchState.OVER or row.match == desk.context.match:
        return False
    by_us = row.our_pair is None or not desk.ours or {*row.our_pair.players} & {*desk.ours}
    return bool(by_us) and not row.format.get(OF_VIDEO)


def last_meeting(desk: Desk, pair: PairId) -> LastMeeting | None:
    """That match as a rematch sees it; None for a pair we have not finished a match against."""
    row = last_match(desk, pair)
    if row is None:
        return None
    return desk.recall(
        ("last meeting", row.match),
        lambda: _meeting(desk, pair, row),
        Part.MATCHES,
        Part.LOG,
        Part.SETTLED,
    )


def _meeting(desk: Desk, pair: PairId, row: MatchRow) -> LastMeeting:
    result = told_result(desk, row)
    found = stored_plan(desk, pair, before=ended_at(desk, row))
    lines = found.lines if found else ()
    return LastMeeting(
        day=day_of(desk, row.made_at),
        won=result.won,
        games=score_of(result.games),
        plan=lines,
        tried=_tried(desk, row, lines),
    )


def ended_at(desk: Desk, row: MatchRow) -> Micros:
    """When the last line of its log was written."""
    entries = desk.book.entries(row.match)
    return entries[-1].at if entries else row.made_at


def day_of(desk: Desk, at: Micros) -> int:
    """The ordinal of the day on the book's own clock."""
    return local_day(at, desk.zone)


def start_of_day(desk: Desk) -> Micros:
    """When today began on the book's own clock."""
    now = local_time(desk.now, desk.zone)
    midnight = now.replace(hour=0, minute=0, second=0, microsecond=0)
    return Micros(int(midnight.timestamp() * 1e6))


_CHOSEN = MappingProxyType(
    {
        Phase.RETURN.value: Topic.AIM_RETURN,
        Phase.THIRD.value: Topic.THIRD_SHOT,
        Phase.DINK.value: Topic.AIM_DINK,
        Phase.HANDS.value: Topic.AIM_ATTACK,
    }
)
"""The topic under which a line's choice is logged."""


def _tried(desk: Desk, row: MatchRow, lines: Sequence[GivenLine]) -> tuple[Tried, ...]:
    if row.our_pair is None or row.their_pair is None:
        return ()
    found = []
    for line in lines:
        topic = _CHOSEN.get(line.phase)
        if topic is None or not line.option:
            continue
        choices = desk.book.choices_against(
            topic, ours=row.our_pair.pair, theirs=row.their_pair.pair
        )
        won = [
            winner is Winner.US
            for one, winner in choices
            if one.match == row.match and one.option == line.option and winner is not None
        ]
        if won:
            found.append(Tried(do=line.do, won=sum(won), of=len(won)))
    return tuple(found)


def pair_players(desk: Desk, theirs: Sequence[PlayerId]) -> PairId | None:
    """The number of the pair, if the book knows these two together."""
    return desk.view.pair_id(theirs) if len(theirs) == 2 else None
