"""How questions fare on the whole path, where a note or a score may be read instead."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace

from topic_examples import Example
from topic_figures import Figures
from topic_training import LeftOut, models_of
from voices import EVENING

from bot.chat import topic_model
from bot.chat.said import NoteSaid, PlanSaid, Question, ResultSaid, ScoreSaid, Unclear
from bot.chat.topic_model import TopicModel
from bot.chat.understand import understand
from knowledge.vocabulary import Topic


def whole_path_out_of_voice(left_out: Mapping[str, LeftOut]) -> dict[str, Figures]:
    """Each voice's figures on the whole path, read by the model that had not read it."""
    found = {}
    for voice, model in models_of(left_out).items():
        with _shipped_as(model):
            found[voice] = score_whole_path([one.example for one in left_out[voice].scored])
    return found


@contextmanager
def _shipped_as(model: TopicModel) -> Iterator[None]:
    """As if the bot had come with this model of topics."""
    shipped = topic_model.the_model
    topic_model.the_model = lambda: model  # type: ignore[assignment]
    try:
        yield
    finally:
        topic_model.the_model = shipped


def together(found: Mapping[str, Figures]) -> Figures:
    """The figures of all voices' questions taken together."""
    count = sum(one.questions for one in found.values())
    at_once, shown, misled, asked, either = (
        sum(one.shares[at] * one.questions for one in found.values()) / count for at in range(5)
    )
    return Figures(
        questions=count,
        at_once=at_once,
        shown=shown,
        misled=misled,
        asked=asked,
        either=either,
    )


def score_whole_path(examples: Sequence[Example]) -> Figures:
    """As `topic_figures.score`, but through `understand`; what is no question is misled."""
    answered = [(one, *_read(one)) for one in examples]
    count = len(answered)
    at_once = sum(bool(topics & one.right) for one, topics, _, _ in answered)
    shown = sum(bool((topics | offers) & one.right) for one, topics, offers, _ in answered)
    asked = sum(unclear for *_, unclear in answered)
    misled = sum(
        not unclear and not (topics | offers) & one.right
        for one, topics, offers, unclear in answered
    )
    return Figures(
        questions=count,
        at_once=at_once / count,
        shown=shown / count,
        misled=misled / count,
        asked=asked / count,
        either=at_once / count,
    )


def _read(example: Example) -> tuple[frozenset[Topic], frozenset[Topic], bool]:
    """The topics answered, those offered beside them, and whether it only asks back."""
    said = understand(example.text, chat=replace(EVENING, last_topic=example.after))
    questions = [one for one in said if isinstance(one, Question)]
    unclear = [one for one in said if isinstance(one, Unclear)]
    offers = [topic for one in questions for topic in one.offers]
    offers += [topic for one in unclear for topic in one.offers]
    told = [one for one in said if isinstance(one, NoteSaid | ScoreSaid | ResultSaid)]
    offers += [topic for one in told for topic in one.may_ask]
    topics = frozenset(one.topic for one in questions)
    if any(isinstance(one, PlanSaid) for one in said):
        topics |= {Topic.GAME_PLAN}  # another page of the plan: "and a plan B if that fails?"
    return topics, frozenset(offers), bool(unclear) and not questions
