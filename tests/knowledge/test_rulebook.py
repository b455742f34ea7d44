"""What the rulebook's entries say: complete, short, sourced, with and without a referee.

Statements: national rulebook, 2025 edition (read), written out below independently of
the data.
"""

from __future__ import annotations

import re

import pytest
from entry_examples import WRITERS, examples

from knowledge.advice import CALL_LIMIT, Advice, MatchFact
from knowledge.general_rule import LINE_LIMIT, RuleDataError
from knowledge.reading.entry_model import Kind
from knowledge.rulebook import UNKNOWN_RULE, Rule, advise, find_rule, rule_named, rules
from knowledge.rulebook.answer import AS_CITED, EDITION, NO_REF_ASSUMED, REF_SAID, SAME_EITHER_WAY
from knowledge.rulebook.entry import EDITIONS, read_entry, read_source
from knowledge.situation import Asked, Situation
from knowledge.sources import SourceKind
from knowledge.vocabulary import Topic


def _ask(words: str, *, officiated: bool | None = None, rule: str | None = None) -> Advice:
    asked = Asked(words=words, officiated=officiated, rule=rule)
    return advise(Situation(topic=Topic.RULES_QUESTION, asked=asked))


THIS = f"{EDITION} edition"
RULEBOOK = SourceKind.RULEBOOK

STATEMENTS = {
    "only the serving side scores": "score only on your own serve",
    "games to 11, 15 or 21, win by 2, no cap": "win by two: 11, 15 or 21, no cap",
    "a match is commonly best two of three to 11": "best of three to 11",
    "the game starts 0-0-2 with one server": "0-0-2",
    "score call: serving side, receiving side, server number": "receiving side, server number",
    "after a side-out the right-court player serves as server 1": "right-court player serves first",
    "server and partner swap after a point": "server and partner swap courts",
    "receivers do not swap": "receivers never swap",
    "server 2 serves from where they stand": "partner serves, no swap",
    "the starting server is right when their score is even": "even score: starting server right",
    "the receiver is diagonal": "the receiver is whoever is diagonal",
    "partners may stand anywhere: stacking": "partners may stand anywhere",
    "singles: one server, right even, left odd": "serve right when even, left when odd",
    "the serve goes diagonally": "serve diagonally, past the kitchen line",
    "a serve lands past the kitchen line": "must still clear the kitchen",
    "any other line is good on the serve": "centre, side and base lines are good",
    "a serve touching the net and landing in is live": "a serve off the net is live",
    "the drop serve is allowed": "legal: drop it",
    "10 seconds to serve after the call": "within 10 seconds of the score call",
    "the score is called before the serve": "the whole score comes before the serve",
    "serve and return must bounce": "let serve and return bounce",
    "no volley while touching the kitchen or its line": "no volley touching kitchen or its line",
    "a volley's momentum into the kitchen is a fault": "even after the ball is dead",
    "entering the kitchen for a bounced ball is allowed": "be in the kitchen any time",
    "feet outside again before a volley": "both feet outside first",
    "the kitchen is a surface, not a volume": "it is a surface, not a space",
    "time-outs: 2 to 11 or 15, 3 to 21, one minute": "two a game to 11 or 15, three to 21",
    "medical time-out: up to 15 minutes": "up to 15 minutes",
    "2 minutes between games, 10 between matches": "2 minutes between games, 10 between matches",
    "ends change after each game and at 6, 8 or 11": "deciding or single game: at 6 (to 11)",
    "the toss winner picks end, serve, receive or defers": "end, serve, receive or defer",
    "rally scoring: provisional in 2025, game point on serve; 2026 drops that": "2026 drops that",
    "rally scoring: who serves after a side-out differs by source": "varies",
    "court size": "20 by 44 feet",
    "service court size": "10 by 15 ft",
    "kitchen depth": "7 ft (2.13 m)",
    "line width": "2 inches wide",
    "net height": "36 in at the sides, 34 in in the middle",
    "post distance": "22 feet apart",
    "ball size, weight and holes": "0.78 to 0.935 ounces, 26 to 40 holes",
    "ball bounce": "from 78 in it rises 30 to 34 in",
    "paddle size": "length plus width to 24 in, length to 17",
}
"""Every rule of facts sections 1 (sizes) and 2, and words that a right answer to it has."""

READ_NUMBERS_2025 = {
    "2.A", "2.B", "2.C", "2.D", "2.E", "3.A.22", "4.B", "4.B.3", "4.B.6", "4.C.2", "4.J", "5.A",
    "5.B", "9.H", "10.A", "10.B", "12.B",
}  # fmt: skip
"""2025 numbers (read), and 4.B.3, 4.C.2, 9.H in a published list of its changes."""


def _said(rule: Rule) -> str:
    ruling = rule.ruling
    lines = [ruling.call, *(reason.text for reason in ruling.reasons), ruling.now]
    return " ".join(lines).lower()


def test_every_statement_of_the_facts_has_an_entry() -> None:
    assert {one for rule in rules() for one in rule.covers} == set(STATEMENTS)


@pytest.mark.parametrize(("statement", "words"), STATEMENTS.items())
def test_the_entry_says_what_the_rulebook_says(statement: str, words: str) -> None:
    said = " ".join(_said(rule) for rule in rules() if statement in rule.covers)
    assert words in said


def test_there_are_well_over_forty_rules_each_asked_in_three_ways() -> None:
    assert len(rules()) >= 80
    assert all(len(set(rule.asked)) >= 3 for rule in rules())


@pytest.mark.parametrize("rule", rules(), ids=lambda rule: rule.name)
@pytest.mark.parametrize("officiated", [None, False, True])
def test_an_answer_fits_a_phone_and_says_what_to_do_now(
    rule: Rule, officiated: bool | None
) -> None:
    advice = _ask("", officiated=officiated, rule=rule.name)
    lines = [reason.text for reason in advice.reasons]
    lines += [one for one in (advice.unless, advice.assumed, advice.caution, advice.now) if one]
    assert 0 < len(advice.call) <= CALL_LIMIT
    assert advice.now
    assert all(len(line) <= LINE_LIMIT for line in lines)
    assert len(lines) <= 7
    cited = [one.source.citation for one in advice.reasons if one.source.kind is RULEBOOK]
    all_of_one = all(citation.startswith(EDITION) for citation in cited)
    assert (THIS if all_of_one else AS_CITED).lower() in (advice.assumed or "").lower()


def test_a_reason_names_its_edition_and_a_number_only_where_it_was_read() -> None:
    for rule in rules():
        for ruling in filter(None, (rule.ruling, rule.officiated)):
            for reason in ruling.reasons:
                if reason.source.kind is SourceKind.COMMON_PRACTICE:
                    continue
                edition, _, place = reason.source.citation.partition(", ")
                assert reason.source.kind is SourceKind.RULEBOOK
                assert edition in EDITIONS
                number = re.fullmatch(r"\d+\.[A-Z][\w.]*", place)
                if edition == "2025" and number:
                    assert place in READ_NUMBERS_2025, (rule.name, place)
                assert number or place.startswith(("section ", "from ", "edition"))


def _either_edition(assumed: str) -> tuple[str, str]:
    return assumed.format(edition=THIS), assumed.format(edition=AS_CITED)


def test_without_a_word_on_it_no_referee_is_assumed_and_the_other_branch_is_a_button() -> None:
    advice = _ask("my momentum carried me into the kitchen after a volley")
    assert advice.assumed in _either_edition(NO_REF_ASSUMED)
    choice = advice.choices[-1]
    assert (choice.fact, choice.value) == (MatchFact.OFFICIATED.value, "yes")
    other = _ask("my momentum carried me into the kitchen after a volley", officiated=True)
    assert other.assumed in _either_edition(REF_SAID)
    assert other.now != advice.now
    assert "before the next serve" in (other.now or "")
    assert other.choices[-1].value == "no"


@pytest.mark.parametrize(
    ("words", "officiated"),
    [
        ("they called it out but it was in", None),
        ("they called it out but it was in, no ref", False),
        ("called it out but it was in and we have no referee", False),
        ("called it out, it was in, there isnt a ref here", False),
        ("ref wont be there who calls lines", False),
        ("they called it out but it was in and the ref is blind", True),
        ("bad line call in a refereed match", True),
        ("officiated match, they called it out but it was in", True),
        ("who calls foot faults, us or the ref", None),
        ("can I call a kitchen fault or only the referee", None),
    ],
)
def test_the_words_say_whether_there_is_a_referee(words: str, officiated: bool | None) -> None:
    advice = _ask(words)
    value = advice.choices[-1].value
    assert value == ("no" if officiated else "yes")
    if officiated is None:
        assert advice.assumed in _either_edition(NO_REF_ASSUMED)


def test_a_size_is_the_same_either_way() -> None:
    advice = _ask("how wide is the kitchen")
    assert advice.assumed == SAME_EITHER_WAY.format(edition=THIS)
    assert not advice.choices


BRANCHES = [
    # Coaching's list: "officiated vs not is the first branch".
    ("wrong server served what happens", "agree", "before the next serve"),
    ("ball on court mid rally", "Replay", "referee says"),
    ("they called it out but it was in", "I saw it in", "appeal"),
    ("who calls kitchen faults", "replay", "referee"),
    ("distraction can i claim it", "ask for a referee", "who judges it"),
    ("broken ball replay", "Replay, new ball", "before the next serve"),
    ("late out call", "desk", "referee before the next serve"),
    ("partner says in i say out what counts", "it's in", "referee"),
    ("can my coach talk to me during play", "agree", "referee"),
    ("how long is a medical timeout", "desk", "referee"),
]


@pytest.mark.parametrize(("words", "without", "with_ref"), BRANCHES)
def test_what_to_do_now_hangs_on_the_referee(words: str, without: str, with_ref: str) -> None:
    assert without in (_ask(words, officiated=False).now or "")
    assert with_ref in (_ask(words, officiated=True).now or "")


COACHING_LIST = [
    ("wrong server found two rallies late", "wrong server"),
    ("the wrong receiver took the serve", "wrong server"),
    ("we served from the wrong side, noticed later", "wrong server"),
    ("is it a let if the serve clips the net", "serve net"),
    ("a ball rolled onto our court", "hinder"),
    ("hindrance", "hinder"),
    ("serve hit the receiver", "serve hits player"),
    ("my serve hit my own partner", "serve hits player"),
    ("net cord in the rally", "net cord"),
    ("can i touch the post", "post touch"),
    ("ball hit the post and went in", "ball hits post"),
    ("momentum took me into the nvz after the volley", "momentum"),
    ("is an erne legal", "erne"),
    ("is an atp legal", "around the post"),
    ("who calls what", "who calls line"),
    ("partners disagree on the call", "partners disagree"),
    ("late call", "late call"),
    ("can my partner talk while the ball comes to us", "talk to partner"),
    ("how many time outs do we get", "timeouts"),
    ("is coaching allowed", "coaching"),
    ("medical timeout", "medical"),
    ("broken ball", "broken ball"),
    ("drop serve rules", "drop serve"),
    ("spin serve by hand", "serve spin"),
]


@pytest.mark.parametrize(("words", "name"), COACHING_LIST)
def test_the_questions_that_must_be_right(words: str, name: str) -> None:
    rule = rule_named(name)
    assert rule is not None
    assert _ask(words).call == rule.ruling.call


def test_a_dispute_stays_calm_and_calls_nobody_a_cheat() -> None:
    for words in ("they are cheating on the lines", "they hooked us on a line call"):
        advice = _ask(words)
        said = " ".join([advice.call, advice.now or "", *(one.text for one in advice.reasons)])
        assert "calm" in said
        assert "referee" in said
        assert "cheat" not in said.lower()


def test_bodies_are_left_to_the_staff() -> None:
    """Coaching's caution: medical staff decide."""
    for words in ("medical timeout", "he got hurt during the rally do we replay"):
        assert "staff" in (_ask(words).caution or "")


def test_a_rule_we_do_not_have_goes_to_the_referee_or_the_desk() -> None:
    advice = _ask("zebra")
    assert advice.call == UNKNOWN_RULE
    assert "before the next serve" in advice.call
    assert "don't have that rule" in (advice.assumed or "")
    assert not advice.reasons


def test_a_rule_that_is_unsure_says_how_it_was_taken_and_offers_the_other() -> None:
    texts = [one.text for one in examples(Kind.RULES) if one.writer in WRITERS]
    text = next(text for text in texts if (found := find_rule(text)).rule and found.others)
    unsure = _ask(text)
    assert "took it as" in (unsure.unless or "")
    other = unsure.choices[0]
    assert other.fact == MatchFact.RULE.value
    assert other.value in [rule.name for rule in find_rule(text).others]
    tapped = _ask(text, rule=other.value)
    assert not (tapped.unless or "").startswith("Not meant?")
    wanted = rule_named(other.value or "")
    assert wanted is not None
    assert tapped.call == wanted.ruling.call


GOOD = {
    "id": "x",
    "call": "Go.",
    "reasons": [{"text": "t", "source": "2025 10.A"}],
    "now": "Go on.",
    "asked": ["a", "b", "c"],
}


def test_a_full_entry_is_read() -> None:
    assert read_entry(GOOD).name == "x"


@pytest.mark.parametrize(
    "wrong",
    [
        {"call": ""},
        {"call": "x" * (CALL_LIMIT + 1)},
        {"now": "x" * (LINE_LIMIT + 1)},
        {"now": None},
        {"reasons": []},
        {"reasons": ["bare"]},
        {"reasons": [{"text": "t", "source": "2025 10.A"}] * 4},
        {"reasons": [{"text": "t", "source": "1999 10.A"}]},
        {"reasons": [{"text": "t", "source": "2025"}]},
        {"asked": ["a", "b"]},
        {"asked": ["a", "a", "a"]},
        {"asked": "abc"},
        {"ref": {}},
        {"ref": {"unless": "x"}},
        {"unless": ""},
        {"wrods": ["x"]},
    ],
)
def test_data_that_lacks_something_is_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(RuleDataError):
        read_entry({**GOOD, **wrong})


def test_sources_are_read() -> None:
    assert str(read_source("2025 10.A")) == "rulebook: 2025, 10.A"
    assert str(read_source("2026 11.A.2")) == "rulebook: 2026, 11.A.2"
    assert read_source("practice").kind is SourceKind.COMMON_PRACTICE


@pytest.mark.parametrize(
    ("words", "whose"),
    [
        ("my serve bounced then hit the pole, whose point", "Hitter's point"),
        ("ball bounced in then hit the net post", "Hitter's point"),
        ("it bounced on our side and then it hit the pole, do they win it", "Hitter's point"),
        ("it hit the post then bounced in", "Fault"),
        ("ball hit the post and bounced in", "Fault"),
        ("my serve hit the post whose point", "Fault"),
    ],
)
def test_a_ball_that_meets_the_post_is_the_hitters_only_after_a_bounce(
    words: str, whose: str
) -> None:
    """2021-22 edition, 8.D: bounced in first, then a permanent object, the hitter wins the rally.

    Posts are permanent objects (section 3); before the bounce it is a fault (section 7, from
    memory).
    """
    assert _ask(words).call.startswith(whose)


@pytest.mark.parametrize(
    "words",
    [
        "can i volley while my partner is in the kitchen",
        "partner in the kitchen touched me as i volleyed",
    ],
)
def test_touching_a_partner_in_the_kitchen_is_said_in_the_first_line(words: str) -> None:
    """Section 9, from memory: what touches the volleyer counts, a partner in the kitchen too."""
    advice = _ask(words)
    assert advice.call == "Legal to volley, unless you touch your partner."
    assert "fault" in advice.reasons[1].text


@pytest.mark.parametrize(
    ("words", "starts"),
    [
        ("they touched the net is it a fault", "Fault:"),
        ("he brushed the net is that our point", "Fault:"),
        ("they touched the net after the ball was dead", "No fault:"),
        ("i leaned on the net after a winner", "No fault:"),
        ("my paddle brushed the net before he hit the winner", "Fault:"),
        ("i touched the net after he hit a winner", "No fault:"),
    ],
)
def test_a_net_touched_was_touched_live_unless_the_words_tell_otherwise(
    words: str, starts: str
) -> None:
    """7.G and 8.E of the 2021-22 edition: the fault is for a live ball."""
    assert _ask(words).call.startswith(starts)


def test_no_edition_is_claimed_for_reasons_read_in_another() -> None:
    assert (_ask("can i switch hands in a rally").assumed or "").startswith(AS_CITED)
    assert (_ask("how many timeouts do we get").assumed or "").startswith(THIS)


def test_who_did_it_and_who_ruled_on_it_changes_what_to_do() -> None:
    told = {
        "they volleyed our serve is that a fault": "They volleyed too soon? Our rally.",
        "he hit it b4 it bounced on the return, fault?": "They volleyed too soon? Our rally.",
        "my partner volleyed their serve is it a fault": "The rally is theirs.",
        "ref warned us for coaching from the stands": "A warning stands.",
        "their medical timeout was 20 min is that allowed": "Theirs too may last up to 15",
    }
    for words, line in told.items():
        advice = _ask(words)
        assert line in f"{advice.call} {advice.now}"
