"""What changed since the last meeting with a pair: its result, new notes, and rates that moved."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.evidence_read import profiles_without, said_of
from bot.chat.answers.plan_book import day_of, last_match, stored_plan
from bot.chat.wording import wording
from knowledge.advice import Advice, Confidence, Reason
from knowledge.dataclass import dataclass
from knowledge.given_plan import LastMeeting
from knowledge.planning.names import first_that_fits, pair_name
from knowledge.planning.plan_lines import plan_lines
from knowledge.planning.rematch import Expected, day_name, expected, result_words
from knowledge.planning.since import Moved, moved_of_all
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE, Source, book, counted
from knowledge.vocabulary import EvidenceId, PlayerId, Topic
from scouting_db.values import MatchId, Micros, NoteId, PairId

NOTES_LOOKED_AT = 200
"""The newest notes on a player among which those since then are."""

MOST_MOVED = 3
"""Changes shown: the rest is under "why"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Since:
    """The moment to compare with, and what came after it."""

    at: Micros
    day: int
    notes: frozenset[NoteId]
    matches: frozenset[MatchId]


def since_advice(desk: Desk, situation: Situation, pair: PairId) -> Advice | None:
    """The page; None for a pair that we neither met nor had a plan for."""
    since = _since(desk, pair, [one.player for one in situation.theirs])
    if since is None:
        return None
    players = [one.player for one in situation.theirs]
    then = profiles_without(desk, players, notes=since.notes, matches=since.matches)
    now = {one.player: one.profile for one in situation.theirs}
    moved = moved_of_all((then[player], now[player]) for player in players)
    guess = expected(situation, plan_lines(situation))
    return _page(desk, situation, since, moved, guess)


def _since(desk: Desk, pair: PairId, players: Sequence[PlayerId]) -> Since | None:
    """From the last meeting's beginning, so that what it told is news too; else the last plan's."""
    met = last_match(desk, pair)
    found = stored_plan(desk, pair) if met is None else None
    if met is None and found is None:
        return None
    at = met.made_at if met is not None else found.made_at if found is not None else desk.now
    return Since(
        at=at,
        day=day_of(desk, at),
        notes=_notes_after(desk, players, at),
        matches=frozenset(
            row.match for row in desk.book.matches_against(pair) if row.made_at >= at
        ),
    )


def _notes_after(desk: Desk, players: Sequence[PlayerId], at: Micros) -> frozenset[NoteId]:
    return frozenset(
        row.note
        for player in players
        for row in desk.book.notes_of(player, limit=NOTES_LOOKED_AT)
        if row.at > at
    )


def _page(
    desk: Desk,
    situation: Situation,
    since: Since,
    moved: Sequence[Moved],
    guess: Expected | None,
) -> Advice:
    today = day_of(desk, desk.now)
    when = day_name(since.day, today=today)
    lines = [*_meeting_lines(situation.last_meeting, when)]
    if guess is not None:
        text = guess.reason if guess.variant is not None else guess.text
        lines.append(Reason(text=text, source=COMMON_PRACTICE))
    fresh = _notes_line(desk, situation, since, when)
    lines += [fresh] if fresh else []
    lines += [Reason(text=one.text, source=one.source) for one in moved[:MOST_MOVED]]
    if not fresh and not moved:
        lines.append(Reason(text=wording("plan.nothing_new"), source=book(notes=0)))
    return Advice(
        topic=Topic.GAME_PLAN,
        call=_call(situation, guess, moved, when),
        lines=tuple(lines),
        confidence=Confidence.GENERAL_RULE,
        numbers={"new_notes": float(len(since.notes)), "moved": float(len(moved))},
        more=tuple(f"{one.text} ({one.source})" for one in moved[MOST_MOVED:]),
    )


def _call(situation: Situation, guess: Expected | None, moved: Sequence[Moved], when: str) -> str:
    """What to be ready for, or that the plan stands."""
    who = pair_name(situation.theirs)
    if guess is not None and guess.variant is not None:
        return first_that_fits((f"Be ready: {guess.change}.", "Be ready: they will change."))
    if moved:
        return first_that_fits((f"Note what's new on {who}.", "Note what's new on them."))
    return first_that_fits((f"Keep the plan of {when}.", "Keep the plan."))


def _meeting_lines(meeting: LastMeeting | None, when: str) -> tuple[Reason, ...]:
    if meeting is None:
        return ()
    told = result_words(meeting)
    if told is None:
        return ()
    return (Reason(text=f"{when[0].upper()}{when[1:]} {told}", source=LOGGED),)


LOGGED = Source(kind=book(notes=0).kind, citation="result")


def _notes_line(desk: Desk, situation: Situation, since: Since, when: str) -> Reason | None:
    """How many notes came since, and on whom."""
    told = []
    evidence: list[EvidenceId] = []
    for one in situation.theirs:
        fresh = [each for each in said_of(desk, one.player) if _is_of(each.evidence, since.notes)]
        notes = len({_note_number(each.evidence) for each in fresh})
        if notes:
            told.append(f"{counted(notes, 'new note', 'new notes')} on {one.name}")
            evidence += [each.evidence for each in fresh]
    if not told:
        return None
    source = replace(LOGGED, citation="", evidence=tuple(evidence))
    start = "Earlier today" if when == "earlier today" else f"Since {when}"
    return Reason(text=f"{start}: {', '.join(told)}", source=source)


def _is_of(evidence: EvidenceId, notes: frozenset[NoteId]) -> bool:
    return _note_number(evidence) in notes


def _note_number(evidence: EvidenceId) -> int:
    return int(evidence.split(":")[1])
