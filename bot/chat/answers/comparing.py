"""Players and pairs compared by what the book knows: two sides, everybody ranked, or who is so."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice

from bot.chat.answers.desk import Desk
from bot.chat.answers.evidence_read import with_profiles
from bot.chat.answers.names import ask_which, by_pair, settled
from bot.chat.answers.pool_order import opponents_of, pool_of
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import Among, CompareAsked, Compared
from bot.chat.wording import wording
from knowledge.advice import Reason
from knowledge.phone_screen import wrapped
from knowledge.planning.compare import (
    ALIKE,
    Side,
    act_of,
    holders,
    is_known,
    line_of,
    side_of,
    whether,
)
from knowledge.planning.phrases import fact_words, trait_words
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import TRAITS, PlayerId, Topic, Trait, TraitKind, Value

MOST_LINES = 6
"""Lines of a phone that a comparison takes."""

RANKED = 3
"""Of everybody ranked, how many are told."""

NAMED = 3

_MOST = {
    Value.WEAKNESS: "compare.weakest_at",
    Value.STRENGTH: "compare.strongest_at",
    Value.OFTEN: "compare.most_often",
    Value.RARELY: "compare.least_often",
}
REPORTS = 3


def compare(desk: Desk, said: CompareAsked) -> Reply:
    """What was asked across people."""
    if said.what is Compared.SIDES:
        return _sides(desk, said)
    if said.what is Compared.WHO and said.trait is not None and said.value is not None:
        return _who(desk, said, said.trait, said.value)
    if said.what is Compared.ONE and said.trait is not None and said.value is not None:
        return _one(desk, said, said.trait, said.value)
    return _ranked(desk, said)


def _one(desk: Desk, said: CompareAsked, trait: Trait, value: Value) -> Reply:
    """Whether one player has it, by the book: yes or no first, then the notes behind it."""
    people = settled(one for side in said.sides for one in side) or ()
    situation = _situation(desk, people)
    player = next(found for one in people if (found := situation.find(one)) is not None)
    told = whether(player, trait, value, today=desk.day)
    side = _side(people, situation)
    desk.context = desk.context.looking_at(*people)
    if told is None:
        text = wording("whether.unknown").format(name=side.name, words=_words(trait, value))
        is_fact = TRAITS[trait].kind is TraitKind.FACT
        instead = [] if is_fact else [line_of(one) for one in side.telling_first]
        return _told(text, [instead], [side], "")
    key = {True: "whether.yes", False: "whether.no", None: "whether.open"}[told.is_so]
    line = ", ".join(filter(None, [f"· {told.source}", told.sure]))
    return Reply(
        text="\n".join([wording(key).format(name=side.name, words=told.words), line]),
        buttons=_reports([side]),
    )


def _situation(desk: Desk, players: Sequence[PlayerId]) -> Situation:
    view = with_profiles(desk, [*desk.ours, *players])
    ours = tuple(OnCourt(profile=view.profile_of(one)) for one in desk.ours)
    theirs = tuple(OnCourt(profile=view.profile_of(one)) for one in players)
    return Situation(topic=Topic.OPPONENT_REPORT, ours=ours, theirs=theirs, today=desk.day)


def _sides(desk: Desk, said: CompareAsked) -> Reply:
    mentions = by_pair(desk, (one for side in said.sides for one in side))
    if settled(mentions) is None:
        return ask_which(desk, said.text, mentions)
    named = iter(mentions)
    groups = [settled(islice(named, len(side))) or () for side in said.sides]
    desk.context = desk.context.looking_at(*groups[0])
    situation = _situation(desk, tuple(dict.fromkeys(one for each in groups for one in each)))
    sides = [_side(group, situation) for group in groups]
    known = [one for one in sides if one.known]
    if not known:
        return Reply(text=wording("compare.nothing"), buttons=_reports(sides))
    tells = act_of if said.acts else line_of
    blocks = [[tells(each) for each in one.telling_first] for one in sides]
    return _told(_verdict(sides, known), blocks, sides, _unnoted(sides))


def _side(players: Sequence[PlayerId], situation: Situation) -> Side:
    people = [found for one in players if (found := situation.find(one)) is not None]
    return side_of(people, situation)


def _verdict(sides: Sequence[Side], known: Sequence[Side]) -> str:
    if len(known) == 1:
        return wording("compare.one_known").format(name=known[0].name)
    first, second = sorted(sides, key=lambda one: -one.danger)[:2]
    if first.danger - second.danger < ALIKE:
        return wording("compare.alike" if _tells_the_same(sides) else "compare.too_little")
    return wording("compare.more_dangerous").format(name=first.name)


def _tells_the_same(sides: Sequence[Side]) -> bool:
    """Whether the book knows the same things of both, or enough else to weigh them by."""
    weighed = [sum(one.estimate is not None for one in side.known) for side in sides]
    if min(weighed) > 0:
        return True
    return len({frozenset(one.text for one in side.known) for side in sides}) == 1


def _ranked(desk: Desk, said: CompareAsked) -> Reply:
    groups = _pairs(desk, said.among) if said.what is Compared.PAIRS else _each(desk, said.among)
    if not groups:
        return Reply(text=wording("compare.no_people"))
    situation = _situation(desk, tuple(dict.fromkeys(one for each in groups for one in each)))
    sides = [_side(group, situation) for group in groups]
    known = sorted(
        (one for one in sides if one.known),
        key=lambda one: one.danger if said.weakest else -one.danger,
    )
    if not known:
        return Reply(text=wording("compare.nothing"), buttons=_reports(sides))
    call = "compare.weakest" if said.weakest else "compare.most_dangerous"
    blocks = [
        [line_of(told)]
        for one in known[:RANKED]
        if (told := one.telling(weakest=said.weakest)) is not None
    ]
    return _told(wording(call).format(name=known[0].name), blocks, known, _unnoted(sides))


def _who(desk: Desk, said: CompareAsked, trait: Trait, value: Value) -> Reply:
    groups = _each(desk, said.among)
    if not groups:
        return Reply(text=wording("compare.no_people"))
    situation = _situation(desk, [one for (one,) in groups])
    words = _words(trait, value)
    found = holders(situation.theirs, trait, value, today=desk.day)
    silent = sum(not is_known(one, trait, value) for one in situation.theirs)
    rest = wording("compare.not_known").format(count=silent, all=len(groups)) if silent else ""
    if not found:
        return Reply(text="\n".join(filter(None, [_nobody(words), rest])))
    shown = found[:1] if said.most else found[:NAMED]
    left = len(found) - len(shown)
    names = ", ".join(one.player.name for one in shown)
    names += f" +{left}" if left and not said.most else ""
    key = _MOST.get(value, "compare.holds") if said.most else "compare.holds"
    label = f"{words[:1].upper()}{words[1:]}" if key == "compare.holds" else TRAITS[trait].label
    blocks = [[one.reason] for one in found[:RANKED]]
    sides = [_side([one.player.player], situation) for one in shown]
    return _told(wording(key).format(words=label, names=names), blocks, sides, rest)


def _nobody(words: str) -> str:
    return wording("compare.nobody").format(words=words)


def _words(trait: Trait, value: Value) -> str:
    if TRAITS[trait].kind is TraitKind.FACT:
        return fact_words(trait, value)
    habit = value in (Value.OFTEN, Value.RARELY)
    return trait_words(trait, habit=habit, up=value in (Value.STRENGTH, Value.OFTEN))


def _told(call: str, blocks: Sequence[Sequence[Reason]], sides: Sequence[Side], rest: str) -> Reply:
    """The call, then of each side as much as fits a phone, the first of each before the second."""
    shown: list[list[str]] = [[] for _ in blocks]
    for depth in range(max(map(len, blocks))):
        for block, lines in zip(blocks, shown, strict=True):
            if depth >= len(block):
                continue
            line = f"· {block[depth].text} ({block[depth].source})"
            whole = [call, *(one for each in shown for one in each), line, *filter(None, [rest])]
            if wrapped(whole) <= MOST_LINES:
                lines.append(line)
    body = [line for lines in shown for line in lines]
    return Reply(text="\n".join([call, *body, *filter(None, [rest])]), buttons=_reports(sides))


def _unnoted(sides: Sequence[Side]) -> str:
    names = [one.name for one in sides if not one.known]
    if not names:
        return ""
    more = f" +{len(names) - NAMED}" if len(names) > NAMED else ""
    return wording("compare.unnoted").format(names=", ".join(names[:NAMED]) + more)


def _reports(sides: Sequence[Side]) -> tuple[tuple[Button, ...], ...]:
    return rows(
        [
            Button(
                label=wording("compare.report").format(name=one.name),
                payload=tap(Verb.ASK, Topic.OPPONENT_REPORT, *(each.player for each in one.people)),
                topic=Topic.OPPONENT_REPORT,
            )
            for one in sides[:REPORTS]
        ]
    )


def _pairs(desk: Desk, among: Among) -> list[tuple[PlayerId, ...]]:
    """Pairs of opponents."""
    if among is Among.POOL and (pool := pool_of(desk)) is not None:
        found = [opponents_of(row) for row in pool.matches]
        return [one for one in dict.fromkeys(found) if one]
    ours = {*desk.ours, *desk.view.ours()}
    return [both for _, both in desk.view.pairs if not ours & {*both}]


def _each(desk: Desk, among: Among) -> list[tuple[PlayerId, ...]]:
    """Opponents one by one."""
    if among is Among.THEM and desk.context.theirs:
        return [(one,) for one in desk.context.theirs]
    if among is Among.POOL and pool_of(desk) is not None:
        people = [one for pair in _pairs(desk, among) for one in pair]
        return [(one,) for one in dict.fromkeys(people)]
    ours = {*desk.ours, *desk.view.ours()}
    return [(row.player,) for row in desk.view.roster if row.player not in ours]
