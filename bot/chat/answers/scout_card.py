"""A scout card: one question after the other about players one is watching, each tap a note."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.evidence_read import with_profiles
from bot.chat.answers.names import ask_which, by_pair, settled
from bot.chat.asked import Asked
from bot.chat.gather import gather
from bot.chat.payload import Verb, tap
from bot.chat.render import offer_buttons, rows
from bot.chat.reply import Button, Reply
from bot.chat.said import BookSaid
from bot.chat.scout_said import DONE, SKIP
from bot.chat.scouting import Place, Scouting
from bot.chat.wording import wording
from knowledge.planning.scout_card import to_ask
from knowledge.planning.scout_questions import ScoutQuestion, scout_questions
from knowledge.situation import Situation
from knowledge.vocabulary import PlayerId, Topic
from scouting_db.values import ChangeRow

MOST_WATCHED = 4
"""Two pairs: who plays in a match that one watches."""

PAIR = 2

MOST_QUEUED = 24
"""Questions kept ahead: more than a match is watched for."""

WARM_UP = "warmup"
ANY = "any"
"""The word in a payload for a card that begins with the most useful question."""

Rows = tuple[tuple[Button, ...], ...]


def scout(desk: Desk, said: BookSaid) -> Reply:
    """ "Scout okafor": a card about whom is named, else about today's opponents.

    "Done" and "skip" typed do what the open card's taps do.
    """
    card = desk.context.scouting
    if card is not None and said.words == DONE:
        return close(desk)
    if card is not None and said.words == SKIP:
        return skip(desk, card, *card.queue[:1])
    mentions = by_pair(desk, said.mentions)
    named = settled(mentions)
    if named is None:
        return ask_which(desk, said.text, mentions)
    players = named or desk.context.theirs or desk.context.focus
    if not players:
        return Reply(text=wording("scout.whom"))
    return open_card(desk, players[:MOST_WATCHED], warm_up=said.words == WARM_UP)


def open_card(
    desk: Desk, players: Sequence[PlayerId], *, warm_up: bool = False, first: Place | None = None
) -> Reply:
    """A new card, which closes the one before; `first` is asked first."""
    card = Scouting(card=desk.inbox, day=desk.day, players=tuple(players), warm_up=warm_up)
    queue = queue_of(desk, card)
    if first is not None:
        queue = (first, *(one for one in queue if one != first))
    desk.context = replace(
        desk.context.looking_at(*players), scouting=replace(card, queue=queue), asked_last=False
    )
    lines = (wording("scout.warm_up" if warm_up else "scout.how"),)
    return with_question(desk, Reply(text=""), after=lines)


def skip(desk: Desk, card: Scouting, *place: Place) -> Reply:
    """The next question; one already behind us stays there."""
    if place and place == card.queue[:1]:
        desk.context = replace(desk.context, scouting=card.skipping(place[0]))
    return with_question(desk, Reply(text=""))


def queue_of(desk: Desk, card: Scouting) -> tuple[Place, ...]:
    """What is worth asking now, pair by pair, most useful first."""
    found = [
        one
        for pair in _pairs(card.players)
        for one in to_ask(_situation(desk, pair), warm_up=card.warm_up, but=card.answered)
        if one.player in card.players
    ]
    if len(card.players) > PAIR:
        found.sort(key=lambda one: -one.per_100)
    return tuple(one.place for one in found[:MOST_QUEUED])


def prompts(desk: Desk, players: Sequence[PlayerId]) -> tuple[Place, ...]:
    """What is most worth noting about these, nothing being open yet."""
    return queue_of(desk, Scouting(card=desk.inbox, day=desk.day, players=tuple(players)))


def _pairs(players: Sequence[PlayerId]) -> Iterable[Sequence[PlayerId]]:
    return (players[start : start + PAIR] for start in range(0, len(players), PAIR))


def _situation(desk: Desk, pair: Sequence[PlayerId]) -> Situation:
    """These as our opponents; of one alone with their partner, for calls are about a pair."""
    pair = _with_partner(desk, pair)
    return gather(
        Asked(topic=Topic.PROBE, text=""),
        replace(desk.context, theirs=tuple(pair), ours=desk.ours),
        with_profiles(desk, [*desk.ours, *pair]),
        game=None,
        agreements=(),
        today=desk.day,
    )


def _with_partner(desk: Desk, pair: Sequence[PlayerId]) -> Sequence[PlayerId]:
    if len(pair) != 1 or pair[0] in desk.ours:
        return pair
    if pair[0] in desk.context.theirs:
        return desk.context.theirs
    partner = desk.view.partner_of(pair[0])
    return pair if partner is None else (*pair, partner)


def with_question(desk: Desk, reply: Reply, *, after: Sequence[str] = ()) -> Reply:
    """The reply with the card's question under it, or what the card came to if all is asked."""
    card = desk.context.scouting
    if card is None:
        return reply
    if not card.queue:
        closing = close(desk, all_asked=True)
        return replace(closing, text=_under(reply.text, closing.text), about=reply.about)
    player, asked = card.queue[0]
    question = scout_questions()[asked]
    line = wording("scout.asks").format(name=desk.view.short_name(player), asks=question.asks)
    buttons = (*_answers(card, player, question), *_ways(desk, card, player, question))
    return replace(
        reply,
        text="\n".join([*filter(None, [reply.text]), line, *after]),
        buttons=(*buttons, *reply.buttons),
    )


def _under(text: str, more: str) -> str:
    return f"{text}\n{more}" if text else more


def _answers(card: Scouting, player: PlayerId, question: ScoutQuestion) -> Rows:
    return rows(
        [
            Button(
                label=answer.label,
                payload=tap(Verb.SCOUT, card.card, question.id, player, number),
            )
            for number, answer in enumerate(question.answers, start=1)
        ]
    )


def _ways(desk: Desk, card: Scouting, player: PlayerId, question: ScoutQuestion) -> Rows:
    """Skip it, turn to somebody else, or end."""
    skip = Button(
        label=wording("scout.skip"),
        payload=tap(Verb.SCOUT, card.card, "skip", player, question.id),
    )
    others = [
        Button(
            label=wording("scout.turn").format(name=desk.view.short_name(other)),
            payload=tap(Verb.SCOUT, card.card, "look", other),
        )
        for other in card.players
        if other != player and any(whose == other for whose, _ in card.queue)
    ]
    done = Button(label=wording("scout.done"), payload=tap(Verb.SCOUT, card.card, "done"))
    return rows([skip, *others, done])


def close(desk: Desk, *, all_asked: bool = False) -> Reply:
    """What was tapped, player by player; the card takes no more taps."""
    card = desk.context.scouting
    desk.context = replace(desk.context, scouting=None)
    if card is None or not card.taps:
        nothing = "scout.all_known" if all_asked else "scout.nothing"
        return Reply(text=wording(nothing))
    lines = [
        wording("scout.line").format(name=desk.view.short_name(player), said=said)
        for player in card.players
        if (said := _said_of(card, player))
    ]
    count = len({one.place for one in card.taps})
    noted = wording("scout.noted_one" if count == 1 else "scout.noted").format(count=count)
    desk.context = desk.context.looking_at(*card.players)
    return Reply(text="\n".join([noted, *lines]), buttons=(*rows(_onward(card)),))


def _said_of(card: Scouting, player: PlayerId) -> str:
    """The last answers in short: "hand: left, backhand dink: pops up"."""
    told = {one.place: one for one in card.taps if one.place[0] == player}
    said = []
    for (_, asked), one in told.items():
        question = scout_questions()[asked]
        label = question.answers[one.answer - 1].label
        said.append(wording("scout.short").format(asks=question.asks.rstrip("?"), label=label))
    return ", ".join(said)


def _onward(card: Scouting) -> list[Button]:
    report = Button(
        label=wording("scout.report"),
        payload=tap(Verb.ASK, Topic.OPPONENT_REPORT, *card.players[:PAIR]),
        topic=Topic.OPPONENT_REPORT,
    )
    return [report, *offer_buttons([Topic.GAME_PLAN])]


def is_of_card(desk: Desk, change: ChangeRow) -> bool:
    """Whether a change is a tap of the card that is open."""
    card, note = desk.context.scouting, change.targets.get("note")
    if card is None or change.verb != "add_note":
        return False
    return any(one.note == note for one in (*card.taps, *card.undone))


def scout_button(players: Sequence[PlayerId]) -> Button:
    """Opens a card about these."""
    return Button(
        label=wording("scout.open"), payload=tap(Verb.SCOUT, "open", ANY, *players[:PAIR])
    )
