"""Our choice of the rally about to be played, by one tap before it, while tagging is on.

What is tapped before the end counts as evidence whatever the end was; what is told afterwards is
told more readily when it went well.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.scoreboard import scoreboard
from bot.chat.answers.tag_taps import MIDDLE, SERVE_AIMS, TAGS_RALLIES, opponents
from bot.chat.context import Tagged
from bot.chat.payload import BadPayloadError
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId, Topic
from scouting_db.values import ChoiceRow, MatchId

_TOPICS = {"serve": Topic.AIM_SERVE, "return": Topic.AIM_RETURN}


def switch(desk: Desk, *, on: bool) -> Reply:
    """Tagging on or off for the whole book."""
    desk.book.prefer(TAGS_RALLIES, "on" if on else "off")
    return Reply(text=wording("rally.tags_on" if on else "rally.tags_off"))


def tag_next(desk: Desk, what: str, option: str, match: MatchId, n: int) -> Reply:
    """Remember the choice for the next rally; a second tap corrects the first."""
    if what not in _TOPICS:
        raise BadPayloadError(f"serve or return, not {what}")
    log = desk.log()
    if match != desk.context.match or n != log.lines + 1:
        return Reply(text=wording("unclear.too_old"))
    against = _target(desk, what, option)
    desk.context = replace(
        desk.context,
        tagged=Tagged(
            match=match,
            n=n,
            topic=_TOPICS[what],
            option=option if against is None else f"at:{against}",
            against=against,
        ),
    )
    score, buttons = scoreboard(desk, match)
    shown = desk.view.short_name(against) if against is not None else option
    key = "rally.chose_aim_serve" if what == "serve" else "rally.chose_aim_return"
    noted = wording("rally.noted").format(
        what=wording(key).format(option="T" if shown == "t" else shown)
    )
    lines = [score, f"{noted} {wording('rally.tagged')}"]
    return Reply(text="\n".join(lines), buttons=rows(buttons), about=("match", match))


def _target(desk: Desk, what: str, option: str) -> PlayerId | None:
    """The opponent that the option names; None for a place."""
    if option in (SERVE_AIMS if what == "serve" else (MIDDLE,)):
        return None
    found = next((one for one in opponents(desk) if str(one) == option), None)
    if what == "serve" or found is None:
        raise BadPayloadError(f"no {what} is aimed at {option}")
    return found


def keep_tag(desk: Desk, match: MatchId, n: int) -> None:
    """The choice tapped before this rally goes with it; any other is forgotten."""
    tagged = desk.context.tagged
    if tagged is None:
        return
    desk.context = replace(desk.context, tagged=None)
    if (tagged.match, tagged.n) == (match, n):
        desk.book.choose(
            ChoiceRow(
                match=match,
                n=n,
                topic=tagged.topic,
                option=tagged.option,
                against=tagged.against,
                tagged_before=True,
            )
        )
