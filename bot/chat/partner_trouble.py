"""Trouble between partners, told or asked: a ball taken, a silence, blame, how to bring it up.

Answered as what helps the two of them. None of it is kept as a note: the other reads the book too.
"""

from __future__ import annotations

from bot.chat.forms import word_set
from bot.chat.message import Message, is_ours, opponents
from bot.chat.said import Certainty, Question
from bot.chat.short_forms import in_full
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.words import words_in
from knowledge.complaints import complains
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_PARTNER = r"(?:(?:my |our )?(?:partner|partners|pard|pardner|ourname)|shes?|hes?)"
_ANYBODY = (
    rf"(?:\b{_PARTNER}|^(?:(?:so|ok|and|now|help) )*(?!(?:i|im|we|you|they|these|opponents?|ref"
    r"|referee|umpire|crowd|coach|everyone|everybody|somebody|someone|nobody)\b)\w+)"
)
"""A partner whom nobody has told us of yet opens the message as a name that we don't know."""
_OFTEN = (
    r"(?: (?:is|was|has|are|just|really|always|keeps?|kept|keep|again|been|wont|stop|even|still|on"
    r"|all|now|the|time|so|both))*"
)
_OURS_TOO = (
    r"(?:(?:all|every one|half|most) )?(?:of )?my (?:balls?|shots?|side|court|forehands?|half)"
)
_TAKES = (
    rf"\b{_PARTNER}{_OFTEN} (?:poach|tak|steal|hog|hit|grab|go|goe|com)(?:e|s|es|ing)?"
    rf"(?: (?:over|for|on))* {_OURS_TOO}\b"
)
_TOOK = (
    rf"\b{_PARTNER}{_OFTEN}(?: (?:has|have|had|just))* (?:taken|took|stolen|stole|grabbed|hogged"
    r"|poached|went for|gone for) (?:(?:all|every one|half|most) )?(?:of )?my (?:balls?|shots?)\b"
)
_TO = r"(?:her|him|them|(?:my |our )?(?:partner|pard|mate|ourname))"
_KINDLY = (
    r"(?:(?:w o|w out|without|and not|not) (?:\w+ ){0,3}(?:fight\w*|row|argument|drama"
    r"|upset\w*|anger"
    r"|offend\w*|mean|rude|mad|angry|jerk|feelings|falling out|blow\w*)|nicely|kindly|gently)"
)
_BRING_UP = (
    rf"\bhow (?:do|should|can|would|shall) (?:i|we) (?:tell|ask|say|bring|raise|put|talk|mention)\b"
    rf"(?:.*\b{_KINDLY}\b| (?:this |that |it )?(?:(?:up )?(?:to|with) )?{_TO}"
    r"(?: (?:that|this|it|about (?:it|that|this)|to (?:stop|leave)\b.*))?$)"
)
_SAY = (
    rf"\b(?:do|should|shall) i (?:just )?say (?:something|anything|smth|smthg|sth|it)(?: to {_TO})?"
    r"(?: (?:now|again|once more|or (?:not|leave it|wait|let it go)|about it))*$"
    rf"|\bwhat (?:do|should|can) i say to {_TO}$"
)
_SILENT = (
    rf"\b{_PARTNER}{_OFTEN} (?:went|goes|gone|got|turned|gets)(?: (?:all|really|very|so|completely"
    r"|totally))* (?:silent|quiet|cold|moody|sulky|mute)\b"
    rf"|\b{_PARTNER} (?:didnt|hasnt|wont|doesnt|barely|stopped|isnt|refuses to)"
    r"(?: (?:even|really))* (?:say|says|said|saying|speak|speaks|spoken|speaking|talk|talks|talked"
    r"|talking)(?: (?:a|one|single))*(?: (?:word|anything|to (?:me|us))\b|$)"
    rf"|\b{_PARTNER}{_OFTEN} sulk(?:s|ing)?\b"
)
_BLAMES = (
    rf"\b{_PARTNER}{_OFTEN} (?:(?:says?|said|saying|thinks?|thought|told me|telling me)\b.*"
    r"\b(?:my fault|(?:its|was|is) (?:all )?on me|because of me|im the problem|i lost (?:it|us))\b"
    r"|(?:blam(?:es?|ed|ing)) (?:me|it on me|everything on me)\b"
    r"|(?:giv(?:es?|ing)|gave|puts?|putting) (?:(?:me|us) (?:all )?(?:the )?(?:fault|blame)"
    r"|(?:(?:all|the|every) )*(?:fault|blame) (?:to|on) (?:me|us))\b)"
)
_WHOSE_FAULT = regex(
    r"(?:(?:so|ok|and|but|hm) )*(?:(?:was|is) (?:that|it|this)(?: one)?|whos to blame"
    r"|who is to blame|that was)(?: (?:really|all))*"
    r" (?:(?:my|her|his|our|ournames?|partners|my partners) (?:fault|error|mistake)|mine|hers|his)"
    r" or (?:(?:my|her|his|ournames?|partners|my partners)(?: (?:fault|error|mistake))?|mine|hers)"
    r"|(?:(?:so|ok|and|but) )*whose (?:fault|mistake) (?:was|is) (?:that|it|this)(?: one)?"
)
"""`was that her fault or mine`: blame between the two of us, and no fault of the rulebook."""
_OF_A_BODY = words_in("exhausted gassed fried shaky wobbly hungover down checked pressing")
_FEELS = (
    r"\b(?:(?:my |our )?(?:partner|pard|pardner)|ourname)(?:s| is| was| seems| looks| started)"
    r"(?: (?:so|super|really|very|totally|all|a bit|kinda|pretty|completely|fully|now|just|clearly"
    r"|already|visibly))*"
    rf" (?:{'|'.join(sorted(word_set('moods') - _OF_A_BODY))})\b(?! (?:when|whenever|if|at \d))"
)
"""How our partner feels now; "gets nervous when behind" is a habit, which a note may keep."""

_OTHERS = r"(?: (?!ourname\b)\w+)"
_QUARREL = (
    rf"\bourname\b{_OTHERS}{{0,6}} (?:wont|will not|refus\w+|no longer wants?"
    rf"|(?:doesnt|does not|didnt|did not|never) wants?){_OTHERS}{{0,4}}"
    rf" (?:play|partner|speak|talk|communicate){_OTHERS}{{0,3}} (?:with|to) ourname\b"
    r"|\bourname (?:(?:is|was|got|so|really|very) )*"
    r"(?:angry|mad|furious|cross|annoyed|upset|fed up) (?:at|with) ourname\b"
    r"|\b(?:ourname (?:and |n )?ourname"
    r"|(?:my|our|the|both) (?:two )?(?:players|girls|boys|pair|two|team|kids))"
    r"(?: (?:are|is|keep|always|just|started|start))*"
    r" (?:fight|fighting|quarrel|quarrell?ing|argue|arguing|row|rowing|bicker|bickering)\b"
)
"""Our two, as whoever coaches them tells of it: which of them is in the right is never asked."""

_SNAPS = (
    rf"{_ANYBODY}{_OFTEN}(?: (?:getting|gets|got|being|a|bit|little|very))*"
    r" (?:(?:snap(?:s|ped|ping)?|moan(?:s|ed|ing)?|bark(?:s|ed|ing)?) at me|(?:told|tells|telling)"
    r" me off|(?:cross|angry|mad|annoyed|snappy|short|fed up|impatient|frustrated|furious)"
    r" (?:at|with) me)\b"
)
"""Cross with whoever writes: of an opponent it is none, who is known by name."""

_SORRY = (
    rf"(?:\b{_PARTNER}|\bourname){_OFTEN} (?:(?:say|says|said|saying) (?:(?:that|shes|hes) )*sorry"
    r"|apologi[sz](?:e|es|ed|ing)|sorry)\b(?! (?:i|for the call|about the call)\b)"
)
"""Who says sorry after every miss is ours: an opponent's manners are nobody's trouble."""

_PLACES = (
    r"(?:to )?(?:be )?(?:stack\w*|unstack\w*|swap|switch|(?:play )?straight"
    r"|(?:(?:play|on|the|go) )*(?:left|right))\b"
)
_WANTS = (
    r"(?: (?:still|really|always|just|only|also))*"
    r" (?:wants?|would like|insists? on|(?:doesnt|does not|wont|refuses to) (?:want )?)"
)
_WISH = regex(
    rf"\bourname{_WANTS} ?{_PLACES}"
    rf"|\b{_PARTNER}{_WANTS} ?{_PLACES}.*"
    r"\b(?:i (?:dont|do not|want|wont|would|prefer)|im not|not me|id rather)\b"
)
"""`she wants to stack and i dont`: what a partner wishes is no habit of an opponent."""

_IS_SORRY = regex(_SORRY)
_TOLD = regex(
    "|".join((_QUARREL, _SNAPS, _TAKES, _TOOK, _BRING_UP, _SAY, _SILENT, _BLAMES, _FEELS))
)
_OF_US = regex(r"\b(?:we|me|us|i|my|our|partner|ourname)\b")


def partner_trouble(message: Message, chat: ChatView) -> Question | None:
    """What helps the pair; None where an opponent is spoken of, or a body that hurts."""
    line = line_of_us(message, chat)
    is_sorry = _IS_SORRY.search(line) is not None
    is_wish = _WISH.search(line) is not None
    of_rules = chat.last_topic is Topic.RULES_QUESTION
    is_blame = _WHOSE_FAULT.fullmatch(line) is not None and not of_rules
    is_of_us = is_sorry or is_wish or is_blame or (_TOLD.search(line) and _OF_US.search(line))
    if not is_of_us or complains(message.text):
        return None
    if "?" in message.text.rstrip(" ?!."):
        return None  # "is it as good as over? tom's gone quiet" asks of something else
    known = (one for one in message.mentions if one.certainty is not Certainty.NOBODY)
    if any(not one.pronoun for one in opponents(list(known), chat)):
        return None
    slots = find_slots(message.said, (), message.told)
    topic = Topic.STACK_OR_NOT if is_wish and not _TOLD.search(line) else Topic.RESET_HEAD
    return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)


def line_of_us(message: Message, chat: ChatView) -> str:
    """The words in full, one of ours by name as "ourname"."""
    ours = [one.span for one in message.mentions if not one.pronoun and is_ours(one, chat.ours)]
    return " ".join(
        "ourname" if any(start <= word.span[0] < stop for start, stop in ours) else word.folded
        for word in in_full(message.said, names=ours)
    )
