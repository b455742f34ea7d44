"""Short messages that lean on what stands: why, redo, the score, who serves."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.format_asked import OF_FORMAT, asks_of_format
from bot.chat.games_asked import OF_GAMES, asks_of_games
from bot.chat.retelling_said import OF_THE_TWO, is_for_partner, retelling_in
from bot.chat.said import (
    BookSaid,
    BookVerb,
    Mention,
    Retelling,
    RetellSaid,
    SaidScore,
    ScoreSaid,
    Understood,
    UndoSaid,
    WhySaid,
)
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_WHY = frozenset(
    {
        "why",
        "why so",
        "why that",
        "why is that",
        "how come",
        "explain",
        "explain that",
        "tell me why",
        "says who",
        "reasons",
    }
)

_REDO = regex(
    r"(?:(?:oh|ok|no|nah|oops|wait|sorry|please|pls|can you|could you|actually|and|so|but|erm|er|um"
    r"|uh|hm+|nvm) )*"
    r"(?:(?:did (?:i|we) (?:just )?(?:lose|delete|remove|undo|erase) (?:anything|something|that|it"
    r"|one)|i did not (?:want|mean) (?:that|it|to)|i didnt (?:want|mean) (?:that|it|to)) )?"
    r"(?:redo|undo the undo|(?:put|bring|get|give) (?:it|that|them|this|everything)(?: all)? back"
    r"|restore (?:it|that|them|everything))(?: (?:that|it|please|pls|again|now|then|in))*"
)
"""What puts back what was taken back, with the worry before it."""

_SCORE = frozenset(
    {
        "score",
        "the score",
        "score please",
        "whats the score",
        "what the score",
        "what is the score",
        "what was the score",
        "our score",
        "whats our score",
        "what our score",
        "what is our score",
        "what was our score",
        "current score",
        "where are we",
        "who is serving",
        "whos serving",
        "who serving",
        "whose serve",
        "whose serve is it",
        "what the call",
        "what is the call",
        "whats the call",
        "what do i call",
        "what do we call",
        "what should i call",
        "what do i say",
        "the call",
        "call",
        "announce",
        "call it",
        "call the score",
        "announce the score",
        "who ahead",
        "whos ahead",
        "who is ahead",
        "who leads",
        "who is leading",
        "who winning",
        "whos winning",
        "who is winning",
    }
)

_FORGOT_SCORE = regex(
    r"(?:(?:oh|no|help|shit|damn|sorry|ok|so|and|now|wait) )*(?:i|we)(?: (?:have|ve|just|both|think"
    r"|totally|really))* (?:forgot(?:ten)?|lost(?: track of)?|(?:dont|cant|do not|can not) (?:know"
    r"|remember)(?: anymore)?) (?:(?:what|where) )?(?:the )?(?:score|call|count|we are)"
    r"(?: (?:is|was|we are|now|again|anymore|any more|sorry|help))*"
)
"""`i have forgotten the score`: it is wanted, though nothing is asked."""

_LAST_SCORE = frozenset(
    {
        "score",
        "the score",
        "score please",
        "what the score",
        "whats the score",
        "what is the score",
        "what was the score",
        "final",
        "final score",
        "the final score",
        "result",
        "results",
        "the result",
        "what was the result",
        "last score",
        "last match",
    }
)
"""What such words mean once no match is on: the last one's games."""

_WE_SERVE = frozenset(
    {
        "we serve",
        "we serve first",
        "we start",
        "we start serving",
        "we are serving",
        "were serving",
        "our serve",
        "we serve now",
        "we have the serve",
    }
)

_PLACED = regex(
    r"(?: (?:and|with))? (?:im|i am|i start|i begin|ill be|i will be|me)(?: (?:on|at|starting))*"
    r"(?: the| our)? (?:right|left)(?: side)?(?: first| now)?$"
)
"""`we serve first im on the right`: where one stands, told in the same breath."""

_THEY_SERVE = frozenset(
    {
        "they serve",
        "they serve first",
        "they start",
        "they start serving",
        "they are serving",
        "theyre serving",
        "their serve",
        "they serve now",
        "they have the serve",
        "we receive",
        "we receive first",
    }
)

_WHO_SERVES = regex(
    r"(?:(?:so|ok|wait|hey|um|and) )*(?:who|whos|who is|which one)(?: of us)?"
    r" (?:serves?|serving|has the serve|got the serve|up to serve|on serve|is serving)"
    r"(?: (?:now|next|again|here|it|then"
    r"|after(?: (?:that|this|it|(?:the |this |our |their )?(?:time ?out|break|pause)))?))*"
    r"|(?:(?:so|ok|wait|hey|um|and) )*(?:whose|who) (?:serve|ball|serving)"
    r"(?: (?:is|it|now|next|again))*"
    r"|(?:(?:so|ok|wait|hey|um|and) )*(?:is|was) (?:it|this|that) (?:my|our|their|his|her|we|they)"
    r" (?:serve|ball|turn)(?: (?:now|to serve|again))*"
    r"|(?:(?:so|ok|wait|hey|um|and) )*(?:are|am) (?:we|i|they) (?:serving|up)(?: (?:now|next))*"
    r"|(?:which|what) server (?:are|is|am) (?:we|it|i|they|this)(?: (?:on|now|at))*"
    r"|(?:first|1st|1) or (?:second|2nd|2)(?: server)?"
    r"|(?:(?:so|ok|wait|hey|um|and) )*(?:who|whos|who is) (?:serves|serving)(?: now| next)?"
    r" and (?:(?:who|whom) )?(?:(?:am|are|is|do|does) )?(?:(?:i|we|they|he|she) )?"
    r"(?:(?:serve|serving) )?to(?: (?:who|whom))?(?: (?:now|next|first))*"
)
"""What only the running score answers: who serves where, and as which server."""

_PLAYING_NOW = regex(
    r"(?:(?:ok|okay|so|and|right|now|hey|here we go|lets go) )*"
    r"(?:(?:were|we are|im|i am|its|match) )?(?:(?:just|now) )?"
    r"(?:playing|starting|started|underway|on court|on now|going on now|play on)(?: (?:now|soon))*"
    r"|(?:(?:ok|okay|so|and|now|lets) )*start(?: (?:now|playing|the (?:match|game)))*"
)
"""`ok playing now`: how the match stands, so that rallies can be counted on from there."""

_BEGINS = regex(
    r"(?:(?:ok|okay|so|and|right|now|hey|alright|here we go|lets go) )*"
    r"(?:(?:lets |we (?:can |will )?)?(?:start|begin)|(?:start|begin) (?:the |our )?(?:match|game)"
    r"|game on|match on|(?:match|game) (?:starts|begins|start|on)|here we go|lets go"
    r"|kick ?off|let ?s play|lets play|(?:game|gm|set) (?:2|3|4|5|two|three|four|five))"
    r"(?: (?:now|then|please|pls|match|game))*"
)
"""`start`, `gm 2`, while a match waits or runs: the same. "We start" answers who serves first and
is read so."""

_ANSWERS_WHO = regex(
    r"(?:(?:it is|its|it was|that is|thats|was|oh|ok|um) )*"
    r"(?:(?:we (?:do|are|did|were|will)|us|ours|me|mine|we|i do)"
    r"|they (?:do|are|did|were|will)|theyre|them|theirs|they)(?: first| now| serve)?"
)
"""What answers "who serves?", and would tell a rally or nothing anywhere else."""
_WE = regex(r"\b(?:we|us|ours|me|mine|i)\b")

_OUR_POINT = frozenset({"we got it", "we won it", "we won that one"})
_THEIR_POINT = frozenset({"they got it", "they won it", "lost it"})

_SERVER_TWO = frozenset({"second server", "server two", "server 2", "2nd server"})

# fmt: off
_LINKING = frozenset({
    "and", "or", "what", "about", "how", "with", "vs", "against", "for", "on", "to", "at",
    "the", "same", "ok", "then", "him", "her", "them", "too", "also", "but", "is", "it",
    "again", "now", "okay", "one", "please", "so", "well", "yeah", "yes",
})
# fmt: on
"""Words that only link a name to the question before it."""


# A possessive 's is no part of a folded word, so "what's the score" reads "what the score".

_AROUND = regex(
    r"^(?:(?:ok|so|wait|hey|um|sorry) )+|(?: (?:pls|plz|please|now|again|rn|quick|real quick))+$"
)
"""Small words around the score asked for: "wait whats the score again", "score pls"."""

_FILLING = regex(
    r"^(?:(?:ok|okay|alright|well|um|uh|oh|yeah|yes|yep|and) )+"
    r"|(?: (?:ok|okay|so|then|um|uh|yeah|i think|i guess|for now))+$"
)
"""What is spoken around who serves: "they serve first okay so". No word of it asks; with a question
mark it might."""


def follow_up(text: str, said: Sequence[Word], chat: ChatView) -> Understood | None:
    """What such a message means; None for one that stands on its own."""
    spoken = " ".join(word.folded for word in said)
    if spoken in _WHY:
        return WhySaid(text=text)
    if _REDO.fullmatch(spoken) is not None:
        return UndoSaid(text=text, redo=True)
    how = retelling_in(spoken, asks="?" in text)
    if how is None and chat.last_topic in OF_THE_TWO and is_for_partner(spoken):
        how = Retelling.TO_PARTNER
    if how is not None and chat.last_topic is not None:
        return RetellSaid(text=text, how=how)
    if asks_of_games(spoken):
        return BookSaid(text=text, verb=BookVerb.SCORE, words=OF_GAMES)
    if asks_of_format(spoken):
        return BookSaid(text=text, verb=BookVerb.SCORE, words=OF_FORMAT)
    begins = chat.match_on and spoken not in _WE_SERVE and _BEGINS.fullmatch(spoken) is not None
    if begins or _PLAYING_NOW.fullmatch(spoken) is not None:
        return BookSaid(text=text, verb=BookVerb.SCORE if chat.match_on else BookVerb.NEXT)
    is_serve_asked = chat.match_on and _WHO_SERVES.fullmatch(spoken) is not None
    is_serve_asked |= chat.match_on and _FORGOT_SCORE.fullmatch(spoken) is not None
    if is_serve_asked or _AROUND.sub("", spoken) in (_SCORE if chat.match_on else _LAST_SCORE):
        return BookSaid(text=text, verb=BookVerb.SCORE)
    return _serving(text, said, chat)


def answers_who_serves(said: Sequence[Word], chat: ChatView) -> bool:
    """Whether it is nothing but the answer to our question who serves."""
    return chat.asks_serve and _ANSWERS_WHO.fullmatch(" ".join(w.folded for w in said)) is not None


def _serving(text: str, said: Sequence[Word], chat: ChatView) -> ScoreSaid | None:
    spoken = " ".join(word.folded for word in said)
    if not chat.match_on:
        # Who serves first is also asked about before a match; who serves now needs one.
        return _who_serves(text, spoken) if "first" not in spoken.split() else None
    if answers_who_serves(said, chat):
        return ScoreSaid(text=text, score=SaidScore(we_serve=_WE.search(spoken) is not None))
    if (told := _who_serves(text, spoken)) is not None:
        return told
    if spoken in _OUR_POINT or spoken in _THEIR_POINT:
        return ScoreSaid(text=text, won_by_us=spoken in _OUR_POINT)
    if spoken in _SERVER_TWO:
        return ScoreSaid(text=text, score=SaidScore(server=2))
    return None


def _who_serves(text: str, spoken: str) -> ScoreSaid | None:
    bare = spoken if "?" in text else _PLACED.sub("", _FILLING.sub("", spoken))
    if bare not in _WE_SERVE | _THEY_SERVE:
        return None
    return ScoreSaid(text=text, score=SaidScore(we_serve=bare in _WE_SERVE))


def topic_carried(
    said: Sequence[Word], mentions: Sequence[Mention], chat: ChatView
) -> Topic | None:
    """The last topic, for a message that only names somebody else: "and Lindqvist?"."""
    named = [one for one in mentions if not one.pronoun]
    if chat.last_topic is None or not named:
        return None
    return chat.last_topic if only_names(said, named) else None


def only_names(said: Sequence[Word], named: Sequence[Mention]) -> bool:
    """Whether every other word only links these names to the question before: "and her?"."""
    rest = [
        word.folded
        for word in said
        if not any(one.span[0] <= word.span[0] < one.span[1] for one in named)
    ]
    return all(word in _LINKING for word in rest)
