"""Details of a rally in the book: read, merged, counted for the rates, and told back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.tag_taps import tags_rallies
from bot.chat.match_log import format_from_json
from bot.chat.message import read_message
from bot.chat.rally_details import RallyReading, read_rally
from bot.chat.rally_kept import KeptRally, merged
from bot.chat.rally_of_log import rally_at
from bot.chat.said import RallyDetails, ToldChoice
from bot.chat.view import ChatView
from bot.chat.wording import wording
from knowledge.dataclass import dataclass
from knowledge.game import GameState, receiver, server
from knowledge.rally_rates import ToldRally, ended_by, rates_of
from knowledge.vocabulary import Ending, Hand, PlayerId, Stroke, Topic, Trait
from scouting_db.book import Book
from scouting_db.values import ChoiceRow, MatchId, Part, RallyRow, RateRow

_OF_EVERY_RALLY = frozenset([Topic.AIM_SERVE, Topic.AIM_RETURN, Topic.THIRD_SHOT])
"""Chosen in every rally, so that who tags each one leaves none out. An attack or a dink told
afterwards is always one that was worth telling."""

_BY_WHO_SERVES = frozenset([Stroke.SERVE, Stroke.RETURN])
_WE_SERVING = frozenset([Topic.AIM_SERVE, Topic.THIRD_SHOT])
_HIPS = {"right_hip": Hand.RIGHT, "left_hip": Hand.LEFT}


@dataclass(frozen=True, slots=True, kw_only=True)
class Played:
    """A counted rally: whose it was, the game before it, and who was on court."""

    match: MatchId
    n: int
    won_by_us: bool
    before: GameState
    is_serve_known: bool
    ours: tuple[PlayerId, ...]
    theirs: tuple[PlayerId, ...]


def played_at(desk: Desk, match: MatchId, n: int) -> Played | None:
    """The rally of that number, if it counts; of any match of this book."""
    row = desk.match_of(match)
    if row is None:
        return None
    found = rally_at(desk.entries_of(match), format_from_json(row.format), n)
    if found is None:
        return None
    rally, is_known = found
    return Played(
        match=match,
        n=n,
        won_by_us=rally.won_by_us,
        before=rally.before,
        is_serve_known=is_known,
        ours=row.our_pair.players if row.our_pair else desk.ours,
        theirs=row.their_pair.players if row.their_pair else desk.context.theirs,
    )


def kept_of(desk: Desk, match: MatchId, n: int) -> KeptRally:
    """What is kept of the rally; an empty row where nothing is."""
    rallies, choices, rates = desk.recall(
        ("told", match), lambda: _told(desk.book, match), Part.LOG
    )
    rows = [one for one in rallies if one.n == n]
    return KeptRally(
        row=rows[0] if rows else RallyRow(match=match, n=n),
        choices=tuple(one for one in choices if one.n == n),
        rates=tuple(one for one in rates if one.n == n),
    )


def _told(
    book: Book, match: MatchId
) -> tuple[tuple[RallyRow, ...], tuple[ChoiceRow, ...], tuple[RateRow, ...]]:
    return book.rallies(match), book.choices_in(match), book.rates(match)


def keep(desk: Desk, kept: KeptRally) -> None:
    """The rally's rows in place of what they were."""
    match, n = kept.row.match, kept.row.n
    desk.book.tell_rally(kept.row)
    desk.book.drop_choices(match, n)
    for one in kept.choices:
        desk.book.choose(one)
    desk.book.count_rates(match, n, kept.rates)


def view_of(desk: Desk, played: Played) -> ChatView:
    """The chat as of that rally's match."""
    return replace(desk.chat_view(), ours=played.ours, theirs=played.theirs, match_on=True)


def reading(
    desk: Desk,
    played: Played,
    text: str,
    *,
    instead: PlayerId | None = None,
    is_remark: bool = False,
) -> RallyReading:
    """What the words say of that rally."""
    view = view_of(desk, played)
    return read_rally(
        read_message(text, view),
        view,
        won_by_us=played.won_by_us,
        instead=instead,
        is_remark=is_remark,
    )


def with_told(desk: Desk, played: Played, kept: KeptRally, told: RallyDetails) -> KeptRally:
    """What is kept, with what is told now: later words correct earlier ones."""
    row = merged(kept.row, told, won_by_us=played.won_by_us, ours=played.ours)
    if not _can_have_hit(played, row):
        row = replace(row, stroke=None, wing=None)
    now = replace(kept, row=row, choices=_choices(desk, played, kept, told.choices))
    return replace(now, rates=_rates(desk, played, now))


def _choices(
    desk: Desk, played: Played, kept: KeptRally, told: Sequence[ToldChoice]
) -> tuple[ChoiceRow, ...]:
    """One per topic. Told after the rally's end it is the weaker evidence: what went well is
    told more readily, unless choices are recorded for every rally."""
    found = {one.topic: one for one in kept.choices}
    tags = tags_rallies(desk)
    for one in told:
        if not _fits(played, one.topic):
            continue
        option = _settled_hip(desk, one.option)
        before = found.get(one.topic)
        is_same = before is not None and before.option == option
        found[one.topic] = ChoiceRow(
            match=played.match,
            n=played.n,
            topic=one.topic,
            option=option,
            against=one.against,
            tagged_before=(tags and one.topic in _OF_EVERY_RALLY)
            or (is_same and before is not None and before.tagged_before),
        )
    return tuple(found[topic] for topic in sorted(found))


def _fits(played: Played, topic: Topic) -> bool:
    """Whether we can have chosen that, by who served."""
    if not played.is_serve_known or topic not in _OF_EVERY_RALLY:
        return True
    return played.before.we_serve is (topic in _WE_SERVING)


def _can_have_hit(played: Played, row: RallyRow) -> bool:
    """Whether the side that ended it hit that stroke: who serves returns no serve."""
    if not played.is_serve_known or row.ending is None or row.stroke not in _BY_WHO_SERVES:
        return True
    by_us = played.won_by_us is not row.ending.is_error
    return (by_us is played.before.we_serve) is (row.stroke is Stroke.SERVE)


def served_otherwise(desk: Desk, played: Played, kept: KeptRally) -> str | None:
    """Who served by the log, where the words told last are of the other side's serve."""
    if not kept.lines:
        return None
    told, blank = reading(desk, played, kept.lines[-1]).details, replace(kept.row, stroke=None)
    row = merged(blank, told, won_by_us=played.won_by_us, ours=played.ours)
    if _can_have_hit(played, row):
        return None
    return wording("rally.you_served" if played.before.we_serve else "rally.they_served")


def _settled_hip(desk: Desk, option: str) -> str:
    """A right or left hip as the paddle's or the other, where the hand is known."""
    hip, _, player = option.partition(":")
    if hip not in _HIPS:
        return option
    hand = hand_of(desk, PlayerId(int(player)))
    if hand is None:
        return f"{player}:attack"
    return f"paddle:{player}" if hand is _HIPS[hip] else f"other:{player}"


def hand_of(desk: Desk, player: PlayerId) -> Hand | None:
    """The hand that the book's notes say somebody plays with; None where they don't or differ."""
    told = {
        one.value.value
        for one in desk.book.observations([player])
        if one.trait is Trait.HAND and not one.denied
    }
    found = told.pop() if len(told) == 1 else None
    return Hand(found) if found in (Hand.LEFT, Hand.RIGHT) else None


def _rates(desk: Desk, played: Played, kept: KeptRally) -> tuple[RateRow, ...]:
    return tuple(
        RateRow(match=played.match, n=played.n, player=one.player, rate=one.rate, made=one.made)
        for one in sorted(
            rates_of(told_rally(desk, played, kept)), key=lambda one: (one.player, one.rate)
        )
    )


def told_rally(desk: Desk, played: Played, kept: KeptRally) -> ToldRally:
    """The rally as the rates read it; depth and the third are read from its words again."""
    said = [reading(desk, played, line).details for line in kept.lines]
    deep = [one.is_deep for one in said if one.is_deep is not None]
    forward = [one for one in said if one.forward is not None]
    game, known = played.before, played.is_serve_known
    serving, receiving = played.ours, played.theirs
    if not game.we_serve:
        serving, receiving = receiving, serving
    row = kept.row
    return ToldRally(
        serving=serving,
        receiving=receiving,
        won_by_serving=played.won_by_us is game.we_serve,
        server=server(game) if known else None,
        receiver=receiver(game) if known else None,
        ending=row.ending,
        by=row.by_player,
        stroke=row.stroke,
        is_deep=deep[-1] if deep else None,
        forward=forward[-1].forward if forward else None,
        third_by=forward[-1].third_by if forward else None,
    )


def who_ended(desk: Desk, played: Played, kept: KeptRally) -> PlayerId | None:
    """Whose winner or error it was: told, or settled by who served and who received."""
    return ended_by(told_rally(desk, played, kept))


def noted(desk: Desk, played: Played, kept: KeptRally) -> str | None:
    """What was understood of the rally, in a few words; None for nothing."""
    told = told_rally(desk, played, kept)
    parts = [_ending_words(desk, played, kept, ended_by(told))] if told.ending else []
    parts += [_choice_words(desk, one) for one in kept.choices]
    if told.is_deep is not None:
        parts.append(wording("rally.return_deep" if told.is_deep else "rally.return_short"))
    if told.forward is not None:
        parts.append(wording("rally.third_in" if told.forward else "rally.third_not_in"))
    return wording("rally.noted").format(what=", ".join(parts)) if parts else None


def _ending_words(desk: Desk, played: Played, kept: KeptRally, by: PlayerId | None) -> str:
    row = kept.row
    assert row.ending is not None, "told only of a rally whose ending is known"
    is_ours = played.won_by_us is not row.ending.is_error
    whose = (
        wording("rally.our" if is_ours else "rally.their")
        if by is None or desk.view.player(by) is None
        else wording("rally.of").format(name=desk.view.short_name(by))
    )
    forced = wording("rally.forced") if row.ending is Ending.FORCED_ERROR else None
    stroke = None if row.stroke is None else wording(f"rally.{row.stroke}")
    if row.stroke is Stroke.SERVE and not row.ending.is_error:
        return f"{whose} {wording('rally.ace')}"
    words = [whose, forced, row.wing, stroke, wording(_KIND_OF_END[row.ending.is_error])]
    return " ".join(str(word) for word in words if word)


_KIND_OF_END = {True: "rally.error", False: "rally.winner"}


def _choice_words(desk: Desk, one: ChoiceRow) -> str:
    option = one.option
    for part in option.split(":"):
        if part.isdigit() and desk.view.player(PlayerId(int(part))) is not None:
            option = option.replace(part, desk.view.short_name(PlayerId(int(part))))
    words = option.replace(":", " ")
    return wording(f"rally.chose_{one.topic}").format(option=_spot_words(words))


def _spot_words(words: str) -> str:
    """As a player calls it: `paddle Okafor` is Okafor's paddle hip."""
    spot, _, name = words.partition(" ")
    if spot in ("paddle", "other") and name:
        return wording(f"rally.hip_{spot}").format(name=name)
    return "T" if words == "t" else words.removesuffix(" attack").removeprefix("at ")
