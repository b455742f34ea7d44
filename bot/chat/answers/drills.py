"""A drill for what somebody wants to practise, as a review gives it; and what we have none for."""

from __future__ import annotations

from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.tactics.drills import Drill, drills


def drill_for(leak: str) -> Reply:
    """The drill of a leak; an empty one is a stroke that we have no drill for."""
    drill = drills().get(leak)
    if drill is None:
        return Reply(text=wording("video.no_drill"))
    return Reply(text="\n".join(drill_lines(drill)))


def drill_lines(drill: Drill) -> list[str]:
    """The drill with its length, how it goes, cue, reason and caution."""
    lines = [
        wording("video.drill").format(drill=drill.drill, minutes=drill.minutes),
        *(wording("video.how").format(how=how) for how in drill.how),
        wording("video.cue").format(cue=drill.cue),
        wording("video.why").format(why=drill.why.text, source=drill.why.source),
    ]
    return [*lines, drill.caution] if drill.caution else lines
