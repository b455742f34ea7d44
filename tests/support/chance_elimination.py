"""The same chain solved by eliminating one state after the other, in any kind of number.

With `fractions.Fraction` the result is exact; with numpy arrays it holds for many rates at once.
"""

from __future__ import annotations

from typing import Any

from chance_oracles import Chain, Payoff, we_win


def eliminated(
    chain: Chain, serving: Any, receiving: Any, payoff: Payoff = we_win, per_rally: int = 0
) -> list[Any]:
    """Expected payoff in every state of `chain.playing`, exact if the rates are exact.

    1. Every state is an equation: value = Σ chance × value of the next states + known part.
    2. From the last scores back: solve an equation for its own state (divide by 1 − the chance to
       come straight back) and put it into every equation that mentions the state.
    3. When all are put in, only the known parts are left.
    """
    known: list[Any] = [per_rally + 0 * serving] * len(chain.playing)
    terms: list[dict[int, Any]] = [{} for _ in chain.playing]
    mentions: list[set[int]] = [set() for _ in chain.playing]
    for row, state in enumerate(chain.playing):
        chance = serving if state.we_serve else receiving
        for weight, column in ((chance, chain.on_win[row]), (1 - chance, chain.on_loss[row])):
            _add(chain, known, terms, mentions, payoff, row, int(column), weight)
    last_first = sorted(
        range(len(chain.playing)),
        key=lambda row: -chain.playing[row].ours - chain.playing[row].theirs,
    )
    for row in last_first:
        _solve_for(row, known, terms)
        for user in mentions[row] - {row}:
            _put_in(row, user, known, terms, mentions)
    return known


def _add(
    chain: Chain,
    known: list[Any],
    terms: list[dict[int, Any]],
    mentions: list[set[int]],
    payoff: Payoff,
    row: int,
    column: int,
    weight: Any,
) -> None:
    """One step of the chain, into the equation of its row."""
    if column >= len(chain.playing):
        known[row] = known[row] + weight * int(payoff(chain.ends[column - len(chain.playing)]))
        return
    terms[row][column] = terms[row].get(column, 0) + weight
    mentions[column].add(row)


def _solve_for(row: int, known: list[Any], terms: list[dict[int, Any]]) -> None:
    stays = terms[row].pop(row, 0)
    known[row] = known[row] / (1 - stays)
    terms[row] = {column: weight / (1 - stays) for column, weight in terms[row].items()}


def _put_in(
    row: int,
    user: int,
    known: list[Any],
    terms: list[dict[int, Any]],
    mentions: list[set[int]],
) -> None:
    weight = terms[user].pop(row, None)
    if weight is None:
        return
    known[user] = known[user] + weight * known[row]
    for column, chance in terms[row].items():
        terms[user][column] = terms[user].get(column, 0) + weight * chance
        mentions[column].add(user)
