"""Logged rallies by leak: what was lost how, when in the video, and a drill for each leak."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.answers.desk import Desk
from bot.chat.answers.drills import drill_lines
from bot.chat.answers.listing import Block, show_page
from bot.chat.answers.pool_order import opponents_of, pair_words
from bot.chat.match_log import unvoided
from bot.chat.reply import Reply
from bot.chat.shown_list import Listing
from bot.chat.video_times import AT_S, UNREAD, clock_words
from bot.chat.wording import wording
from knowledge.dataclass import dataclass
from knowledge.phone_screen import MOST_LIST_LINES, wrapped
from knowledge.tactics.drills import Drill, drills
from knowledge.tactics.leaks import LeakGroup, by_leak, leak_of
from knowledge.vocabulary import Ending, Stroke
from scouting_db.values import EntryKind, MatchId, NoteId, Winner

OVERVIEW, STUDENT = "leaks", "student"
"""The two lists: for ourselves, and one to share that names nobody."""

SHOWN_TIMES = 3
ALL_TIMES = 12
LONGEST_UNREAD = 76


@dataclass(frozen=True, slots=True, kw_only=True)
class LoggedRally:
    """A rally that counts: when in the video, whose, and how it ended as far as that was told."""

    n: int
    won_by_us: bool
    at_s: int | None
    ending: Ending | None = None
    stroke: Stroke | None = None
    words: str = ""

    @property
    def leak(self) -> str:
        """Of a lost one."""
        return leak_of(ending=self.ending, stroke=self.stroke, words=self.words)


def logged_rallies(desk: Desk, match: MatchId) -> tuple[LoggedRally, ...]:
    """Every rally of the match that counts, by the video's clock and else as logged."""
    told = {row.n: row for row in desk.book.rallies(match)}
    found = []
    for entry in unvoided(desk.book.entries(match)):
        if entry.kind is not EntryKind.RALLY:
            continue
        row = told.get(entry.n)
        found.append(
            LoggedRally(
                n=entry.n,
                won_by_us=entry.won_by is Winner.US,
                at_s=(entry.detail or {}).get(AT_S),
                ending=None if row is None else row.ending,
                stroke=None if row is None else row.stroke,
                words="" if row is None else row.words or "",
            )
        )
    return tuple(sorted(found, key=lambda one: (one.at_s is None, one.at_s or 0, one.n)))


def leaks_page(
    desk: Desk,
    match: MatchId,
    page: int,
    *,
    just_kept: int | None = None,
    unread: int = 0,
    double: int = 0,
    live: int = 0,
) -> Reply:
    """A page of the list; the first one says what was just kept and what was not read."""
    rallies = logged_rallies(desk, match)
    row = desk.book.match(match)
    if row is None or not rallies:
        return Reply(text=wording("video.no_rallies"))
    groups = lost_by_leak(rallies)
    head = [_count("video.head", rallies)]
    if just_kept is not None and just_kept < len(rallies):
        head.append(wording("video.more_kept").format(count=just_kept))
    if row.their_pair is not None:
        names = pair_words(desk, opponents_of(row))
        head.append(wording("vs").format(names=names))
    if unread:
        head.append(wording("video.unread").format(count=unread))
    if double:
        head.append(wording("video.double").format(count=double))
    if live:
        head.append(wording("video.live").format(count=live))
    first = overview(head, groups)
    lost = sum(not one.won_by_us for one in rallies)
    blocks = [detail(group, lost) for group in groups]
    blocks += _unread_blocks(desk, match)
    return show_page(desk, Listing(what=OVERVIEW, of=match, page=page), blocks, first=first)


def student_page(desk: Desk, match: MatchId, page: int) -> Reply:
    """The review to share: leaks and drills only. Nothing of it comes from notes or names."""
    rallies = logged_rallies(desk, match)
    if not rallies:
        return Reply(text=wording("video.no_rallies"))
    groups = lost_by_leak(rallies)
    first = overview(
        [_count("video.student_head", rallies)], groups, tail=[wording("video.student_tail")]
    )
    lost = sum(not one.won_by_us for one in rallies)
    blocks = [detail(group, lost) for group in groups]
    return show_page(desk, Listing(what=STUDENT, of=match, page=page), blocks, first=first)


def _count(key: str, rallies: Sequence[LoggedRally]) -> str:
    won = sum(one.won_by_us for one in rallies)
    return wording(key).format(count=len(rallies), won=won, lost=len(rallies) - won)


def lost_by_leak(rallies: Sequence[LoggedRally]) -> tuple[LeakGroup[LoggedRally], ...]:
    """The lost ones, each in one group: the groups add up to all that was lost."""
    return by_leak([one for one in rallies if not one.won_by_us], lambda one: one.leak)


def overview(
    head: Block, groups: Sequence[LeakGroup[LoggedRally]], *, tail: Block = ()
) -> list[str]:
    """The head, and as many leaks with their drills as a screen holds, the largest first."""
    told = [_brief(number, group) for number, group in enumerate(groups, start=1)]
    for shown in range(len(told), 0, -1):
        rest = len(told) - shown
        left = [wording("video.more_leaks").format(count=rest)] if rest else []
        body = [line for lines in told[:shown] for line in lines]
        lines = [*head, *body, *left, *tail]
        if wrapped(lines) <= MOST_LIST_LINES:
            return lines
    return [*head, *tail]


def _brief(number: int, group: LeakGroup[LoggedRally]) -> list[str]:
    drill = drills().get(group.leak)
    times = _times(group, SHOWN_TIMES)
    line = wording("video.leak").format(
        n=number, leak=_label(drill), count=len(group.rallies), times=f" ({times})" if times else ""
    )
    return [line] if drill is None else [line, _drill_line(drill)]


def _label(drill: Drill | None) -> str:
    return wording("video.other") if drill is None else drill.leak


def _drill_line(drill: Drill) -> str:
    return wording("video.drill").format(drill=drill.drill, minutes=drill.minutes)


def _times(group: LeakGroup[LoggedRally], most: int) -> str:
    times = [clock_words(one.at_s) for one in group.rallies if one.at_s is not None]
    more = [f"+{len(times) - most}"] if len(times) > most else []
    return " ".join([*times[:most], *more])


def detail(group: LeakGroup[LoggedRally], lost: int) -> list[str]:
    """One leak in full: when it was, and its drill with reason, length, cue and caution."""
    drill = drills().get(group.leak)
    head = wording("video.leak_of").format(leak=_label(drill), count=len(group.rallies), lost=lost)
    lines = [head, *filter(None, [_times(group, ALL_TIMES)])]
    if drill is None:
        return [*lines, wording("video.other_how")]
    return [*lines, *drill_lines(drill)]


def _unread_blocks(desk: Desk, match: MatchId) -> list[list[str]]:
    """The lines that told no rally, from the notes that keep them."""
    numbers = [(entry.detail or {}).get(UNREAD) for entry in unvoided(desk.book.entries(match))]
    lines: list[str] = []
    for number in dict.fromkeys(one for one in numbers if one is not None):
        row = desk.book.note(NoteId(number))
        if row is not None and row.text.startswith(wording("video.unread_note")):
            lines += row.text.splitlines()[1:]
    shown = [[_cut(line)] for line in lines]
    return [[wording("video.unread_head").format(count=len(lines))], *shown] if lines else []


def _cut(text: str) -> str:
    return text if len(text) <= LONGEST_UNREAD else f"{text[: LONGEST_UNREAD - 1]}…"


# Which match a review is of.


def reviewed(desk: Desk) -> MatchId | None:
    """The current match if rallies of it are logged, else our pair's newest told one."""
    match = desk.context.match
    if match is not None and logged_rallies(desk, match):
        return match
    pair = desk.view.pair_id(desk.ours)
    told = () if pair is None else desk.book.newest_told(pair)
    return next((one for one in told if logged_rallies(desk, one)), None)


def review_by_leak(desk: Desk, *, for_student: bool) -> Reply:
    """The list of the newest match that rallies are logged of; a kind word where there is none."""
    match = reviewed(desk)
    if match is None:
        return Reply(text=wording("video.no_review"))
    return student_page(desk, match, 0) if for_student else leaks_page(desk, match, 0)
