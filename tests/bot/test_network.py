"""The network against the same formulas written out word by word, in plain Python numbers.

Gated recurrent unit: Cho et al., "Learning Phrase Representations using RNN Encoder-Decoder for
Statistical Machine Translation" (2014), in the variant of the PyTorch documentation of `GRU`
(the reset gate acts after the product with the state). From memory.
"""

from __future__ import annotations

from math import exp, tanh

import numpy as np
import pytest

from bot.chat.network import Network, in_bytes

WIDTH, HEADS = 3, 2
LINE = [[11, 30], [], [20], [11, 99]]
"""Keys of four words: one word without features, one with a key that nobody knows."""


@pytest.fixture
def network() -> Network:
    chance = np.random.default_rng(7)

    def some(*shape: int) -> np.ndarray[tuple[int, ...], np.dtype[np.float32]]:
        return chance.normal(size=shape).astype(np.float16).astype(np.float32)

    vectors, scale = in_bytes(some(3, WIDTH))
    return Network(
        keys=np.array([11, 20, 30], dtype=np.uint32),
        vectors=vectors,
        scale=scale,
        inward=some(2, WIDTH, 3 * WIDTH),
        inward_bias=some(2, 3 * WIDTH),
        across=some(2, WIDTH, 3 * WIDTH),
        across_bias=some(2, 3 * WIDTH),
        looks=some(HEADS, 3 * WIDTH),
        weighs=some(HEADS, 3 * WIDTH),
        bias=some(HEADS),
    )


def test_it_computes_what_the_formulas_say(network: Network) -> None:
    looked = network.read(LINE)
    for head in range(HEADS):
        score, places = by_hand(network, head)
        assert looked.scores[head] == pytest.approx(score, abs=1e-4)
        assert looked.places[head] == pytest.approx(places, abs=1e-5)


def by_hand(network: Network, head: int) -> tuple[float, list[float]]:
    alone = [vector(network, word) for word in LINE]
    forwards = states(network, 0, alone)
    backwards = states(network, 1, alone[::-1])[::-1]
    read = [f + b + a for f, b, a in zip(forwards, backwards, alone, strict=True)]
    weights = [exp(dot(network.looks[head], word)) for word in read]
    places = [weight / sum(weights) for weight in weights]
    seen = [
        sum(share * word[at] for share, word in zip(places, read, strict=True))
        for at in range(3 * WIDTH)
    ]
    return dot(network.weighs[head], seen) + float(network.bias[head]), places


def vector(network: Network, word: list[int]) -> list[float]:
    rows = [list(network.keys).index(key) for key in word if key in network.keys]
    return [
        sum(float(network.vectors[row, at]) * float(network.scale[row]) for row in rows)
        for at in range(WIDTH)
    ]


def states(network: Network, way: int, line: list[list[float]]) -> list[list[float]]:
    state = [0.0] * WIDTH
    found = []
    for word in line:
        given = [
            dot(network.inward[way, :, at], word) + float(network.inward_bias[way, at])
            for at in range(3 * WIDTH)
        ]
        carried = [
            dot(network.across[way, :, at], state) + float(network.across_bias[way, at])
            for at in range(3 * WIDTH)
        ]
        state = [step(given, carried, state, at) for at in range(WIDTH)]
        found.append(state)
    return found


def step(given: list[float], carried: list[float], state: list[float], at: int) -> float:
    reset = logistic(given[at] + carried[at])
    update = logistic(given[WIDTH + at] + carried[WIDTH + at])
    new = tanh(given[2 * WIDTH + at] + reset * carried[2 * WIDTH + at])
    return (1 - update) * new + update * state[at]


def logistic(value: float) -> float:
    return 1 / (1 + exp(-value))


def dot(weights: object, values: list[float]) -> float:
    return sum(float(w) * v for w, v in zip(np.asarray(weights), values, strict=True))


def test_it_survives_being_written_and_read(network: Network) -> None:
    again = Network.load(network.arrays())
    assert again.read(LINE).scores == pytest.approx(network.read(LINE).scores)


def test_vectors_in_bytes_are_off_by_half_a_step_at_most() -> None:
    vectors = np.random.default_rng(1).normal(size=(50, 8)).astype(np.float32)
    whole, scale = in_bytes(vectors)
    assert np.abs(whole * scale[:, None] - vectors).max() <= 0.51 * scale.max()
