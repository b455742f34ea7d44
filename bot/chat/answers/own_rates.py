"""Rally chances by the user's own numbers: for this match, or as the book's usual ones."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.asked import SaidCount, counts_from_json, counts_to_json
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import BookSaid, SaidRates
from bot.chat.stated_rates import rates_from_text, rates_to_text
from bot.chat.wording import wording
from scouting_db.values import ChangeId

BASE_RATES = "base_rates"
"""The book's preference that holds them, as `rates_to_text` writes them; empty for none."""

Rates = tuple[float | None, float | None]


def _usual_key(desk: Desk) -> str:
    """Where our pair's usual numbers stand: each other pair of a coach's book has its own."""
    pair = desk.view.pair_id(desk.ours)
    is_first = set(desk.ours) == set(desk.view.ours()[:2])
    return BASE_RATES if is_first or pair is None else f"{BASE_RATES}:{pair}"


def base_rates(desk: Desk) -> Rates | None:
    """The book's usual (serving, receiving); None where nobody said any."""
    return rates_from_text(desk.preferences().get(_usual_key(desk), ""))


Numbers = tuple[Rates | None, tuple[SaidCount, SaidCount] | None]
"""What was said of our rallies: chances and counts, each (serving, receiving)."""


def numbers_over(said: SaidRates, known: Numbers) -> Numbers:
    """What was said over what is known: a half said anew leaves the other as it was."""
    halves = (
        _half(said.serving, said.serving_count, known, 0),
        _half(said.receiving, said.receiving_count, known, 1),
    )
    rates, counts = (halves[0][0], halves[1][0]), (halves[0][1], halves[1][1])
    return (
        None if rates == (None, None) else rates,
        None if counts == (None, None) else counts,
    )


def _half(
    chance: float | None, count: SaidCount, known: Numbers, half: int
) -> tuple[float | None, SaidCount]:
    if chance is not None or count is not None:
        return chance, count
    rates, counts = known
    return rates[half] if rates else None, counts[half] if counts else None


def keep_rates(desk: Desk, said: SaidRates) -> list[Button]:
    """They hold for this match from now on; the buttons that take them back."""
    before = _known(desk)
    after = numbers_over(said, before)
    if said.says_nothing or after == before:
        return []
    return [
        Button(label=wording("own_rates.use_log"), payload=tap(Verb.USE_LOG, "log")),
        undo_button(_change(desk, before, after)),
    ]


def _known(desk: Desk) -> Numbers:
    return desk.context.rates, desk.context.counts


def _change(desk: Desk, before: Numbers, after: Numbers) -> ChangeId:
    desk.context = replace(desk.context, rates=after[0], counts=after[1])
    targets = _stored_numbers(after) | {"match": desk.context.match}
    return desk.record("own_rates", targets, _stored_numbers(before))


def _stored_numbers(numbers: Numbers) -> dict[str, Any]:
    rates, counts = numbers
    return {
        "rates": None if rates is None else list(rates),
        "counts": counts_to_json(counts),
    }


def numbers_as_stored(desk: Desk, stored: Mapping[str, Any]) -> None:
    """The numbers of a change put back, in the match they were told in."""
    rates, counts = stored.get("rates"), stored.get("counts")
    desk.context = replace(
        desk.context,
        rates=None if rates is None else (rates[0], rates[1]),
        counts=None if counts is None else counts_from_json(counts),
    )


def _over(said: Rates, known: Rates | None) -> Rates:
    serving, receiving = known or (None, None)
    return (
        serving if said[0] is None else said[0],
        receiving if said[1] is None else said[1],
    )


def faulty_rates(desk: Desk, said: SaidRates) -> Reply:
    """What cannot be in the numbers said, what still holds, and how to say it."""
    lines = [wording("own_rates.check"), f"· {said.fault}"]
    if _known(desk) != (None, None):
        lines.append(wording("own_rates.holds").format(rates=_all_in_words(_known(desk))))
    return Reply(text="\n".join([*lines, wording("own_rates.form")]))


def set_base_rates(desk: Desk, said: BookSaid) -> Reply:
    """The book's usual rates from now on, undoable; a half not said stays as it was."""
    new = rates_from_text(said.words)
    if new is None:
        return Reply(text=wording("own_rates.form"))
    before = desk.preferences().get(_usual_key(desk), "")
    rates = _over(new, rates_from_text(before))
    return _stored(desk, rates_to_text(SaidRates(serving=rates[0], receiving=rates[1])), before)


def _stored(desk: Desk, value: str, before: str) -> Reply:
    key = _usual_key(desk)
    desk.book.prefer(key, value)
    desk.changed()
    change = desk.record("base_rates", {"value": value, "key": key}, {"value": before})
    rates = rates_from_text(value)
    text = wording("own_rates.no_usual")
    if rates is not None:
        text = wording("own_rates.usual").format(rates=in_words(rates))
    return Reply(text=text, buttons=rows([undo_button(change)]))


def drop_rates(desk: Desk, said: BookSaid) -> Reply:
    """Said numbers count no longer: this match's, or the usual ones where they are meant."""
    words = said.words.split()
    if {"usual", "normal", "base"} & set(words):
        before = desk.preferences().get(_usual_key(desk), "")
        return _stored(desk, "", before) if before else Reply(text=wording("own_rates.none"))
    return use_log(desk)


def use_log(desk: Desk) -> Reply:
    """This match's said numbers count no longer: the rallies logged do."""
    if _known(desk) == (None, None):
        return Reply(text=wording("own_rates.none"))
    change = _change(desk, _known(desk), (None, None))
    return Reply(text=wording("own_rates.dropped"), buttons=rows([undo_button(change)]))


def _all_in_words(numbers: Numbers) -> str:
    rates, counts = numbers
    parts = [in_words(rates)] if rates is not None else []
    for one, half in zip(counts or (), ("serving", "receiving"), strict=False):
        if one is not None:
            parts.append(f"{one[0]} of {one[1]} {half}")
    return ", ".join(parts)


def in_words(rates: Rates) -> str:
    """`45 of 100 serving, 57 receiving`: what was said of it."""
    serving, receiving = rates
    parts = [] if serving is None else [f"{_of_hundred(serving)} of 100 serving"]
    if receiving is not None:
        of = "" if parts else " of 100"
        parts.append(f"{_of_hundred(receiving)}{of} receiving")
    return ", ".join(parts)


def _of_hundred(chance: float) -> str:
    return f"{100 * chance:.1f}".removesuffix(".0")
