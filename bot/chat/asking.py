"""Whether a message asks or tells: question marks, asking forms, and words of wanting."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.words import Word

_POLITE = (
    r"(?:ok|okay|so|and|but|hey|hi|hello|yo|um|uh|er|well|quick|q|question|please|pls|bro|dude|lol|wait|then|now"
    r"|alright|right|coach|mate|hmm|also|ugh|man|bot|sorry|thanks|btw|listen|oh|ah)"
)
_ASKING = re.compile(
    rf"^(?:{_POLITE} )*(?:who|whos|whose|whom|what|whats|wht|wat|where|wheres|whre|when|whens|why|how|hows|which"
    r"|should|shud|shld|shall|can|could|would|will|do|does|did|is|isnt|are|am|was|were|has|have we|any|anything"
    r"|tell|give|remind|show|need|help|suggest|advice|best|better|worth|odds|chance|chances|thoughts"
    r"|wonder|wondering|ideas?|whats|whatre|wanna know|explain|plan|report|cue|tips?|how)\b"
)
_ASKING_INSIDE = re.compile(
    r"\b(?:(?:who|what|where|when|how|which|whose|why) (?:do|does|did|is|are|should|shud|to|would|can|could|the|about"
    r"|much|many|long|far|deep|i|we|on|s|gets|takes|has|have|if|else|now|wing|side|one|of|target|player|guy|way)"
    r"|should (?:i|we|he|she|they|my|tom|mira|p|pard)|do (?:i|we)|can (?:i|we)|could (?:i|we)|am i|are we|shall we"
    r"|or not|or just|what if|how come|any (?:idea|ideas|tips|advice|thoughts)|tell me|not sure (?:if|whether|what)"
    r"|i dont know (?:if|what to|whether)|dunno|idk|lmk|wdyt|whats|wheres|whos|is it (?:worth|ok|legal|a fault|better|smart|dumb)|want to know"
    r"|need (?:a|some|to know)|i wonder|wondering|worth it|better (?:to|off)|good idea|what now|now what|who takes"
    r"|is that (?:a|legal|allowed|ok|my)|is he allowed|how do|shud|shld|shouldnt (?:i|we|she|he)|isnt (?:it|that|the)"
    r"|is (?:there|it)|are (?:those|these|they) (?:going|out|long|ok)|what (?:beats|next|first|changes|was|moved)"
    r"|yes no|y n|yes or no|pick one|which (?:one|side|player|guy|shot|way|wing|is|do|should|opponent|of (?:them|us|these|the))|which$|any downside|then who|who then|calm me|talk to me|remind me|reminder"
    r"|one (?:thing|line)|put together|short list|what now|give me|wtf|odds|percent(?:age)?|chances?|nudge|debug)\b"
    r"|\b(?:where|how|why|what|then|or what|or no|yes|allowed|legal|bolder|safer)$"
)
_EITHER_OR = re.compile(
    r"(?<!more)(?<!not)(?<!one)(?<!two)(?<!a day) or (?!less|so\b|two\b|three\b|seven\b|\d)\w+"
)
"""`drop or drive`: told things hardly offer a choice."""


def asks(text: str, said: Sequence[Word]) -> bool:
    """Whether the message asks for something."""
    line = " ".join(word.folded for word in said)
    found = _ASKING.search(line) or _ASKING_INSIDE.search(line) or _EITHER_OR.search(line)
    return "?" in text or found is not None
