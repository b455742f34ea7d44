"""What players say around a score, as expressions over folded words with # for a number."""

from __future__ import annotations

import re

from bot.chat.forms import word_set

WE = r"(?:we|us|our|ours|were|weve|my two|my team|i|im|me|ive)"
THEY = r"(?:they|them|their|theirs|theyre|theyve|opponents|other team|other side)"
RECEIVE = r"(?:receiv\w*|return\w*|recv|rcv\w*)"
SERVE = r"(?:serving|servin|serve|serves|ball|on serve|to serve|service)"

THEY_SERVE = re.compile(
    rf"\b{THEY} (?:are |re |is |about |have |got |has |on |to |it |the |a )*{SERVE}\b"
    rf"|\b(?:his|her|hers) serve\b|\b{THEY} (?:to serve|serving|have it|got it)\b|^{RECEIVE}"
    rf"|\b{SERVE} {THEY}\b"
    rf"|\b(?<!they )(?<!they are )(?<!theyre ){RECEIVE}\b"
)
WE_SERVE = re.compile(
    rf"\b{WE} (?:to|starts?|starting|begins?) (?:begin|serve|start|us|off)|# {WE} (?:second"
    rf"|first|2nd|1st) serv\w*"
    rf"|\b{WE} got the (?:serve|ball)|\b(?<!they )(?<!they is )(?<!they are )(?<!theyre )about to"
    rf" serve\b|\b{WE} (?:\w+ ){{0,2}}(?:his|her|my) serve\b|"
    rf"\b{WE} (?:are |re |have |got |on |to |it |the |a |all )*{SERVE}\b"
    rf"|\b{THEY} (?:are |re )?{RECEIVE}\b|\bmy serve\b|\b{SERVE} (?:us|ours)\b"
    rf"|^{SERVE}\b|\b(?:up|down|ahead|behind|trailing|leading) (?:# )+(?:and |on )?(?:serving"
    rf"|servin)\b"
)
SECOND = re.compile(r"\b(?:second|2nd|server 2|server two|# server second)\b")
FIRST = re.compile(r"\b(?:first serve\w*|1st serve\w*|server 1|server one)\b")
_HOPED = r"(?<!of )(?<!us )(?<!we )(?<!still )(?<!chance )(?<!chances )(?<!odds )"
"""Before "winning" where it is what the question hopes for, not what the score says."""

_STANDS = (
    r"(?:(?<=# )|(?<=^)|(?<=we )|(?<=they )|(?<=were )|(?<=are )|(?<=re )|(?<=im )|(?<=theyre )"
    r"|(?<=weve )|(?<=still )|(?<=just )|(?<=now )|(?<=go )|(?<=and )|(?<=but )|(?<=, )|(?<=was )"
    r"|(?<=been )|(?<=got )|(?<=is ))"
)
"""Before "up" and "down" where they tell the score: "popping up" and "calm down" do not."""


def _of_score(word: str) -> str:
    return rf"(?:{_STANDS}{word}|{word}(?= (?:by |only |just |still )?#))"


UP = rf"(?:{_of_score('up(?! to)')}|ahead|leading|lead|leads|{_HOPED}winning|in front)"
DOWN = rf"(?:{_of_score('down')}|behind|trailing|trail|trails|{_HOPED}losing)"
CALLED = re.compile(rf"\b{SERVE}(?: \w+){{0,3}} # #|\b{SERVE} # #")
"""They serve at these very numbers: a call, their number first."""

AHEAD = re.compile(rf"\b{UP}\b")
BEHIND = re.compile(rf"\b{DOWN}\b")
THEY_LEAD = re.compile(rf"\b{THEY} (?:are |re |still |now |just )*(?:{UP}|{DOWN})\b")
TO_US = re.compile(r"# # (?:\w+ )?(?:to|for) us\b|# # us\b(?! #)|# # (?:\w+ )?ours\b")
TO_THEM = re.compile(r"# # (?:\w+ )?(?:to|for) (?:them|they)\b|# # (?:them|they)\b(?! #)")
THEIRS_FIRST = re.compile(rf"\b{THEY} (?:got |have |on |at |with )?#|# # (?:them|theirs)\b")
OURS_FIRST = re.compile(
    rf"\b{WE} (?:got |have |on |at |with |are |serve |serving )*(?:at )?#|# # (?:us|ours)\b"
)
EACH_SAID = re.compile(
    rf"\b{WE} (?:\w+ ){{0,2}}#(?: \w+){{0,2}} {THEY}(?: \w+){{0,2}} #|# (?:us|we) # (?:them"
    rf"|they)\b"
)
EACH_SAID_THEIRS = re.compile(
    rf"\b{THEY} (?:\w+ ){{0,2}}#(?: \w+){{0,2}} {WE}(?: \w+){{0,2}} #|# (?:them"
    rf"|they) # (?:us|we)\b"
)
ALL_WORDS = frozenset(["all", "apiece", "each", "even"])
LEVEL_WORDS = frozenset(["tied", "level", "square"])
SERVER_WORDS = frozenset(["server", "srv", "serv", "serving"])

SIDE_OUT = re.compile(
    r"\bside ?out\b|\bsideout\b|^(?:site|sight) out\b|\blost (?:the |our )?serve\b"
)
THAT = (
    r"(?:that|it|the rally|this one|that #|that one|the point|a point|rally|the pt"
    r"|that rally|that point)"
)
OUR_RALLY = re.compile(
    r"\b(?:our|my) (?:point|pt|rally)\b|\b(?:point|pt|rally) (?:(?:to |for )?(?:us|ours)|to we)\b"
    rf"|\bwe (?:just )?(?:won|win|got|take|took) {THAT}\b|^(?:just )?(?:won|got) {THAT}\b"
    r"|\b(?:that|this) (?:one |# )?(?:was|is|s) (?:ours|us)\b|^(?:us|ours)\b|^# (?:for )?us\b"
)
THEIR_RALLY = re.compile(
    r"\btheir (?:point|pt|rally)\b|\b(?:point|pt|rally) (?:(?:to |for )?(?:them|theirs)|to they)\b"
    rf"|\bthey (?:just )?(?:won|win|got|take|took|get) {THAT}\b"
    rf"|\bwe (?:just )?(?:lost|lose) {THAT}\b|^(?:just )?lost {THAT}\b"
    r"|\b(?:that|this) (?:one |# )?(?:was|is|s) (?:theirs|them)\b|^(?:them|theirs)\b|^# them\b"
)

SCORE_WORDS = word_set("score")
STRAY_WORDS_ALLOWED = 1
