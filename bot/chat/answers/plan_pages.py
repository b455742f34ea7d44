"""A plan beyond the first asking: as given before, plan B, what is new, and as a message."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.advised import situation_for
from bot.chat.answers.desk import Desk
from bot.chat.answers.names import ask_which, by_pair, settled
from bot.chat.answers.plan_book import (
    IS_PLAN,
    day_of,
    ended_at,
    given_lines,
    keep_lines,
    last_match,
    pair_players,
    start_of_day,
    stored_plan,
)
from bot.chat.answers.plan_buttons import plan_button, plan_buttons, players_of
from bot.chat.answers.plan_people import people_fault
from bot.chat.answers.plan_share import for_student, shared_plan
from bot.chat.answers.plan_since import since_advice
from bot.chat.answers.standing import standing
from bot.chat.context import Asked, Depth
from bot.chat.message import is_ours
from bot.chat.payload import Verb, tap
from bot.chat.render import offer_buttons, render, rows
from bot.chat.reply import Button, Reply
from bot.chat.said import Mention, PlanAsk, PlanSaid
from bot.chat.wording import wording
from knowledge.advice import Advice
from knowledge.given_plan import GivenLine
from knowledge.planning import plan, plan_b
from knowledge.planning.names import pair_name
from knowledge.planning.plan_lines import plan_lines
from knowledge.planning.rematch import day_name
from knowledge.situation import Situation
from knowledge.vocabulary import Mode, PlayerId, Topic
from scouting_db.values import PlanRow

SHORT_LINES = 2
"""Lines of a plan that are shown in a match."""


def tell_plan(desk: Desk, said: PlanSaid) -> Reply:
    """What a message wants of the plan against those it names, or against the pair we speak of."""
    if said.of_no_plan:
        return Reply(
            text=wording("plan.only_plans"), buttons=rows(offer_buttons([Topic.GAME_PLAN]))
        )
    mentions = by_pair(desk, _of_them(desk, said))
    about = settled(mentions)
    if about is None:
        return ask_which(desk, said.text, mentions)
    fault = people_fault(desk, said.text, mentions)
    if fault is not None:
        return fault
    return plan_page(
        desk,
        said.what,
        about,
        text=said.text,
        to=_to(desk, said),
        earlier=said.earlier,
        change=said.change,
    )


def _to(desk: Desk, said: PlanSaid) -> str | None:
    """Who of ours the message is for; None for whoever it may be."""
    ours = settled(one for one in said.mentions if is_ours(one, desk.ours))
    return desk.view.short_name(ours[0]) if ours else None


def _of_them(desk: Desk, said: PlanSaid) -> tuple[Mention, ...]:
    """The names but those of ours whom a message is for: "send Tom the plan"."""
    if said.what not in (PlanAsk.SHARE, PlanAsk.STUDENT):
        return said.mentions
    return tuple(one for one in said.mentions if not is_ours(one, desk.ours))


def plan_page(
    desk: Desk,
    what: PlanAsk,
    about: Sequence[PlayerId],
    *,
    text: str = "",
    to: str | None = None,
    earlier: bool = False,
    change: str = "",
) -> Reply:
    """The page; a text and a button take the same road from here."""
    last = desk.context.asked
    named = tuple(about) or (last.about if last is not None else ())
    asked = Asked(topic=Topic.GAME_PLAN, text=text, about=named)
    desk.trace |= {"topic": Topic.GAME_PLAN}
    situation = situation_for(desk, asked, standing(desk, asked))
    desk.context = replace(
        desk.context.looking_at(*(named or desk.context.focus)),
        asked=asked,
        told=Depth.FULL,
        asked_last=True,
    )
    if not situation.theirs:
        return Reply(text=wording("plan.whom"), buttons=rows(offer_buttons([Topic.PROBE])))
    desk.trace |= {"situation": situation}
    match what:
        case PlanAsk.AGAIN:
            return _again(desk, situation, earlier=earlier)
        case PlanAsk.PLAN_B:
            return _advised(
                desk, situation, plan_b.advise(situation, change=change or None), but=what
            )
        case PlanAsk.SINCE:
            return _since(desk, situation)
        case PlanAsk.SHARE | PlanAsk.STUDENT:
            return _message(desk, situation, what, to)


def _advised(
    desk: Desk, situation: Situation, advice: Advice, *, but: PlanAsk | None = None
) -> Reply:
    desk.trace |= {"advice": advice}
    is_short = desk.context.mode is Mode.MATCH
    reply = render(advice, against=[one.name for one in situation.theirs], short=is_short)
    kept = tuple(row for row in reply.buttons if not any(_is_why(one) for one in row))
    plan_again = Button(
        label=wording(f"topic.{Topic.GAME_PLAN}"),
        payload=tap(Verb.ASK, Topic.GAME_PLAN, *players_of(situation)),
        topic=Topic.GAME_PLAN,
    )
    more = [plan_again, *plan_buttons(desk, situation, but=but)]
    return replace(reply, buttons=(*kept, *rows(more)))


def _is_why(button: Button) -> bool:
    """ "Why" explains the plan itself, and these pages say their reasons."""
    return button.payload == tap(Verb.WHY, Topic.GAME_PLAN)


def _again(desk: Desk, situation: Situation, *, earlier: bool) -> Reply:
    """The plan as it was given, its day, and whether today's is another one."""
    names = pair_name(situation.theirs)
    found = (_of_last_meeting(desk, situation) if earlier else None) or _stored(desk, situation)
    if found is None:
        told = wording("plan.none_stored").format(names=names)
        again = Button(
            label=wording("plan.make"),
            payload=tap(Verb.ASK, Topic.GAME_PLAN, *players_of(situation)),
            topic=Topic.GAME_PLAN,
        )
        return Reply(text=told, buttons=rows([again]))
    day = day_name(day_of(desk, found.made_at), today=day_of(desk, desk.now))
    lines = [
        wording("plan.given").format(names=names, day=day),
        *(f"· {_with_source(line)}" for line in _shown(desk, found.lines)),
    ]
    changed = _changed_since(situation, found)
    if changed:
        lines.append(
            wording("plan.differs" if changed > 1 else "plan.differs_by_one").format(count=changed)
        )
    elif not _is_short(desk):
        lines.append(wording("plan.stands"))
    today = [_today_button(situation)] if changed else []
    return Reply(
        text="\n".join(lines),
        buttons=rows([*today, *plan_buttons(desk, situation)]),
    )


def _today_button(situation: Situation) -> Button:
    return Button(
        label=wording("plan.today"),
        payload=tap(Verb.ASK, Topic.GAME_PLAN, *players_of(situation)),
        topic=Topic.GAME_PLAN,
    )


def _with_source(line: GivenLine) -> str:
    return f"{line.text} ({line.source})" if line.source else line.text


def _is_short(desk: Desk) -> bool:
    return desk.context.mode is Mode.MATCH


def _shown(desk: Desk, lines: Sequence[GivenLine]) -> Sequence[GivenLine]:
    return lines[:SHORT_LINES] if _is_short(desk) else lines


def _stored(desk: Desk, situation: Situation) -> PlanRow | None:
    pair = pair_players(desk, players_of(situation))
    return None if pair is None else stored_plan(desk, pair)


def _of_last_meeting(desk: Desk, situation: Situation) -> PlanRow | None:
    """The plan for the last meeting; without one the newest of an earlier day."""
    pair = pair_players(desk, players_of(situation))
    if pair is None:
        return None
    met = last_match(desk, pair)
    before = start_of_day(desk) if met is None else ended_at(desk, met)
    return stored_plan(desk, pair, before=before)


def _changed_since(situation: Situation, found: PlanRow) -> int:
    """How many lines of today's plan that one did not have."""
    known = {line.do for line in found.lines}
    return sum(line.do not in known for line in plan_lines(situation))


def _since(desk: Desk, situation: Situation) -> Reply:
    pair = pair_players(desk, players_of(situation))
    advice = None if pair is None else since_advice(desk, situation, pair)
    if advice is None:
        told = wording("plan.never_met").format(names=pair_name(situation.theirs))
        return Reply(text=told, buttons=rows(offer_buttons([Topic.GAME_PLAN])))
    return _advised(desk, situation, advice, but=PlanAsk.SINCE)


def _message(desk: Desk, situation: Situation, what: PlanAsk, to: str | None) -> Reply:
    """The plan last given, or today's, as a text that stands for itself."""
    names = pair_name(situation.theirs)
    if what is PlanAsk.STUDENT:
        return Reply(text=for_student(names=names))
    found = _stored(desk, situation)
    lines, made = (found.lines, found.made_at) if found else (_made(desk, situation), desk.now)
    if not lines:
        told = wording("plan.no_book").format(names=names)
        return Reply(text=told, buttons=rows(offer_buttons([Topic.CUE, Topic.GAME_PLAN])))
    day = day_name(day_of(desk, made), today=day_of(desk, desk.now))
    when = wording("plan.today_word") if day == "earlier today" else day
    sign = plan_b.sign_of(situation, plan_lines(situation))
    text = shared_plan(lines, names=names, day=when, to=to, sign=sign)
    student = plan_button(desk, situation, PlanAsk.STUDENT)
    return Reply(text=text, buttons=rows([student]))


def _made(desk: Desk, situation: Situation) -> tuple[GivenLine, ...]:
    """Today's plan, kept as given; nothing where there is no book on them."""
    if IS_PLAN not in plan.advise(situation).numbers:
        return ()
    lines = plan_lines(situation)
    if len(situation.theirs) == 2:
        keep_lines(desk, situation, lines)
    return given_lines(lines)
