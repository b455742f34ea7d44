"""The buttons under a plan: plan B, what is new since the last meeting, and the plan to send."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.plan_book import day_of, pair_players
from bot.chat.payload import Verb, tap
from bot.chat.reply import Button
from bot.chat.said import PlanAsk
from bot.chat.wording import wording
from knowledge.planning.rematch import day_name
from knowledge.situation import Situation
from knowledge.vocabulary import PlayerId, Topic


def plan_buttons(desk: Desk, situation: Situation, *, but: PlanAsk | None = None) -> list[Button]:
    """What else there is of a plan against this pair: only what would say something."""
    if pair_players(desk, players_of(situation)) is None:
        return []
    wanted = [PlanAsk.PLAN_B, PlanAsk.SHARE]
    if situation.last_meeting is not None:
        wanted.insert(1, PlanAsk.SINCE)
    return [plan_button(desk, situation, what) for what in wanted if what is not but]


def plan_button(desk: Desk, situation: Situation, what: PlanAsk) -> Button:
    """One of them; it keeps speaking of this pair however late it is pressed."""
    met = situation.last_meeting
    day = "" if met is None else day_name(met.day, today=day_of(desk, desk.now))
    return Button(
        label=wording(f"plan.button_{what}").format(day=day),
        payload=tap(Verb.PLAN, what.value, *players_of(situation)),
        topic=Topic.GAME_PLAN,
    )


def players_of(situation: Situation) -> list[PlayerId]:
    return [one.player for one in situation.theirs]
