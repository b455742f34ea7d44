"""A match told of whose names nobody bears yet: what is played then waits for it, nothing lost."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.announcements import begins_as_match
from bot.chat.answers.claims_told import cut
from bot.chat.answers.desk import Desk
from bot.chat.names import find_mentions, index_of
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import (
    Certainty,
    MatchMoved,
    MatchSaid,
    RallySaid,
    ResultSaid,
    ScoreSaid,
    ServerSaid,
    StarterSaid,
    Understood,
)
from bot.chat.wording import wording
from bot.chat.words import words
from scouting_db.sounds import fold

MOST_HELD = 60
"""Messages kept for a match that waits: more than a game has rallies. Our own bound."""

_OF_PLAY = (RallySaid, ResultSaid, ScoreSaid, ServerSaid, StarterSaid)


def waiting(desk: Desk) -> Pending | None:
    """The match told of last, while its names wait to be settled."""
    return next((one for one in reversed(desk.context.pendings) if one.announces), None)


def match_naming(desk: Desk, typed: str) -> Pending | None:
    """The match told of last whose two wait to be added, where that is one of them."""
    pending = waiting(desk)
    return None if pending is None or awaited_in_full(desk, typed) is None else pending


def awaited_in_full(desk: Desk, typed: str) -> str | None:
    """The name in full of one of the two whom a match waits for: "Maren" of "next: Maren Holt and
    Sieglinde" is nobody else. None for anybody who is not, or may be either."""
    pending = waiting(desk)
    if pending is None or not pending.also or pending.candidates:
        return None
    part = set(fold(typed).split())
    names = [one for one in (pending.typed, *pending.also) if part <= set(fold(one).split())]
    return names[0] if part and len(names) == 1 else None


def held_for_announced(desk: Desk, understood: Understood) -> Reply | None:
    """The names first, where play is told of the match that waits for them; it is kept for then.

    None where nothing waits, while another match is being played, or for a result against others.
    """
    pending = waiting(desk)
    if pending is None or not (_is_moved(understood) or isinstance(understood, _OF_PLAY)):
        return None
    if isinstance(understood, _OF_PLAY) and desk.context.match is not None and desk.log().is_begun:
        return None
    names_others = isinstance(understood, ResultSaid | MatchMoved) and _is_of_others(
        desk, understood, pending
    )
    if names_others:
        return None
    if "held" not in desk.trace:
        hold(desk, pending, understood.text)
        desk.trace |= {"held": pending.number}
    first = announced_first(desk)
    assert first is not None, "the match still waits"
    return replace(first, text="\n".join([first.text, wording("match.held")]))


def _is_moved(understood: Understood) -> bool:
    """Whether it tells when or where alone: of the match told of last, though others are known."""
    if isinstance(understood, MatchMoved):
        return True
    is_match = isinstance(understood, MatchSaid) and not understood.mentions
    return is_match and not begins_as_match(words(understood.text))


def _is_of_others(desk: Desk, told: ResultSaid | MatchMoved, pending: Pending) -> bool:
    """Whether it names somebody who is neither one of us nor named in the match that waits."""
    awaited = {
        player
        for one in find_mentions(words(pending.text), desk.chat_view())
        for player in one.players
    }
    return any(
        one.certainty is Certainty.SURE and not set(one.players) <= {*desk.ours, *awaited}
        for one in told.mentions
    )


def held_taken_back(desk: Desk) -> Reply | None:
    """The last of what was kept is dropped; with nothing kept, the match asked about just now."""
    pending = waiting(desk)
    if pending is None or not (pending.then or desk.context.asks_who == pending.number):
        return None
    if pending.then:
        *kept, last = pending.then
        desk.context = desk.context.with_kept(replace(pending, then=tuple(kept)))
        return Reply(text=wording("undone").format(what=f"“{cut(last)}”"))
    desk.context = desk.context.without_pending(pending.number)
    return Reply(text=wording("undone").format(what=wording("match.announcement")))


def hold(desk: Desk, pending: Pending, *told: str) -> None:
    """Keep what was told until the match is announced."""
    kept = replace(pending, then=(*pending.then, *told)[-MOST_HELD:])
    desk.context = desk.context.with_kept(kept)


def announced_first(desk: Desk) -> Reply | None:
    """Whose names the match to come waits for, with the taps once more; None where none waits."""
    pending = waiting(desk)
    if pending is None:
        return None
    unknown = [name for name in (pending.typed, *pending.also) if not _is_in_book(desk, name)]
    names = " and ".join(unknown or [pending.typed])
    buttons = [
        Button(label=desk.view.name_of(player), payload=tap(Verb.WHO, pending.number, player))
        for player in pending.candidates
    ]
    add = Button(
        label=wording("name.add").format(typed=names), payload=tap(Verb.ADD, pending.number)
    )
    key = "match.which_first" if buttons else "match.add_first"
    return Reply(text=wording(key).format(typed=names), buttons=rows([*buttons, add]))


def match_told_first(desk: Desk, typed: str, number: int) -> Reply | None:
    """The same, where what was just told is of somebody named by that match: "maren", of "next:
    maren holt and sieglinde". A yes adds all of them, and whatever waits is then read; the note,
    which waits under `number`, adds them alone only by their whole name.
    """
    pending = waiting(desk)
    told = fold(typed).split()
    names = [] if pending is None else [fold(one) for one in (pending.typed, *pending.also)]
    if pending is None or not any(set(told) <= set(name.split()) for name in names):
        return None
    first = announced_first(desk)
    assert first is not None, "the match still waits"
    desk.context = replace(desk.context, asks_who=pending.number)
    add = Button(label=wording("name.add").format(typed=typed), payload=tap(Verb.ADD, number))
    alone = rows([add]) if pending.also and " ".join(told) in names else ()
    text = "\n".join([first.text, wording("name.kept_unread")])
    return replace(first, text=text, buttons=(*first.buttons, *alone))


def _is_in_book(desk: Desk, name: str) -> bool:
    return index_of(desk.chat_view()).has(name)
