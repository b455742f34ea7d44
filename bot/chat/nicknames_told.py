"""A nickname: "we call hale the mule", "hale aka moose", "the mule is hale"."""

from __future__ import annotations

from bot.chat.common_words import is_common
from bot.chat.forms import word_set
from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.notes import read_note
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.unknown_names import may_bear_a_name
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.regex import regex

_OPENING = r"(?:(?:ok|so|hey|and|btw|fyi|by the way|oh|from now on) )*"
_WHO_CALLS = (
    r"(?:(?:we|i|they|everyone|everybody|people|the (?:girls|guys))(?: all)?(?: (?:just|always"
    r"|sometimes|will|can))? |lets |you can )?"
)
_KNOWN_AS = r"(?:(?:is )?(?:also )?(?:called|known as|nicknamed)|aka|a k a|alias|goes by)"
_NICK = r"(?P<article>(?:the|big|little|old|mr|mrs|miss|doc|captain) )?(?P<nick>\w+(?: \w+){0,2})"
_FORMS = (
    regex(rf"{_OPENING}{_WHO_CALLS}calls? {NAME} {_NICK}(?: too| for short)?"),
    regex(rf"{_OPENING}{NAME} {_KNOWN_AS} {_NICK}"),
    regex(rf"{_OPENING}(?:the )?nickname(?: (?:for|of))? {NAME}(?: is)? {_NICK}"),
    regex(rf"{_OPENING}(?:{NAME}|his|her)(?: s)? nickname is {_NICK}"),
    regex(rf"{_OPENING}{_NICK} (?:is|means|=) (?:what we call |our (?:nick)?name for )?{NAME}"),
)

_TITLES = frozenset(["the"])
_OF_THE_COURT = word_set("no_nickname")
""" "The middle is hale's", "the target is hale": parts of the game that may be somebody's."""

_LONGEST_ALONE = 1
"""Words of a nickname that no "the" or the like stands before."""


def nickname_told(message: Message, chat: ChatView) -> BookSaid | None:
    """Who is called what; None where the words say something of the player: "call hale slow"."""
    who = _only_one_named(message)
    if who is None or message.asks:
        return None
    line = named_line(message.said, (who,))
    found = next((at for form in _FORMS if (at := form.fullmatch(line)) is not None), None)
    if found is None or NAME in found["nick"].split():
        return None
    nick, article = found["nick"], (found["article"] or "").strip()
    if not _may_be_nickname(nick, article) or _says_something(f"{article} {nick}", who, chat):
        return None
    words_of_it = nick if article in _TITLES or not article else f"{article} {nick}"
    return BookSaid(
        text=message.text, verb=BookVerb.ADD_NICKNAME, words=words_of_it, mentions=(who,)
    )


def _only_one_named(message: Message) -> Mention | None:
    """Who is called so: somebody of the book, or the only name, which is nobody's yet."""
    known = [one for one in message.mentions if one.players]
    sure = [one for one in known if one.certainty is Certainty.SURE and not one.pronoun]
    if known:
        return sure[0] if len(known) == len(sure) == 1 else None
    if message.mentions:
        return message.mentions[0] if len(message.mentions) == 1 else None
    return _stranger(message)


_OF_A_STRANGER = regex(
    rf"{_OPENING}(?:we|i|they|everyone|everybody|people)(?: all| just)? calls? (\w+) {_NICK}"
)


def _stranger(message: Message) -> Mention | None:
    """ "We call bram the tractor": whoever nobody knows yet, to be asked about."""
    found = _OF_A_STRANGER.fullmatch(" ".join(word.folded for word in message.said))
    if found is None:
        return None
    word = next(word for word in message.said if word.folded == found[1])
    if not may_bear_a_name(word):
        return None
    return Mention(typed=word.typed, span=word.span, certainty=Certainty.NOBODY, players=())


def _may_be_nickname(nick: str, article: str) -> bool:
    said = nick.split()
    if _OF_THE_COURT.issuperset(said):
        return False
    if article:
        return any(len(word) > 1 for word in said)
    return len(said) <= _LONGEST_ALONE and not is_common(nick) and len(nick) > 1


def _says_something(nick: str, who: Mention, chat: ChatView) -> bool:
    """Whether the words are a trait: whoever is called slow or the lefty is no Slow or Lefty."""
    text = f"{who.typed} is {nick}"
    said = words(text)
    named = Mention(
        typed=who.typed, span=(0, len(who.typed)), certainty=who.certainty, players=who.players
    )
    note = read_note(text, said, (named,), chat)
    return bool(note.claims or note.offered)
