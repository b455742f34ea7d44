"""What players say around a score, as expressions over folded words with # for a number."""

from __future__ import annotations

import re

from bot.chat.forms import word_set
from knowledge.regex import regex

WE = r"(?:we|us|our|ours|were|weve|my two|my team|i|im|me|ive)"
THEY = (
    r"(?:they|them|their|theirs|theyre|theyve|opponents|other (?:team|side|pair|two|guys)|those two"
    r"|(?:the|these|those) (?:\w+ )?(?:guys|girls|ladies|kids|dudes|men|women))"
)
RECEIVE = r"(?:receiv\w*|return\w*|recv)"
NUMBERED = r"(?:first|second|1st|2nd)"
SERVE = r"(?:serving|servin|serve|serves|ball|on serve|to serve|service)"

THEY_SERVE = regex(
    rf"\b{THEY} (?:are |re )?start(?:s|ing)?\b"
    r"|\bserver (?:[12#] |one |two )?(?:them|theirs|they)\b|"
    rf"\bnot (?:our|my) (?:serve|ball)\b|\b{THEY} (?:are |re )?(?:\w+ )?(?:on )?(?:their |the )"
    rf"?{NUMBERED} serv\w*|\b{THEY} call(?:s|ed|ing)? # #|"
    rf"\b{THEY} (?:are |re |is |about |have |got |has |on |to |it |the |a )*{SERVE}\b"
    rf"|\b(?:his|her|hers) serve\b|\b{THEY} (?:to serve|serving|have it|got it)\b|^{RECEIVE}"
    rf"|\b{SERVE} {THEY}\b"
    rf"|\b(?<!they )(?<!they are )(?<!theyre ){RECEIVE}\b"
)
WE_SERVE = regex(
    rf"\b{WE} start(?:s|ing)?\b|\b{WE} (?:is |are |on )*(?:(?:our|the|my) )?{NUMBERED} serv\w*"
    rf"|\bserver (?:[12#] |one |two )?(?:us|we|ours)\b|"
    rf"\b{WE} (?:to|starts?|starting|begins?) (?:begin|serve|start|us|off)|# {WE} (?:second"
    rf"|first|2nd|1st) serv\w*"
    rf"|\b{WE} got the (?:serve|ball)|\b(?<!they )(?<!they is )(?<!they are )(?<!theyre )about to"
    rf" serve\b|\b{WE} (?:\w+ ){{0,2}}(?:his|her|my) serve\b|"
    rf"\b(?<!not ){WE} (?:are |re |have |got |on |to |it |the |a |all )*{SERVE}\b"
    rf"|\b{THEY} (?:are |re )?{RECEIVE}\b|\bmy serve\b|\b{SERVE} (?:us|ours)\b"
    r"|^(?:(?:ok|so|and|now|still|its|we|were|are) )*(?:# ){2,3}"
    r"(?:up|down|ahead|behind|leading|trailing)"
    r" (?:(?:and|but|on|with|the) )*(?:serving|serve|to serve)\b(?! (?:they|them|is|goes|out|to))"
    r"|\b(?:up|down|ahead|behind|trailing|leading) (?:# ){2,3}with the (?:serve|ball)\b"
    rf"|^{SERVE}\b|\b(?:up|down|ahead|behind|trailing|leading) (?:# )+(?:and |on )?(?:serving"
    rf"|servin)\b"
)
THEY_CALL = regex(rf"\b{THEY} call(?:s|ed|ing)? # #")
SECOND = regex(r"\b(?:second|2nd|server 2|server two|# server second|(?:number|serve) (?:2|two))\b")
FIRST = regex(
    r"\b(?:(?:first|1st) (?:serv\w*|ball)|server 1|server one|(?:number|serve) (?:1|one)"
    r"|(?:serving|serve|up) (?:it )?(?:first|1st)|(?:hes|shes|is) (?:the )?(?:first|1st)"
    r"(?: one)?)\b"
)
_HOPED = r"(?<!of )(?<!us )(?<!we )(?<!still )(?<!chance )(?<!chances )(?<!odds )"
"""Before "winning" where it is what the question hopes for, not what the score says."""

_STANDS = (
    r"(?:(?<=# )|(?<=^)|(?<=we )|(?<=they )|(?<=were )|(?<=are )|(?<=re )|(?<=im )|(?<=theyre )"
    r"|(?<=weve )|(?<=still )|(?<=just )|(?<=now )|(?<=go )|(?<=and )|(?<=but )|(?<=, )|(?<=was )"
    r"|(?<=been )|(?<=got )|(?<=is )|(?<=us )|(?<=them ))"
)
"""Before "up" and "down" where they tell the score: "popping up" and "calm down" do not."""


def _of_score(word: str) -> str:
    return rf"(?:{_STANDS}{word}|{word}(?= (?:by |only |just |still )?#))"


UP = (
    rf"(?:{_of_score('up(?! to| first| second)')}|ahead|leading|lead|leads|{_HOPED}winning"
    r"|in front)"
)
BADLY_BEATEN = (
    r"(?:beat|beaten|crushed|killed|smoked|destroyed|hammered|pickled|bageled|thrashed|smashed"
    r"|spanked|roasted|swept)"
)
DOWN = (
    rf"(?:{_of_score('down')}|behind|trailing|trail|trails|{_HOPED}losing"
    rf"|(?:(?<=^)|got |getting |being |been |gotten ){BADLY_BEATEN})"
)
CALLED = regex(rf"\b{SERVE}(?: \w+){{0,3}} # #|\b{SERVE} # #")
"""They serve at these very numbers: a call, their number first."""

AHEAD = regex(rf"\b{UP}\b")
BEHIND = regex(rf"\b{DOWN}\b")
THEY_LEAD = regex(
    rf"\b{THEY} (?:(?:are|re|have|ve|got|just|gone|went|still|now|is|one|two|#|serve) )*"
    rf"(?:{UP}|{DOWN})\b"
    rf"|\b{THEY} (?:are |re )?(?:one|two|three|#) up\b"
)
GAME_POINTS = regex(
    r"\b(?P<whose>they|we) (?:have |got |has |with |still |now )*(?:an? |\w+ )?"
    r"(?:game|match) ?points? (?:now |here |at )*# #"
)
"""`they have four game points at 10-6`: theirs is the larger number."""
_POINT = r"(?:game|match|set|championship) (?:points?|pts?|ball)"
_AFTER_IT = r"(?:(?:is|to|for|now|here|with|,) )*"
POINT_OURS = regex(
    rf"\b{_POINT} {_AFTER_IT}(?:we|us|ours|me)\b|\b(?:our|my) {_POINT}\b"
    rf"|\b(?:we|us|ours) (?:have |got |are at |at |on |hold )*(?:an? |\w+ )?{_POINT}\b"
)
POINT_THEIRS = regex(
    rf"\b{_POINT} {_AFTER_IT}(?:they|them|theirs)\b|\btheir {_POINT}\b"
    rf"|\b(?:they|them|theirs) (?:have |got |are at |at |on |hold )*(?:an? |\w+ )?{_POINT}\b"
    rf"|\b{_POINT}s? (?:down|against(?: (?:us|we|me))?)\b|\bfacing (?:an? |\w+ )?{_POINT}\b"
)
"""Whose point may end it: the side ahead, and in side-out scoring the one that serves."""

_ACTS = rf"(?:(?:{'|'.join(sorted(word_set('predicates') | word_set('acts_beside_a_score')))})\b)"
"""After "7-10, ilka": she does or is something, and the numbers are not said to be hers."""

TO_US = regex(
    r"# # (?:(?!(?:to|for|them|they)\b)\w+ ){0,2}(?:to|for) (?:us|we)\b"
    rf"|# # (?:us|we)\b(?! {_ACTS})(?! (?:still (?:serv|receiv|return|have)|#"
    r"|serv|re\b|are\b|have|got|receiv|return|chas|on\b|to\b|scored|down|behind|trail))"
    r"|# # (?:\w+ )?ours\b"
    r"|# # (?!against )(?:\w+ ){1,2}us$|# # over (?:them|they)\b|# # in (?:our|we) favou?r\b"
    r"|# # in favou?r of (?:us|we)\b|# # against (?:them|they)\b|^(?:\w+ )?us # #$"
)
TO_THEM = regex(
    r"# # (?:(?!(?:to|for|us|we)\b)\w+ ){0,2}(?:to|for) (?:them|they)\b"
    rf"|# # (?:them|they)\b(?! {_ACTS})(?! (?:#|serv|have|call|re\b|are\b|to\b|got))"
    r"|# # them serve them$|# # against us\b|# # in (?:their|they) favou?r\b"
    r"|# # in favou?r of (?:them|they)\b"
    r"|^(?:\w+ )?them # #$"
)
THEIRS_FIRST = regex(rf"\b{THEY} (?:got |have |on |at |with )?#|# # (?:them(?! serv)|theirs)\b")
OURS_FIRST = regex(
    rf"\b{WE} (?:got |have |on |at |with |are |serve |serving )*(?:at )?#|# # (?:us|ours)\b"
)
_FEW_WORDS = r"(?: [a-z]\w*){0,2}"
EACH_SAID = regex(
    rf"\b(?P<before>[WT]){_FEW_WORDS} #{_FEW_WORDS} (?!(?P=before))[WT]{_FEW_WORDS} #"
    rf"|# (?:points? |for |to )*(?P<after>[WT])(?: and| but)? # (?:points? |for |to )*"
    rf"(?!(?P=after))[WT]\b"
    rf"|# (?:not )?for (?P<owner>[WT]) (?!(?P=owner))[WT]{_FEW_WORDS} #"
)
"""Each side with its number, in a line whose sides are W and T: "W have # T only #", "# W # T"."""

HAS_THE_NUMBER = regex(
    rf"\b(?:us|{WE} (?:(?:are|have|got|at|on|the) )*the|{WE} have|{THEY} have)$"
    rf"|\b{THEY} (?:(?:are|have|got|at|on) )*the$"
)
IS_THE_NUMBER = regex(r"(?:is )?(?:ours|theirs|us|them)$")
"""Before and after one of the two numbers said again: whose it is."""

DENIED = regex(r"\b(?:not|dont have|do not have|didnt have|havent got|instead of|from) #(?! #)")
"""A number that is not it: "make that 6 not 5"."""

ALL_WORDS = frozenset(["all", "apiece", "each", "even"])
LEVEL_WORDS = frozenset(["tied", "level", "levelled", "leveled", "knotted", "square"])
SERVER_WORDS = frozenset(["server", "srv", "serv", "serving"])

SIDE_OUT = regex(r"\bside ?out\b|\bsideout\b|^(?:site|sight) out\b|\blost (?:the |our )?serve\b")
SIDE_OUT_SHORT = regex(r"\s*s/o\b", re.IGNORECASE)
SIDE_OUT_AFTER = regex(r"\bs/o\W*$", re.IGNORECASE)
THAT = (
    r"(?:that|it|the rally|this one|that #|that one|the point|a point|rally|the pt"
    r"|that rally|that point)"
)
_BARE = (
    r"^(?:just )?{how} (?:another |one more )?(?:point|pt)$"
    r"|^(?:another |one more )?(?:point|pt) {how}$"
)
"""`lost point`: a point and how it went, and nothing else."""

OUR_RALLY = regex(
    r"\b(?:our|my) (?:point|pt|rally)\b(?! is (?!now\b|again\b|it\b))"
    r"|\b(?:point|pt|rally) (?:(?:to |for )?(?:us|ours)|to we)\b"
    rf"|\bwe (?:just )?(?:won|win|got|take|took) {THAT}\b|^(?:just )?(?:won|got) {THAT}\b"
    r"|\b(?:that|this) (?:one |# )?(?:was|is|s) (?:ours|us)\b"
    r"|^(?:us(?! both| all)|ours)\b|^# (?:for )?us\b"
    rf"|{_BARE.format(how='won')}"
)
THEIR_RALLY = regex(
    r"\btheir (?:point|pt|rally)\b|\b(?:point|pt|rally) (?:(?:to |for )?(?:them|theirs)|to they)\b"
    rf"|\bthey (?:just )?(?:won|win|got|take|took|get) {THAT}\b"
    rf"|\bwe (?:just )?(?:lost|lose) {THAT}\b|^(?:just )?lost {THAT}\b"
    r"|\b(?:that|this) (?:one |# )?(?:was|is|s) (?:theirs|them)\b"
    r"|^(?:them(?! both| all)|theirs)\b|^# them\b"
    rf"|{_BARE.format(how='lost')}"
)

SCORE_WORDS = word_set("score")
STRAY_WORDS_ALLOWED = 1
