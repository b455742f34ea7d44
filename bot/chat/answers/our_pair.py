"""Who the two of us are, as told in this chat, and who of us writes as far as that tells it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.chat.announcements import begins_as_match
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.names import ask_which
from bot.chat.answers.newcomers import capitalised
from bot.chat.answers.pair_of_match import played_by
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.said import BookSaid, Certainty, Mention
from bot.chat.wording import wording
from bot.chat.words import words
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId

PAIR = 2

_BETWEEN_NAMES = regex(r"\s*(?:,|&|\+|/|\band\b|\bn\b|\bwith\b)\s*", re.IGNORECASE)


def our_pair(desk: Desk, said: BookSaid) -> Reply:
    """ "We are Mira and Tom": unknown names are added as ours, alike ones asked about.

    A partner told alone plays with whoever writes, if that is known.
    """
    if not said.words:
        return Reply(text="\n".join([wording("book.ask_pair"), wording("book.ask_coach")]))
    named = [part for part in _BETWEEN_NAMES.split(said.words.strip(" .!")) if part]
    found = [_mention_in(part, said) for part in named]
    me = desk.asker or _usual_partner(desk, found[0]) if len(named) == 1 else None
    if len(named) == 1 and me is None:
        return _partner_alone(desk, said, named[0])
    if len(named) != PAIR and me is None:
        return Reply(text=wording("book.ask_pair"))
    alike = [one for one in found if one and one.certainty is Certainty.AMBIGUOUS]
    if alike:
        return ask_which(desk, said.text, alike)
    before, were_ours, wrote = desk.context, desk.ours, desk.asker
    told = [
        one.players[0]
        if one is not None and one.certainty is Certainty.SURE
        else desk.book.add_player(capitalised(part), ours=True)
        for one, part in zip(found, named, strict=True)
    ]
    players = [*(told if me is None else (me, *told))]
    if players[0] == players[1]:
        return Reply(text=wording("book.ask_pair"))
    for player in players:
        desk.book.set_ours(player, ours=True)
    pair = desk.book.pair_of(players[0], players[1])
    # Told with the next announcement, it is that match's pair and not of the one before it.
    announces = begins_as_match(words(said.text))
    match = {} if announces else played_by(desk, pair, players)
    also = _also_plays_with(desk, said, players[0])
    change = desk.record("context", {}, {"context": before.to_json(), **match})
    desk.changed()
    theirs = tuple(player for player in before.theirs if player not in players)
    left = {*were_ours} - {*players}
    focus = tuple(player for player in before.focus if player not in left)
    desk.context = replace(before, ours=(players[0], players[1]), theirs=theirs, focus=focus)
    beside = _beside_the_partner(players, were_ours, wrote)
    desk.knows_writer(players[0] if said.tells_writer else beside)
    lines = [wording("book.our_pair").format(names=" and ".join(desk.names(players)))]
    if also is not None:
        one, other = desk.names((players[0], also))
        lines.append(wording("book.other_pair").format(one=one, other=other))
    return Reply(text="\n".join(lines), buttons=rows([undo_button(change)]))


def _also_plays_with(desk: Desk, said: BookSaid, me: PlayerId) -> PlayerId | None:
    """The partner of another event: ours from now on, and of a pair that a word brings back."""
    if not said.also:
        return None
    known = _mention_in(said.also, said)
    is_known = known is not None and known.certainty is Certainty.SURE
    other = (
        known.players[0]
        if known is not None and is_known
        else desk.book.add_player(capitalised(said.also), ours=True)
    )
    desk.book.set_ours(other, ours=True)
    if other != me:
        desk.book.pair_of(me, other)
    return other


def _usual_partner(desk: Desk, named: Mention | None) -> PlayerId | None:
    """Who of us plays with them by the book: it knows one such pair and no other."""
    if named is None or named.certainty is not Certainty.SURE:
        return None
    known = [one for one in desk.ours if desk.view.pair_id((one, named.players[0])) is not None]
    return known[0] if len(known) == 1 else None


def _beside_the_partner(
    players: Sequence[PlayerId], were_ours: Sequence[PlayerId], wrote: PlayerId | None
) -> PlayerId | None:
    """Who writes, by the partner told before: "oriane is my partner", then "we are dee and oriane".

    So it is where whoever wrote till now is not of the pair any more, and the partner is.
    """
    stay = [player for player in players if player in were_ours]
    if len(stay) != 1 or wrote in players or (len(were_ours) == PAIR and wrote not in were_ours):
        return None
    return next(player for player in players if player not in stay)


def _partner_alone(desk: Desk, said: BookSaid, name: str) -> Reply:
    """The partner is ours from now on, so that what is told of them finds them; who writes is
    asked."""
    known = _mention_in(name, said)
    if known is not None and known.certainty is Certainty.AMBIGUOUS:
        return ask_which(desk, said.text, [known])
    before = desk.context
    is_known = known is not None and known.certainty is Certainty.SURE
    partner = (
        known.players[0]
        if known is not None and is_known
        else desk.book.add_player(capitalised(name), ours=True)
    )
    desk.book.set_ours(partner, ours=True)
    change = desk.record("context", {}, {"context": before.to_json()})
    desk.changed()
    desk.context = before.looking_at(partner)
    text = wording("book.ask_you").format(partner=desk.view.name_of(partner))
    return Reply(text=text, buttons=rows([undo_button(change)]))


def _mention_in(part: str, said: BookSaid) -> Mention | None:
    """The name that the words are, if the book knows them."""
    folded = part.lower()
    return next((one for one in said.mentions if one.typed.lower() == folded), None)
