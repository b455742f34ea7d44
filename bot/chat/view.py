"""What understanding may know of a chat: who is on the roster and what was spoken of last."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.game import GameFormat
from knowledge.vocabulary import PlayerId, Topic
from scouting_db.values import PlayerRow


@dataclass(frozen=True, slots=True, kw_only=True)
class ChatView:
    """The chat as understanding sees it. `version` is the roster's: equal means same roster.

    `focus` holds whom "him", "her" and "they" mean, most recent first; `called` are those spoken of
    as he or as she. `replying_to_note` says
    that the message answers one of our messages about a note. `tells_of_rally`: words may be
    about the rally just counted. `pool_on`: a pool is on in this chat; `listing`: a list was
    shown last, so that "more" is its next page; `notes_listed`: it was somebody's notes;
    `notes_shown`: so many of them, the second of which may be told to go, as may be what we asked
    about (`asks_what_goes`);
    `card_open`: a scout card waits for a tap, so that "done" ends it; `asks_serve`: we asked who
    serves, so that "they do" answers it; `hurt`: the
    last question told of a body that hurts; `over_format`: how the match is played whose result,
    or one game's, was told last, until another begins; `noted`: the last message was a note;
    `asked_last`: a question was answered, and nothing was told since. `own_pairs`: those that a
    coach who writes speaks for, `draws` which of them plays womens, mens or mixed.
    `windy`: a wind was told that blows still.
    """

    book: int
    version: int
    roster: tuple[PlayerRow, ...]
    ours: tuple[PlayerId, ...] = ()
    theirs: tuple[PlayerId, ...] = ()
    focus: tuple[PlayerId, ...] = ()
    asker: PlayerId | None = None
    called: tuple[tuple[PlayerId, str], ...] = ()
    match_on: bool = False
    match_awaited: bool = False
    format: GameFormat = GameFormat()
    last_topic: Topic | None = None
    forwarded: bool = False
    replying_to_note: bool = False
    tells_of_rally: bool = True
    pool_on: bool = False
    listing: bool = False
    notes_listed: bool = False
    notes_shown: int = 0
    asks_what_goes: bool = False
    card_open: bool = False
    asks_serve: bool = False
    hurt: bool = False
    over_format: GameFormat | None = None
    noted: bool = False
    asked_last: bool = False
    own_pairs: tuple[tuple[PlayerId, PlayerId], ...] = ()
    draws: tuple[tuple[str, tuple[PlayerId, PlayerId]], ...] = ()
    windy: bool = False


def names_of_ours(chat: ChatView) -> list[str]:
    """What the two of us are called."""
    return [row.name for row in chat.roster if row.player in chat.ours]


def names_of_theirs(chat: ChatView) -> list[str]:
    """What the two across the net are called."""
    return [row.name for row in chat.roster if row.player in chat.theirs]
