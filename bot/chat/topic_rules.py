"""A few rules for pairs of topics that share their words: each may only swap near neighbours."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from knowledge.dataclass import dataclass
from knowledge.vocabulary import Topic

REACH = 3
"""A rule lifts a topic only from among the first three: it settles doubts, it invents nothing."""

BARE_WORDS_AT_MOST = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """What a rule may look at: the words as read, and whether a match is on."""

    words: tuple[str, ...]
    match_on: bool

    def has(self, *words: str) -> bool:
        return any(word in self.words for word in words)

    def has_run(self, *runs: str) -> bool:
        row = f" {' '.join(self.words)} "
        return any(f" {run} " in row for run in runs)


@dataclass(frozen=True, slots=True, kw_only=True)
class PairRule:
    """When `holds`, `better` goes before any of `than` that the model ranked first."""

    name: str
    better: Topic
    than: tuple[Topic, ...]
    holds: Callable[[Said], bool]
    because: str


def _odds(said: Said) -> bool:
    return said.has("odds", "probability", "likelihood") or said.has_run(
        "how likely", "our chances", "serve rate", "rate do we need"
    )


def _size(said: Said) -> bool:
    sized = said.has_run(
        "how big", "how important", "how costly", "how much does", "how much is", "how many in a"
    )
    return sized and said.has("point", "rally", "miss", "error", "mistake", "this", "serve")


def _as_good_as_won(said: Said) -> bool:
    won = said.has_run("basically won", "as good as won", "as good as over", "in the bag")
    return won and said.has("<score>", "game", "match", "this")


def _timeout_weighed(said: Said) -> bool:
    named = said.has("timeout", "timeouts") or said.has_run("time out", "time outs")
    return named and said.has_run(
        "worth it", "worth a", "worth the", "use it", "burn it", "call it"
    )


_CHOSE = ("chose", "picked", "took")
_CHOICES = ("side", "sides", "end", "ends", "serve", "to serve", "receive", "to receive", "a side")


def _toss(said: Said) -> bool:
    return said.has("coin", "defer") or said.has_run(
        "won the toss",
        "lost the toss",
        *(f"they {verb} {what}" for verb in _CHOSE for what in _CHOICES),
    )


def _legal(said: Said) -> bool:
    by_word = said.has("legal", "illegal", "allowed", "rulebook", "permitted")
    return by_word or _may_one(said)


def _may_one(said: Said) -> bool:
    """ "Can I volley from the kitchen", "can we take a time-out after the serve is called"."""
    may = said.has_run(*(f"{can} {who}" for can in ("can", "may") for who in ("i", "we", "they")))
    in_kitchen = said.has("volley", "hit", "jump") and said.has("kitchen", "nvz")
    breaks = said.has("timeout", "timeouts") or said.has_run("time out", "time outs")
    late = said.has("after", "during", "before") and said.has("serve", "rally", "called", "call")
    return may and (in_kitchen or (breaks and late))


_KINDS_OF_PLAYER = (
    *("banger", "bangers", "lobber", "lobbers", "poacher", "poachers", "stackers", "crashers"),
    *("slicers", "pushers", "blockers"),
)


def _kind_of_player(said: Said) -> bool:
    beaten = said.has("beat", "stop", "handle", "counter") or said.has_run("play against", "do vs")
    return beaten and said.has(*_KINDS_OF_PLAYER) and not said.has("<name>")


def _bare_in_match(said: Said) -> bool:
    return said.match_on and len(said.words) <= BARE_WORDS_AT_MOST and not said.has("<name>")


SHORT_WORDS_AT_MOST = 4


def _only(said: Said, *words: str, but: tuple[str, ...]) -> bool:
    """A short message that names one shot, and not the one that was spoken of."""
    return len(said.words) <= SHORT_WORDS_AT_MOST and said.has(*words) and not said.has(*but)


def _names_the_return(said: Said) -> bool:
    return _only(said, "return", "returns", but=("serve", "serves", "serving"))


def _names_the_serve(said: Said) -> bool:
    return _only(said, "serve", "serves", but=("return", "returns", "returning"))


def _names_the_target(said: Said) -> bool:
    whom = said.has("whom", "who", "which") and said.has("target", "targets")
    return whom and len(said.words) <= SHORT_WORDS_AT_MOST


def _asks_who_covers(said: Said) -> bool:
    covers = said.has("who", "whose") and said.has("cover", "covers", "take", "takes", "has")
    return covers and said.has("middle") and len(said.words) <= SHORT_WORDS_AT_MOST


_THEY_SERVE = ("they serve", "theyre serving", "they are serving", "their serve", "them serving")
_WE_SERVE = ("i serve", "we serve", "my serve", "our serve", "to serve", "im serving")


def _they_serve(said: Said) -> bool:
    """Where to aim while the serve is theirs, and nothing said of ours."""
    return said.has("where") and said.has_run(*_THEY_SERVE) and not said.has_run(*_WE_SERVE)


_FEET = ("heel", "toe", "toes", "foot", "shoe", "sneaker")
_SORE = ("hurts", "hurt", "sore", "pain", "cramp", "blister", "where")


def _foot_on_the_line(said: Said) -> bool:
    """A foot, a volley and the line; "where" asks for a place, and a sore foot for care."""
    lands = said.has("line", "kitchen", "nvz") and said.has("after", "touched", "on", "in")
    hits = said.has("volley", "volleys", "smash", "ernie", "putaway", "overhead")
    return said.has(*_FEET) and lands and hits and not said.has(*_SORE)


_THIRDS = ("third", "thirds", "thrid", "thrids", "3rd", "3rds")


def _our_third_floats(said: Said) -> bool:
    """Ours, and nothing else named that went wrong."""
    floats = said.has("float", "floats", "floating", "pop", "pops", "high")
    return said.has("our", "my") and said.has(*_THIRDS) and floats and not said.has("<score>")


RULES = (
    PairRule(
        name="a return named is the return",
        better=Topic.AIM_RETURN,
        than=(Topic.AIM_SERVE,),
        holds=_names_the_return,
        because="a shot that is named outweighs the one spoken of before",
    ),
    PairRule(
        name="while they serve our shot is the return",
        better=Topic.AIM_RETURN,
        than=(Topic.AIM_SERVE,),
        holds=_they_serve,
        because="who receives has no serve to aim",
    ),
    PairRule(
        name="a serve named is the serve",
        better=Topic.AIM_SERVE,
        than=(Topic.AIM_RETURN,),
        holds=_names_the_serve,
        because="a shot that is named outweighs the one spoken of before",
    ),
    PairRule(
        name="whom to target is asked anew",
        better=Topic.WHOM_TO_TARGET,
        than=(Topic.AIM_SERVE, Topic.AIM_RETURN, Topic.AIM_DINK, Topic.AIM_ATTACK),
        holds=_names_the_target,
        because="who is the target is no question of the shot spoken of before",
    ),
    PairRule(
        name="who covers the middle is asked anew",
        better=Topic.COVER_MIDDLE,
        than=(
            Topic.AIM_SERVE,
            Topic.AIM_RETURN,
            Topic.AIM_ATTACK,
            Topic.AIM_OVERHEAD,
            Topic.ERNIE_OR_POST,
            Topic.ANSWER_PATTERN,
            Topic.LOB,
            Topic.WHERE_TO_STAND,
            Topic.LET_IT_GO,
        ),
        holds=_asks_who_covers,
        because="whose ball it is is no question of where to hit one",
    ),
    PairRule(
        name="odds are a chance",
        better=Topic.WIN_CHANCE,
        than=(
            Topic.RISK_AT_SCORE,
            Topic.ADJUST,
            Topic.RESET_HEAD,
            Topic.TIMEOUT_NOW,
            Topic.WHOM_TO_TARGET,
            Topic.AIM_SERVE,
        ),
        holds=_odds,
        because="who says odds wants the number, whatever the score",
    ),
    PairRule(
        name="size is a weight",
        better=Topic.RISK_AT_SCORE,
        than=(Topic.WIN_CHANCE, Topic.TIMEOUT_NOW, Topic.RESET_OR_COUNTER),
        holds=_size,
        because="how big a point is asks for its weight, not for the chance to win",
    ),
    PairRule(
        name="as good as won is a chance",
        better=Topic.WIN_CHANCE,
        than=(Topic.SMALLTALK_OR_UNKNOWN, Topic.RISK_AT_SCORE, Topic.CHOOSE_END_OR_SERVE),
        holds=_as_good_as_won,
        because="whether it is over asks how likely it is not",
    ),
    PairRule(
        name="a time-out weighed is asked about",
        better=Topic.TIMEOUT_NOW,
        than=(Topic.ADJUST, Topic.PROBE, Topic.RESET_HEAD),
        holds=_timeout_weighed,
        because="what to change comes up because the change is what a time-out is worth",
    ),
    PairRule(
        name="a toss is won before the match",
        better=Topic.CHOOSE_END_OR_SERVE,
        than=(
            Topic.WEATHER_OR_BODY,
            Topic.AIM_SERVE,
            Topic.WHERE_TO_STAND,
            Topic.ANSWER_PATTERN,
            Topic.ADJUST,
        ),
        holds=_toss,
        because="sun and wind come up at the toss because they decide it",
    ),
    PairRule(
        name="legal is the rulebook's word",
        better=Topic.RULES_QUESTION,
        than=(
            Topic.ERNIE_OR_POST,
            Topic.TIMEOUT_NOW,
            Topic.WHERE_TO_STAND,
            Topic.LET_IT_GO,
            Topic.STACK_OR_NOT,
        ),
        holds=_legal,
        because="whether one may is not whether one should",
    ),
    PairRule(
        name="a kind of player is a pattern",
        better=Topic.ANSWER_PATTERN,
        than=(Topic.GAME_PLAN, Topic.WHOM_TO_TARGET),
        holds=_kind_of_player,
        because="bangers are beaten alike whoever they are; a plan is for two people",
    ),
    PairRule(
        name="a foot on the line is the rulebook's",
        better=Topic.RULES_QUESTION,
        than=(
            Topic.TRANSITION,
            Topic.ERNIE_OR_POST,
            Topic.TAKE_OR_LET_BOUNCE,
            Topic.WHERE_TO_STAND,
            Topic.WEATHER_OR_BODY,
        ),
        holds=_foot_on_the_line,
        because="who tells where a foot came down wants to know whether it was a fault",
    ),
    PairRule(
        name="our third that floats is the third",
        better=Topic.THIRD_SHOT,
        than=(Topic.ADJUST, Topic.ANSWER_PATTERN),
        holds=_our_third_floats,
        because="one shot of ours is named, and what to do with it is asked",
    ),
    PairRule(
        name="two words in a match want a cue",
        better=Topic.CUE,
        than=(Topic.GAME_PLAN, Topic.ADJUST),
        holds=_bare_in_match,
        because="between rallies there are ten seconds",
    ),
)


def apply_rules(ranked: Sequence[Topic], said: Said) -> tuple[Topic, ...]:
    """The topics in order after the first rule that applies."""
    for rule in RULES:
        lifted = rule.better in ranked[1:REACH] and ranked[0] in rule.than
        if lifted and rule.holds(said):
            return (rule.better, *[topic for topic in ranked if topic is not rule.better])
    return tuple(ranked)
