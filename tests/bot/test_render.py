"""Replies read well on a phone, whatever the advice."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.render import BUTTONS_PER_ROW, ROW_CHARACTERS, render, rows
from bot.chat.reply import Button
from bot.chat.wording import wording
from knowledge.advice import Advice, Choice, Confidence, Reason
from knowledge.sources import book, computed, rule
from knowledge.vocabulary import PlayerId, Topic

ADVICE = Advice(
    topic=Topic.AIM_DINK,
    call="Dink Okafor's backhand, middle, low.",
    reasons=(
        Reason(text="He pops up backhands", source=book(notes=4)),
        Reason(text="Lowest net, longest court", source=computed("net height")),
        Reason(text="The kitchen is seven feet deep", source=rule("2.B")),
    ),
    number="Worth about 1 rally in 100.",
    unless="Stretched? Soft cross.",
    confidence=Confidence.LEAN,
    choices=(
        Choice(label="stretched", topic=Topic.AIM_DINK, fact="ball", value="stretched"),
        Choice(label="lefty", topic=Topic.AIM_DINK, fact="hand", value="left", about=PlayerId(64)),
        Choice(label="game plan", topic=Topic.GAME_PLAN),
    ),
    more=("Net there is 34 inches.",),
)


def test_a_call_that_is_one_of_several_says_so() -> None:
    """At 26 in 100 some other call is likelier the best than this one."""
    several = wording("several").format(count="26")
    low = replace(ADVICE, numbers={"p_best": 0.26})
    assert several in render(low).text.splitlines()
    for other in (
        replace(low, numbers={"p_best": 0.6}),
        replace(low, confidence=Confidence.GENERAL_RULE),
        replace(low, confidence=Confidence.TOSS_UP),
    ):
        assert "Others come close" not in render(other).text


def test_the_call_comes_first_and_reasons_end_with_their_source() -> None:
    lines = render(ADVICE).text.splitlines()
    assert lines[0] == ADVICE.call
    assert lines[1].endswith("(book: 4 notes)")
    assert lines[2].endswith("(maths)")
    assert lines[3].endswith("(rulebook: 2025, 2.B)")
    assert lines[4:] == [ADVICE.number, ADVICE.unless]


def test_in_a_match_an_answer_is_the_call_and_one_reason() -> None:
    assert len(render(ADVICE, short=True).text.splitlines()) == 2


def test_the_pair_is_named_once() -> None:
    said = render(ADVICE, against=("Okafor", "Lindqvist")).text
    assert said.endswith("vs Okafor/Lindqvist")
    named = render(ADVICE, against=("Okafor",)).text
    assert "vs Okafor" not in named


def test_a_toss_up_is_said() -> None:
    from dataclasses import replace

    text = render(replace(ADVICE, confidence=Confidence.TOSS_UP)).text
    assert wording("toss_up") in text


def test_buttons_settle_ask_and_explain() -> None:
    payloads = [one.payload for row in render(ADVICE).buttons for one in row]
    assert payloads == [
        "1:set:aim_dink:ball:stretched",
        "1:set:aim_dink:hand:left:64",
        "1:ask:game_plan",
        "1:why:aim_dink",
    ]


def test_labels_share_a_row_only_where_a_phone_shows_them_whole() -> None:
    buttons = [Button(label="x" * size, payload="1:why:lob") for size in (5, 10, 14, 3, 29, 2)]
    for row in rows(buttons):
        assert len(row) <= BUTTONS_PER_ROW
        assert len(row) == 1 or sum(len(one.label) for one in row) <= ROW_CHARACTERS
    assert [one for row in rows(buttons) for one in row] == buttons
