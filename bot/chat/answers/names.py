"""Names in a message: settled, alike (asked about), or nobody's (nearest offered, or added)."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from bot.chat.answers.announced_first import match_naming, match_told_first
from bot.chat.answers.desk import Desk
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import Certainty, Mention
from bot.chat.told_by_looks import points_across_the_net
from bot.chat.wording import wording
from bot.chat.words import words
from knowledge.vocabulary import PlayerId

OFFERED_NAMES = 4
_OR = " or "
"""In what was typed of one of two: "hale or was it ruiz"."""

OFFERED_INSTEAD = 2
"""Others under an answer about the likeliest: it was not asked."""


def settled(mentions: Iterable[Mention]) -> tuple[PlayerId, ...] | None:
    """The players meant, in order and once each; None if any name is not settled."""
    found: list[PlayerId] = []
    for mention in mentions:
        if mention.certainty is not Certainty.SURE:
            return None
        found += [player for player in mention.players if player not in found]
    return tuple(found)


def by_pair(desk: Desk, mentions: Iterable[Mention]) -> tuple[Mention, ...]:
    """Alike names told apart by the other name: "ruiz and hale" means the Ruiz who plays with Hale.

    Only where the book knows exactly one such pair; the reply names both in full.
    """
    named = tuple(mentions)
    sure = {one.players[0] for one in named if one.certainty is Certainty.SURE}
    partners = {partner for player in sure if (partner := desk.view.partner_of(player)) is not None}
    return tuple(_narrowed(one, partners) for one in named)


def _narrowed(mention: Mention, partners: set[PlayerId]) -> Mention:
    fitting = [player for player in mention.players if player in partners]
    if mention.certainty is Certainty.AMBIGUOUS and len(fitting) == 1:
        return replace(mention, certainty=Certainty.SURE, players=tuple(fitting))
    return mention


def unsettled(mentions: Iterable[Mention]) -> Mention | None:
    """The first name that is not settled."""
    return next((one for one in mentions if one.certainty is not Certainty.SURE), None)


def ask_which(
    desk: Desk,
    text: str,
    mentions: Iterable[Mention],
    *,
    note: int | None = None,
    announces: bool = False,
) -> Reply:
    """Ask who is meant by the first unsettled name; the message is taken up again after the tap.

    `announces`: the message is the match to come, which what is played then waits for.
    """
    mentions = tuple(mentions)
    mention = unsettled(mentions)
    assert mention is not None, "ask_which is called with an unsettled name"
    number = desk.context.pending_count + 1
    new = _new_beside(mention, mentions)
    desk.context = desk.context.with_pending(
        Pending(
            number=number,
            typed=mention.typed,
            text=text,
            candidates=mention.players[:OFFERED_NAMES],
            note=note,
            also=new,
            announces=announces,
        )
    )
    buttons = [
        Button(label=desk.view.name_of(player), payload=tap(Verb.WHO, number, player))
        for player in mention.players[:OFFERED_NAMES]
    ]
    if mention.certainty is Certainty.AMBIGUOUS:
        key = "name.which_of_two" if _OR in mention.typed else "name.which"
        return Reply(text=wording(key).format(typed=mention.typed), buttons=rows(buttons))
    if note is not None and (first := match_told_first(desk, mention.typed, number)) is not None:
        return first
    awaited = None if announces or mention.players else match_naming(desk, mention.typed)
    told = (mention.typed, *new) if awaited is None else (awaited.typed, *awaited.also)
    typed = " and ".join(told)
    add = Button(label=wording("name.add").format(typed=typed), payload=tap(Verb.ADD, number))
    lines = [wording("name.nobody").format(typed=typed)]
    if note is not None:
        lines.append(wording("name.kept_unread"))
    if buttons:
        lines.append(wording("name.near").format(typed=mention.typed))
    return Reply(text="\n".join(lines), buttons=rows([*buttons, add]))


def rather_meant(
    desk: Desk, text: str, mentions: Iterable[Mention], *, note: int | None = None
) -> list[Button]:
    """Taps for whom a name fits too, where the likeliest was taken: the message is then taken up
    again. They ask nothing, so that whatever is typed next is not read as their answer."""
    mention = next((one for one in mentions if one.rather), None)
    if mention is None:
        return []
    others = mention.rather[:OFFERED_INSTEAD]
    number = desk.context.pending_count + 1
    return rather_one_of(
        desk, Pending(number=number, typed=mention.typed, text=text, candidates=others, note=note)
    )


def rather_one_of(desk: Desk, pending: Pending) -> list[Button]:
    """A tap for each of its candidates. It is kept, and asks nothing."""
    desk.context = replace(desk.context.with_pending(pending), asks_who=desk.context.asks_who)
    return [
        Button(
            label=wording("name.rather").format(name=desk.view.name_of(player)),
            payload=tap(Verb.WHO, pending.number, player),
        )
        for player in pending.candidates
    ]


def _new_beside(mention: Mention, mentions: Iterable[Mention]) -> tuple[str, ...]:
    """Other names that nobody bears or nearly bears: one tap adds a whole new pair."""
    if mention.certainty is not Certainty.NOBODY or mention.players:
        return ()
    new = (one for one in mentions if one.certainty is Certainty.NOBODY and not one.players)
    return tuple(dict.fromkeys(one.typed for one in new if one.typed != mention.typed))


def ask_whose(desk: Desk, text: str, note: int) -> Reply:
    """A note about nobody: its words are kept, and whose it is comes by a tap or a reply."""
    number = desk.context.pending_count + 1
    near = dict.fromkeys((*desk.context.focus, *desk.context.theirs))
    are_ours = {*desk.ours} if points_across_the_net(words(text)) else set[PlayerId]()
    likely = tuple(player for player in near if player not in are_ours)[:OFFERED_NAMES]
    desk.context = desk.context.with_pending(
        Pending(number=number, typed="", text=text, candidates=likely, note=note)
    )
    buttons = [
        Button(label=desk.view.name_of(player), payload=tap(Verb.WHO, number, player))
        for player in likely
    ]
    lines = [wording("name.kept_unread"), wording("name.who_is")]
    return Reply(text=" ".join(lines), buttons=rows(buttons), about=("note", note))
