"""A message that only changes the question before it: "and on the backhand?", "if he's lefty?"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import cache

from bot.chat.follow_ups import topic_carried
from bot.chat.forms import branches, patterns
from bot.chat.message import Message
from bot.chat.numbers import number
from bot.chat.rally_supposed import ASKS_CHANCES, only_supposes_a_rally
from bot.chat.said import Question, Slots
from bot.chat.score_words import LEVEL_WORDS
from bot.chat.slots import find_slots
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.wind_pointed_at import wind_pointed_at
from bot.chat.words import words_in
from knowledge.ball_facts import NOTHING_SAID, BallFacts
from knowledge.ball_places import HeightName, height_m
from knowledge.regex import regex
from knowledge.situation import Wind
from knowledge.vocabulary import Topic

_OPENING = regex(
    r"^(?:(?:ok|okay|hm+|hmm|no|nope|sorry|wait|actually|but|and|or|so|then|oh|n) )*"
    r"(?:(?:what|how) (?:about|if|bout)|what when|and|or|if|when|same|but|i meant?|no|sorry|then"
    r"|on|in|with|from|off|against|also|does that|still|n)\b"
)
"""How a message opens that goes on from the one before."""

_ASKS_ANEW = regex(
    r"\b(?:who|where|which|whom|what|how|why|should|shall|do|does|can|could)"
    r" (?!if\b|about\b|bout\b|when\b|come\b|that\b)\w+ \w+"
)
"""A question of its own after such an opening: "and where do I serve Hale"."""

_WEIGHS = regex(r"\w \w+ or\b")
"""Two shots or places are weighed: "off the dink or from the baseline for a lob"."""

OVERHEAD = BallFacts(height_m=height_m(HeightName.OVERHEAD))
"""All that the shot's own name says: "overhead?" asks about another shot."""

_ONE_BALL = frozenset(
    {
        Topic.AIM_ATTACK,
        Topic.AIM_DINK,
        Topic.AIM_OVERHEAD,
        Topic.DROP_ON_DEEP_OPPONENTS,
        Topic.ERNIE_OR_POST,
        Topic.LET_IT_GO,
        Topic.LOB,
        Topic.RESET_OR_COUNTER,
        Topic.TAKE_OR_LET_BOUNCE,
        Topic.THIRD_SHOT,
        Topic.TRANSITION,
    }
)
"""Topics about one ball: of them whatever is said of a ball alone goes on."""

_LINKING = words_in(
    "and or what about bout how if when with for on to at in of off from the a an its it is"
    " are be was same ok okay then too also but so he she hes shes him her his they them"
    " theyre their there i im me my we were us our you thats that this one instead no nope"
    " sorry wait actually mean meant said not oh hm hmm n side here now all some bit really"
    " very gets got comes does hits hit ball back face faces being been plays played player"
    " guy court blowing up out please would"
)
"""Words that settle nothing beside what is changed."""

_TIMEOUT = "TO"

_SERVING = words_in(
    "serve serves serving served receive receives receiving return returning they we"
)

_OPEN_TO_CHANGE = frozenset(Topic) - {
    Topic.SMALLTALK_OR_UNKNOWN,
    Topic.WEATHER_OR_BODY,
    Topic.RULES_QUESTION,
}
"""Topics with an answer that slots may change; those of the others hang on the words."""


_THE_SUN_DECIDES = frozenset({Topic.LOB, Topic.AIM_SERVE})
_SUN_ALONE = regex(
    r"(?:(?:and|but|so|ok|oh|well|the|its?|what|if|about|how|with|also|even|then) )*suns?"
    r" (?:(?:is|was|s|right|straight|low|now) )*"
    r"(?:behind (?:us|me|them|him|her)|(?:in|at|on) (?:our|my|their|his|her) (?:eyes?|face|backs?))"
    r"(?: (?:now|today|here|this end|at this end|though|tho|then))*"
)
"""`sun is behind them`, and nothing else: after a lob or a serve it goes on from that ball."""

_AT_A_SCORE = regex(
    r"(?:(?:ok|okay|so|hm+|oh|well|yeah|cool|no|sorry) )*"
    r"(?:(?:and|or|but|n|same|also)(?: then)? (?:at|if|when|being|from)|(?:and |or )?(?:if|suppose"
    r"|supposing|say|lets say|what at)|(?:(?:and|or|but) )?(?:what|how) (?:about|bout|if)"
    r"(?: at)?) (?:(?:we|were|we are|its|it is|it was|us|im|i am|being|only) )*(?:(?:up|down) )?#"
)
"""`and at 3-9`, `what about 9-3`: nobody tells so how a match stands. "At 3-9" alone may."""

_IF = regex(r"\bif\b")
_SAME = regex(r"(?:(?:ok|okay|and|or|but|so|the) )*(?:same|what|how about)\b")
_SERVING_BARE = regex(
    r"(?:(?:ok|okay|so|and|or|but|n|same|thing|score|what|how|about|if|when|while|with|us|we|were"
    r"|only|then|the) )+(?:(?P<us>serving|on serve)|receiving|returning|on (?:the )?return)"
)
"""`same receiving`: who serves, of us and in a word."""

_WING_ALONE = regex(r"(?:(?:his|her|their|the|to) )+(?:forehand|backhand|fh|bh)(?: side| wing)?")
"""`her backhand?`: the shot just asked about, at that wing."""
_AT_A_WING = _ONE_BALL | {Topic.AIM_SERVE, Topic.AIM_RETURN}

_LEADS = words_in("up down ahead behind leading trailing")
_SUPPOSING = words_in("suppose supposing say lets being")


def change_said(message: Message, chat: ChatView) -> Question | None:
    """The last topic again with what the message changes; None where it says anything else.

    With nothing asked before, another score asks for our chances.
    """
    line = _line(message)
    if only_supposes_a_rally(line) and not chat.forwarded:
        return _of_a_rally(message, chat)
    if _SUN_ALONE.fullmatch(line) and not chat.forwarded:
        in_the_sun = _in_the_sun(message, chat.last_topic)
        if in_the_sun is not None:
            return in_the_sun
    if (wind := wind_pointed_at(message, chat)) is not None and not chat.forwarded:
        return _in_that_wind(message, wind, chat.last_topic)
    at_a_score = _AT_A_SCORE.match(_line(message, numbers="#")) is not None
    is_open = chat.last_topic in _OPEN_TO_CHANGE
    if not (is_open or at_a_score) or chat.forwarded:
        return None
    bare = _SERVING_BARE.fullmatch(line)
    is_same = bare is not None or _SAME.match(line) is not None
    supposes = at_a_score or is_same or "?" in message.text or _IF.search(line) is not None
    opens = at_a_score or _OPENING.search(line) is not None
    is_wing = chat.last_topic in _AT_A_WING and _WING_ALONE.fullmatch(line) is not None
    opens = opens or (is_wing and "?" in message.text) or _tells_only_the_ball(message, chat)
    if not opens or (message.note.claims and not supposes):
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    if bare is not None and slots.serving is None:
        slots = replace(slots, serving=bare["us"] is not None)
    if chat.match_on and not supposes and (slots.serving, slots.score) != (None, None):
        return None  # "no, they serve" tells how the match stands
    slots = _without_denied_hand(slots, line)
    if not _changes_something(slots) or not _says_nothing_else(message, slots):
        return None
    if slots.facts != NOTHING_SAID and (_WEIGHS.search(line) or _names_a_shot(slots, line)):
        return None
    if chat.last_topic is None or not is_open:
        if slots.score is None:
            return None
        return Question(text=message.text, topic=Topic.WIN_CHANCE, confidence=CERTAIN, slots=slots)
    return Question(
        text=message.text, topic=chat.last_topic, confidence=CERTAIN, slots=slots, changes=True
    )


def _of_a_rally(message: Message, chat: ChatView) -> Question | None:
    """ "And if we lose it": the question before at the score after it, else our chances there."""
    last = chat.last_topic
    if last not in ASKS_CHANCES and not (last is None and chat.match_on):
        return None
    slots = find_slots(message.said, message.mentions, message.told)
    topic = last or Topic.WIN_CHANCE
    return Question(
        text=message.text,
        topic=topic,
        confidence=CERTAIN,
        slots=slots,
        changes=last is not None,
    )


def _in_the_sun(message: Message, last: Topic | None) -> Question | None:
    """The ball before it in that sun; behind an answer to a habit no second symptom is sought."""
    slots = replace(find_slots(message.said, message.mentions, message.told), sun=True)
    of_a_ball = last in _THE_SUN_DECIDES
    if last is None or not (of_a_ball or last is Topic.ANSWER_PATTERN):
        return None
    topic = last if of_a_ball else Topic.WEATHER_OR_BODY
    return Question(
        text=message.text, topic=topic, confidence=CERTAIN, slots=slots, changes=of_a_ball
    )


def _in_that_wind(message: Message, wind: Wind, last: Topic | None) -> Question | None:
    """The question before in a wind that blows so; of the weather it goes on by itself."""
    if last is None or last not in _OPEN_TO_CHANGE:
        return None
    slots = replace(find_slots(message.said, message.mentions, message.told), wind=wind)
    return Question(text=message.text, topic=last, confidence=CERTAIN, slots=slots, changes=True)


def says_only_links(message: Message) -> bool:
    """Whether nothing is said that could be asked about: "and", "what about", "if it is".

    "TO now?" asks for a time-out.
    """
    if any(word.typed == _TIMEOUT for word in message.said):
        return False
    return not message.mentions and all(word.folded in _LINKING for word in message.said)


def says_only_slots(message: Message) -> bool:
    """Whether every word names somebody, tells what an answer may hang on, or links."""
    slots = find_slots(message.said, message.mentions, message.told)
    return slots.wind is None and slots.sun is None and _says_nothing_else(message, slots)


def as_change(question: Question, message: Message) -> Question:
    """A question that `leans`, marked so."""
    slots = _without_denied_hand(question.slots, _line(message))
    return replace(question, slots=slots, changes=True)


def leans(question: Question, message: Message, chat: ChatView) -> bool:
    """Whether a question read of the last topic goes on from it, and asks nothing anew."""
    if question.topic is not chat.last_topic or question.topic not in _OPEN_TO_CHANGE:
        return False
    if topic_carried(message.said, message.mentions, chat) is not None:
        return True
    line = _line(message)
    return _OPENING.search(line) is not None and _ASKS_ANEW.search(line) is None


def _tells_only_the_ball(message: Message, chat: ChatView) -> bool:
    """Whether it says more of the ball just asked about: "chest high", "they're both back"."""
    # "Slice" and "stretched" alone may as well name another shot or ask anew.
    facts = replace(message.told.ball.facts, spin=None, footing=None)
    return chat.last_topic in _ONE_BALL and facts != NOTHING_SAID


def _names_a_shot(slots: Slots, line: str) -> bool:
    """Whether facts of a ball stand beside a shot of its own: "overhead, moving back"."""
    if slots.facts == OVERHEAD:
        return True
    named = slots.facts.height_m == OVERHEAD.height_m or slots.ball_kind is not None
    return named and _OPENING.search(line) is None


def _without_denied_hand(slots: Slots, line: str) -> Slots:
    """The slots without the hand of "if he isn't lefty", and of a hand that is nobody's."""
    is_denied = re.search(r"\b(?:not|isnt|arent|no)\b", line) is not None
    return replace(slots, hand=None) if is_denied or not slots.mentions else slots


def _changes_something(slots: Slots) -> bool:
    """Whether a slot that an answer may hang on is said."""
    settled = (slots.wing, slots.ball, slots.ball_kind, slots.side, slots.wind, slots.sun)
    others = (slots.hand, slots.serving, slots.score, slots.tired, slots.hot)
    return slots.facts != NOTHING_SAID or any(one is not None for one in (*settled, *others))


def _says_nothing_else(message: Message, slots: Slots) -> bool:
    """Whether every word names somebody, is a slot's own, or links."""
    named = [one.span for one in message.mentions if not one.pronoun]
    kept = [
        word.folded
        for place, word in enumerate(message.said)
        if place not in message.told.ball.places
        and (slots.score is None or number(word) is None)
        and not any(start <= word.span[0] < stop for start, stop in named)
    ]
    line = _slotwords_in().sub(" ", " ".join(kept))
    free = _LINKING | (_SERVING if slots.serving is not None else frozenset())
    free |= _SUPPOSING | LEVEL_WORDS | _LEADS if slots.score is not None else frozenset()
    return all(word in free for word in line.split())


def _line(message: Message, *, numbers: str | None = None) -> str:
    """The message's words; `numbers` stands for each number where it is given."""
    return " ".join(
        word.folded if numbers is None or number(word) is None else numbers for word in message.said
    )


_SLOTS = ("wing", "hand", "ball", "kind", "side", "wind", "sun", "tired", "hot")


@cache
def _slotwords_in() -> re.Pattern[str]:
    """Any form of a slot, the longest first."""
    forms: Sequence[str] = [
        form for key in _SLOTS for name in branches(key) for form in patterns(f"{key}.{name}")
    ]
    longest_first = sorted(forms, key=len, reverse=True)
    return re.compile(rf"\b(?:{'|'.join(longest_first)})\b")
