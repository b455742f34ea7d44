"""Claims that a note only may hold: offered as buttons, added by a tap, and never otherwise."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

import pytest
from conversations import demo_console
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from note_scores import LATER_VOICES, notes_of
from talk import Talk, demo_talk
from voices import IN_TALK

from bot.chat import note_weighing
from bot.chat.claim_model import MADE_FROM, OFFERED_FROM, Likely
from bot.chat.half_understood import MOST_OFFERED, Doubted, worth_offering
from bot.chat.note_line import NoteLine
from bot.chat.note_manner import HEDGED_WEIGHT
from bot.chat.payload import LIMIT_BYTES, Tap, Verb, tap
from bot.chat.said import Claim
from bot.chat.understand import understand_note
from bot.chat.wording import wording
from bot.post import IncomingKind
from knowledge.vocabulary import TRAITS, PlayerId, Trait, Value
from scouting_db.values import NewObservation

TOO_OLD = wording("unclear.too_old")
DELETED = wording("note.offer_deleted")
STALE = wording("note.offer_stale")
THERE = wording("note.there")

Label = tuple[Trait, Value]

LOBS: Label = (Trait.LOB, Value.OFTEN)
OVERHEAD: Label = (Trait.OVERHEAD, Value.WEAKNESS)
SERVE: Label = (Trait.SERVE, Value.STRENGTH)
POACHES: Label = (Trait.POACHING, Value.OFTEN)

SAID = "note okafor: serve is strong, lobs a lot, overhead is weak"
OF_TWO = "note okafor: serve is strong, lobs a lot. lindqvist: poaches a lot"

Doubt = Callable[[Mapping[Label, float]], None]


@pytest.fixture
def doubt(monkeypatch: pytest.MonkeyPatch) -> Doubt:
    return partial(make_doubt, monkeypatch)


def make_doubt(patch: pytest.MonkeyPatch, chances: Mapping[Label, float]) -> None:
    """The model holds what the rules read for as likely as told here, and the rest for certain."""

    def told(note: NoteLine, ruled: Sequence[Claim], player: PlayerId) -> tuple[Likely, ...]:
        likely = [
            Likely(
                trait=one.trait,
                value=one.value,
                chance=chances.get((one.trait, one.value), 0.99),
                start=0,
                stop=len(note.said),
                at=next(at for at, word in enumerate(note.said) if word.span[0] >= one.span[0]),
            )
            for one in ruled
            if one.player == player and not one.denied
        ]
        return tuple(one for one in likely if one.chance > OFFERED_FROM)

    for stands in ("RULES_STAND_FROM", "FACTS_STAND_FROM", "PLAIN_STANDS_FROM"):
        patch.setattr(note_weighing, stands, MADE_FROM)
    patch.setattr(note_weighing, "likely_claims", told)


def offers(talk: Talk) -> list[str]:
    """The labels of the buttons that add a claim."""
    return [one.label for one in talk.buttons if Tap.parse(one.payload).verb is Verb.CLAIM]


def newest(talk: Talk) -> tuple[NewObservation, ...]:
    return talk.notes(1)[0].observations


def newest_labels(talk: Talk) -> list[Label]:
    return [(one.trait, one.value) for one in newest(talk)]


def changes_nothing(talk: Talk, payload: str) -> str:
    stored, context = talk.stored(), talk.context
    reply = talk.press(payload)
    assert talk.stored() == stored, payload
    assert talk.context == context, payload
    return reply


def test_what_is_half_understood_is_offered_and_not_stored(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    assert demo.say(SAID).startswith("Noted. Okafor: serve strong, overhead weak.")
    assert offers(demo) == ["lob often?"]
    assert newest_labels(demo) == [SERVE, OVERHEAD]


@pytest.mark.parametrize(
    ("chance", "is_made", "is_offered"),
    [(0.19, False, False), (0.21, False, True), (0.74, False, True), (0.75, True, False)],
)
def test_the_band_of_what_is_offered(
    demo: Talk, doubt: Doubt, chance: float, is_made: bool, is_offered: bool
) -> None:
    assert (OFFERED_FROM, MADE_FROM) == (0.2, 0.75)
    doubt({LOBS: chance})
    demo.say(SAID)
    assert (LOBS in newest_labels(demo)) is is_made
    assert offers(demo) == ["lob often?"] * is_offered


def test_a_slip_in_a_short_word_is_read_as_likely(demo: Talk) -> None:
    """ "Wek" is no word, and what is left of three letters says little for sure."""
    assert demo.say("Hale serve wek").startswith(wording("note.tap_which"))
    assert offers(demo) == ["serve weak?"]


def test_a_tap_adds_it_and_says_what_the_note_now_says(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    demo.say(SAID)
    before = newest(demo)
    reply = demo.tap("lob often?")
    assert reply == "Added. Okafor: serve strong, overhead weak, lob often."
    assert [one.label for one in demo.buttons] == ["undo"]
    *kept, added = newest(demo)
    assert tuple(kept) == before
    assert added.span is not None
    assert "lobs" in SAID[slice(*added.span)]
    assert (added.weight, added.seen, added.origin) == (1.0, before[0].seen, "tapped")
    assert demo.notes(1)[0].text == SAID
    assert ("lob", "often", False) in demo.claims("Okafor")


def test_a_note_of_which_nothing_is_sure_offers_what_it_may_say(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    assert demo.say("note okafor: lobs a lot").startswith(wording("note.tap_which"))
    assert newest(demo) == ()
    assert demo.tap("lob often?") == "Added. Okafor: lob often."


def test_a_second_tap_changes_nothing(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    demo.say(SAID)
    payload = demo.button("lob often?").payload
    demo.press(payload)
    assert changes_nothing(demo, payload) == THERE


def test_undo_and_redo_are_exact(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    demo.say(SAID)
    before = demo.stored()
    demo.tap("lob often?")
    after = demo.stored()
    assert demo.tap("undo") == "Taken back: “Okafor: lob often”."
    assert demo.stored() == before
    assert demo.tap("put it back") == "Put back: “Okafor: lob often”."
    assert demo.stored() == after
    demo.tap("undo")
    assert demo.stored() == before


def test_undo_in_words_goes_back_one_by_one(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    demo.say(SAID)
    demo.tap("lob often?")
    assert "lob often" in demo.say("undo")
    assert newest_labels(demo) == [SERVE, OVERHEAD]
    assert SAID[:20] in demo.say("undo")
    assert demo.notes(1)[0].text != SAID
    demo.say("redo")
    demo.say("redo")
    assert newest_labels(demo) == [SERVE, OVERHEAD, LOBS]


def test_undo_takes_out_one_of_two_and_leaves_the_other(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4, OVERHEAD: 0.45})
    demo.say(SAID)
    demo.tap("overhead weak?")
    first = demo.button("undo").payload
    assert offers(demo) == ["lob often?"], "the console reaches only the last reply's buttons"
    assert demo.tap("lob often?").endswith("serve strong, overhead weak, lob often.")
    demo.press(first)
    assert newest_labels(demo) == [SERVE, LOBS]
    demo.tap("put it back")
    assert newest_labels(demo) == [SERVE, LOBS, OVERHEAD]


def test_what_was_taken_back_can_be_tapped_again_but_is_there_once(
    demo: Talk, doubt: Doubt
) -> None:
    doubt({LOBS: 0.4})
    demo.say(SAID)
    offer = demo.button("lob often?").payload
    demo.press(offer)
    demo.tap("undo")
    again = demo.button("put it back").payload
    demo.press(offer)
    assert newest_labels(demo) == [SERVE, OVERHEAD, LOBS]
    assert changes_nothing(demo, again) == wording("superseded")


def test_at_most_two_and_the_likeliest_first(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.35, OVERHEAD: 0.45, SERVE: 0.4})
    demo.say(SAID)
    assert MOST_OFFERED == 2
    assert offers(demo) == ["overhead weak?", "serve strong?"]


def test_the_name_is_said_where_the_note_is_about_several(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4, POACHES: 0.45})
    demo.say(OF_TWO)
    assert offers(demo) == ["Lindqvist: poaching often?", "Okafor: lob often?"]
    reply = demo.tap("Lindqvist: poaching often?")
    assert reply == "Added. Okafor: serve strong; Lindqvist: poaching often."
    assert ("poaching", "often", False) in demo.claims("Lindqvist")
    assert offers(demo) == ["Okafor: lob often?"]
    demo.tap("Okafor: lob often?")
    assert {(one.player, one.trait) for one in newest(demo)} == {
        (demo.player("Okafor"), Trait.SERVE),
        (demo.player("Okafor"), Trait.LOB),
        (demo.player("Lindqvist"), Trait.POACHING),
    }


def test_nothing_is_offered_of_a_trait_that_the_note_tells(demo: Talk, doubt: Doubt) -> None:
    doubt({(Trait.OVERHEAD, Value.STRENGTH): 0.4})
    demo.say("note okafor: weak overhead. but overhead is strong")
    assert offers(demo) == []
    doubt({LOBS: 0.4})
    demo.say("note okafor: never lobs. lobs a lot")
    assert offers(demo) == []


def test_nothing_is_offered_of_what_an_exception_takes_out(demo: Talk, doubt: Doubt) -> None:
    doubt({(Trait.BACKHAND_DINK, Value.STRENGTH): 0.4})
    demo.say("note okafor: dinks are strong")
    assert offers(demo) == ["backhand dink strong?"]
    demo.say("note okafor: dinks are strong, except the backhand dink")
    assert offers(demo) == []


def test_nobody_is_small_by_a_call(demo: Talk, doubt: Doubt) -> None:
    doubt({(Trait.HEIGHT, Value.SHORT): 0.4})
    demo.say("note okafor: short, serve is strong")
    assert offers(demo) == ["short?"]
    demo.say("note okafor: serve is strong at 5-1-2")
    assert offers(demo) == []


@pytest.mark.parametrize(
    ("made", "is_denied", "is_offered"),
    [
        ((1, Trait.LOB), False, False),
        ((1, Trait.LOB), True, False),
        ((2, Trait.LOB), False, True),
        ((1, Trait.OVERHEAD), False, True),
    ],
)
def test_only_what_the_note_leaves_open_is_worth_offering(
    made: tuple[int, Trait], is_denied: bool, is_offered: bool
) -> None:
    claim = Claim(player=PlayerId(1), trait=Trait.LOB, value=Value.OFTEN, weight=1.0, span=(0, 4))
    contrary = replace(claim, value=Value.RARELY)
    doubted = [Doubted(claim=contrary, chance=0.31), Doubted(claim=claim, chance=0.4)]
    player, trait = made
    told = replace(
        claim, player=PlayerId(player), trait=trait, value=Value.WEAKNESS, denied=is_denied
    )
    assert worth_offering(doubted, [told]) == (claim,) * is_offered


def test_a_hedge_of_its_clause_weighs_and_strength_does_not(demo: Talk, doubt: Doubt) -> None:
    doubt({OVERHEAD: 0.4})
    demo.say("note okafor: maybe a really weak overhead")
    demo.tap("overhead weak?")
    assert newest(demo)[0].weight == pytest.approx(HEDGED_WEIGHT)
    demo.say("note okafor: really weak overhead")
    demo.tap("overhead weak?")
    assert newest(demo)[0].weight == 1.0


def test_what_others_told_stays_hearsay(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    demo.say(SAID, forwarded=True)
    demo.tap("lob often?")
    assert newest(demo)[-1].seen == "hearsay"


def test_a_claim_just_added_is_never_cut_from_a_long_line(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    demo.say("note okafor: lefty, tall, serve is strong, weak overhead, poaches a lot, lobs a lot")
    assert len(newest(demo)) > 4
    assert "lob often +" in demo.tap("lob often?")


def test_an_open_name_offers_only_once_it_is_settled(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    demo.say("note ana: serve is strong, lobs a lot")
    assert offers(demo) == []
    demo.tap("Anna Ruis")
    before = demo.stored()
    demo.tap("lob often?")
    assert ("lob", "often", False) in demo.claims("Anna Ruis")
    demo.tap("undo")
    assert demo.stored() == before


def test_an_offer_of_a_deleted_note_changes_nothing(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    demo.say(SAID)
    payload = demo.button("lob often?").payload
    demo.tap("undo")
    assert changes_nothing(demo, payload) == DELETED
    demo.say("redo")
    assert demo.press(payload).startswith("Added.")


def test_an_offer_does_not_outlive_its_reading(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    demo.say(SAID, external_message_id=41)
    old = demo.button("lob often?").payload
    edited = SAID.replace("serve is strong", "serve is weak")
    demo.send(IncomingKind.EDIT, text=edited, external_message_id=41)
    new = demo.button("lob often?").payload
    assert changes_nothing(demo, old) == STALE
    assert demo.press(new).startswith("Added. Okafor: serve weak")


def test_an_offer_about_somebody_not_meant_is_stale(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    demo.say(SAID)
    payload = demo.button("lob often?").payload
    demo.press(payload)
    undo = demo.button("undo").payload
    demo.press(undo)
    again = demo.button("put it back").payload
    demo.say("no, it was castellano")
    assert changes_nothing(demo, payload) == STALE
    assert changes_nothing(demo, again) == wording("superseded")
    demo.say("undo")
    assert demo.press(payload).startswith("Added. Okafor:")


def test_what_was_added_goes_along_when_the_note_is_another_s(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    demo.say(SAID)
    demo.tap("lob often?")
    assert demo.say("no, it was castellano").startswith("Changed. Castellano:")
    assert ("lob", "often", False) in demo.claims("Castellano")


def test_an_offer_of_another_book_changes_nothing(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    other = demo.of("kim", chat="kim's")
    for number in range(100):  # past every number that the demo book has used
        with other.book() as book:
            book.add_player(f"Filler {number}")
    other.say("/add Zora Vance")
    other.say("note vance: lobs a lot")
    payload = other.button("lob often?").payload
    assert changes_nothing(demo, payload) == TOO_OLD
    assert other.press(payload) == "Added. Vance: lob often."


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """A talk in which one claim was offered, which no tap here may add, and how it was offered."""

    talk: Talk
    change: int
    player: int


@pytest.fixture(scope="module")
def offered() -> Iterator[Offered]:
    talk = demo_talk()
    with pytest.MonkeyPatch.context() as patch:
        make_doubt(patch, {LOBS: 0.4})
        talk.say(SAID)
    change = int(Tap.parse(talk.button("lob often?").payload).args[0])
    yield Offered(talk=talk, change=change, player=talk.player("Okafor"))
    talk.store.close()


def test_no_other_claim_than_the_one_offered_can_be_tapped(offered: Offered) -> None:
    talk, change = offered.talk, offered.change
    talk.say("hale is tall")
    plain = Tap.parse(talk.button("undo").payload).args[0]
    for args in (
        [change, 0],
        [change, 2],
        [change, -1],
        [change, 2**63],
        [change, "1.0"],
        [change, "lob"],
        [change],
        [change, 1, 1],
        [change, offered.player, "lob", "often"],
        [plain, 1],
        [change + 1_000, 1],
        [-change, 1],
        [f"0x{change:x}", 1],
    ):
        payload = ":".join(["1", Verb.CLAIM, *map(str, args)])
        assert changes_nothing(talk, payload) == TOO_OLD, payload


@settings(max_examples=150, deadline=None)
@given(
    change=st.one_of(st.integers(0, 400), st.integers()),
    number=st.one_of(st.integers(0, 3), st.integers()),
)
def test_no_numbers_but_those_offered_reach_the_book(
    offered: Offered, change: int, number: int
) -> None:
    assume((change, number) != (offered.change, 1))
    assert changes_nothing(offered.talk, f"1:{Verb.CLAIM}:{change}:{number}") == TOO_OLD


@given(change=st.integers(0, 2**63 - 1))
def test_every_payload_fits_a_telegram_button(change: int) -> None:
    for number in range(1, MOST_OFFERED + 1):
        assert len(tap(Verb.CLAIM, change, number).encode()) <= LIMIT_BYTES


def test_only_who_may_write_can_add(demo: Talk, doubt: Doubt) -> None:
    doubt({LOBS: 0.4})
    group = replace(demo, chat="club", is_group=True, user="mira", name="Mira")
    group.bind_new_book()
    group.say("/add Vance")
    group.say("note vance: lobs a lot")
    payload = group.button("lob often?").payload
    guest = group.of("guest")
    assert changes_nothing(guest, payload) == wording("unclear.not_yours")


def test_the_contract_has_what_is_offered_as_buttons(doubt: Doubt) -> None:
    doubt({LOBS: 0.4, OVERHEAD: 0.45})
    console = demo_console()
    said = console.say_json("note okafor: serve is strong, lobs a lot, overhead is weak")
    assert [one["trait"] for one in said["observations"]] == ["serve"]
    labels = [one["label"] for one in said["buttons"]]
    assert [one for one in labels if one.endswith("?")] == ["overhead weak?", "lob often?"]
    number = labels.index("overhead weak?") + 1
    added = console.say_json(str(number))
    assert added["kind"] == "note"
    assert [one["trait"] for one in added["observations"]] == ["serve", "overhead"]
    left = [one["label"] for one in added["buttons"]]
    assert "lob often?" in left
    assert "overhead weak?" not in left


@pytest.mark.parametrize("voice", LATER_VOICES)
def test_offers_of_the_shipped_model_keep_the_rules(voice: str) -> None:
    """On real notes: few, one a trait, of nothing told, and their words in the text."""
    for row in notes_of(voice):
        said = understand_note(row["text"], chat=IN_TALK)
        told = [(one.player, one.trait) for one in said.claims]
        offered = [(one.player, one.trait) for one in said.offered]
        assert len(offered) <= MOST_OFFERED, row["text"]
        assert len({*told, *offered}) == len({*told}) + len(offered), row["text"]
        for one in said.offered:
            assert one.value in TRAITS[one.trait].values
            assert not one.denied
            assert one.weight in (1.0, HEDGED_WEIGHT)
            assert said.text[slice(*one.span)].strip(), row["text"]
