"""A note put right by the next message: its claims give way to what is said instead."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers import corrections, note_rewritten, notes
from bot.chat.answers.claims_told import observed_line
from bot.chat.answers.desk import Desk
from bot.chat.answers.handed_over import hand_over
from bot.chat.answers.names import settled
from bot.chat.handed_over import handed_over
from bot.chat.names import mentions_of
from bot.chat.note_dealt_with import dealt_with_it
from bot.chat.note_done_since import done_since
from bot.chat.note_put_right import is_untrue, told_instead, wing_instead
from bot.chat.note_rivals import set_off
from bot.chat.pointed_out import opens_away
from bot.chat.private_words import is_private
from bot.chat.reply import Reply
from bot.chat.said import Claim, Mention, NoteSaid
from bot.chat.understand import understand_note
from bot.chat.whose_it_was import WhoseItWas, tells_of_exchange, whose_it_was
from bot.chat.wording import wording
from bot.chat.words import folded_line, words
from knowledge.regex import regex
from knowledge.vocabulary import TRAITS, Trait, Value, Wing
from scouting_db.values import NewObservation, NoteRow

MOST_TRAITS_TRIED = 2
"""Traits of the note before that a bare "no, she is good at it" may be said of."""

_TOO = regex(r"\b(?:too|also|as well|both|likewise)\b", re.IGNORECASE)
"""What is true of the one as well: "no, hale is slow too" takes nothing back."""


def put_right(desk: Desk, said: NoteSaid) -> Reply | None:
    """The note with what was said instead; None where it is a note of its own."""
    if not said.corrects or desk.after_note is None:
        return None
    row = desk.book.note(desk.after_note)
    if row is None or row.deleted or not row.observations:
        return None
    if said.about_body or is_private(said.text):
        return None
    if dealt_with_it(words(said.text)):
        return _seen_against(desk, row, said)
    mentions = mentions_of(said.text, desk.chat_view())
    handed = _handed_over(desk, row, said, mentions)
    if handed is not None:
        return handed
    denied = whose_it_was(said.text, words(said.text), mentions)
    if denied is not None and (reply := _of_another(desk, row, denied)) is not None:
        return reply
    if denied is not None and not denied.may_slip:
        # Of which note it is isn't known: what the one doesn't do is no claim about the other.
        return notes.take(desk, replace(said, claims=(), offered=()))
    moved = _exchanged(desk, row, said)
    if moved:
        return note_rewritten.rewrite(desk, row, moved)
    wing = wing_instead(said.text)
    if wing is not None:
        return note_rewritten.rewrite(desk, row, [_on(wing, one) for one in row.observations])
    rival = set_off(words(said.text), mentions)
    if rival is not None and row.observations[0].player not in rival.players:
        # "Hale poaches, not Ruiz" puts no note of somebody else right.
        return None
    done = _done_since(row, said, desk)
    if done:
        desk.book.add_note(said.text, chat=desk.chat.chat, parser=notes.PARSER_VERSION)
        return note_rewritten.take_out(desk, row, done)
    given = _given_to_another(row, said)
    if given:
        desk.book.add_note(said.text, chat=desk.chat.chat, parser=notes.PARSER_VERSION)
        return note_rewritten.rewrite(desk, row, given)
    told = _told(desk, row, said)
    if told:
        desk.book.add_note(said.text, chat=desk.chat.chat, parser=notes.PARSER_VERSION)
        if _holds(row, told):
            claims = observed_line(desk, row.observations)
            return Reply(text=wording("note.as_it_was").format(claims=claims))
        if not _is_of_another(row, told):
            return note_rewritten.replace_claims(desk, row, told)
        return corrections.attribute(desk, row, [told[0].player])
    if said.claims:
        return None
    kept = notes.take(desk, said)
    stands = wording("note.stands").format(claims=observed_line(desk, row.observations))
    return replace(kept, text="\n".join([kept.text, stands]))


def _handed_over(
    desk: Desk, row: NoteRow, said: NoteSaid, mentions: Sequence[Mention]
) -> Reply | None:
    """The note given to another; None where the words tell by themselves what is of whom."""
    told = handed_over(said.text, words(said.text), mentions)
    if told is None or (told.retells and any(one.denied for one in _told(desk, row, said))):
        return None
    return hand_over(desk, row, told)


def _seen_against(desk: Desk, row: NoteRow, said: NoteSaid) -> Reply:
    """A note of its own that the weakness just noted was not to be seen: both count, since both
    were seen. Of anything but a weakness the words are kept."""
    whole = (0, len(said.text))
    players = {player for one in said.mentions for player in one.players}
    against = tuple(
        Claim(
            player=one.player, trait=one.trait, value=one.value, weight=1.0, span=whole, denied=True
        )
        for one in row.observations
        if one.value is Value.WEAKNESS and not one.denied and one.player in players
    )
    return notes.take(desk, replace(said, claims=against, offered=(), kept=()))


def _of_another(desk: Desk, row: NoteRow, told: WhoseItWas) -> Reply | None:
    """The note moved over to whom it was, denied of the one: "no she doesn't, that was Dez".

    What was denied has to be what the note told of: "she never lobs, that was Dez" behind a note
    of her poaching leaves that note alone.
    """
    wrong, right = row.observations[0].player, told.right.players[0]
    if right == wrong:
        return None
    if not told.denied:
        return corrections.attribute(desk, row, [right])
    view = replace(desk.chat_view(), focus=(wrong,), replying_to_note=True)
    denied = understand_note(told.denied, chat=view)
    traits = {(one.player, one.trait) for one in (*denied.claims, *denied.offered)}
    noted = {(one.player, one.trait) for one in row.observations}
    is_denied = is_untrue(told.denied) or bool(traits & noted)
    return corrections.attribute(desk, row, [right]) if is_denied else None


def _exchanged(desk: Desk, row: NoteRow, said: NoteSaid) -> Sequence[NewObservation]:
    """What the note says of each, told of the other; nothing where more is told than that."""
    mentions = mentions_of(said.text, desk.chat_view())
    if not tells_of_exchange(words(said.text), mentions):
        return ()
    about = row.observations[0].player
    named = settled(one for one in mentions if not one.pronoun)
    pair = named or (about, *corrections.the_other(desk, (about,)))
    if len(pair) != len({*pair, about}) or len(pair) != 2:
        return ()
    other = dict([pair, pair[::-1]])
    moved = [replace(one, player=other.get(one.player, one.player)) for one in row.observations]
    stands = {(one.player, one.trait, one.value) for one in moved}
    is_told = {(one.player, one.trait, one.value) for one in notes.observations(said)} <= stands
    return moved if is_told else ()


def _given_to_another(row: NoteRow, said: NoteSaid) -> Sequence[NewObservation]:
    """The claims of a note on both, one of them given over: "hale is tired and ruiz is slow", "no,
    it's ruiz that is tired". Nothing unless all that is said now was told of the other one."""
    claims = notes.observations(said)
    players = {one.player for one in claims}
    whose = {one.player for one in row.observations}
    if len(players) != 1 or not players <= whose or len(whose) < 2 or _TOO.search(said.text):
        return ()
    told = {(one.trait, one.value, one.denied): one for one in claims}
    own = {(one.trait, one.value, one.denied) for one in row.observations if one.player in players}
    of_others = [one for one in row.observations if one.player not in players]
    moved = {(one.trait, one.value, one.denied) for one in of_others} & told.keys()
    if moved != told.keys() or own & moved:
        return ()
    return [
        replace(told[one.trait, one.value, one.denied], span=one.span)
        if one in of_others and (one.trait, one.value, one.denied) in moved
        else one
        for one in row.observations
    ]


def _told(desk: Desk, row: NoteRow, said: NoteSaid) -> Sequence[NewObservation]:
    """What it says of a trait that the note told of, or of whom it was told."""
    whose = {(one.player, one.trait) for one in row.observations}
    claims = notes.observations(said)
    offered = notes.observations(replace(said, claims=said.offered))
    for found in (claims, offered if not claims else ()):
        if any((one.player, one.trait) in whose for one in found):
            return [one for one in found if found is claims or (one.player, one.trait) in whose]
    if not claims and _is_of_another(row, offered) and _points_away(desk, row, said.text):
        return offered
    if claims:
        is_moved = _is_of_another(row, claims) and _TOO.search(said.text) is None
        return claims if is_moved else ()
    return _of_its_traits(desk, row, said.text)


def _done_since(row: NoteRow, said: NoteSaid, desk: Desk) -> Sequence[NewObservation]:
    """What the note holds for seldom and was done since: it is noted no longer."""
    line = done_since(folded_line(words(told_instead(said.text) or "")))
    if line is None:
        return ()
    found = []
    for one in row.observations:
        view = replace(desk.chat_view(), focus=(one.player,), replying_to_note=True)
        done = {(each.player, each.trait) for each in understand_note(line, chat=view).claims}
        if one.value is Value.RARELY and not one.denied and (one.player, one.trait) in done:
            found.append(one)
    return found


def _points_away(desk: Desk, row: NoteRow, text: str) -> bool:
    """Whether it opens by saying of whom the note was not: "it was not vos, it was jansen who"."""
    body = told_instead(text) or text
    mentions = mentions_of(body, desk.chat_view())
    named = [one for one in mentions if not one.pronoun]
    is_away = opens_away(words(body), mentions)
    return is_away and row.observations[0].player in named[0].players


def _on(wing: Wing, one: NewObservation) -> NewObservation:
    """The observation of the same stroke on that wing; of a trait that has no wings as it is."""
    twin = one.trait.value.replace(wing.other.value, wing.value)
    return replace(one, trait=Trait(twin)) if twin in {*Trait} else one


def _holds(row: NoteRow, told: Sequence[NewObservation]) -> bool:
    """Whether the note says all of it already, so that nothing would be changed."""
    held = {(one.player, one.trait, one.value, one.denied, one.tag) for one in row.observations}
    return {(one.player, one.trait, one.value, one.denied, one.tag) for one in told} <= held


def _is_of_another(row: NoteRow, told: Sequence[NewObservation]) -> bool:
    """ "Okafor is slow", "no, hale is slow": the same, told of somebody else."""
    was = {(one.trait, one.value, one.denied) for one in row.observations}
    players = {one.player for one in told}
    is_same = {(one.trait, one.value, one.denied) for one in told} == was
    return is_same and len(players) == 1 and not players & {one.player for one in row.observations}


def _of_its_traits(desk: Desk, row: NoteRow, text: str) -> Sequence[NewObservation]:
    """A bare judgement read as one of what the note told of: "no wait she is good at it"."""
    found = []
    for one in list({each.trait: each for each in row.observations}.values())[:MOST_TRAITS_TRIED]:
        view = replace(desk.chat_view(), focus=(one.player,), replying_to_note=True)
        said = understand_note(f"{TRAITS[one.trait].label} {told_instead(text)}", chat=view)
        found += [
            replace(each, span=None)
            for each in notes.observations(said)
            if (each.player, each.trait) == (one.player, one.trait)
        ]
    return found
