"""The card of a new pair: eight rows of taps, each of which is an agreement when pressed."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.answers.booking import agree
from bot.chat.answers.desk import Desk
from bot.chat.answers.evidence_read import with_profiles
from bot.chat.answers.player_tapped import player_tapped
from bot.chat.context import Asked
from bot.chat.gather import gather
from bot.chat.payload import BadPayloadError, Verb, tap, word_in
from bot.chat.render import offer_buttons, rows
from bot.chat.reply import Button, Reply
from bot.chat.said import AgreementSaid
from bot.chat.wording import wording
from knowledge.advice import Advice
from knowledge.situation import Situation
from knowledge.sources import Source, SourceKind
from knowledge.tactics.pair_up import Card, advise, asked_about, card_of
from knowledge.tactics.pair_up_items import Item
from knowledge.tactics.stack_answer import NAMELESS
from knowledge.vocabulary import AgreementKey, PlayerId, Topic

Rows = tuple[tuple[Button, ...], ...]


def with_card(desk: Desk, reply: Reply, advice: Advice, situation: Situation) -> Reply:
    """The answer as a card: five lines, a tick where agreed, and the next thing to tap.

    An equal situation's card is not worked out again.
    """
    card = desk.views.advice.recall("card", (situation,), lambda: card_of(situation))
    item = card.first_to_ask(asked_about(situation.asked.words))
    text = "\n".join([*_page(advice), *_next_line(card, item)])
    return Reply(text=text, buttons=(*_row(card, item), *reply.buttons))


def press_card(desk: Desk, args: Sequence[str]) -> Reply:
    """One tap of the card: the same as to say that we agreed it, then the next thing to settle.

    A card of another pair changes nothing and says whose it was.
    """
    key, code = word_in(AgreementKey, args[0]), args[1]
    players = tuple(player_tapped(desk, arg) for arg in args[2:])
    if {*players} != {*desk.ours}:
        return _of_another_pair(desk, players)
    item = next(one for one in card_of(_situation(desk)).items if one.key is key)
    answer = item.answer(code)
    if answer is None:
        raise BadPayloadError(f"no answer to {key}: {code}")
    stored = agree(desk, AgreementSaid(text=answer.words, key=key, value=answer.words))
    situation = _situation(desk)
    card = card_of(situation)
    done = _page(advise(situation)) if not card.open else ()
    following = card.first_to_ask(None)
    lines = [stored.text, *done, *_next_line(card, following)]
    return Reply(text="\n".join(lines), buttons=(*_row(card, following), *stored.buttons))


def _of_another_pair(desk: Desk, players: Sequence[PlayerId]) -> Reply:
    said = wording("pair_up.other_pair").format(names=" and ".join(desk.names(players)))
    now = desk.names(desk.ours)
    if len(now) == len(players):
        said = f"{said} {wording('pair_up.now').format(names=' and '.join(now))}"
    return Reply(text=said, buttons=rows(offer_buttons([Topic.PAIR_UP])))


def _situation(desk: Desk) -> Situation:
    return gather(
        Asked(topic=Topic.PAIR_UP, text=""),
        desk.context,
        with_profiles(desk, desk.ours),
        game=None,
        agreements=desk.agreements(),
        today=desk.day,
    )


def _page(advice: Advice) -> list[str]:
    """The call, the five lines, and what else there is to say."""
    tick = wording("pair_up.tick")
    lines = [f"· {line.text}{tick if _is_agreed(line.source) else ''}" for line in advice.lines]
    rest = [one for one in (advice.number, advice.unless, advice.assumed) if one]
    return [advice.call, *lines, *rest]


def _is_agreed(source: Source) -> bool:
    """Whether all of a line is agreed: one that is so in part names the part."""
    return source.kind is SourceKind.AGREED and not source.citation


def _next_line(card: Card, item: Item | None) -> tuple[str, ...]:
    if item is None or card.pair == NAMELESS:
        return ()
    if item.key in card.agreements:
        return (wording("pair_up.change").format(asks=item.asks),)
    number = card.settled + 1
    said = wording("pair_up.next").format(number=number, of=len(card.items), asks=item.asks)
    return (said,)


def _row(card: Card, item: Item | None) -> Rows:
    """The next thing to settle, its answers as buttons, our default first."""
    if item is None or card.pair == NAMELESS:
        return ()
    return rows(_buttons(card, item))


def _buttons(card: Card, item: Item) -> list[Button]:
    one, other = (each.player for each in card.pair)
    return [
        Button(
            label=answer.label,
            payload=tap(Verb.AGREE, item.key, answer.code, one, other),
            topic=Topic.PAIR_UP,
        )
        for answer in item.answers
    ]
