"""An answer disputed by what somebody can do: "nah he eats those", "no, soll loves body bags".

What such a message tells is a note about whoever was spoken of; the ball of "those" is that of the
answer before.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from bot.chat.message import Message, is_ours
from bot.chat.said import Certainty, Claim, Mention, NoteSaid
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId, Topic, Trait, Value

SAID_WEIGHT: Final = 1.0
"""A claim in plain words, as those that the lexicon reads."""

_OPENS = (
    r"(?:(?:nah|naw|no|nope|na|but|well|wait|hm+|bad idea|no way|not true|disagree|wrong|dude|bro"
    r"|nono|idk|yeah no|i said|i told you|trust me|cmon|come on|lol|man|tbh|honestly) )+"
)
_WHO = r"(?:he|she|hes|shes|they|theyre|that guy|player)"
_WELL = (
    r"(?:(?:actually|really|just|always|absolutely|literally|kinda|will|would|gonna|is|s) )*"
    r"(?:eats?(?: up)?|kills?|loves?|likes?|handles?|crush(?:es)?|punish(?:es)?|destroys?"
    r"|feasts? on|smash(?:es)?|murders?|lives? for|wants?|(?:is )?(?:so |very |really )?"
    r"(?:good|great|solid|strong|fine|comfortable|ready) (?:at|on|with|for|against)"
    r"|has no (?:problem|trouble) with|counters?|blocks?|puts? away|gets? (?:to )?)"
)
_BADLY = (
    r"(?:(?:actually|really|just|always) )*(?:hates?|(?:cant|cannot|doesnt|does not|never)"
    r" (?:even )?(?:handle|like|get|hit|return|block|reach)|struggles? with|misses)"
)
_THOSE = r"(?:those|them|that|these|it|this|em|that ball|those balls)"
_BALLS: Final[Mapping[str, tuple[Trait, ...]]] = MappingProxyType(
    {
        r"(?:body ?(?:bags?|shots?|balls?)|balls? (?:at|to|into) (?:the|his|her) body)": (
            Trait.BODY_JAM,
        ),
        r"(?:speed ?ups?|fast balls?|attacks?)": (Trait.COUNTER,),
        r"(?:drives?|pace|bangs?|hard balls?)": (Trait.HANDLES_PACE,),
        r"(?:my |our |the )?lobs?": (Trait.LOB_DEFENSE,),
        r"(?:overheads?|high balls?)": (Trait.OVERHEAD,),
    }
)
_OF_TOPIC: Final[Mapping[Topic, tuple[Trait, ...]]] = MappingProxyType(
    {
        Topic.AIM_ATTACK: (Trait.COUNTER,),
        Topic.AIM_DINK: (Trait.FOREHAND_DINK, Trait.BACKHAND_DINK),
        Topic.LOB: (Trait.LOB_DEFENSE,),
        Topic.AIM_SERVE: (Trait.RETURN,),
    }
)
"""What whoever "eats those" is good at, after an answer on that ball."""

_ALWAYS = (
    r"(?: (?:all day|every time|for breakfast|for lunch|alive|too|well|easy|easily|tho|though))*"
)
_LIKES = tuple(
    (regex(rf"{_OPENS}{_WHO} {verb} (?P<ball>{ball}){_ALWAYS}"), traits, value)
    for verb, value in ((_WELL, Value.STRENGTH), (_BADLY, Value.WEAKNESS))
    for ball, traits in ((_THOSE, ()), *_BALLS.items())
)


def disagreed(message: Message, chat: ChatView) -> NoteSaid | None:
    """The note that such a message is; None for all else, and where nobody or two may be meant."""
    if chat.last_topic is None or chat.forwarded or "?" in message.text:
        return None
    who = _whom(message, chat)
    if who is None:
        return None
    line = _with_player(message)
    for form, traits, value in _LIKES:
        found = form.fullmatch(line)
        claimed = traits or _OF_TOPIC.get(chat.last_topic, ())
        if found is not None and claimed:
            return _note(message, who, claimed, value)
    return None


def _whom(message: Message, chat: ChatView) -> PlayerId | None:
    """The one opponent who is named, or the one spoken of last."""
    named = [one for one in message.mentions if not one.pronoun]
    if any(one.certainty is not Certainty.SURE or is_ours(one, chat.ours) for one in named):
        return None
    players = {player for one in named for player in one.players} or set(chat.focus)
    return players.pop() if len(players) == 1 else None


def _with_player(message: Message) -> str:
    words: list[str] = []
    for word in message.said:
        of = _named_at(message, word.span[0])
        if of is None:
            words.append(word.folded)
        elif word.span[0] == of.span[0]:
            words.append("player")
    return " ".join(words)


def _named_at(message: Message, place: int) -> Mention | None:
    named = (one for one in message.mentions if not one.pronoun)
    return next((one for one in named if one.span[0] <= place < one.span[1]), None)


def _note(message: Message, who: PlayerId, traits: tuple[Trait, ...], value: Value) -> NoteSaid:
    span = (message.said[0].span[0], message.said[-1].span[1])
    claims = tuple(
        Claim(player=who, trait=trait, value=value, weight=SAID_WEIGHT, span=span)
        for trait in traits
    )
    return NoteSaid(text=message.text, mentions=message.mentions, claims=claims)
