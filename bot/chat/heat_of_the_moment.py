"""What is typed in anger: going for a head is answered where to aim, a referee with a cool head.

Whom to hit on purpose is no report and no medical matter: the page on speed-ups says where the ball
goes, and that it never goes at a head.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from knowledge.regex import regex
from knowledge.tactics.crowd_trouble import shouted_at

_SOFT = r"(?:(?:just|now|please|actually|really|fucking|effing|ok|to|then|back|again) )*"
_WHOM = rf"(?:{NAME}|him|her|them|em|these (?:guys|two)|this guy|that guy)"
_HUNTS = regex(
    rf"(?:(?:ok|so|and|ugh|man|dude) )*(?:(?:should|shud|can|could|shall|may|do) (?:i|we)|lets"
    rf"|i (?:wanna|want to|will|am gonna)|im gonna|gonna|wanna) {_SOFT}"
    rf"(?:head ?hunt(?: {_WHOM})?"
    rf"|(?:go|aim|hit|drive|smash|speed up|play)(?: it)?(?: straight| right)? (?:for|at|to) "
    rf"(?:{_WHOM} s?|(?:the|his|her|their) )?(?:head|face)s?"
    rf"|(?:bean|brain|headshot) {_WHOM})(?: (?:now|next|or what|too|back|again))*"
)
_OFFICIAL = r"(?:refs?|referees?|umps?|umpires?|line ?judges?|officials?)"
_ABUSED = (
    r"(?:idiots?|clowns?|jokes?|morons?|muppets?|blind|useless|terrible|awful|trash|garbage|"
    r"clueless|biased|crooked|cheats?|cheating|cheaters?|sucks?|sux|robbing us|against us|horrible|"
    r"bad|the worst|stupid|dumb)"
)
_RAGES = regex(
    rf"(?:(?:ugh|omg|man|dude|wow|lol|wtf|argh|this|the|that|our|these) )*{_OFFICIAL}"
    rf"(?: (?:is|are|was|were|s|just|so|such|an?|the|absolute|total|complete|really|fucking|effing"
    rf"|damn|freaking))* {_ABUSED}(?: (?:lol|wtf|man|today|again|here|smh))*"
)


def wants_a_head(message: Message) -> bool:
    """Whether somebody means to go for a head."""
    return _HUNTS.fullmatch(named_line(message.said, message.mentions)) is not None


_ASKS = regex(r"\b(?:what|how|should|can|do we|help|now what|allowed|ref|referee)\b")


def asks_of_shouting(message: Message) -> bool:
    """Whether it is asked what to do about somebody beside the court who shouts at us."""
    line = " ".join(word.folded for word in message.said)
    return shouted_at(message.text) and ("?" in message.text or _ASKS.search(line) is not None)


def rages_at_referee(message: Message) -> bool:
    """Whether nothing is said but what somebody thinks of a referee."""
    line = " ".join(word.folded for word in message.said)
    return _RAGES.fullmatch(line) is not None and "?" not in message.text
