"""Lines of a video read one by one: rallies with who won them and how, and what is none."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.names import by_pair, settled
from bot.chat.forms import word_set
from bot.chat.names import mentions_of
from bot.chat.said import Certainty, RallySaid, VideoLine, VideoSaid
from bot.chat.settled_forms import rally_told
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId

LONGEST_LINE = 160
"""Characters of a line that may tell a rally: what is longer is a story, and costs a look."""

PAIR = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadLine:
    """A line with the rally it tells; None where it tells none."""

    line: VideoLine
    rally: RallySaid | None


def read_lines(said: VideoSaid, view: ChatView) -> tuple[ReadLine, ...]:
    """Every line by itself; the same words are looked at once."""
    known: dict[str, RallySaid | None] = {}
    found = []
    for line in said.lines:
        if line.words not in known:
            known[line.words] = _rally(line.words, view)
        found.append(ReadLine(line=line, rally=known[line.words]))
    return tuple(found)


def _rally(line: str, view: ChatView) -> RallySaid | None:
    if not line or len(line) > LONGEST_LINE or _says_nothing(line, view):
        return None
    return rally_told(line, view)


def _says_nothing(line: str, view: ChatView) -> bool:
    """Only a name and small words, "lol tom": whose rally it was is not said by that."""
    spans = [one.span for one in mentions_of(line, view) if not one.pronoun]
    if not spans:
        return False
    rest = [
        word.folded
        for word in words(line)
        if not any(start <= word.span[0] < stop for start, stop in spans)
    ]
    return all(word in word_set("pool_filling") for word in rest)


def opponents_in(desk: Desk, said: VideoSaid) -> tuple[PlayerId, ...] | None:
    """Whom the video is of: named above the lines, else the match's pair, else the most named.

    None where a name above them may be several people's.
    """
    mentions = by_pair(desk, said.mentions)
    if any(one.certainty is Certainty.AMBIGUOUS for one in mentions):
        return None
    named = settled([one for one in mentions if one.certainty is Certainty.SURE]) or ()
    theirs = tuple(player for player in named if player not in desk.ours)
    if theirs:
        return with_partner(desk, theirs)
    return desk.context.theirs or with_partner(desk, _most_named(desk, said.lines))


def with_partner(desk: Desk, theirs: tuple[PlayerId, ...]) -> tuple[PlayerId, ...]:
    partner = desk.view.partner_of(theirs[0]) if len(theirs) == 1 else None
    return theirs[:PAIR] if partner is None else (*theirs, partner)


MOST_LINES_FOR_NAMES = 40
"""Lines looked at for who the opponents are: they are named early if at all."""


def _most_named(desk: Desk, lines: Sequence[VideoLine]) -> tuple[PlayerId, ...]:
    view = replace(desk.chat_view(), theirs=())
    counts = Counter(
        one.players[0]
        for line in lines[:MOST_LINES_FOR_NAMES]
        for one in mentions_of(line.words[:LONGEST_LINE], view)
        if one.certainty is Certainty.SURE and not one.pronoun and one.players[0] not in desk.ours
    )
    return tuple(player for player, _ in counts.most_common(PAIR))
