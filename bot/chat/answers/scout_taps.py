"""Taps of a scout card: `card, question, player, answer`, `card, skip|look|done`, or `open`.

A tap on a card that is closed, of another day or of another chat changes nothing, nor does one
on a question that was never shown.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers import notes
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.note_clashes import clashes
from bot.chat.answers.player_tapped import player_tapped
from bot.chat.answers.scout_card import ANY, close, open_card, queue_of, skip, with_question
from bot.chat.answers.tapped_note import TAPPED_WEIGHT, tapped_note
from bot.chat.payload import BadPayloadError, number_in
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.said import Claim
from bot.chat.scouting import Scouting, Tapped
from bot.chat.wording import wording
from knowledge.planning.scout_questions import Answer, ScoutQuestion, scout_questions
from knowledge.vocabulary import PlayerId
from scouting_db.values import NoteId

OPEN = "open"


def press_scout(desk: Desk, args: Sequence[str]) -> Reply:
    """What a tap of a card does; BadPayloadError for one we never wrote."""
    if args[0] == OPEN:
        return _open(desk, args[1:])
    card = desk.context.scouting
    if card is None or number_in(args[0]) != card.card or card.day != desk.day:
        return Reply(text=wording("scout.closed"))
    match [*args[1:]]:
        case ["done"]:
            return close(desk)
        case ["look", player]:
            return _look(desk, card, _watched(desk, card, player))
        case ["skip", player, asked]:
            return skip(desk, card, (_watched(desk, card, player), _question(asked).id))
        case [asked, player, answer]:
            question = _question(asked)
            number = number_in(answer)
            if not 1 <= number <= len(question.answers):
                raise BadPayloadError(f"{asked} has no answer {number}")
            return _answer(desk, card, _watched(desk, card, player), question, number)
        case _:
            raise BadPayloadError(f"no tap of a card: {args}")


def _open(desk: Desk, args: Sequence[str]) -> Reply:
    """A card that a button offers, about one player or a pair, perhaps at a question."""
    asked, *named = args
    if not 1 <= len(named) <= 2:
        raise BadPayloadError("a card is about one player or a pair")
    players = [player_tapped(desk, one) for one in named]
    first = None if asked == ANY else (players[0], _question(asked).id)
    return open_card(desk, players, first=first)


def _watched(desk: Desk, card: Scouting, arg: str) -> PlayerId:
    player = player_tapped(desk, arg)
    if player not in card.players:
        raise BadPayloadError(f"the card is not about {player}")
    return player


def _question(asked: str) -> ScoutQuestion:
    found = scout_questions().get(asked)
    if found is None:
        raise BadPayloadError(f"no question of a card: {asked}")
    return found


def _look(desk: Desk, card: Scouting, player: PlayerId) -> Reply:
    desk.context = replace(desk.context.looking_at(player), scouting=card.looking_at(player))
    return with_question(desk, Reply(text=""))


def _answer(
    desk: Desk, card: Scouting, player: PlayerId, question: ScoutQuestion, number: int
) -> Reply:
    """One tap is a note; the same tap again is not another one."""
    place = (player, question.id)
    if place not in card.asked:
        raise BadPayloadError(f"never asked on this card: {place}")
    standing = card.tapped(place)
    if standing is not None and standing.answer == number:
        return with_question(desk, Reply(text=wording("scout.twice")))
    answer = question.answers[number - 1]
    note, reply = _noted(desk, player, answer)
    card = card.with_tap(Tapped(place=place, answer=number, note=note))
    if question.is_fact:  # hands and sides turn the other questions' worth round
        card = _ranked_anew(desk, card, player)
    desk.context = replace(desk.context.looking_at(player), scouting=card, asked_last=False)
    return with_question(desk, reply)


def _ranked_anew(desk: Desk, card: Scouting, player: PlayerId) -> Scouting:
    """The order by what is known now; whoever was looked at stays first where they were."""
    queue = queue_of(desk, card)
    if card.queue and card.queue[0][0] == player:
        return replace(card, queue=queue).looking_at(player)
    return replace(card, queue=queue)


def _noted(desk: Desk, player: PlayerId, answer: Answer) -> tuple[NoteId, Reply]:
    """The note, in the words that one would have typed, and what is said of it."""
    words = answer.words.format(name=desk.view.short_name(player))
    note, change = tapped_note(desk, player, answer.trait, answer.value, words=words)
    claim = Claim(
        player=player,
        trait=answer.trait,
        value=answer.value,
        weight=TAPPED_WEIGHT,
        span=(0, len(words)),
    )
    desk.trace |= {"claims": (claim,), "note": note}
    contradicting = tuple(clashes(desk, (claim,), note))
    text = wording("note.understood").format(claims=words)
    lines = [text, *map(notes.clash_line, contradicting)]
    return note, Reply(
        text="\n".join(lines), buttons=rows([undo_button(change)]), about=("note", note)
    )
