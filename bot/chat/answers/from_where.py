"""Whether the last answer is of their notes or a default: its reasons counted by their source."""

from __future__ import annotations

from collections import Counter

from bot.chat.answers.desk import Desk
from bot.chat.answers.explaining import advice_again
from bot.chat.payload import Verb, tap
from bot.chat.render import reason_line, rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.advice import Advice
from knowledge.sources import SourceKind
from knowledge.vocabulary import Topic

_OURS = (SourceKind.BOOK, SourceKind.SAID, SourceKind.AGREED)
"""What they told: notes and rallies, their own numbers, what the two of them agreed."""


def from_where(desk: Desk, topic: Topic) -> Reply:
    """The call, how many of its reasons are theirs, what kind the rest are of, and all of them."""
    advice = advice_again(desk, topic)
    if isinstance(advice, Reply):
        return advice
    why = Button(label=wording("why"), payload=tap(Verb.WHY, topic), topic=topic)
    told = [reason_line(one) for one in (advice.reasons or advice.lines)]
    lines = [advice.call, _counted(advice), *told, advice.caution]
    return Reply(text="\n".join(filter(None, lines)), buttons=rows([why]))


def _counted(advice: Advice) -> str:
    kinds = Counter(one.source.kind for one in (advice.reasons or advice.lines))
    ours = sum(kinds[kind] for kind in _OURS)
    rest = ", ".join(f"{n} {kind}" for kind, n in kinds.items() if kind not in _OURS)
    if ours:
        key = "from.all" if ours == kinds.total() else "from.some"
        return wording(key).format(count=ours, all=kinds.total(), rest=rest)
    notes = len(advice.evidence)
    if notes:
        return wording("from.weighed").format(count=notes)
    if set(kinds) == {SourceKind.RULEBOOK}:
        return wording("from.rulebook")
    if advice.caution and rest:
        return wording("from.cautioned").format(rest=rest)
    return wording("from.default").format(rest=rest) if rest else wording("from.bare")
