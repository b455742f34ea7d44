"""Training and scoring of the topic model, shared by the training commands and the tests."""

from __future__ import annotations

import hashlib
import json
import tomllib
from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

import numpy as np
import scipy.linalg
import scipy.optimize
import scipy.sparse
from rapidfuzz import fuzz, process
from sklearn.linear_model import LogisticRegression

from bot.chat.feature_table import FeatureTable, Numbers
from bot.chat.features import Seen, extract
from bot.chat.lexicon import the_lexicon
from bot.chat.names import mentions_of
from bot.chat.phrases import all_phrases, sources_digest
from bot.chat.topic_model import (
    SHOWN,
    TOPICS,
    Band,
    Calibration,
    Curve,
    TopicGuess,
    TopicModel,
    chances_of,
    guess_of,
    recognise,
    signals_of,
)
from bot.chat.topic_rules import Said
from bot.chat.utterance import Mask, SlotToken, Utterance, read
from bot.chat.view import ChatView
from knowledge.vocabulary import PlayerId, Topic
from scouting_db.values import PlayerRow

TESTS = Path(__file__).parents[1]
VOICES = TESTS / "cases" / "voices"
OPEN_VOICES = ("nova", "gaffer", "walt", "rex", "dot", "sid")

RIDGE = 0.8  # chosen among 0.15 .. 1.6 on the open voices
VOICE_WEIGHT = 3.0  # a voice's line counts as three of ours: players type so, we imagined it
NEAR_DUPLICATE = 90  # token_set_ratio of rapidfuzz, 0 to 100
ASKED_AT_MOST = 0.045  # share of the open voices' questions that we ask back about
INT8_TOP = 127

# The people every voice was told to use (tests/cases/voices/BRIEF.md); all invented.
_OURS = ("Mira", "Tom")
_THEIRS = (
    "Chidi Okafor",
    "Sven Lindqvist",
    "Ana Ruiz",
    "Ben Hale",
    "Brandt",
    "Castellano",
    "Nguyen-Brandt",
    "O'Dell",
    "van der Meer",
    "Szymanski",
)
VIEW = ChatView(
    book=1,
    version=1,
    roster=tuple(
        PlayerRow(player=PlayerId(at), name=name, ours=name in _OURS)
        for at, name in enumerate((*_OURS, *_THEIRS))
    ),
    ours=(PlayerId(0), PlayerId(1)),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """A question with its topic, others that serve it as well, and the topic before it."""

    text: str
    topic: Topic
    also: frozenset[Topic] = frozenset()
    after: Topic | None = None

    @property
    def right(self) -> frozenset[Topic]:
        return self.also | {self.topic}


def our_examples() -> list[Example]:
    """The phrases, each `<score>` filled in with a score that changes from line to line."""
    return [
        Example(text=_with_score(phrase.text, at), topic=phrase.topic, after=phrase.after)
        for at, phrase in enumerate(all_phrases())
    ]


def _with_score(text: str, at: int) -> str:
    return text.replace("<score>", f"{at % 11}-{(at * 7 + 3) % 11}")


def voice_examples(voice: str) -> list[Example]:
    """A voice's questions. Where `after` is a question's words, its topic is looked up."""
    lines = (VOICES / f"{voice}.questions.jsonl").read_text(encoding="utf-8").splitlines()
    rows = [json.loads(line) for line in lines if line.strip()]
    topic_of = {row["text"]: row["topic"] for row in rows}
    return [_example(row, topic_of) for row in rows]


def _example(row: dict[str, Any], topic_of: dict[str, str]) -> Example:
    after = row.get("after")
    if after and after not in set(Topic):
        after = topic_of.get(after, row["topic"])  # a follow-up stays with its topic
    also = row.get("also") or []
    return Example(
        text=row["text"],
        topic=Topic(row["topic"]),
        also=frozenset(map(Topic, [also] if isinstance(also, str) else also)),
        after=Topic(after) if after else None,
    )


@cache
def utterance_of(text: str) -> Utterance:
    """The text read as in a chat whose roster holds the people of the brief."""
    masks = [
        Mask(
            span=mention.span,
            token=SlotToken.OURS
            if mention.players and all(player in VIEW.ours for player in mention.players)
            else SlotToken.NAME,
        )
        for mention in mentions_of(text, VIEW)
        if not mention.pronoun
    ]
    return read(text, masks)


@cache
def _common_words() -> frozenset[str]:
    text = files("bot.chat").joinpath("data/common_words.txt").read_text(encoding="utf-8")
    return frozenset(
        word for line in text.splitlines() if not line.startswith("#") for word in line.split()
    )


def known_words() -> frozenset[str]:
    """Words that are never repaired: everyday English and those of our phrases."""
    ours = (word for one in our_examples() for word in utterance_of(one.text).words)
    return _common_words() | frozenset(ours)


def see(examples: Iterable[Example], known: frozenset[str]) -> list[Seen]:
    lexicon = the_lexicon()
    return [
        extract(utterance_of(one.text), lexicon, known=known, context_topic=one.after)
        for one in examples
    ]


def matrix_of(seen: Sequence[Seen], table: FeatureTable) -> scipy.sparse.csr_matrix:
    """One row a message; a feature that occurs in two groups is summed."""
    vectors = [table.vector(one) for one in seen]
    ends = np.cumsum([0, *(len(vector.rows) for vector in vectors)])
    values = np.concatenate([vector.values for vector in vectors])
    columns = np.concatenate([vector.rows for vector in vectors])
    return scipy.sparse.csr_matrix((values, columns, ends), shape=(len(seen), len(table.keys)))


def ridge(rows: scipy.sparse.csr_matrix, topics: Sequence[int], weight: Numbers) -> Numbers:
    """Weights by bucket and topic: ridge regression in its dual form (one solve, exact).

    Minimises sum_i weight_i |rows_i W - target_i|² + RIDGE |W|²; W = rows' (K + RIDGE/weight)⁻¹ T.
    """
    targets = np.full((len(topics), len(TOPICS)), -1 / len(TOPICS), dtype=np.float32)
    targets[np.arange(len(topics)), topics] = 1
    kernel = (rows @ rows.T).toarray().astype(np.float32)
    kernel[np.diag_indices_from(kernel)] += RIDGE / weight
    factor = scipy.linalg.cho_factor(kernel, overwrite_a=True, check_finite=False)
    result: Numbers = rows.T @ scipy.linalg.cho_solve(factor, targets, check_finite=False)
    return result


def quantised(weights: Numbers) -> tuple[np.ndarray[Any, np.dtype[np.int8]], Numbers]:
    """Whole numbers of one byte and the scale of each topic's column."""
    scale = np.abs(weights).max(axis=0) / INT8_TOP
    return np.rint(weights / scale).astype(np.int8), scale.astype(np.float32)


def train(
    examples: Sequence[Example], weight: Numbers, calibration: Calibration, recipe: dict[str, Any]
) -> TopicModel:
    known = known_words()
    seen = see(examples, known)
    table = FeatureTable.of(seen)
    topics = [TOPICS.index(one.topic) for one in examples]
    weights, scale = quantised(ridge(matrix_of(seen, table), topics, weight))
    return TopicModel(
        table=table,
        weights=weights,
        scale=scale,
        known=known,
        calibration=calibration,
        recipe=recipe,
    )


def near_duplicates(train_: Sequence[Example], kept_out: Sequence[Example]) -> np.ndarray[Any, Any]:
    """Which training lines nearly repeat a line that is kept out, and must go."""
    likeness = process.cdist(
        [one.text.lower() for one in train_],
        [one.text.lower() for one in kept_out],
        scorer=fuzz.token_set_ratio,
        score_cutoff=NEAR_DUPLICATE + 1,
        dtype=np.uint8,
    )
    return np.asarray(likeness.any(axis=1))


@dataclass(frozen=True, slots=True, kw_only=True)
class Scored:
    """A question scored by a model that had not read its writer."""

    example: Example
    seen: Seen
    scores: Numbers


def leave_one_voice_out() -> dict[str, list[Scored]]:
    """Each open voice scored by a model trained on our phrases and the other five voices."""
    known = known_words()
    ours = our_examples()
    voices = {voice: voice_examples(voice) for voice in OPEN_VOICES}
    seen = {one: see(examples, known) for one, examples in {"": ours, **voices}.items()}
    found = {}
    for voice, kept_out in voices.items():
        others = {name: examples for name, examples in voices.items() if name != voice}
        examples = [*ours, *(one for each in others.values() for one in each)]
        rows = [*seen[""], *(one for name in others for one in seen[name])]
        stays = np.flatnonzero(~near_duplicates(examples, kept_out))
        table = FeatureTable.of([rows[at] for at in stays])
        weights = ridge(
            matrix_of([rows[at] for at in stays], table),
            [TOPICS.index(examples[at].topic) for at in stays],
            weights_of(len(ours), len(examples))[stays],
        )
        scores = matrix_of(seen[voice], table) @ weights
        found[voice] = [
            Scored(example=one, seen=s, scores=row)
            for one, s, row in zip(kept_out, seen[voice], scores, strict=True)
        ]
    return found


def weights_of(ours: int, total: int) -> Numbers:
    """How much each example counts: ours first, then the voices'."""
    return np.where(np.arange(total) < ours, 1.0, VOICE_WEIGHT).astype(np.float32)


def calibrate(scored: Sequence[Scored]) -> Calibration:
    """Curves fitted on questions whose writers the model had not read."""
    sharpness = _sharpness(scored)
    signals, right, shown = [], [], []
    for one in scored:
        chances = chances_of(one.scores, sharpness)
        signals.append(signals_of(one.scores, chances, one.seen))
        best = [TOPICS[at] for at in np.argsort(-one.scores)]
        right.append(best[0] in one.example.right)
        shown.append(bool(set(_shown_if_answered(best)) & one.example.right))
    table = np.array(signals)
    shown_curve = _curve(table, np.array(shown))
    reach = [shown_curve.at(row) for row in signals]
    return Calibration(
        sharpness=sharpness,
        right=_curve(table, np.array(right)),
        shown=shown_curve,
        ask_below=float(np.quantile(reach, ASKED_AT_MOST)),
    )


def _shown_if_answered(best: Sequence[Topic]) -> list[Topic]:
    others = [topic for topic in best[1:] if topic is not Topic.SMALLTALK_OR_UNKNOWN]
    return [best[0], *others[: SHOWN - 1]]


def _sharpness(scored: Sequence[Scored]) -> float:
    """The softmax scale under which the right topics are least surprising."""

    def surprise(sharpness: float) -> float:
        chances = [chances_of(one.scores, sharpness) for one in scored]
        return -float(
            np.mean(
                [
                    np.log(max(row[TOPICS.index(topic)] for topic in one.example.right))
                    for row, one in zip(chances, scored, strict=True)
                ]
            )
        )

    found = scipy.optimize.minimize_scalar(surprise, bounds=(1, 40), method="bounded")
    return round(float(found.x), 3)


def _curve(table: Numbers, came_true: np.ndarray[Any, Any]) -> Curve:
    """Logistic regression with a slight pull to zero, on standardised signals."""
    centre, spread = table.mean(axis=0), table.std(axis=0) + np.finfo(np.float32).eps
    fitted = LogisticRegression(C=10).fit((table - centre) / spread, came_true)
    weights = fitted.coef_[0] / spread
    bias = float(fitted.intercept_[0] - weights @ centre)
    return Curve(round(bias, 5), tuple(round(float(w), 5) for w in weights))


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """How a set of questions fared: shares of all its questions."""

    questions: int
    at_once: float
    shown: float
    misled: float
    asked: float
    either: float

    @property
    def shares(self) -> tuple[float, ...]:
        return self.at_once, self.shown, self.misled, self.asked, self.either

    def __str__(self) -> str:
        return f"{self.questions:5d} " + " ".join(f"{share:8.1%}" for share in self.shares)

    def row(self) -> str:
        """The figures as cells of a Markdown table."""
        return f"{self.questions} | " + " | ".join(f"{share:.1%}" for share in self.shares)


HEADER = "    n  at once    shown   misled    asked   either"


@cache
def either_pairs() -> frozenset[frozenset[Topic]]:
    data = tomllib.loads((TESTS / "cases" / "topics_either.toml").read_text(encoding="utf-8"))
    return frozenset(frozenset(map(Topic, pair["topics"])) for pair in data["pair"])


def figures(pairs: Sequence[tuple[Example, TopicGuess]]) -> Figures:
    """At once: answered rightly. Shown: right topic to be seen. Misled: answered, not shown."""
    answered = [(one, guess) for one, guess in pairs if guess.band is not Band.UNSURE]
    at_once = sum(guess.topic in one.right for one, guess in answered)
    filed_near = sum(_is_either(guess.topic, one) for one, guess in answered)
    misled = sum(not set(guess.shown) & one.right for one, guess in answered)
    count = len(pairs)
    return Figures(
        questions=count,
        at_once=at_once / count,
        shown=sum(bool(set(guess.shown) & one.right) for one, guess in pairs) / count,
        misled=misled / count,
        asked=1 - len(answered) / count,
        either=(at_once + filed_near) / count,
    )


def _is_either(topic: Topic, example: Example) -> bool:
    near = any(frozenset((topic, right)) in either_pairs() for right in example.right)
    return topic not in example.right and near


def out_of_voice_figures(found: dict[str, list[Scored]]) -> dict[str, Figures]:
    """Each voice's figures, its chances calibrated on the other voices only."""
    return {
        voice: figures(
            _guesses(scored, calibrate([x for v in found if v != voice for x in found[v]]))
        )
        for voice, scored in found.items()
    }


def _guesses(
    scored: Sequence[Scored], calibration: Calibration
) -> list[tuple[Example, TopicGuess]]:
    found = []
    for one in scored:
        chances = chances_of(one.scores, calibration.sharpness)
        signals = signals_of(one.scores, chances, one.seen)
        said = Said(words=utterance_of(one.example.text).words, match_on=False)
        found.append((one.example, guess_of(calibration, one.scores, signals, said)))
    return found


def score(examples: Sequence[Example], model: TopicModel) -> Figures:
    """The figures of a finished model on questions it has not seen."""
    return figures(
        [
            (
                one,
                recognise(
                    utterance_of(one.text), context_topic=one.after, match_on=False, model=model
                ),
            )
            for one in examples
        ]
    )


def train_shipped() -> tuple[TopicModel, dict[str, Figures]]:
    """The model on all our phrases and all open voices, with its out-of-voice figures."""
    found = leave_one_voice_out()
    calibration = calibrate([one for scored in found.values() for one in scored])
    ours = our_examples()
    examples = [*ours, *(one for voice in OPEN_VOICES for one in voice_examples(voice))]
    model = train(
        examples,
        weights_of(len(ours), len(examples)),
        calibration,
        _recipe(calibration, len(ours), len(examples)),
    )
    return model, out_of_voice_figures(found)


def _recipe(calibration: Calibration, ours: int, total: int) -> dict[str, Any]:
    return {
        "sources": sources_digest(),
        "voices": voices_digest(),
        "phrases": ours,
        "examples": total,
        "trained_on": ["bot/chat/data/phrases", *OPEN_VOICES],
        "command": "python tests/train/train_topics.py",
        "ridge": RIDGE,
        "voice_weight": VOICE_WEIGHT,
        "calibration": asdict(calibration),
    }


def voices_digest() -> str:
    """A hash of the open voices' questions."""
    digest = hashlib.sha256()
    for voice in OPEN_VOICES:
        digest.update((VOICES / f"{voice}.questions.jsonl").read_bytes())
    return digest.hexdigest()
