"""How questions fare on the whole path, where a note or a score may be read instead."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from topic_examples import Example
from topic_figures import Figures
from voices import EVENING

from bot.chat.question import NoteSaid, Question, ResultSaid, ScoreSaid, Unclear
from bot.chat.understand import understand
from knowledge.vocabulary import Topic


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
    return topics, frozenset(offers), bool(unclear) and not questions
