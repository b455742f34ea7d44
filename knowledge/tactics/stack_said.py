"""What the question and the pair's habits tell of stacking: new or not, behind, hot, a habit."""

from __future__ import annotations

import re
from typing import Final

from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.situation import Agreement, Familiarity, Formation, Situation
from knowledge.tactics import stack_sizes as sizes
from knowledge.tactics.stack_formations import Plan
from knowledge.tactics.told_ball import plain_words
from knowledge.vocabulary import AgreementKey, PlayerId, Trait

_NEW = regex(
    r"\b(?:new (?:partner|pair|together)|(?:im|i am|were|we are) new with|"
    r"first time (?:together|with)|just met|a stranger|"
    r"(?:never|not|havent|hardly) (?:ever )?played (?:together|with))\b"
)
_NEVER = regex(
    r"\b(?:(?:never|not ever|havent|have not|hardly ever) (?:ever )?(?:done (?:it|that|this)|"
    r"stacked|stack|tried (?:it|stacking|this|that))|first time stacking|"
    r"(?:new|no good) (?:to|at) stacking|try (?:it|stacking) (?:now|today)|"
    r"first time (?:we|wed|we would) stack)\b"
)
_USED = regex(
    r"\b(?:we (?:always|usually|normally|mostly|already|do) stack|keep(?: on)? stacking|unstack|"
    r"stop stacking|we stack (?:now|already)|our stack|while stacking|we(?:ve| have) been stacking|"
    r"used to stacking|because of the stack|got lost stacking)\b"
)
_AT_CROSSER = regex(
    r"\bthey (?:\w+ ){0,2}(?:hit|hitting|return|returning|go|going|attack|drive) (?:\w+ ){0,4}"
    r"(?:behind|crosser|crossing|switching|crosses|switches|gap|moving)\b"
)
_HOT = regex(r"\b(?:hot|heat|boiling|scorching|humid|tired|exhausted|heavy legs|knackered)\b")
_BEHIND = regex(
    r"\b(?:way behind|well behind|far behind|getting (?:crushed|killed|smoked|beaten badly)|"
    r"(?:need|want|time for) (?:a )?(?:change|something new|something different)|"
    r"they(?:ve| have) (?:got )?(?:us )?figured (?:us )?out|break their (?:rhythm|pattern))\b"
)
_DOWN = regex(r"\b(\d{1,2}) (\d{1,2})(?: \d)? down\b|\bdown (\d{1,2}) (\d{1,2})\b")


@dataclass(frozen=True, slots=True, kw_only=True)
class StackSaid:
    """What is known of us here; None where nobody says."""

    is_new: bool | None = None
    never_done: bool | None = None
    habit: Formation | None = None
    habit_left: PlayerId | None = None
    hit_at_crosser: bool | None = None
    is_hot: bool = False
    is_behind: bool = False

    def fits_habit(self, plan: Plan) -> bool:
        """Whether the plan has the one on the left who is there by habit."""
        return None in (self.habit_left, plan.left) or (
            plan.left is not None and plan.left.player == self.habit_left
        )


def stack_said(situation: Situation) -> StackSaid:
    words = plain_words(situation.asked.words)
    habit = _habit(situation, words)
    done = habit is not None and habit is not Formation.STRAIGHT
    new = _new(situation, words)
    return StackSaid(
        is_new=False if done else new,
        never_done=_never(situation, words, done=done, new=new),
        habit=habit,
        habit_left=agreed_left(situation),
        hit_at_crosser=True if _AT_CROSSER.search(words) else None,
        is_hot=bool(situation.asked.hot or situation.asked.tired or _HOT.search(words)),
        is_behind=_behind(situation, words),
    )


def _new(situation: Situation, words: str) -> bool | None:
    if _NEW.search(words):
        return True
    known = situation.familiarity
    return None if known is None else known is Familiarity.NEW


def _never(situation: Situation, words: str, *, done: bool, new: bool | None) -> bool | None:
    """Of a new pair the muddle of being new counts already."""
    if done or new:
        return False
    if _NEVER.search(words):
        return True
    levels = [one.profile.habit(Trait.STACKS).level for one in situation.ours]
    if levels and max(levels) > 0:
        return False
    return True if levels and min(levels) < 0 else None


def _habit(situation: Situation, words: str) -> Formation | None:
    """What we do anyway: said now, set for this match, or agreed."""
    if situation.formation is not None:
        return situation.formation
    agreed = situation.agreements.get(AgreementKey.STACK)
    if agreed is not None:
        return formation_agreed(agreed)
    return Formation.STACK_ON_SERVE if _USED.search(words) else None


_AGREED: Final = (
    (regex(r"\b(?:no stack\w*|dont stack|not stack\w*|never stack\w*|straight)\b"), None),
    (regex(r"\b(?:signal|sign|signs|signals)\b"), Formation.ON_SIGNAL),
    (regex(r"\b(?:always|both|full|everywhere)\b"), Formation.STACK_ALWAYS),
    (regex(r"\bserv\w*\b"), Formation.STACK_ON_SERVE),
    (regex(r"\breturn\w*\b"), Formation.STACK_ON_RETURN),
    (regex(r"\bswap\w*\b"), Formation.SIDE_SWAP),
    (regex(r"\bstack\w*\b"), Formation.STACK_ALWAYS),
)


def formation_agreed(agreement: Agreement) -> Formation | None:
    """The formation that the words of an agreement name; None where they name none."""
    words = plain_words(agreement.value or agreement.words)
    serves = re.search(r"\bstack\w*(?: \w+)? (?:on |when )?serv\w*\b", words)
    if serves:
        both = re.search(r"\bserv\w* and (?:on )?(?:return|receiv)\w*\b", words)
        signal = re.search(r"\bsign(?:al)?s?\b", words)
        if signal:
            return Formation.ON_SIGNAL
        return Formation.STACK_ALWAYS if both else Formation.STACK_ON_SERVE
    for pattern, formation in _AGREED:
        if pattern.search(words):
            return formation or Formation.STRAIGHT
    return None


def agreed_left(situation: Situation) -> PlayerId | None:
    """Whom an agreement on sides has on the left; None where none says so, or not clearly."""
    agreed = situation.agreements.get(AgreementKey.SIDES)
    if agreed is None or len(situation.ours) != 2:
        return None
    words = plain_words(agreed.value or agreed.words)
    for one, other in (situation.ours, situation.ours[::-1]):
        name = re.escape(plain_words(one.name))
        if re.search(rf"\b{name} (?:\w+ ){{0,3}}left\b(?! hand)", words):
            return one.player
        if re.search(rf"\b{name} (?:\w+ ){{0,3}}right\b(?! hand)", words):
            return other.player
    return None


def _behind(situation: Situation, words: str) -> bool:
    if _BEHIND.search(words):
        return True
    for found in _DOWN.finditer(words):
        low, high = sorted(int(each) for each in found.groups() if each is not None)
        if high - low >= sizes.BEHIND_BY:
            return True
    game = situation.game
    return game is not None and game.theirs - game.ours >= sizes.BEHIND_BY
