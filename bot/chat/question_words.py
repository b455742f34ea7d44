"""What the question network sees of a message: word by word, after one word for how it opens."""

from __future__ import annotations

from collections.abc import Iterable

from bot.chat.features import Spelled, leans
from bot.chat.utterance import Utterance
from bot.chat.wordforms import stem
from knowledge.dataclass import dataclass
from knowledge.reading.keys import character_keys, key_of
from knowledge.vocabulary import Topic


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionWord:
    """The keys of one word's features, by where they come from; no `letters` of a slot.

    `token` is its place in the utterance; None for the word before all others.
    """

    token: int | None
    place: tuple[int, ...]
    words: tuple[int, ...] = ()
    letters: str = ""
    lexicon: tuple[int, ...] = ()

    @property
    def keys(self) -> tuple[int, ...]:
        letters = character_keys(self.letters) if self.letters else ()
        return (*self.place, *self.words, *letters, *self.lexicon)


def see_question(
    utterance: Utterance, message: Spelled, context_topic: Topic | None
) -> tuple[QuestionWord, ...]:
    """The message as the network sees it, after the topic that was spoken of before it."""
    return (_opening(utterance, message, context_topic), *_words(message))


def _opening(utterance: Utterance, message: Spelled, context_topic: Topic | None) -> QuestionWord:
    names = ["qo:opening", f"qo:mark {any(sentence.asks for sentence in utterance.sentences)}"]
    if context_topic is not None:
        how = "leans" if leans([word.text for word in message.words]) else "stands"
        names.append(f"qo:{how} {context_topic.value}")
    return QuestionWord(token=None, place=_keys(names))


def _words(message: Spelled) -> Iterable[QuestionWord]:
    start, stop = message.asked
    for at, word in enumerate(message.words):
        typed = message.typed[word.token]
        found = [hit for hit in message.hits if hit.start <= at < hit.end]
        yield QuestionWord(
            token=word.token,
            place=_keys(["qp:asks" if start <= at < stop else "qp:beside"]),
            words=_keys([f"qs:{stem(word.text)}", f"qw:{word.text}"]),
            letters="" if typed[0] == "<" else typed,
            lexicon=_keys(
                f"qc:{mark}{hit.concept}"
                for hit in found
                for mark in (("", "opens ") if at == hit.start else ("",))
            ),
        )


def _keys(names: Iterable[str]) -> tuple[int, ...]:
    return tuple(key_of(name) for name in dict.fromkeys(names))
