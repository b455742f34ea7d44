"""What a return is asked about: who is where, the serve that came, the wind, and what words say."""

from __future__ import annotations

from knowledge.ball_places import HeightName, height_m
from knowledge.dataclass import dataclass
from knowledge.effects import OptionId
from knowledge.reach import Feet
from knowledge.regex import regex
from knowledge.situation import Formation, OnCourt, Wind
from knowledge.tactics.return_time import Contact, Flown, Style, feet_of, flown, slack_s
from knowledge.tactics.serve_return_depth import Depth
from knowledge.tactics.shot_success import OurScatter
from knowledge.vocabulary import BallQuality, PlayerId, Side

MIDDLE = OptionId("middle")
CROSSER = OptionId("crosser")
SERVER = OptionId("server")
"""Whoever crosses, or serves, where the score does not say who that is."""

SEEN = ("crossing:", "inside:")
"""Effects that are seen on court, not noted of a player."""

STACKED = (Formation.STACK_ALWAYS, Formation.STACK_ON_SERVE, Formation.ON_SIGNAL)

_INSIDE = regex(
    r"\binside the (?:baseline|court|line)|\bin(?:side)? (?:the )?baseline"
    r"|\b(?:steps?|stands?|stays?|creeps?|moves?|drifts?) (?:way |right |too )?(?:in|up)\b"
    r"(?! the| front)"
    r"|\b(?:stands?|stays?) (?:too )?close"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnQuestion:
    """Both of them, who of ours returns from where, and the serve that came.

    `depth` is the deep aim that pays best for a high return.
    """

    theirs: tuple[OnCourt, ...]
    ours: tuple[OnCourt, ...]
    returner: OnCourt | None
    returner_side: Side | None
    server: OnCourt | None
    server_court: Side | None
    ball: BallQuality
    stacked: bool
    server_inside: bool
    wind: Wind | None
    contact: Contact
    scatter: OurScatter
    depth: Depth

    def flown(self, style: Style, *, aim_ft: float | None = None) -> Flown:
        """How one way of hitting it goes."""
        return flown(style, self.contact, factor=self.scatter.factor, aim_ft=aim_ft)

    @property
    def high(self) -> Flown:
        """High and deep."""
        return self.flown(Style.HIGH, aim_ft=self.depth.inside_ft)

    @property
    def short(self) -> Flown:
        """As high, at mid-court."""
        return self.flown(Style.HIGH, aim_ft=self.depth.row.mid_ft)

    @property
    def hard(self) -> Flown:
        """Hard and flat."""
        return self.flown(Style.HARD)

    @property
    def feet(self) -> Feet:
        """How our returner runs; as usual where nobody says who returns."""
        return feet_of(None if self.returner is None else self.returner.profile)

    def slack_s(self, ball: Flown) -> float:
        return slack_s(ball, self.contact, self.feet)

    @property
    def crosser(self) -> OnCourt | None:
        """Who has to cross after the serve; None where nobody does or the score doesn't say."""
        if not self.stacked or self.server is None or self.server_court is None:
            return None
        return self.server if self.server.side is self.server_court.other else None

    @property
    def crosser_unknown(self) -> bool:
        return self.stacked and (
            self.server is None or self.server_court is None or self.server.side is None
        )


def at(one: OnCourt) -> OptionId:
    return OptionId(f"at:{one.player}")


_SHORT_SERVE = regex(r"\bshort serves?\b|\bserv(?:es?|ed|ing)\b.{0,12}\bshort\b")
_THEY_STACK = regex(r"\bthey(?:'re| are)? (?:always |both )?stack(?:s|ed|ing)?\b")


_JAMMED = regex(
    r"\b(?:jams?|jammed|jamming|handcuffs?|handcuffed) (?:me|us|him|her|my|our)\b"
    r"|\b(?:i'?m|i am|we'?re|we are|i|we|get|gets|got|when|if) (?:get |getting |got )?jammed\b"
)
_DEPTH = regex(r"\bhow (?:deep|far|long|short)\b|\bdepth\b|\bdeep or\b|\bor deep\b")
_PACE = regex(
    r"\b(?:hard|fast|flat|pace|slow|soft|high) or\b|\bor (?:hard|fast|flat|slow|soft|high)\b"
    r"|\bhow (?:hard|fast|high)\b|\bmore pace\b"
)


def says_jammed(words: str) -> bool:
    """Whether a question says that the serve jams us, which is a stretched ball."""
    return _JAMMED.search(words.lower()) is not None


_HEIGHT = regex(
    r"\b(?P<high>ankle|shin|knee|thigh|hip|waist|chest|shoulder)s?(?:[ -]high|[ -]height)\b"
    r"|\bat (?:my|our|the|his|her) (?P<at>feet|ankle|shin|knee|thigh|hip|waist|chest|shoulder)s?\b"
)


def says_height_m(words: str) -> float | None:
    """How high a question says that we meet the serve, by a part of the body."""
    found = _HEIGHT.search(words.lower())
    return None if found is None else height_m(HeightName(found["high"] or found["at"]))


def asks_depth(words: str) -> bool:
    """Whether a question is about how deep."""
    return _DEPTH.search(words.lower()) is not None


def asks_pace(words: str) -> bool:
    """Whether a question is about how hard or how high."""
    return _PACE.search(words.lower()) is not None


def says_stack(words: str) -> bool:
    """Whether a question says that they stack."""
    return _THEY_STACK.search(words.lower()) is not None


def says_short_serve(words: str) -> bool:
    """Whether a question is about a short serve, which is an easy ball."""
    return _SHORT_SERVE.search(words.lower()) is not None


def says_inside(words: str) -> bool:
    """Whether a question says that the server stands inside the baseline."""
    return "serv" in words.lower() and _INSIDE.search(words.lower()) is not None


def player_at(option: OptionId, theirs: tuple[OnCourt, ...]) -> OnCourt | None:
    """The opponent that an option aims at; None for the middle and for whoever crosses."""
    number = option.removeprefix("at:")
    if not number.lstrip("-").isdigit():
        return None
    return next((one for one in theirs if one.player == PlayerId(int(number))), None)
