"""What a rule for a pair of topics looks at in the words of a message."""

from __future__ import annotations

from knowledge.dataclass import dataclass

BARE_WORDS_AT_MOST = 3
SHORT_WORDS_AT_MOST = 4


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


def odds(said: Said) -> bool:
    return said.has("odds", "probability", "likelihood") or said.has_run(
        "how likely", "our chances", "serve rate", "rate do we need"
    )


def size(said: Said) -> bool:
    sized = said.has_run(
        "how big", "how important", "how costly", "how much does", "how much is", "how many in a"
    )
    return sized and said.has("point", "rally", "miss", "error", "mistake", "this", "serve")


def as_good_as_won(said: Said) -> bool:
    won = said.has_run("basically won", "as good as won", "as good as over", "in the bag")
    return won and said.has("<score>", "game", "match", "this")


def timeout_weighed(said: Said) -> bool:
    named = said.has("timeout", "timeouts") or said.has_run("time out", "time outs")
    return named and said.has_run(
        "worth it", "worth a", "worth the", "use it", "burn it", "call it"
    )


_CHOSE = ("chose", "picked", "took")
_CHOICES = ("side", "sides", "end", "ends", "serve", "to serve", "receive", "to receive", "a side")


def toss(said: Said) -> bool:
    return said.has("coin", "defer") or said.has_run(
        "won the toss",
        "lost the toss",
        *(f"they {verb} {what}" for verb in _CHOSE for what in _CHOICES),
    )


def legal(said: Said) -> bool:
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


def kind_of_player(said: Said) -> bool:
    beaten = said.has("beat", "stop", "handle", "counter") or said.has_run("play against", "do vs")
    return beaten and said.has(*_KINDS_OF_PLAYER) and not said.has("<name>")


def bare_in_match(said: Said) -> bool:
    return said.match_on and len(said.words) <= BARE_WORDS_AT_MOST and not said.has("<name>")


def _only(said: Said, *words: str, but: tuple[str, ...]) -> bool:
    """A short message that names one shot, and not the one that was spoken of."""
    return len(said.words) <= SHORT_WORDS_AT_MOST and said.has(*words) and not said.has(*but)


def names_the_return(said: Said) -> bool:
    return _only(said, "return", "returns", but=("serve", "serves", "serving"))


def names_the_serve(said: Said) -> bool:
    return _only(said, "serve", "serves", but=("return", "returns", "returning"))


def names_the_target(said: Said) -> bool:
    whom = said.has("whom", "who", "which") and said.has("target", "targets")
    return whom and len(said.words) <= SHORT_WORDS_AT_MOST


def asks_who_covers(said: Said) -> bool:
    covers = said.has("who", "whose") and said.has("cover", "covers", "take", "takes", "has")
    return covers and said.has("middle") and len(said.words) <= SHORT_WORDS_AT_MOST


_THEY_SERVE = ("they serve", "theyre serving", "they are serving", "their serve", "them serving")
_WE_SERVE = ("i serve", "we serve", "my serve", "our serve", "to serve", "im serving")


def they_serve(said: Said) -> bool:
    """Where to aim while the serve is theirs, and nothing said of ours."""
    return said.has("where") and said.has_run(*_THEY_SERVE) and not said.has_run(*_WE_SERVE)


_FEET = ("heel", "toe", "toes", "foot", "shoe", "sneaker")
_SORE = ("hurts", "hurt", "sore", "pain", "cramp", "blister", "where")


def foot_on_the_line(said: Said) -> bool:
    """A foot, a volley and the line; "where" asks for a place, and a sore foot for care."""
    lands = said.has("line", "kitchen", "nvz") and said.has("after", "touched", "on", "in")
    hits = said.has("volley", "volleys", "smash", "ernie", "putaway", "overhead")
    return said.has(*_FEET) and lands and hits and not said.has(*_SORE)


_THIRDS = ("third", "thirds", "thrid", "thrids", "3rd", "3rds")


def our_third_floats(said: Said) -> bool:
    """Ours, and nothing else named that went wrong."""
    floats = said.has("float", "floats", "floating", "pop", "pops", "high")
    return said.has("our", "my") and said.has(*_THIRDS) and floats and not said.has("<score>")


_OF_THE_HEAD = ("head", "mind", "brain", "mental", "mentally", "calm", "nerves", "breathe")
_ASTRAY = (
    "pop", "pops", "popped", "popping", "float", "floats", "floated", "sit", "sits", "miss",
    "misses", "missed", "missing", "netted", "dumped", "bad", "terrible", "awful", "high", "out",
)  # fmt: skip


def resets_astray(said: Said) -> bool:
    """The shot, by what became of it; heads are reset one at a time."""
    hit = said.has("resets") or said.has_run("up the reset", "up a reset", "reset pops")
    return hit and said.has(*_ASTRAY) and not said.has(*_OF_THE_HEAD)
