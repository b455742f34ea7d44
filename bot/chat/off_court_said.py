"""Chatter about one of the players that tells nothing of play: "bev is in the bathroom brb lol".

Where somebody is between rallies, and a partner's kind word, are neither notes nor questions. Only
what is nothing else counts: any word of play, and it is read as before.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.named_line import named_line
from knowledge.complaints import complains
from knowledge.regex import regex

_WHO = r"(?:N|he|she|they|hes|shes|theyre|my partner|we|i|im)"
_LAUGH = (
    r"(?: (?:lol|haha|hehe|lmao|brb|btw|again|now|rn|quickly|real quick|back soon|back in (?:a"
    r"|\d+|two|five) ?(?:sec|min|mins|minutes|bit|moment)?|so|wait|hang on|hold on))*"
)
_AWAY = (
    rf"{_WHO}(?: (?:is|are|s|has|have|just|went|gone|still|all))*"
    r"(?: (?:in|to|at|off|getting|grabbing|buying|on|for))+(?: (?:the|a|some|her|his|my|ice))*"
    r" (?:bathroom|restroom|loo|toilet|toilets|washroom|ladies|gents|car|car park|parking|bar|shop"
    r"|cafe|coffee|tea|water|lunch|food|snacks?|phone)"
)
_KIND = (
    rf"{_WHO} (?:says?|said|is saying|keeps saying|tells me|told me)"
    r"(?: (?:just|to|that|me|we|should))*"
    r" (?:breathe|relax|chill|smile|calm down|hi|hello|hey|good luck|well played|have fun"
    r"|enjoy(?: it)?|its fine|its ok|no worries|dont worry|keep smiling|thanks|thank you)"
)
_CHATTER = regex(rf"(?:(?:lol|haha|wait|hang on|ok|so|sorry|oh) )*(?:{_AWAY}|{_KIND}){_LAUGH}")


def is_off_court(message: Message) -> bool:
    """Whether it is such chatter and nothing else; a body that hurts is none."""
    if "?" in message.text or message.note.about_body or complains(message.text):
        return False
    return _CHATTER.fullmatch(named_line(message.said, message.mentions)) is not None
