"""From a question to what the chat remembers of it: all that its words settle."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.answers.desk import Desk
from bot.chat.answers.names import settled
from bot.chat.answers.of_bodies import is_of_bodies
from bot.chat.answers.own_rates import Numbers, numbers_over
from bot.chat.answers.standing import score_said
from bot.chat.context import Asked
from bot.chat.rally_supposed import ASKS_CHANCES, SupposedRally, rally_supposed
from bot.chat.said import OneOfUs, Question, Slots
from bot.chat.served_from import served_from
from bot.chat.that_asked import asks_of_that
from bot.chat.words import folded_line, words
from knowledge.ball_facts import NOTHING_SAID
from knowledge.complaints import complains_of_us
from knowledge.regex import regex
from knowledge.rulebook.hurt_awaited import waits_for_hurt
from knowledge.rulebook.told_people import asks_to_take_back
from knowledge.rulebook.whose_point import asks_only_whose
from knowledge.situation import Asked as Words
from knowledge.situation import Situation
from knowledge.tactics.symptoms import find_symptoms
from knowledge.tactics.weather_said import wind_said
from knowledge.vocabulary import Hand, PlayerId, Side, Topic, Trait


def as_asked(desk: Desk, question: Question, about: tuple[PlayerId, ...]) -> Asked:
    """The question with all that its words settle, as the chat remembers it."""
    slots = question.slots
    rates, counts = _supposed(desk, question)
    is_supposed = question.changes or question.topic is Topic.WIN_CHANCE
    return Asked(
        topic=question.topic,
        text=_noted_before(desk, question) or _with_its_symptom(question, desk.context.asked),
        about=about,
        wing=slots.wing,
        striker_side=served_from(question.text) if question.topic is Topic.AIM_SERVE else None,
        ball=slots.ball,
        ball_kind=slots.ball_kind,
        pulled_wide=_of_us(desk, slots, about, slots.pulled_wide),
        plays_left=_plays_left(desk, question),
        we_serve=slots.serving,
        score=score_said(desk, slots, supposed=is_supposed),
        games=slots.games,
        format=slots.format_said,
        lost_in_a_row=slots.lost_in_a_row,
        timeouts_left=slots.timeouts_left,
        tired=slots.tired,
        hot=slots.hot,
        has_change=slots.has_change,
        toss_won=slots.toss_won,
        they_chose=slots.they_chose,
        wind=slots.wind,
        sun=slots.sun,
        background=slots.background,
        rates=rates,
        counts=counts,
        asker=slots.asker,
        hands=(*_told_hands(desk), *_supposed_hands(question)),
        before=_goes_on_from(desk, question),
        rally=_rally_supposed(question),
        facts=None if slots.facts == NOTHING_SAID else slots.facts,
        trait=question.trait,
    )


def _noted_before(desk: Desk, question: Question) -> str | None:
    """The words of the note that "how do i answer that" is asked of."""
    line = folded_line(words(question.text))
    if question.topic is not Topic.ANSWER_PATTERN or not asks_of_that(line):
        return None
    row = None if desk.after_note is None else desk.book.note(desk.after_note)
    return None if row is None else row.text


def _rally_supposed(question: Question) -> SupposedRally | None:
    if question.topic not in ASKS_CHANCES:
        return None
    return rally_supposed(folded_line(words(question.text)))


LINES_BEFORE = 3
"""Questions about whom they play at that are kept for the next one."""

_GOES_ON = regex(
    r"^\W*(?:(?:ok|okay|hm+|well|so|oh|right|but|no|yes|yeah|actually) )*"
    r"(?:and|what if|what about|how about|even if|but|or|if|is that|does that|then"
    r"|my (?:foot|feet)|(?:it|that|(?:the )?ball|i)(?: \w+){0,3} bounced?)\b",
    re.IGNORECASE,
)


def _goes_on_from(desk: Desk, question: Question) -> str | None:
    """The words before a question of rules or wind that leans on them: "and against us?"."""
    last = desk.context.asked
    if last is not None and {_is_of_bodies(question), _is_of_bodies(last)} == {True}:
        has_speed = wind_said(last.text).mph is not None
        return last.text if has_speed else "\n".join(filter(None, [last.before, last.text]))
    if last is not None and last.topic is question.topic is Topic.RESET_HEAD:
        # Whose head it is, of which "what do i say to him" goes on.
        return "\n".join([*(last.before or "").splitlines()[-LINES_BEFORE:], last.text])
    if last is not None and last.topic is question.topic is Topic.BEING_TARGETED:
        # Whom they play at stands while the talk is of what the two of us do.
        return "\n".join([*(last.before or "").splitlines()[-LINES_BEFORE:], last.text])
    if question.changes and question.slots.sun and question.topic in _SUN_DECIDES:
        return "\n".join(filter(None, [last.before if last else None, question.text]))
    if question.topic is Topic.LOB and last is not None:
        return _of_our_bodies(desk, last)
    if last is not None and last.topic is question.topic is Topic.AIM_RETURN:
        return _of_the_return(question, last)
    if question.topic is not Topic.RULES_QUESTION or last is None:
        return None
    if asks_only_whose(question.text):
        return last.text if last.topic is Topic.RULES_QUESTION else None
    goes_on = _GOES_ON.search(question.text) or waits_for_hurt(question.text, before=last.text)
    goes_on = goes_on or asks_to_take_back(question.text, before=last.text)
    return last.text if goes_on else None


def _is_of_bodies(asked: Question | Asked) -> bool:
    return is_of_bodies(asked.topic, asked.text)


def _of_the_return(question: Question, last: Asked) -> str | None:
    """Who crosses for it stands while the talk is of where it goes: "and down the line on him"."""
    if question.changes:
        return question.text  # the words before it are the question's own still
    return last.text if _LEANS.match(question.text.strip()) else None


def _of_our_bodies(desk: Desk, last: Asked) -> str | None:
    """What the question before told of a body of ours: who cannot run is not sent running."""
    names = [desk.view.short_name(one) for one in desk.ours]
    lines = (*(last.before or "").splitlines(), last.text)
    return "\n".join(one for one in lines if complains_of_us(one, names=names)) or None


_SUN_DECIDES = frozenset({Topic.LOB, Topic.AIM_SERVE})
"""Where it matters whose eyes the sun is in, which only the words tell."""

_LEANS = regex(r"(?:and|what if|what about|or|so|but|then|same|also)\b", re.IGNORECASE)


def _with_its_symptom(question: Question, last: Asked | None) -> str:
    """The words; for "and if both do it" those of the last question, which named the symptom."""
    is_symptom = question.topic is Topic.ANSWER_PATTERN
    if last is None or not is_symptom or last.topic is not question.topic:
        return question.text
    named = find_symptoms(Situation(topic=question.topic, asked=Words(words=question.text)))
    leans = not named and _LEANS.match(question.text.strip())
    return last.text if leans else question.text


def _told_hands(desk: Desk) -> tuple[tuple[PlayerId, Hand], ...]:
    """The hands that the same message tells: "okafor is a lefty, where do I dink him"."""
    return tuple(
        (claim.player, Hand(claim.value))
        for claim in desk.noted
        if claim.trait is Trait.HAND and not claim.denied
    )


def _supposed_hands(question: Question) -> tuple[tuple[PlayerId, Hand], ...]:
    """The hand that a follow-up supposes of those it speaks of."""
    hand, spoken_of = question.slots.hand, settled(question.slots.mentions)
    if not question.changes or hand is None:
        return ()
    return tuple((player, hand) for player in spoken_of or ())


_SAME_NUMBERS = regex(
    r"\b(?:same|those|these) (?:numbers?|rates?|percent(?:age)?s?|shares?)\b", re.IGNORECASE
)


def _supposed(desk: Desk, question: Question) -> Numbers:
    """Numbers of this question only, over those told of the match; none where it has none.

    "Same numbers, chance at 8-8-1": those that the question before was supposed with.
    """
    said, last = question.slots.rates, desk.context.asked
    if said is None and last is not None and _SAME_NUMBERS.search(question.text):
        return last.rates, last.counts
    if said is None or said.holds or said.says_nothing:
        return None, None
    return numbers_over(said, (desk.context.rates, desk.context.counts))


OF_OUR_PLACES = frozenset(
    {Topic.COVER_MIDDLE, Topic.STACK_OR_NOT, Topic.WHERE_TO_STAND, Topic.PAIR_UP}
)
"""Topics that hang on who of us plays left."""


def _plays_left(desk: Desk, question: Question) -> PlayerId | None:
    """Who of ours plays left as said, where that decides something; whoever is right tells it."""
    place, ours = question.slots.our_place, desk.ours
    if place is None or question.topic not in OF_OUR_PLACES or len(ours) != len(Side):
        return None
    named = settled([one for one in question.slots.mentions if not one.pronoun]) or ()
    who = _of_us(desk, question.slots, named, place.who)
    if who not in ours or place.side is Side.LEFT:
        return who if who in ours else None
    return next(player for player in ours if player != who)


def _of_us(
    desk: Desk, slots: Slots, about: Sequence[PlayerId], one: PlayerId | OneOfUs | None
) -> PlayerId | None:
    """Who of ours that is; "me" beside the partner's name is the other of us."""
    ours = desk.ours
    if not isinstance(one, OneOfUs):
        return one
    named = [player for player in about if player in ours]
    asker = next((one for one in (slots.asker, desk.context.asker) if one in ours), None)
    if asker is None and len(named) == 1 and len(ours) == 2:
        asker = next(player for player in ours if player != named[0])
    if asker is None or one is OneOfUs.ASKER:
        return asker
    return next((player for player in ours if player != asker), None)
