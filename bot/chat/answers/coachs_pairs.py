"""Which of a coach's pairs is meant, where only a draw is named that nobody was said to play."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.coached import Coached, Pair, own_pairs
from bot.chat.other_pair_told import match_of_other_draw, score_of_other_pair
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import CoachSaid, MatchSaid, NoteSaid, ResultSaid, ScoreSaid, Understood
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId

PAIR = 2
MOST_OFFERED = 4


def plays_draw(desk: Desk, players: Sequence[PlayerId], draw: str) -> None:
    """The pair plays that draw, if one is told: its name alone means them from now on."""
    if draw and len(players) == PAIR:
        coach = desk.context.coach or Coached()
        pair = players[0], players[1]
        desk.context = replace(desk.context, coach=coach.with_draw(draw, pair))


def with_pairs(desk: Desk, reply: Reply) -> Reply:
    """The reply with all pairs that the coach speaks for, and what they play."""
    draws = {
        frozenset(pair): draw for draw, pair in (() if desk.coach is None else desk.coach.draws)
    }
    told = [
        "/".join(desk.names(pair))
        + (f" ({draws[frozenset(pair)]})" if frozenset(pair) in draws else "")
        for pair in own_pairs(desk.coach, desk.view)
    ]
    line = wording("coach.pairs").format(pairs=", ".join(told))
    return replace(reply, text=f"{reply.text}\n{line}") if told else reply


def ask_which_pair(desk: Desk, said: CoachSaid) -> Reply:
    """Whom the draw, or "the other pair" of several, is for; nothing is booked till then."""
    pairs = own_pairs(desk.coach, desk.view)
    if not said.draw:
        pairs = tuple(pair for pair in pairs if set(pair) != set(desk.ours))
    buttons = [_button(desk, said, pair) for pair in pairs[:MOST_OFFERED]]
    key = "coach.which_draw" if said.draw else "coach.which_pair"
    lines = [wording(key).format(draw=said.draw)]
    if said.asks:
        lines.append(wording("coach.not_booked"))
    return Reply(text=" ".join(lines), buttons=rows(buttons))


def _button(desk: Desk, said: CoachSaid, pair: Pair) -> Button:
    """The message again with the pair in its place, which also tells what the pair plays."""
    names = " and ".join(desk.view.name_of(player) for player in pair)
    text = f"{said.draw} is {names}" if said.draw else f"im coaching {names}"
    if said.asks:
        text = f"{text}: {said.asks}" if said.draw else f"for {names}: {said.asks}"
    number = desk.context.pending_count + 1
    waits = Pending(number=number, typed="", text=text, candidates=())
    desk.context = desk.context.with_pending(waits)
    return Button(label="/".join(desk.names(pair)), payload=tap(Verb.LATER, number))


def of_which_pair(desk: Desk) -> tuple[str, ...]:
    """The line that tells of whose match a score is, where a coach speaks for several pairs."""
    if len(own_pairs(desk.coach, desk.view)) < PAIR or len(desk.ours) != PAIR:
        return ()
    return (wording("coach.for").format(names="/".join(desk.names(desk.ours))),)


def of_other_pair(desk: Desk, understood: Sequence[Understood]) -> CoachSaid | None:
    """Whose score or next match it is, where a coach tells it of another pair of theirs."""
    announced = next((one.text for one in understood if isinstance(one, MatchSaid)), None)
    if announced is not None:
        return match_of_other_draw(announced, desk.chat_view())
    is_score = any(isinstance(one, ScoreSaid | ResultSaid) for one in understood)
    elsewhere = any(isinstance(one, NoteSaid) and one.is_of_others for one in understood)
    if not (is_score or elsewhere):
        return None
    texts = dict.fromkeys(one.text for one in understood)
    longest = max(texts, key=len)
    whole = longest if all(one in longest for one in texts) else ", ".join(texts)
    return score_of_other_pair(whole, desk.chat_view(), elsewhere=not is_score)
