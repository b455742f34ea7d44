"""Rally chances by the user's own numbers: for this match, or as the book's usual ones."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.question import BookSaid, SaidRates
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.stated_rates import rates_from_text, rates_to_text
from bot.chat.wording import wording

BASE_RATES = "base_rates"
"""The book's preference that holds them, as `rates_to_text` writes them; empty for none."""

Rates = tuple[float | None, float | None]


def base_rates(desk: Desk) -> Rates | None:
    """The book's usual (serving, receiving); None where nobody said any."""
    return rates_from_text(desk.preferences().get(BASE_RATES, ""))


def keep_rates(desk: Desk, said: SaidRates) -> None:
    """They hold for this match: one half said anew leaves the other as it was."""
    if said.serving is None and said.receiving is None:
        return
    rates = _over((said.serving, said.receiving), desk.context.rates)
    desk.context = replace(desk.context, rates=rates)


def _over(said: Rates, known: Rates | None) -> Rates:
    serving, receiving = known or (None, None)
    return (
        serving if said[0] is None else said[0],
        receiving if said[1] is None else said[1],
    )


def faulty_rates(desk: Desk, said: SaidRates) -> Reply:
    """What cannot be in the numbers said, what still holds, and how to say it."""
    lines = [wording("own_rates.check"), f"· {said.fault}"]
    if desk.context.rates is not None:
        lines.append(wording("own_rates.holds").format(rates=in_words(desk.context.rates)))
    return Reply(text="\n".join([*lines, wording("own_rates.form")]))


def set_base_rates(desk: Desk, said: BookSaid) -> Reply:
    """The book's usual rates from now on, undoable; a half not said stays as it was."""
    new = rates_from_text(said.words)
    if new is None:
        return Reply(text=wording("own_rates.form"))
    before = desk.preferences().get(BASE_RATES, "")
    rates = _over(new, rates_from_text(before))
    return _stored(desk, rates_to_text(SaidRates(serving=rates[0], receiving=rates[1])), before)


def _stored(desk: Desk, value: str, before: str) -> Reply:
    desk.book.prefer(BASE_RATES, value)
    desk.changed()
    change = desk.record("base_rates", {"value": value}, {"value": before})
    rates = rates_from_text(value)
    text = wording("own_rates.no_usual")
    if rates is not None:
        text = wording("own_rates.usual").format(rates=in_words(rates))
    return Reply(text=text, buttons=rows([undo_button(change)]))


def drop_rates(desk: Desk, said: BookSaid) -> Reply:
    """Said numbers count no longer: this match's, or the usual ones where they are meant."""
    words = said.words.split()
    if {"usual", "normal", "base"} & set(words):
        before = desk.preferences().get(BASE_RATES, "")
        return _stored(desk, "", before) if before else Reply(text=wording("own_rates.none"))
    rates = desk.context.rates
    if rates is None:
        return Reply(text=wording("own_rates.none"))
    change = desk.record("own_rates", {}, {"rates": list(rates)})
    desk.context = replace(desk.context, rates=None)
    return Reply(text=wording("own_rates.dropped"), buttons=rows([undo_button(change)]))


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
