"""What a told rally says beyond who won it: how it ended, and what we chose to do in it."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.message import Message
from bot.chat.rally_acts import Act, read_acts
from bot.chat.rally_choices import choices_of
from bot.chat.rally_who import Who, WhoIsWho
from bot.chat.said import Mention, RallyDetails
from bot.chat.view import ChatView
from knowledge.dataclass import dataclass
from knowledge.vocabulary import Ending, PlayerId, Stroke, Wing

_PRESSURE = frozenset([Stroke.DRIVE, Stroke.SPEED_UP, Stroke.OVERHEAD])
"""After such a ball of the other side an error counts as forced, unless it is called unforced."""

_WINS = frozenset(["winner", "ace"])
_FORCED = frozenset(["forced", "jammed"])
_CALLED = frozenset(["forced", "jammed", "unforced"])
_ERRS = frozenset(["error", "unforced", *_FORCED])


@dataclass(frozen=True, slots=True, kw_only=True)
class RallyReading:
    """`won_by_us` is who must have won it by how it ended; None where that does not tell.

    `strangers` are the names of nobody on court. `understood` and `unknown` count words.
    """

    details: RallyDetails
    won_by_us: bool | None
    strangers: tuple[Mention, ...]
    understood: int
    unknown: int


@dataclass(frozen=True, slots=True, kw_only=True)
class _End:
    """An act that may have ended the rally: won by `who`, or lost by them."""

    at: int
    who: Who
    act: Act
    is_won: bool
    is_popup: bool = False

    @property
    def won_by_us(self) -> bool | None:
        return None if self.who.ours is None else self.who.ours is self.is_won


def read_rally(
    message: Message,
    chat: ChatView,
    *,
    won_by_us: bool | None = None,
    instead: PlayerId | None = None,
    is_remark: bool = False,
    last: Who | None = None,
) -> RallyReading:
    """The rally that the words tell. `won_by_us` where that is known already.

    `instead` is whom a name of nobody on court stands for. `is_remark`: the words are about how
    the rally ended, even where they only name a player or a stroke ("it was my dink"). `last` is
    who was spoken of before: "she" of words that name nobody.
    """
    who = WhoIsWho(chat=chat, instead=instead, last=last)
    found = read_acts(message.said, message.mentions, who, won_by_us=won_by_us)
    acts = found.acts
    won = _winner(acts) if won_by_us is None else won_by_us
    end = _decisive(acts, won)
    deep, third = _depth(acts), _third(acts)
    told = RallyDetails(
        ending=None if end is None else _ending(end, acts, won),
        is_called=end is not None and bool(end.act.endings & _CALLED),
        by=None if end is None else end.who.player,
        by_us=None if end is None else end.who.ours,
        stroke=None if end is None else _stroke(end, acts),
        wing=None if end is None else _wing(end),
        choices=choices_of(acts, won),
        is_deep=deep,
        forward=None if third is None else third.forward is True,
        third_by=None if third is None or third.by is None else third.by.player,
    )
    if is_remark and end is None and deep is None and third is None and not told.choices:
        told = _remark(acts)
    return RallyReading(
        details=told,
        won_by_us=won,
        strangers=tuple(who.strangers),
        understood=found.understood,
        unknown=found.unknown,
    )


def _winner(acts: Sequence[Act]) -> bool | None:
    """Whose it was by the last act that ended it with somebody's name or side.

    Where nobody is named at all, a verb tells of who writes, "drove the third into the net", and
    a winner at one of them is ours.
    """
    ends = _ends(acts, None)
    sided = [one for one in ends if one.won_by_us is not None]
    if sided:
        return sided[-1].won_by_us
    if not ends or any(act.by is not None for act in acts):
        return None
    last = ends[-1]
    is_at_them = any(act.at is not None and act.at.ours is False for act in acts)
    return last.is_won if last.act.is_verb or (last.is_won and is_at_them) else None


def _decisive(acts: Sequence[Act], won: bool | None) -> _End | None:
    """What the rally was lost or won by.

    A ball popped up and put away is the error of who popped it up: the winner off it follows.
    Ends that contradict who won it are left out.
    """
    ends = [one for one in _ends(acts, won) if won is None or one.won_by_us in (None, won)]
    if not ends:
        return _attack(acts) if won else None
    last = ends[-1]
    popups = [one for one in ends if one.is_popup and one.who.ours is not None]
    if last.is_won and popups:
        return popups[-1]
    return last


def _ends(acts: Sequence[Act], won: bool | None) -> list[_End]:
    found = []
    for at, act in enumerate(acts):
        is_popup = bool(act.endings & {"popup"}) or (
            "too_high" in act.endings and act.by is not None
        )
        is_won = bool(act.endings & _WINS) and not is_popup and not act.endings & _ERRS
        if is_won or is_popup or _is_error(act, at, acts, won):
            who = act.victim if act.victim is not None and not is_won else act.by
            who = who or _carried(acts, at) or Who()
            found.append(_End(at=at, who=who, act=act, is_won=is_won, is_popup=is_popup))
    return found


def _is_error(act: Act, at: int, acts: Sequence[Act], won: bool | None) -> bool:
    """ "Served wide" is where it went in, unless nothing came after it and the server lost."""
    if act.endings & _ERRS:
        return True
    if "wide" not in act.endings:
        return False
    if Stroke.SERVE not in act.strokes:
        return True
    side = True if act.ours is None else act.ours
    return at == len(acts) - 1 and (won is None or won is not side)


def _carried(acts: Sequence[Act], at: int) -> Who | None:
    """ "Hale chased it, missed": who is not named again."""
    before = acts[at - 1] if at else None
    if before is None or before.endings & (_ERRS | {"popup"}):
        return None
    return before.by


def _attack(acts: Sequence[Act]) -> _End | None:
    """An attack of ours at somebody that won the rally, with nothing told after it."""
    for at, act in enumerate(acts):
        aimed = act.at is not None or act.aims
        if Stroke.SPEED_UP in act.strokes and aimed and act.ours is not False:
            return _End(at=at, who=act.by or Who(ours=True), act=act, is_won=True)
    return None


def _ending(end: _End, acts: Sequence[Act], won: bool | None) -> Ending:
    if end.is_won:
        return Ending.WINNER
    called = end.act.endings
    if called & _FORCED:
        return Ending.FORCED_ERROR
    if "unforced" in called or Stroke.SERVE in end.act.strokes:
        return Ending.UNFORCED_ERROR
    winners_side = won if won is not None else end.won_by_us
    pressed = any(
        act.strokes and _PRESSURE & {*act.strokes} and _is_of(act, winners_side)
        for act in acts[: end.at]
    )
    return Ending.FORCED_ERROR if pressed else Ending.UNFORCED_ERROR


def _is_of(act: Act, ours: bool | None) -> bool:
    """Whether the act was that side's; what nobody is named for is ours."""
    return ours is not None and (act.ours is ours or (act.ours is None and ours))


def _stroke(end: _End, acts: Sequence[Act]) -> Stroke | None:
    """The stroke it ended with; a third is one whatever it was played as."""
    act = end.act
    if act.victim is not None and act.victim != act.by:
        return None
    if "ace" in act.endings:
        return Stroke.SERVE
    strokes = act.strokes
    if not strokes and act.by is None and _carried(acts, end.at) is not None:
        strokes = acts[end.at - 1].strokes
    if Stroke.THIRD in strokes:
        return Stroke.THIRD
    return strokes[-1] if strokes else None


def _wing(end: _End) -> Wing | None:
    is_aim = Stroke.SERVE in end.act.strokes and not end.is_won and end.act.by is None
    return None if is_aim else end.act.wing


def _depth(acts: Sequence[Act]) -> bool | None:
    told = [a.is_deep for a in acts if Stroke.RETURN in a.strokes and a.is_deep is not None]
    return told[-1] if told else None


def _third(acts: Sequence[Act]) -> Act | None:
    """The act that tells whether the third got its side to the line; too high, and it did not."""
    told = [
        act
        for act in acts
        if act.forward is not None or ("too_high" in act.endings and Stroke.THIRD in act.strokes)
    ]
    return told[-1] if told else None


def _remark(acts: Sequence[Act]) -> RallyDetails:
    """Who or which stroke it was, by itself: the last person, stroke and wing named."""
    named = [act.by for act in acts if act.by is not None]
    strokes = [stroke for act in acts for stroke in act.strokes]
    wings = [act.wing for act in acts if act.wing is not None]
    return RallyDetails(
        by=named[-1].player if named else None,
        by_us=named[-1].ours if named else None,
        stroke=strokes[-1] if strokes else None,
        wing=wings[-1] if wings else None,
    )
