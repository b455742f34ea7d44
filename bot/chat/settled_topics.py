"""Short messages whose form settles their topic, where their words alone would mislead."""

from __future__ import annotations

from functools import cache
from typing import Final

from bot.chat.message import Message
from bot.chat.rules_by_form import tells_of_somebodys_calls
from bot.chat.said import Question
from bot.chat.server_number_asked import asks_server_number
from bot.chat.slots import find_slots
from bot.chat.topic_by_form import topic_by_form
from bot.chat.topic_question import CERTAIN
from bot.chat.words import words_in
from knowledge.regex import regex
from knowledge.tactics.changes import troubles
from knowledge.vocabulary import Topic

_HOW_BIG = "how (?:high|tall|low|wide|deep|long|big)"
_SIZE = "(?:height|width|depth|length|size|dimensions|measurements)"
_PLACE = "(?:in|at) the (?:middle|centre|center|sides?|sidelines?|posts?|ends?)"
_THING = (
    "(?:the |a )?(?:pickleball )?"
    f"(?:court|net(?: posts?)?|kitchen|nvz|non volley zone|service (?:box|court))(?: {_PLACE})?"
)
_MEASURES = regex(
    rf"(?:{_HOW_BIG} (?:is|are) {_THING}(?: supposed to be| meant to be)?"
    rf"|{_HOW_BIG} should {_THING} be"
    rf"|(?:(?:what is|whats) )?(?:the )?{_SIZE} of {_THING}"
    rf"|(?:(?:what is|whats) )?(?:the )?(?:court|net|kitchen) {_SIZE})"
)
"""`how high is the net`: the rulebook's measure; how high to hit over it is another question."""

_LEGAL = regex(
    r"(?:(?:so|ok|okay|wait|hey|um|and) )*(?:is|was|isnt|wasnt|would) (?:it|that|this)(?: be)?"
    r"(?: (?:even|still|actually|really|not|ever))*"
    r" (?:legal|illegal|a fault|allowed|against the rules|a foul|permitted)\b.*"
)
"""`is it legal if okafor leans over the kitchen`: it asks for a rule, whatever the shot."""

_WHOSE = "(?:the|that|this|their|there|his|her|hers|theirs)"
_TOO_GOOD = "(?:(?:just|way|so|far) )?too (?:hard|fast|quick|heavy|good|big|strong|much|spinny)"
_FOR_US = "(?:for (?:me|us)|to return|to get back)"
_HELP = "(?:help|what now|what do (?:i|we) do|how do (?:i|we) return it)"
_THEIR_SERVE = regex(
    rf"(?:{_WHOSE} )?serves? (?:is|are|r|just) {_TOO_GOOD}(?: {_FOR_US})?(?: {_HELP})?"
)
"""`serve is too hard`: who finds a serve so receives it; "my serve is too hard" does not fit."""


_ENDS_AT = regex(
    r"(?:when |do |should )?(?:do )?(?:we )?(?:switch|change|swap) (?:sides|ends) at \d+"
    r"(?: in (?:the )?(?:game (?:three|3)|third(?: game)?|decider|last game|game))?"
)
"""`switch sides at 6 in game 3`: the rulebook's change of ends; who plays where has no score."""

_TURNS = "(?:switch|change|swap)(?:ing)?"
_WHICH_SCORE = "(?:when|(?:at )?(?:what|which) (?:score|point)|how often)"
_SO_FAR = "(?:(?:its|were|at) )?\\d+ \\d+(?: [12])?(?: (?:us|them|we|they|serve|our|their|ball))* "
_IN_A_GAME = (
    "(?: (?:now|here|yet|again|already|at \\d+|(?:in|of) (?:a |the )?(?:game (?:to )?\\d+"
    "|game three|third(?: game)?|decider|deciding game|last game|final game)))*"
)
_ENDS_WHEN = regex(
    rf"(?:(?:so|ok|okay|wait|hey|um|and) )*(?:{_SO_FAR})?"
    rf"(?:(?:{_WHICH_SCORE} )?(?:do|should|must|are|did) (?:we|you|teams)"
    rf"(?: (?:have to|need to|supposed to|meant to|gonna|going to|already))*"
    rf" {_TURNS} ends{_IN_A_GAME}"
    rf"|{_WHICH_SCORE} (?:do|should|must) (?:we|you|teams) {_TURNS} sides{_IN_A_GAME}"
    rf"|{_TURNS} (?:ends|sides) when)"
)
"""`6-4-1 us, do we change ends now`: the rulebook's change; whether to swap "sides" asks of us."""

_OF_BARS = "(?:the|a|show|me|give|see|strengths?|strong|weak|good|bad|and|picture|chart|points|of)"
_REPORT = regex(
    rf"(?:{_OF_BARS} )*(?:bars?|(?:strong|weak|good|bad) (?:points|sides)) (?:of|for|on|about) "
    r"(?P<who>.+)"
)
"""`bars for okafor`, `strong and weak points of okafor`: the sheet that a report brings."""
_WHAT_NOW = "(?: (?:today|now|again|help|what now|what do (?:i|we) do|why|any ideas?|wtf))*"
_MISSES = (
    "(?:(?:are|is|r|keeps?|all|just|always|keep on|kept|been|have been|were) )*"
    "(?:(?:go|end up|going|flying|sailing|landing|floating|hitting) )?"
    "(?:out|long|wide|deep|(?:in|into) the net)"
)
_OURS_OUT = regex(
    rf"(?:our|my) (?:serves?|srvs?|drives?|balls?|shots?|speed ?ups?|volleys?) {_MISSES}{_WHAT_NOW}"
    rf"|(?:our|my) (?:third shots|thirds|drops|returns|dinks|resets) {_MISSES}{_WHAT_NOW}"
    rf"|(?:(?:i|we|im|were) )(?:(?:just|all|both|are|am) )*(?:keep|kept|always|cant stop) "
    rf"(?:on )?(?:missing|dumping|netting|shanking|blowing|losing) (?:(?:all|my|our|the|every"
    rf"|easy) )*"
    rf"(?:serves?|srvs?|returns?|thirds?|drops?|drives?|dinks?|volleys?|resets?|overheads?){_WHAT_NOW}"
    rf"|(?:i|we) keep (?:hitting|sending|missing|driving) (?:it|them|balls?|everything|drives?)? ?"
    rf"(?:out|long|wide|(?:in|into) the net){_WHAT_NOW}"
)
"""`our serves are going out`: our own misses; nobody leaves a ball of their own."""

_OUR_LOB_OUT = regex(rf"(?:our|my) lobs? {_MISSES}{_WHAT_NOW}")
_DESPERATE_LOB = regex(
    r"(?:desperate|desperation|emergency|scrambling|in trouble)(?: \w+){0,4} lobs?(?: now| it)?"
    r"|(?:should i |do i |can i )?lob(?: it)? (?:when|if) (?:desperate|in trouble|scrambling)"
)
"""`desperate on the baseline, lob`: our own lob, to get out of trouble."""

_STUCK_BACK = regex(
    r"(?:(?:so|ok|help) )*(?:we|were|im|i)(?: (?:are|re|r|am|m|is|keep|keep getting|get|getting))*"
    rf"(?: (?:always|just|both|all))* (?:stuck|pinned|caught)"
    rf" (?:back|bak|bck|at the baseline|on the baseline|deep){_WHAT_NOW}"
)
"""`we r stuck bak what now`: how to get to the line; "stuck back" alone tells what hurts."""

_LINE_DINK = regex(
    r"when (?:can|should|do|could|is it ok to|to)(?: (?:i|we))?"
    r"(?: (?:go|dink|go for|hit|play|try))*"
    r" (?:the |a |my )?(?:line dinks?|(?:dinks? )?down the line(?: dinks?)?|dinks? (?:the )?line)"
    r"|when is the line dink on"
)
"""`when can i go for the line dink`: who leans decides it, not the score."""

_SIDE = "(?:us|them|me|we|they|ours|theirs|our|their|my)"
_SERVE_AT = regex(
    rf"(?:(?:ok|so|now|thats|that makes it|makes it|its|at|on) )*"
    rf"(?:(?:\d+ \d+(?: [12])? )?(?:{_SIDE} )?(?:match|game|set)(?: ?ball| points?)"
    rf"(?: (?:(?:against|for|to) )?{_SIDE}| down| up)?"
    rf"|\d+(?: (?:all|\d+))*(?: {_SIDE})?)"
    r" (?:what|which|how|where)(?: (?:do|should|can|to|is the|kind of|sort of))*(?: (?:i|we))?"
    r" (?:serve|srv)"
)
"""`match point against us. what serve`, `10-9 us what serve`: the score only tells when."""

_COMPARED = regex(
    r"(?:(?:can|could|would) (?:you|u) |please |pls )*(?:compare|comparison (?:of|between))"
    r" (?P<who>\S+(?: \S+){0,4})"
)
"""`compare mira and tom`: what is known of both, ours or theirs."""

_BETWEEN = words_in(
    "can could would you u please pls compare comparison of between and with to vs n"
)

_THEIR_AIM = regex(
    r"(?:(?:so|ok|and) )*(?:who|whom)(?: (?:will|would|does|do|is|are|might|could|s))?"
    r" (?:they|he|she)(?: and they)?(?: (?:likely|probably|usually|gonna|going|want|try"
    r"|trying|to))*"
    r" (?:target|attack|pick on|go (?:at|after|for)|hit (?:to|at)|come (?:at|after)|isolate"
    r"|play (?:to|at)|aim (?:at|for)|targeting|attacking|going after|picking on)"
    r"(?: (?:on|with|first|today|most|at|the|us|we|here|in|net|serve|dinks?|speed ?ups?))*"
)
"""`who will okafor target`: which of us they come at, where "who do we target" asks of them."""

_BOTH_INSIDE = regex(
    r"(?:(?:so|ok|but|wait|and) )*(?:(?:isnt|is|arent|are|doesnt|does|dont|do|wont"
    r"|will) (?:that|it|this"
    r"|we|our|these|those)? ?)?(?:(?:have|has|put|puts|leave|leaves|sides|mean|means|with|our"
    r"|the) )*"
    r"(?:both|two)(?: (?:of )?our)? (?:bhs?|backhands?|fhs?|forehands?)(?: (?:is|are|be|being"
    r"|end up|sit"
    r"|in|into|to|at|on|the|then|now))* (?:middle|mid|center|centre)"
    r"(?: (?:bad|a problem|wrong|ok|good|then|now|so swap|should we swap))*"
)
"""`isnt that both backhands in the middle`: who plays which side, not who takes the ball."""

_WHO_RECEIVES = regex(
    r"(?:(?:so|ok|and) )*(?:who|whom)(?: of us)? (?:(?:will|would|does|do|is|are|s) )?"
    r"(?:they|he|she) (?:serve|serving|gonna serve|going to serve)s?(?: it)? (?:to|at)"
    r"(?: (?:now|here|next|first))*"
)
"""`who will okafor serve to`: the score tells which of us receives."""

_OUR_RETURN = regex(
    r"(?:(?:so|ok|and|n) )*what (?:(?:do|should|can|shall) (?:i|we)|to) do (?:w|with|on) "
    r"(?:the|my|our) returns?(?: then)?"
)
"""`and what do i do with the return`: the shot named, whatever was asked before."""

_OUR_AIM = regex(
    r"(?:(?:so|ok|and) )*(?:who|whom|which (?:one|of them|player|guy))"
    r"(?: (?:do|should|shall|can|would|to))? ?(?:i|we)?"
    r" (?:aim(?: (?:it|for|at))*|target|attack|pick on|isolate|shoot (?:at|for)"
    r"|(?:hit|go|play|put)(?: (?:it|the ball))? (?:at|to|after|on))"
    r"(?: (?:now|here|next|today|more|most|first))*"
)
"""`who do i aim at`: whom to play at, whatever shot was spoken of before."""

_WHO_RUNS = regex(
    r"(?:(?:so|ok|and) )*(?:who|whos) (?:covers?|takes?|gets?|has|chases?|runs (?:for|down)"
    r"|goes (?:back )?for|covering|taking|should (?:take|cover|get))"
    r" (?:the |their |any |all |our )*(?:lobs?|overheads?|smash(?:es)?)"
)

_THEIR_STACK = regex(
    r"(?:(?:so|ok|and) )*(?:how|what) (?:do|can|should|would) (?:we|i)"
    r" (?:attack|beat|break|play|play against|answer|counter|exploit|handle|do against|deal with"
    r"|return against|punish|do about) (?:the|a|their|they|that|this) stack(?:ing|s|ed)?"
    rf"{_WHAT_NOW}"
)
"""`how do we attack the stack`: theirs; whether to stack ourselves attacks nobody."""

_THEIR_ERNE = regex(
    r"(?:(?:so|ok|and|but) )*(?:how (?:do|can|should|would) (?:we|i)|how to"
    r"|what (?:do|can|should) (?:we|i))"
    r" (?:punish|beat|stop|counter|deal with|do about|handle|defend(?: against)?|answer|cover|avoid"
    r"|take away) (?:the|that|this|a|their|they|his|her)? ?(?:ern(?:e|i|ie|ies|es)|atps?"
    r"|around the posts?)\b.*"
)
"""`how do we punish the erne`, `what do i do about the atp`: theirs; ours punishes nobody."""

_THEY_STAY_BACK = regex(
    r"(?:(?:so|ok|and|but) )*(?:they|(?:the )?both of they)"
    r"(?: (?:just|both|always|keep|like to|all))*"
    r" (?:stand|stay|hang|sit|camp|standing|staying|hanging)(?: (?:both|just|always|way|all))* back"
    r"(?: (?:both|always|at the baseline|every time"
    r"|(?:all|the whole) (?:the )?(?:time|match|game)))*"
    rf"{_WHAT_NOW}"
)
"""`they stand both back all the time what do we do`: nobody lobs because of that."""

_SETTLED: Final = (
    (_THEY_STAY_BACK, Topic.DROP_ON_DEEP_OPPONENTS),
    (_THEIR_ERNE, Topic.ANSWER_PATTERN),
    (_THEIR_STACK, Topic.ANSWER_PATTERN),
    (_WHO_RUNS, Topic.LOB),
    (_BOTH_INSIDE, Topic.STACK_OR_NOT),
    (_OUR_RETURN, Topic.AIM_RETURN),
    (_OUR_AIM, Topic.WHOM_TO_TARGET),
    (_SERVE_AT, Topic.AIM_SERVE),
    (_MEASURES, Topic.RULES_QUESTION),
    (_LEGAL, Topic.RULES_QUESTION),
    (_THEIR_SERVE, Topic.AIM_RETURN),
    (_ENDS_AT, Topic.RULES_QUESTION),
    (_ENDS_WHEN, Topic.RULES_QUESTION),
    (_OURS_OUT, Topic.ADJUST),
    (_OUR_LOB_OUT, Topic.LOB),
    (_DESPERATE_LOB, Topic.LOB),
    (_STUCK_BACK, Topic.TRANSITION),
    (_LINE_DINK, Topic.AIM_DINK),
)


@cache
def _troubles() -> frozenset[str]:
    """What hurts, as the buttons under "what to change" say it: typed, it is the same answer."""
    return frozenset(one.label.replace("-", " ") for one in troubles())


def _asks_for_bars(message: Message) -> bool:
    """Whether it names nothing but whose report is wanted."""
    line = " ".join(word.folded for word in message.said)
    found = _REPORT.fullmatch(line)
    if found is None or not message.mentions:
        return False
    start = min(one.span[0] for one in message.mentions)
    asked = sum(word.span[0] < start for word in message.said)
    return asked == len(line[: found.start("who")].split())


def _compares(message: Message) -> bool:
    """Whether it names two people to compare, and nothing else."""
    line = " ".join(word.folded for word in message.said)
    named = [one for one in message.mentions if not one.pronoun]
    if _COMPARED.fullmatch(line) is None or len(named) != 2:
        return False
    inside = [
        word.folded
        for word in message.said
        if not any(one.span[0] <= word.span[0] < one.span[1] for one in named)
    ]
    return {*inside} <= _BETWEEN


def settled_topic(message: Message) -> Question | None:
    """The question that such a message is; None unless it is all that is said."""
    topic = _topic_of(" ".join(word.folded for word in message.said))
    topic = topic or topic_by_form(message)
    sided = " ".join(word.folded for word in message.told.words)
    if topic is None and _THEIR_AIM.fullmatch(sided):
        topic = Topic.BEING_TARGETED
    if topic is None and _WHO_RECEIVES.fullmatch(sided):
        topic = Topic.WHERE_TO_STAND
    if topic is None and (_asks_for_bars(message) or _compares(message)):
        topic = Topic.OPPONENT_REPORT
    if topic is None:
        return None
    return Question(
        text=message.text,
        topic=topic,
        confidence=CERTAIN,
        slots=find_slots(message.said, message.mentions, message.told),
        may_note=tells_of_somebodys_calls(message),
    )


def _topic_of(line: str) -> Topic | None:
    if line in _troubles():
        return Topic.ADJUST
    if asks_server_number(line):
        return Topic.RULES_QUESTION
    return next((topic for form, topic in _SETTLED if form.fullmatch(line)), None)
