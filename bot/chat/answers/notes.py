"""Notes: the words stored whole, what was understood shown in one line, and a way back."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import Any

from bot.chat.answers.claims_told import claim_words, claims_line, cut
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.handed_back import blank, handed_back, kept_of
from bot.chat.answers.names import ask_which, ask_whose, rather_meant, unsettled
from bot.chat.answers.note_clashes import Clash, clashes, drop_buttons
from bot.chat.answers.places_in_note import placed_in
from bot.chat.answers.scoreboard import score_text
from bot.chat.answers.writer_asked import ask_writer
from bot.chat.asked import Asked
from bot.chat.context import Depth
from bot.chat.note_manner import is_told_unsure
from bot.chat.payload import Verb, tap
from bot.chat.private_words import is_of_a_body, is_private
from bot.chat.render import offer_buttons as topic_buttons
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import Claim, NoteSaid
from bot.chat.wording import wording
from knowledge.cautions import DEFERS, is_emergency
from knowledge.complaints import complains
from knowledge.tactics.weather import first_care
from knowledge.vocabulary import PlayerId, Seen, Tag, Topic, Trait, Value
from scouting_db.values import ChangeId, NewObservation, NoteId

PARSER_VERSION = 1
"""Raised when notes are read better; older parsed observations can then be read again."""

OFFERED = "tapped"
"""The origin of an observation that was offered and taken up by a tap."""

SHORTEST_SHOWN = 6
"""Characters of kept words worth showing: shorter leftovers of a read clause tell nothing."""


def take(desk: Desk, said: NoteSaid) -> Reply:
    """Store the note. An unsettled name is asked about after the words are safe."""
    if not said.about_body and not is_private(said.text):
        return _kept(desk, said)
    part = kept_of(desk, said)
    if part is None:
        return _about_body(desk, said)
    blank(desk)
    reply = _kept(desk, part)
    lines = [reply.text, wording("note.only_play")]
    return replace(reply, text="\n".join([*lines, *(_care(desk, said) if _hurts(said) else ())]))


def _hurts(said: NoteSaid) -> bool:
    """Whether it tells of a body, and not of a private life alone."""
    return complains(said.text) or is_of_a_body(said.text)


def _kept(desk: Desk, said: NoteSaid) -> Reply:
    open_name = unsettled(said.mentions)
    note = desk.book.add_note(
        said.text,
        observations(said),
        parser=PARSER_VERSION,
        chat=desk.chat.chat,
        external_message_id=desk.incoming.external_message_id,
        unread=open_name is not None,
    )
    is_whole = open_name is None and bool(said.mentions)
    kept = offered_with(said) if is_whole else {}
    change = desk.record("add_note", {"note": note, **kept}, {})
    desk.changed()
    desk.trace |= {"claims": said.claims, "note": note}
    desk.noted = said.claims
    if open_name is not None:
        return ask_which(desk, said.text, said.mentions, note=note)
    if said.by_writer:
        return ask_writer(desk, said.text, note)
    if not (said.mentions or said.is_of_others):
        return ask_whose(desk, said.text, note)
    return _confirmed(desk, said, note, change)


def _about_body(desk: Desk, said: NoteSaid) -> Reply:
    """Words about a body are handed back, not kept; what to do first and who decides lead.

    Whom they named is still whom "she" means next, and nobody noted before.
    """
    named = [player for one in said.mentions if not one.pronoun for player in one.players]
    desk.context = desk.context.looking_at(*dict.fromkeys(named))
    reply = handed_back(desk, said.text)
    if not _hurts(said):
        return reply
    return replace(
        reply,
        text="\n".join([*_care(desk, said), reply.text]),
        buttons=rows(topic_buttons(tuple(dict.fromkeys((Topic.WEATHER_OR_BODY, *said.may_ask))))),
    )


def _care(desk: Desk, said: NoteSaid) -> tuple[str, ...]:
    """The call of a complaint, its caution, and that medical staff decide.

    Of opponents only the last: nobody here treats them.
    """
    named = [player for one in said.mentions if not one.pronoun for player in one.players]
    if named and not set(named) & set(desk.ours) and not is_emergency(said.text):
        return (DEFERS,)
    # So that the button offered answers these words, not an empty question.
    asked = Asked(topic=Topic.WEATHER_OR_BODY, text=said.text)
    desk.context = replace(desk.context, asked=asked, told=Depth.SHORT)
    call, caution = first_care(said.text)
    return (call, *dict.fromkeys((caution, DEFERS)))


def read_again(desk: Desk, note: NoteId, said: NoteSaid, *, origin: str) -> Reply:
    """New observations for a note that stands: a name was settled, or its words were edited."""
    before = desk.book.note(note)
    placed = said if before is None else placed_in(before.text, said)
    read = observations(placed)
    desk.book.replace_observations(note, read, origin=origin, parser=PARSER_VERSION)
    change = desk.record(
        "read_note",
        {"note": note, "after": stored(read), **offered_with(placed)},
        {"observations": stored(before.observations if before else ())},
    )
    desk.changed()
    desk.trace |= {"claims": said.claims, "note": note}
    reply = _confirmed(desk, said, note, change)
    if unsettled(said.mentions) is None:
        return reply
    asked = ask_which(desk, said.text, said.mentions, note=note)
    return replace(
        reply,
        text="\n".join([reply.text, asked.text]),
        buttons=(*asked.buttons, *reply.buttons),
    )


def observations(said: NoteSaid) -> tuple[NewObservation, ...]:
    """What a note's claims become in the book."""
    return tuple(_observation(claim, said.seen) for claim in said.claims)


def _observation(claim: Claim, seen: Seen) -> NewObservation:
    return NewObservation(
        player=claim.player,
        trait=claim.trait,
        value=claim.value,
        weight=claim.weight,
        seen=seen,
        denied=claim.denied,
        tag=claim.tag,
        span=claim.span,
    )


def offered_with(said: NoteSaid) -> dict[str, Any]:
    """What the change that reads a note keeps of its offers, for when one is taken up.

    `read` is what the note says without them, so that no offer outlives its reading.
    """
    if not said.offered:
        return {}
    offered = [_observation(claim, said.seen) for claim in said.offered]
    everybody = {player for mention in said.mentions for player in mention.players}
    everybody |= {claim.player for claim in (*said.claims, *said.offered)}
    return {
        "read": stored(observations(said)),
        "offered": stored([replace(one, origin=OFFERED) for one in offered]),
        "several": len(everybody) > 1,
    }


def _confirmed(desk: Desk, said: NoteSaid, note: NoteId, change: ChangeId) -> Reply:
    players = [player for mention in said.mentions for player in mention.players]
    looking = desk.context.looking_at(*dict.fromkeys(players))
    desk.context = replace(looking, noted=note)
    lines = []
    if said.claims:
        lines.append(wording("note.understood").format(claims=claims_line(desk, said.claims)))
    kept = [words for words in said.kept if len(words) >= SHORTEST_SHOWN]
    if kept and said.claims:
        lines.append(wording("note.words_only").format(words=cut(", ".join(kept))))
    if not (said.claims or said.is_of_others):
        lines.append(wording("note.tap_which" if said.offered else "note.all_words"))
    if said.seen is Seen.HEARSAY:
        lines.append(wording("note.heard"))
    elif is_told_unsure(said.text, [one.weight for one in said.claims]):
        lines.append(wording("note.hedged"))
    if said.is_of_others:
        lines.append(_not_counted(desk))
    clashing = tuple(clashes(desk, said.claims, note))
    lines += [clash_line(each) for each in clashing]
    buttons = [undo_button(change)]
    buttons += [button for each in clashing for button in drop_buttons(desk, each)]
    buttons += [*offer_buttons(desk, change, offered_with(said))]
    buttons += rather_meant(desk, said.text, said.mentions, note=note)
    buttons += topic_buttons(said.may_ask)
    return Reply(text="\n".join(lines), buttons=rows(buttons), about=("note", note))


def _not_counted(desk: Desk) -> str:
    """That its points are another match's, and how ours stands."""
    log = desk.log()
    if desk.context.match is None or not log.is_begun:
        return wording("note.of_others")
    return wording("note.of_others_yours").format(score=score_text(desk, log))


def clash_line(clash: Clash) -> str:
    """The book has both: what else it says, and which of the two counts."""
    other = clash.told[-1]
    told = claim_words(replace(clash.claim, value=other.value, denied=other.denied, tag=other.tag))
    counted = clash.counts
    if counted is None:
        return wording("note.clash_open").format(told=told)
    counts = claim_words(replace(clash.claim, value=counted, denied=False, tag=None))
    return wording("note.clash").format(told=told, counts=counts)


def offer_buttons(
    desk: Desk, change: ChangeId, kept: Mapping[str, Any], *, but: Collection[int] = ()
) -> list[Button]:
    """Each offer that a reading kept as a question: "lob often?"; none of the numbers `but`."""
    return [
        Button(
            label=_offer_label(desk, observation_of(plain), named=kept["several"]),
            payload=tap(Verb.CLAIM, change, number),
        )
        for number, plain in enumerate(kept.get("offered", ()), start=1)
        if number not in but
    ]


def _offer_label(desk: Desk, one: NewObservation, *, named: bool) -> str:
    """Without its condition, for a label must be short; the reply to the tap says it."""
    words = claim_words(replace(one, tag=None))
    claim = f"{desk.view.short_name(one.player)}: {words}" if named else words
    return wording("note.offer").format(claim=claim)


def delete(desk: Desk, note: NoteId) -> Reply:
    """Mark a note deleted; it can be put back."""
    row = desk.book.note(note)
    if row is None or row.deleted:
        return Reply(text=wording("already_undone"))
    desk.book.delete_note(note)
    change = desk.record("delete_note", {"note": note}, {})
    desk.changed()
    return Reply(text=wording("note.deleted"), buttons=rows([undo_button(change)]))


def observation_of(plain: Mapping[str, Any]) -> NewObservation:
    """What `stored` kept."""
    span = plain["span"]
    return NewObservation(
        player=PlayerId(plain["player"]),
        trait=Trait(plain["trait"]),
        value=Value(plain["value"]),
        weight=plain["weight"],
        seen=Seen(plain["seen"]),
        denied=plain["denied"],
        tag=Tag(plain["tag"]) if plain["tag"] else None,
        span=(span[0], span[1]) if span else None,
        origin=plain["origin"],
    )


def stored(observed: Sequence[NewObservation]) -> list[dict[str, object]]:
    """Observations as a change keeps them, so that they can be put back exactly."""
    return [
        {
            "player": one.player,
            "trait": one.trait.value,
            "value": one.value.value,
            "weight": one.weight,
            "seen": one.seen.value,
            "denied": one.denied,
            "tag": one.tag.value if one.tag else None,
            "span": list(one.span) if one.span else None,
            "origin": one.origin,
        }
        for one in observed
    ]
