"""How questions fare on the whole path, where a note or a score may be read instead."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace

from topic_examples import Example
from topic_figures import Figures
from topic_training import LeftOut, models_of
from voices import EVENING

from bot.chat import topic_model
from bot.chat.said import NoteSaid, PlanSaid, Question, ResultSaid, ScoreSaid, Unclear
from bot.chat.topic_model import TopicModel
from bot.chat.understand import understand
from knowledge.vocabulary import Topic


@dataclass(frozen=True, slots=True, kw_only=True)
class Read:
    """A question as the whole path read it: topics answered, those offered beside them.

    `asked_back`: how many topics each reply offers that only asks back.
    """

    example: Example
    topics: frozenset[Topic]
    offers: frozenset[Topic]
    asked_back: tuple[int, ...]

    @property
    def unclear(self) -> bool:
        return bool(self.asked_back) and not self.topics

    @property
    def shows_it(self) -> bool:
        return bool((self.topics | self.offers) & self.example.right)


def read_out_of_voice(left_out: Mapping[str, LeftOut]) -> dict[str, list[Read]]:
    """Each voice's questions on the whole path, read by the model that had not read it."""
    found = {}
    for voice, model in models_of(left_out).items():
        with _shipped_as(model):
            found[voice] = [_read(one.example) for one in left_out[voice].scored]
    return found


def whole_path_out_of_voice(left_out: Mapping[str, LeftOut]) -> dict[str, Figures]:
    """Each voice's figures of that."""
    return {voice: figures_of(read) for voice, read in read_out_of_voice(left_out).items()}


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
    """As `topic_figures.score`, but through `understand`."""
    return figures_of([_read(one) for one in examples])


def figures_of(read: Sequence[Read]) -> Figures:
    """What is no question is misled."""
    count = len(read)
    at_once = sum(bool(one.topics & one.example.right) for one in read) / count
    return Figures(
        questions=count,
        at_once=at_once,
        shown=sum(one.shows_it for one in read) / count,
        misled=sum(not one.unclear and not one.shows_it for one in read) / count,
        asked=sum(one.unclear for one in read) / count,
        either=at_once,
    )


def _read(example: Example) -> Read:
    said = understand(example.text, chat=replace(EVENING, last_topic=example.after))
    questions = [one for one in said if isinstance(one, Question)]
    unclear = [one for one in said if isinstance(one, Unclear)]
    told = [one for one in said if isinstance(one, NoteSaid | ScoreSaid | ResultSaid)]
    offers = [topic for one in questions for topic in one.offers]
    offers += [topic for one in unclear for topic in one.offers]
    offers += [topic for one in told for topic in one.may_ask]
    topics = frozenset(one.topic for one in questions)
    if any(isinstance(one, PlanSaid) for one in said):
        topics |= {Topic.GAME_PLAN}  # another page of the plan: "and a plan B if that fails?"
    return Read(
        example=example,
        topics=topics,
        offers=frozenset(offers),
        asked_back=tuple(len(one.offers) for one in unclear),
    )
