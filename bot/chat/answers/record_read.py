"""What our pair's rallies and choices say: today's, and those of the matches before."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.answers.desk import Desk
from bot.chat.answers.evidence_read import stances_known
from bot.chat.logged_aims import LoggedAims, aims_in
from bot.chat.meetings import Meetings, meetings_of, same_discipline, tally_of
from knowledge.chances import RallyTally
from knowledge.vocabulary import PlayerId, Topic
from scouting_db.values import MatchId, PairId, Part


def rallies_today(desk: Desk) -> RallyTally:
    """This match's rallies, won and lost, as far as it is known who served."""
    match = desk.context.match
    return RallyTally() if match is None else tally_of(match, desk.log().on_known_serve)


def meetings_before(desk: Desk) -> Meetings:
    """The same of our pair's other matches, against these two and against others."""
    row = desk.match_row()
    ours = row.our_pair.pair if row and row.our_pair else desk.view.pair_id(desk.ours)
    theirs = row.their_pair.players if row and row.their_pair else desk.context.theirs
    if ours is None:
        return Meetings()
    current = desk.context.match
    return desk.recall(
        ("meetings", ours, theirs, current, desk.day, desk.zone, desk.format().discipline),
        lambda: _read_meetings(desk, ours, theirs, current),
        Part.NOTES,
        Part.MATCHES,
        Part.LOG,
    )


def logged_aims(desk: Desk, topic: Topic, theirs: Sequence[PlayerId]) -> LoggedAims:
    """What we chose against that pair, oldest first, with whose rally it became."""
    our_pair, their_pair = desk.view.pair_id(desk.ours), desk.view.pair_id(theirs)
    if our_pair is None or their_pair is None:
        return LoggedAims()
    return desk.recall(
        ("aims", topic, our_pair, their_pair),
        lambda: aims_in(desk.book.choices_against(topic, ours=our_pair, theirs=their_pair)),
        Part.MATCHES,
        Part.LOG,
    )


def _read_meetings(
    desk: Desk, ours: PairId, theirs: Sequence[PlayerId], current: MatchId | None
) -> Meetings:
    logged = desk.recall(
        ("logged", ours), lambda: desk.book.logged_matches(ours), Part.MATCHES, Part.LOG
    )
    others = [one for one in logged if one.match != current]
    matches = same_discipline(others, desk.format().discipline.value)
    hands = {who: hand for who, (hand, _) in stances_known(desk).items() if hand is not None}
    memory = desk.views.memories.of(desk.book_id)
    return memory.recall(
        "meetings",
        (matches, theirs, hands, desk.day, desk.zone),
        lambda: meetings_of(
            matches,
            desk.views.tallies.of(desk.book_id, matches, desk.book.logs),
            theirs=theirs,
            hands=hands,
            today=desk.day,
            zone=desk.zone,
        ),
    )
