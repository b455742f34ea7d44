"""What players say around the chance of a rally, over folded words with @ for a share."""

from __future__ import annotations

from knowledge.regex import regex

_WE = r"(?:we|were|us|weve|i|im|ive|our|my)"
_THEY = r"(?:they|theyre|theyve|them|their|opponents)"
_BE = r"(?: are| re| is| was)?"
_OUR_SERVE = (
    rf"(?:(?:when|if|while|whenever|as) )?(?:we|were|i|im){_BE} serv\w*"
    r"|(?:(?:on|of|in|off|behind|from) )?(?:our|my) (?:own )?serv\w*(?: games?)?|(?:on|of) ours\b"
    rf"|(?:(?:when|if|while|whenever|as) )?(?:they|theyre){_BE} (?:receiv\w*|return\w*)"
    r"|(?:(?:on|of|in|off|from) )?their returns?"
)
_THEIR_SERVE = (
    rf"(?:(?:when|if|while|whenever|as) )?(?:they|theyre){_BE} serv\w*"
    r"|(?:(?:on|of|in|off|behind|from|returning|receiving|against) )?(?:their|they)"
    r" (?:own )?serv\w*(?: games?)?|(?:on|of) theirs\b"
    rf"|(?:(?:when|if|while|whenever|as) )?(?:we|were|i|im){_BE} (?:receiv\w*|return\w*)"
    r"|(?:(?:on|of|in|off|from) )?(?:our|my) returns?"
)
_SERVING = r"(?:(?:on|when|at|in|from|while|as) )?(?:the )?(?:serv(?:e|es|ing|ice|in)|server)\b"
_RETURNING = (
    r"(?:(?:on|when|at|in|from|while|as) )?(?:the )?"
    r"(?:return(?:s|ing|in)?|receiv(?:e|es|ing|in)?|recieving|recv|rcv)\b"
)
SIDE = regex(
    r"(?<!before )(?<!between )(?<!until )(?<!till )(?<!without )"
    rf"\b(?:(?P<ours>{_OUR_SERVE})|(?P<theirs>{_THEIR_SERVE})|(?P<serving>{_SERVING})"
    rf"|(?P<returning>{_RETURNING}))"
)
_WINS = (
    r"(?:wins?|winnin?g?|won|takes?|taking|took|gets?|getting|holds?|holding|scores?|scoring|at"
    r"|about|around)"
)
_LOSES = r"(?:loses?|losing|lost|drops?|dropping)"
VERB = regex(rf"\b(?:(?P<wins>{_WINS})|(?P<loses>{_LOSES}))\b")
WHO = regex(rf"^(?:(?P<we>{_WE})|(?P<they>{_THEY}))$")
ASSUME = regex(
    r"\b(?:assum\w*|suppos\w*|lets say|let us say|(?<!i )say (?:we|its|were)|imagine|figure"
    r"|if (?:we|its|were|it is)|put us at|call it|win|winning)(?: \w+){0,3} @"
    r"|\b(?:use|using|take|taking|with) (?:about |around )?@"
)
OF_ALL = regex(r"@ (?:of )?(?:all |the |our |these )*(?:rallies|rally|points|pts)\b")
EQUAL = regex(
    r"\b(?:if|assum\w*|suppos\w*|say|lets say|given|with)(?: (?:we|were|they|theyre|both|two|the"
    r"|pairs?|teams?|sides?|its|are|re|about|exactly|roughly|pretty|totally|that|as"
    r"|equally)){0,6} (?:equal\w*|even with (?:them|they)|evenly matched|equally (?:good|strong))\b"
    r"|\bassume even\b|\b(?:two|for|between|an) even (?:pairs?|teams?)\b|\beven pair on paper\b"
)
_OTHER_DOING = (
    r"(?:miss\w*|net\w*|fault\w*|driv\w*|hit\w*|mak(?:e|es|ing)|made|land\w*|poach\w*|aim\w*"
    r"|speed\w*|sped|lob\w*|drop shots?|crosscourt|error\w*|third\w*|dink\w*|put\w*|goes|attack\w*"
    r"|bang\w*|smash\w*|to her|to his)"
)
DOES_OTHER = regex(rf"\b{_OTHER_DOING}\b")
ANOTHER_SHARE = regex(
    r"^ (?:to win\b|chance|of winning|in$|in [^a-z@]|success|softer|harder|power|faster|slower"
    r"|effort|to (?:her|his|the|their|they)|of (?:her|his|the balls|balls|drives|dinks|drops)"
    r"|accura\w*|sure|humid\w*|battery)"
)
OF_BALLS = regex(
    r"^ (?:of )?(?:the |her |his |their )?(?:serves?|srvs?|returns?|rets?)"
    r"(?: (?:go|goes|went|come|came|land|lands|landed|are|were|was|is))?"
    r" (?:in|out|short|deep|long|wide|high|low|soft|hard|crosscourt|cross|line|to|into|at|on|off"
    r"|down|wing|middle)\b(?! (?:this|the (?:game|match)))"
)
"""What makes "3 of 5 returns short" balls, where nobody is said to win them."""

COUNTED = regex(
    r"\b(?:so far|up to now|(?:un)?till? now|last|past|had|won|lost|took|today|tonight"
    r"|this (?:game|match|set)|(?:the )?(?:first|second|third) (?:game|set)|already)\b"
)
"""What makes "3 of 10" rallies counted, and no more certain than so few of them are."""

SUPPOSED = regex(
    r"\b(?:if|suppos\w*|assum\w*|imagin\w*|hypothetical\w*|(?<!i )say (?:we|they|its)|lets say"
    r"|let us say|need\w*|want\w*|would|could|should|might|hop\w*|unless)\b"
    r"|\b(?:with|at) (?:\w+ )?@ (?:and )?@|\bwith (?:\w+ )?@"
)
"""What makes rates a case to look at, and not what is told of this match."""

USUAL = regex(
    r"\b(?:usual(?:ly)?|normal(?:ly)?|on average|in general|generally|as a rule|typical(?:ly)?"
    r"|most days|by default|our default|always|in the long run)\b"
)
# fmt: off
FILLER = frozenset([
    "we", "win", "winning", "our", "they", "their", "say", "assume", "suppose", "so", "ok",
    "use", "take", "the", "of", "and", "at", "on", "is", "are", "about", "around", "rallies",
    "points", "it", "its", "lets", "make", "that", "maybe", "roughly", "hey", "today",
    "numbers", "rates", "with", "were", "usually", "normally", "average", "general",
    "generally", "as", "a", "rule", "in", "typically", "now", "more", "like", "i", "think",
    "but", "only", "us", "reckon", "probably", "just", "lose", "losing", "get",
    "getting", "if", "let", "had", "have", "far", "won", "last", "match", "this", "game",
])
# fmt: on
"""Words that say nothing beside two rates."""
