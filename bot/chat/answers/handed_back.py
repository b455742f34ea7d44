"""Words that are not for the book: handed back with what is first to be done, and not stored."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.of_bodies import tells_of_hurt
from bot.chat.meant_to_do import is_our_plan
from bot.chat.private_words import is_private, playing_part, playing_spans
from bot.chat.reply import Reply
from bot.chat.said import AgreementSaid, DetailSaid, NoteSaid, RallySaid, Understood
from bot.chat.understand import understand_note
from bot.chat.wording import wording
from bot.chat.words import words
from knowledge.complaints import complains_of_us
from knowledge.vocabulary import PlayerId
from scouting_db.names import fold

ABOUT = ("handed_back", 0)
"""What such a reply is about: its text is gone from the outbox once it is sent."""


def handed_back(desk: Desk, text: str) -> Reply:
    """The text as typed, which stays nowhere here once this is sent."""
    blank(desk)
    return Reply(text="\n".join((wording("note.body"), text)), about=ABOUT)


def blank(desk: Desk) -> None:
    """The words as they came in are gone with this turn."""
    if desk.people is not None:
        desk.people.blank_row(desk.inbox)


def kept_of(desk: Desk, said: NoteSaid) -> NoteSaid | None:
    """The part of the note about play, where it stands alone and names its player; else None."""
    told = _with_names(desk, said)
    if not told:
        return None
    part = ", ".join(each for each, _ in told)
    read = understand_note(part, chat=desk.chat_view())
    names_all = all(one.certainty == "sure" for one in (*said.mentions, *read.mentions))
    says = (*read.claims, *read.offered)
    is_whole = bool(read.mentions) and names_all and bool(says) and not is_private(part)
    meant = {player for _, players in told for player in players}
    is_theirs = not meant or all(one.player in meant for one in says)
    return read if is_whole and is_theirs else None


def _with_names(desk: Desk, said: NoteSaid) -> list[tuple[str, tuple[PlayerId, ...]]]:
    """The parts about play, each with the names it leans on, and whom it is about; no bare name.

    Who is "he" is known of the whole alone: the name may stand in what goes. What we would do
    about a body ("so lets lob her") says nothing of how they play.
    """
    named = {one.players for one in said.mentions if not one.pronoun}
    told: list[tuple[str, tuple[PlayerId, ...]]] = []
    last: tuple[PlayerId, ...] = ()
    for start, stop in playing_spans(said.text):
        part = said.text[start:stop]
        about = _about(said, start, stop)
        inside = [one for one in said.mentions if start <= one.span[0] < stop]
        if part in {one.typed for one in inside} or is_our_plan(part):
            continue
        names_them = bool(inside) and not inside[0].pronoun
        if about != last and not names_them and named & {(one,) for one in about}:
            part = f"{' and '.join(desk.view.short_name(one) for one in about)}: {part}"
        told.append((part, about))
        last = about
    return told


def _about(said: NoteSaid, start: int, stop: int) -> tuple[PlayerId, ...]:
    """Whom the characters are about: whoever is named first there, else last before, else next."""
    inside = [one for one in said.mentions if start <= one.span[0] < stop]
    before = [one for one in said.mentions if one.span[0] < start]
    first = next(iter([*inside, *before[:-2:-1], *said.mentions]), None)
    if first is None:
        return ()
    together = [one for one in said.mentions if one.span == first.span]
    return tuple(dict.fromkeys(player for one in together for player in one.players))


def of_play(understood: Understood) -> Understood:
    """The same with only its words about play: those of a rally or an agreement are stored too."""
    match understood:
        case RallySaid() | DetailSaid() if is_private(understood.text):
            return replace(understood, text=playing_part(understood.text))
        case AgreementSaid() if is_private(understood.text):
            return replace(understood, text=playing_part(understood.text), value=understood.key)
    return understood


def forget_private(desk: Desk, text: str) -> None:
    """Whatever the message was understood as: no private words of it stay in the database.

    A complaint of our own stays as the chat's last question, until the next one: what hurts may
    be asked about further. Of another's only that somebody hurts.
    """
    if not is_private(text):
        return
    blank(desk)
    if _is_of_us(desk, text):
        return
    context = desk.context
    asked = context.asked
    if asked is not None and is_private(asked.text):
        part = playing_part(asked.text)
        asked = replace(asked, text=part or (_SOMEBODY_HURTS if tells_of_hurt(asked) else ""))
    pendings = tuple(one for one in context.pendings if not is_private(one.text))
    desk.context = replace(context, asked=asked, pendings=pendings)


_SOMEBODY_HURTS = "somebody is hurt"
"""What stays of it, so that "can he play on" is still about a body: neither who nor what."""


def _is_of_us(desk: Desk, text: str) -> bool:
    """Whether one of us hurts, and no opponent is named beside."""
    ours = [desk.view.name_of(one).split()[0] for one in desk.ours]
    others = {
        part
        for row in desk.view.roster
        if row.player not in desk.ours
        for part in fold(row.name).split()
    }
    names_others = not others.isdisjoint(word.folded for word in words(text))
    return not names_others and complains_of_us(text, names=ours)
