"""Which rule a question asks for: the likeliest by a model of ways of asking, sure only if it is.

1. The chance of each rule by the words, pairs of words and runs of letters (reading.entry_model).
2. Sure: the rule alone. Half sure: the rule, and the next two beside it. Unsure: no rule, and the
   likeliest three to tap. What very likely asks for no rule of ours: likewise, and it is said.
3. A question that leans on the one before is read together with it.
"""

from __future__ import annotations

from functools import cache

from knowledge.dataclass import dataclass
from knowledge.reading.entry_model import Band, EntryModel, Kind, Likely, entry_model
from knowledge.rulebook.broken_paddle import PADDLE_CHANGE, tells_of_broken_paddle
from knowledge.rulebook.entry import Rule, rule_named
from knowledge.rulebook.forms import Forms, Writer, forms_by_rule
from knowledge.rulebook.hurt_awaited import MEDICAL, waits_for_hurt
from knowledge.rulebook.landed_in import lands_in_kitchen
from knowledge.rulebook.told_apart import (
    KITCHEN_ENTER,
    MOMENTUM,
    is_of_a_foot_in,
    rule_told_apart,
    tells_of_a_bounce,
)
from knowledge.rulebook.told_of_rally import rule_of_rally
from knowledge.rulebook.told_people import rule_of_people
from knowledge.rulebook.touching import rule_of_touch
from knowledge.rulebook.volleyed_too_soon import TWO_BOUNCES, tells_of_a_volley_too_soon
from knowledge.rulebook.whose_point import asks_only_whose
from knowledge.rulebook.words import Vocabulary, read_vocabulary, tokens_of, words_table

MENDED_MOST = 600
"""Characters of a text whose slips are put right: no writer's longest line has more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The rule meant, if one fits, and others that may be; `others` are the likeliest first.

    `has_none`: very likely nothing of ours answers it.
    """

    rule: Rule | None
    others: tuple[Rule, ...] = ()
    has_none: bool = False

    @property
    def is_sure(self) -> bool:
        return self.rule is not None and not self.others


@dataclass(frozen=True, slots=True, kw_only=True)
class Finder:
    """Finds rules by a model; `vocabulary` tells what leans on the question before."""

    model: EntryModel
    vocabulary: Vocabulary

    def find(self, said: str) -> Found:
        """The rule that a text asks for, and what else it may mean."""
        likely = self._likely(said)
        if likely is None or (likely.band is not Band.SURE and not self._asked_of(said)):
            return Found(rule=None, has_none=True)
        return _found(likely)

    def _likely(self, said: str) -> Likely | None:
        """By the text as it stands; where that is not sure, by its words put right, if surer."""
        likely = self.model.likely(said)
        if likely is not None and likely.band is Band.SURE:
            return likely
        mended = " ".join(self.vocabulary.spelled(token) for token in tokens_of(said[:MENDED_MOST]))
        again = self.model.likely(mended)
        if likely is None or again is None:
            return again or likely
        return max(likely, again, key=lambda one: one.ranked[0][1])

    def _asked_of(self, said: str) -> frozenset[str]:
        """What a text speaks of that rules are asked for: of "is that a fault" nothing."""
        return self.vocabulary.ideas(said[:MENDED_MOST]) & self.vocabulary.ideas_known

    def leans(self, said: str) -> bool:
        """Whether a text speaks of nothing by itself: "and with a ref, who calls it then?"."""
        return self._asked_of(said) <= self.vocabulary.leaning


def _found(likely: Likely) -> Found:
    shown = tuple(rule for id in likely.ids if (rule := rule_named(id)) is not None)
    if likely.is_none or likely.band is Band.UNSURE:
        return Found(rule=None, others=shown, has_none=likely.is_none)
    return Found(rule=shown[0], others=() if likely.band is Band.SURE else shown[1:])


def vocabulary_of(forms: Forms) -> Vocabulary:
    """The words file, with the words of all ways of asking that are spelled as they should be."""
    spelled = [
        form.text for many in forms.values() for form in many if form.writer is not Writer.SLIPS
    ]
    return read_vocabulary(words_table(), spelled)


@cache
def _finder() -> Finder:
    return Finder(model=entry_model(Kind.RULES), vocabulary=vocabulary_of(forms_by_rule()))


def find_rule(words: str, *, before: str = "") -> Found:
    """The rule that the words ask for; `before` is the question that they go on from.

    A question that stands by itself is read alone, one that leans together with the one before;
    where that stays unsure ("and with a referee?"), the one before is still meant.
    """
    if asks_only_whose(words):
        return _only_before(before)
    found = _find(words, before=before)
    likeliest = None if found.rule is None else found.rule.name
    decided = None
    if lands_in_kitchen(words, before=before):
        decided = KITCHEN_ENTER if tells_of_a_bounce(f"{before} {words}") else MOMENTUM
    if tells_of_broken_paddle(words):
        decided = PADDLE_CHANGE
    decided = decided or rule_told_apart(words, likeliest) or rule_of_touch(words, likeliest)
    decided = decided or rule_of_rally(words, likeliest, before=before)
    decided = decided or rule_of_people(words, likeliest, before=before)
    if decided is None and tells_of_a_volley_too_soon(words):
        decided = TWO_BOUNCES
    if decided is None and waits_for_hurt(words, before=before):
        decided = MEDICAL
    if before and decided is None and tells_of_a_bounce(words):
        earlier = _finder().find(before).rule
        if earlier is not None and is_of_a_foot_in(earlier.name):
            decided = KITCHEN_ENTER
    return found if decided is None else Found(rule=rule_named(decided))


def _only_before(before: str) -> Found:
    """What the question before asked for; "is that our point" alone tells of nothing."""
    return find_rule(before) if before else Found(rule=None)


def _find(words: str, *, before: str) -> Found:
    finder = _finder()
    alone = finder.find(words)
    if not before:
        return alone
    leans = finder.leans(words)
    if alone.is_sure and not leans:
        return alone
    both, earlier = finder.find(f"{before} {words}"), finder.find(before)
    if both.is_sure or earlier.rule is None:
        return both if both.rule is not None else alone
    return earlier if leans else both
