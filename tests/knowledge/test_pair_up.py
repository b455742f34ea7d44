"""A new partner: eight things in five lines, from what is agreed and what notes say of us.

Judgements: common practice, no source, unless a test says otherwise.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from noted_players import often_noted, player

from knowledge.advice import CALL_LIMIT
from knowledge.situation import Agreement, Asked, Familiarity, Formation, OnCourt, Situation, Wind
from knowledge.sources import SourceKind
from knowledge.tactics import advise
from knowledge.tactics.middle_answer import Owner, agreed_owner, answer_middle
from knowledge.tactics.pair_up import LINE_LIMIT, Card, card_of, words_of
from knowledge.tactics.pair_up_items import ONE, OTHER, Item
from knowledge.tactics.stack_said import agreed_left, formation_agreed
from knowledge.tactics.standing_names import player_who_starts
from knowledge.vocabulary import AgreementKey, BallKind, PlayerId, Side, Topic

Agreements = Mapping[AgreementKey, Agreement]

MIRA = player(1, "Mira", None, "hand right")
TOM = player(2, "Tom", None, "hand right")


def _agreed(**words: str) -> Agreements:
    return MappingProxyType(
        {
            AgreementKey(key): Agreement(key=AgreementKey(key), value=said, words=said)
            for key, said in words.items()
        }
    )


def _asked(
    *ours: OnCourt, words: str = "", agreements: Agreements = MappingProxyType({})
) -> Situation:
    return Situation(
        topic=Topic.PAIR_UP, asked=Asked(words=words), ours=ours, agreements=agreements
    )


def _item(card: Card, key: AgreementKey) -> Item:
    return next(one for one in card.items if one.key is key)


def _default(key: AgreementKey, *ours: OnCourt) -> str:
    return _item(card_of(_asked(*ours)), key).default.code


def test_every_agreement_has_its_tap_and_that_makes_eight() -> None:
    items = card_of(_asked(MIRA, TOM)).items
    assert {item.key for item in items} == {*AgreementKey}
    assert len(items) == 8
    for item in items:
        assert len(item.answers) > 1
        assert len({answer.code for answer in item.answers}) == len(item.answers)


def test_five_lines_come_at_once_and_say_that_nothing_is_agreed() -> None:
    advice = advise(_asked(MIRA, TOM))
    assert advice.call == "Agree these five lines before you start."
    assert len(advice.lines) == 5
    assert {line.source.kind for line in advice.lines} == {SourceKind.COMMON_PRACTICE}
    assert advice.number == "0 of 8 agreed; the rest is common practice."


def test_what_is_agreed_goes_before_our_default_and_is_marked() -> None:
    agreements = _agreed(middle="Tom takes the middle", sides="Tom left, Mira right")
    advice = advise(_asked(MIRA, TOM, agreements=agreements))
    texts = {line.text: line.source for line in advice.lines}
    assert str(texts["Middle: Tom takes the middle"]) == "agreed"
    sides = next(text for text in texts if text.startswith("Tom left, Mira right"))
    assert str(texts[sides]) == "agreed: sides"
    assert advice.call == "Play as agreed; settle the other 6."


def test_all_eight_are_said_as_agreed() -> None:
    card = card_of(_asked(MIRA, TOM))
    agreements = _agreed(**{item.key.value: item.default.words for item in card.items})
    advice = advise(_asked(MIRA, TOM, agreements=agreements))
    assert advice.call == "Play as agreed: all eight are settled."
    assert {str(line.source) for line in advice.lines} == {"agreed"}
    assert advice.number == "Forward it to Tom, so that both have it."
    assert card_of(_asked(MIRA, TOM, agreements=agreements)).open == ()


@pytest.mark.parametrize(
    "words", ["what did we agree", "what have we agreed on?", "our agreements"]
)
def test_recall_with_nothing_agreed_says_so(words: str) -> None:
    assert advise(_asked(MIRA, TOM, words=words)).call == "Settle it now: nothing is agreed yet."


@pytest.mark.parametrize(
    ("words", "call"),
    [
        ("who serves first in our pair", "Do as agreed: Mira serves first."),
        ("poach signals?", "Agree: fist stay, open go."),
        ("who calls timeouts", "Agree: either calls."),
        ("which side do i play", "Agree: Mira left, Tom right."),
        ("new partner, what do we agree on", "Play as agreed; settle the other 7."),
        ("middle and lobs, what do we say", "Play as agreed; settle the other 7."),
    ],
)
def test_a_question_about_one_of_them_is_answered_first(words: str, call: str) -> None:
    agreements = _agreed(first_server="Mira serves first")
    assert advise(_asked(MIRA, TOM, words=words, agreements=agreements)).call == call


# What a tap agrees is understood by the pages that read it: the second reader of each answer.


def test_sides_and_first_server_are_read_back_as_tapped() -> None:
    card = card_of(_asked(MIRA, TOM))
    for code, who in ((ONE, PlayerId(1)), (OTHER, PlayerId(2))):
        sides = _item(card, AgreementKey.SIDES).answer(code)
        first = _item(card, AgreementKey.FIRST_SERVER).answer(code)
        assert sides is not None
        assert first is not None
        agreements = _agreed(sides=sides.words, first_server=first.words)
        situation = _asked(MIRA, TOM, agreements=agreements)
        assert agreed_left(situation) == who
        assert player_who_starts(situation) == who


def test_a_formation_is_read_back_as_tapped() -> None:
    item = _item(card_of(_asked(MIRA, TOM)), AgreementKey.STACK)
    read = {
        answer.code: formation_agreed(_agreed(stack=answer.words)[AgreementKey.STACK])
        for answer in item.answers
    }
    assert read == {
        "none": Formation.STRAIGHT,
        "serve": Formation.STACK_ON_SERVE,
        "both": Formation.STACK_ALWAYS,
        "signal": Formation.ON_SIGNAL,
    }


def test_the_middle_is_read_back_as_tapped() -> None:
    mira, tom = replace(MIRA, side=Side.LEFT), replace(TOM, side=Side.RIGHT)
    item = _item(card_of(_asked(mira, tom)), AgreementKey.MIDDLE)
    seats = answer_middle(replace(_asked(mira, tom), topic=Topic.COVER_MIDDLE)).seats
    for code, slow, fast in (
        ("cross", Owner.CROSS, Owner.LEFT),
        (ONE, Owner.LEFT, Owner.LEFT),
        (OTHER, Owner.RIGHT, Owner.RIGHT),
    ):
        answer = item.answer(code)
        assert answer is not None
        agreed = _agreed(middle=answer.words)[AgreementKey.MIDDLE]
        assert agreed_owner(agreed, seats, BallKind.DINK) is slow
        assert agreed_owner(agreed, seats, BallKind.SPEED_UP) is fast


# Defaults from what notes say of us, each with a case that does not call for it.


def test_the_middle_is_that_of_its_own_page() -> None:
    mira, tom = replace(MIRA, side=Side.LEFT), replace(TOM, side=Side.RIGHT)
    card = card_of(_asked(mira, tom))
    assert card.words(AgreementKey.MIDDLE) == "slow cross, fast Mira"
    seated = replace(_asked(mira, tom), topic=Topic.COVER_MIDDLE)
    assert answer_middle(seated).of(BallKind.SPEED_UP).owner is Owner.LEFT


def test_the_better_middle_player_goes_left_and_the_other_way_round_for_left_handers() -> None:
    better = player(2, "Tom", None, "hand right", *often_noted("forehand_volley strength"))
    assert _default(AgreementKey.SIDES, MIRA, better) == OTHER
    left_handers = (
        player(1, "Mira", None, "hand left"),
        player(2, "Tom", None, "hand left", *often_noted("forehand_volley strength")),
    )
    assert _default(AgreementKey.SIDES, *left_handers) == ONE


def test_a_lefty_goes_right_and_both_forehands_are_inside() -> None:
    lefty = player(1, "Mira", None, "hand left")
    assert _default(AgreementKey.SIDES, lefty, TOM) == OTHER
    assert _default(AgreementKey.SIDES, TOM, lefty) == ONE


def test_new_together_does_not_stack_and_a_regular_pair_may() -> None:
    lefty = player(1, "Mira", None, "hand left")
    assert _default(AgreementKey.STACK, lefty, TOM) == "none"
    regular = replace(_asked(lefty, TOM), familiarity=Familiarity.REGULAR)
    assert _item(card_of(regular), AgreementKey.STACK).default.code == "serve"


def test_right_serves_first_unless_left_has_the_better_serve() -> None:
    """At 0 the first server stands right: national rulebook, 2025 edition, 4.B.6."""
    mira, tom = replace(MIRA, side=Side.LEFT), replace(TOM, side=Side.RIGHT)
    assert _default(AgreementKey.FIRST_SERVER, mira, tom) == OTHER
    server = player(1, "Mira", Side.LEFT, *often_noted("serve strength"))
    assert _default(AgreementKey.FIRST_SERVER, server, tom) == ONE


def test_whoever_talks_well_calls_time_outs() -> None:
    assert _default(AgreementKey.TIMEOUT_CALLER, MIRA, TOM) == "either"
    talker = player(2, "Tom", None, *often_noted("communication strength"))
    assert _default(AgreementKey.TIMEOUT_CALLER, MIRA, talker) == OTHER


# Nobody known, somebody else named, long names.


def test_nobody_known_still_gets_five_lines() -> None:
    advice = advise(_asked())
    assert len(advice.lines) == 5
    assert advice.assumed == 'Say "we are Ana and Bo" and I keep it for you.'


def test_one_player_twice_is_no_pair() -> None:
    assert advise(_asked(MIRA, MIRA)).assumed is not None


def test_another_partner_named_is_told_how() -> None:
    okafor = player(3, "Okafor", None)
    situation = replace(_asked(MIRA, TOM), theirs=(okafor,), asked=Asked(about=(okafor.player,)))
    assert advise(situation).unless == 'Okafor is your partner? Say "we are Mira and Okafor".'
    assert advise(replace(situation, asked=Asked())).unless is None


@pytest.mark.parametrize(
    ("value", "words", "said"),
    [
        ("cross", "lobs: the cross player runs", "the cross player runs"),
        ("tom takes lobs", "we agreed tom takes lobs", "tom takes lobs"),
        ("Mira", "Mira serves first", "Mira serves first"),
        ("", "Middle: forehand.", "forehand"),
    ],
)
def test_an_agreement_in_a_line(value: str, words: str, said: str) -> None:
    assert words_of(Agreement(key=AgreementKey.LOBS, value=value, words=words)) == said


@settings(max_examples=15, deadline=None)
@given(
    names=st.tuples(*[st.text("abcdefg hij", min_size=1, max_size=40)] * 2),
    said=st.dictionaries(st.sampled_from([*AgreementKey]), st.text(max_size=200)),
)
def test_whatever_was_agreed_the_card_fits_a_phone(
    names: tuple[str, str], said: dict[AgreementKey, str]
) -> None:
    ours = [player(number, name, None) for number, name in enumerate(names, 1)]
    agreements = _agreed(**{key.value: words for key, words in said.items()})
    advice = advise(_asked(*ours, agreements=agreements))
    assert 0 < len(advice.call) <= CALL_LIMIT
    assert len(advice.lines) == 5
    assert all(len(line.text) <= LINE_LIMIT for line in advice.lines)


def test_why_is_told_of_the_one_thing_asked_about() -> None:
    every, lobs = (
        advise(_asked(MIRA, TOM, words=words)).more
        for words in ("what do we agree", "who takes the lobs")
    )
    assert "The cross player moves into a slow ball and sees it longer." in lobs
    assert [line for line in lobs if "?" in line] == [
        line for line in every if line.startswith("Who runs for a lob?")
    ]
    assert len(lobs) < len(every) / 2


@pytest.mark.parametrize(
    ("words", "wind", "told"),
    [
        ("who takes the lobs", Wind.SOME, True),
        ("who takes the lobs", None, False),
        ("who takes the lobs", Wind.NONE, False),
        ("who takes the middle", Wind.SOME, False),
    ],
)
def test_wind_moves_a_lob_and_not_who_runs(words: str, wind: Wind | None, told: bool) -> None:
    still, windy = _asked(MIRA, TOM, words=words), _asked(MIRA, TOM, words=words)
    advice = advise(replace(windy, wind=wind))
    assert advice.call == advise(still).call
    assert ("who runs stays" in (advice.unless or "")) is told
