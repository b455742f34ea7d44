"""After a match: what worked with numbers, what we see otherwise now, what to write down."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from bot.chat.answers.desk import Desk
from bot.chat.answers.results import last_match
from bot.chat.answers.reviewed import (
    Reviewed,
    before_and_after,
    choices_of,
    endings_of,
    reviewed,
)
from bot.chat.answers.scoreboard import scoreboard
from bot.chat.answers.scout_card import PAIR, prompts
from bot.chat.payload import Verb, tap
from bot.chat.render import offer_buttons, rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.planning.moved_traits import Moved, moved
from knowledge.planning.review_counts import (
    FEW,
    Count,
    Endings,
    best,
    counts,
    our_errors,
    our_winners,
    worst,
)
from knowledge.planning.scout_questions import scout_questions
from knowledge.sources import counted
from knowledge.vocabulary import PlayerId, Topic

MOST_PROMPTS = 3


def review(desk: Desk) -> Reply:
    """How it went, as far as it was told; without a match a kind line and what to do."""
    match = reviewed(desk)
    if match is None:
        return Reply(text=wording("match.review_none"))
    head, taps = _head(desk, match)
    numbers = [*_rallies(match), *_worked(desk, match)]
    lines = [head, *numbers, *_moved(desk, match)]
    buttons = rows(_prompts(desk, match))
    if buttons:
        lines.append(wording("review.fresh"))
    desk.trace |= {"match": match.match}
    change = rows(offer_buttons([Topic.ADJUST]))
    return Reply(
        text="\n".join(lines), buttons=(*buttons, *change, *taps), about=("match", match.match)
    )


def _head(desk: Desk, match: Reviewed) -> tuple[str, tuple[tuple[Button, ...], ...]]:
    """The result, or the score as it stands with the taps to count on."""
    if match.match != desk.context.match:
        return last_match(desk).text, ()
    text, buttons = scoreboard(desk, match.match)
    return text, rows(buttons)


def _rallies(match: Reviewed) -> Iterator[str]:
    """Rallies won of rallies counted, and those on our serve, where it is known who served."""
    played = match.log.played
    if not played:
        yield wording("review.no_rallies")
        return
    won = sum(one.won_by_us for one in played)
    served = [one for one in match.log.on_known_serve if one.before.we_serve]
    key = "review.rallies_served" if served else "review.rallies"
    yield wording(key).format(
        won=won,
        of=len(played),
        serve_won=sum(one.won_by_us for one in served),
        serve_of=len(served),
    )


def _worked(desk: Desk, match: Reviewed) -> Iterator[str]:
    """The choice that brought most and the one that cost most; else the strokes that did."""
    chosen, ended = choices_of(desk, match), endings_of(desk, match)
    found = counts(chosen)
    good, bad = best(found), worst(found)
    winners, errors = our_winners(ended), our_errors(ended)
    if good is not None:
        yield wording("review.worked").format(what=_choice(desk, good), won=good.won, of=good.of)
    elif winners is not None:
        yield _ended("review.winners", winners)
    if errors is not None:
        yield _ended("review.errors", errors)
    elif bad is not None:
        yield wording("review.cost").format(what=_choice(desk, bad), won=bad.won, of=bad.of)
    sizes = [one.of for one in (good, bad, winners, errors) if one is not None]
    if sizes and min(sizes) < FEW:
        yield wording("review.few")
    told = len(ended) + len(chosen)
    if match.log.played and not sizes:
        yield wording("review.too_few" if told else "review.untagged")


def _ended(key: str, found: Endings) -> str:
    stroke = wording(f"stroke.{found.stroke}")
    return wording(key).format(stroke=stroke, count=found.count, of=found.of)


def _choice(desk: Desk, one: Count) -> str:
    """ "serves wide", "returns at Lindqvist"."""
    name = "" if one.against is None else desk.view.short_name(one.against)
    plain = ":".join(part for part in one.option.split(":") if not part.isdigit()) or "at"
    return wording(f"chosen.{one.topic}").format(
        option=wording(f"chosen.option_{plain.replace(':', '_')}").format(name=name)
    )


def _moved(desk: Desk, match: Reviewed) -> Iterator[str]:
    """The three traits that moved most during this match, theirs and ours."""
    players = [*match.theirs, *match.ours]
    found = moved(*before_and_after(desk, match, players))
    desk.trace |= {"moved": found}
    if not found:
        yield wording("review.unmoved")
        return
    yield wording("review.moved")
    yield from (_moved_line(one) for one in found)


def _moved_line(one: Moved) -> str:
    behind = [
        counted(count, single, many)
        for count, single, many in (
            (one.notes, "note", "notes"),
            (one.rallies, "rally", "rallies"),
        )
        if count
    ]
    return wording("review.moved_line").format(
        name=one.name, what=one.words, how=one.how, behind=", ".join(behind)
    )


def _prompts(desk: Desk, match: Reviewed) -> list[Button]:
    """The three things about these two that are most worth writing down now."""
    players = match.theirs[:PAIR]
    return [
        Button(
            label=wording("scout.asks").format(
                name=desk.view.short_name(player), asks=scout_questions()[asked].asks
            ),
            payload=tap(Verb.SCOUT, "open", asked, player, *_partner(players, player)),
        )
        for player, asked in prompts(desk, players)[:MOST_PROMPTS]
    ]


def _partner(players: Sequence[PlayerId], player: PlayerId) -> tuple[PlayerId, ...]:
    return tuple(one for one in players if one != player)
