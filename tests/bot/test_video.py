"""Rally lines of a video: stored with their times as one batch, told back by leak with drills."""

from __future__ import annotations

import time
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from talk import Talk, demo_talk
from told_rallies import MATCH, RALLIES

from bot.chat.match_log import unvoided
from bot.chat.settled_forms import rally_told
from bot.chat.video_said import video_said
from bot.chat.video_times import AT_S, clock_words
from bot.post import IncomingKind
from knowledge.phone_screen import MOST_LIST_LINES, wrapped
from knowledge.tactics.drills import drills
from knowledge.vocabulary import PlayerId
from scouting_db.values import EntryKind, MatchId, MatchRow

LINES = """0:42 lost it, my dink popped up
1:15 our point speed-up at okafor's hip
2:03 camera wobbles
2:40 tom missed the return
3:05 theirs, tom's third in the net
5:30 lol tom
6:12 lindqvist dink wide"""

NOISE = (
    "camera wobbles", "nice shirt", "they change ends", "water", "who filmed this", "ref talks",
    "skip this part", "wind again", "lunch", "zoom in here",
)  # fmt: skip


def video_of(talk: Talk) -> MatchRow:
    with talk.book() as book:
        return next(row for row in book.matches() if row.format.get("video"))


def times_of(talk: Talk) -> list[int | None]:
    match = video_of(talk).match
    with talk.book() as book:
        entries = unvoided(book.entries(match))
    return [(one.detail or {}).get(AT_S) for one in entries if one.kind is EntryKind.RALLY]


def details_of(talk: Talk, match: MatchId) -> list[tuple[Any, ...]]:
    """What is stored of each rally that counts, in order, without the numbers of its lines."""
    with talk.book() as book:
        told = {row.n: row for row in book.rallies(match)}
        rates, choices = book.rates(match), book.choices_in(match)
        entries = [one for one in unvoided(book.entries(match)) if one.kind is EntryKind.RALLY]
    return [
        (
            one.won_by,
            *(
                (row.ending, row.by_player, row.stroke, row.wing, row.words)
                for row in [told[one.n]]
            ),
            sorted((r.player, r.rate.value, r.made) for r in rates if r.n == one.n),
            [(c.topic, c.option, c.against, c.tagged_before) for c in choices if c.n == one.n],
        )
        for one in entries
    ]


def test_lines_are_stored_with_their_times_and_the_rest_is_kept(demo: Talk) -> None:
    reply = demo.say(LINES)
    assert reply.splitlines()[0] == "Rallies: 5, 2 won, 3 lost."
    assert "Not read, kept as a note: 2." in reply
    assert times_of(demo) == [42, 75, 160, 185, 372]
    kept = demo.notes()[0].text
    assert "2:03 camera wobbles" in kept
    assert "5:30 lol tom" in kept


def test_every_leak_comes_with_its_drill_and_what_was_not_read_at_the_end(demo: Talk) -> None:
    shown = demo.say(LINES)
    assert "Drill: Twenty returns past mid-box" in shown
    assert wrapped(shown.splitlines()) <= MOST_LIST_LINES
    while any(one.label == "more" for one in demo.buttons):
        page = demo.say("more")
        assert wrapped(page.splitlines()) <= MOST_LIST_LINES
        shown += "\n" + page
    for leak in ("misses_returns", "misses_thirds", "pops_dinks"):
        assert f"Cue: {drills()[leak].cue}" in shown
    assert "2:03 camera wobbles" in shown
    assert "all I have" in demo.say("more")


def test_more_by_tap_is_the_same_page(demo: Talk) -> None:
    demo.say(LINES)
    by_tap = demo.tap("more")
    demo.say("leaks")
    assert demo.say("more") == by_tap


def test_one_undo_takes_the_whole_batch_and_its_note_and_redo_brings_it_back(demo: Talk) -> None:
    notes = demo.notes()
    demo.say(LINES)
    stored = details_of(demo, video_of(demo).match)
    assert demo.say("undo") == "Taken back: 5 rallies of the video."
    assert times_of(demo) == []
    assert demo.notes() == notes
    demo.say("redo")
    assert details_of(demo, video_of(demo).match) == stored
    assert times_of(demo) == [42, 75, 160, 185, 372]


def test_the_running_score_stays_as_it_is(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist, to 11")
    demo.tap("we serve")
    demo.tap("our rally")
    demo.say(LINES)
    assert demo.say("score").startswith("1-0-2")


def test_more_messages_go_on_with_the_batch_and_none_counts_twice(demo: Talk) -> None:
    demo.say(LINES)
    reply = demo.say("7:00 okafor into the net\n7:30 tom missed the return\n7:41 sun")
    assert reply.splitlines()[:2] == ["Rallies: 7, 3 won, 4 lost.", "2 of them just now."]
    again = demo.say("7:00 okafor into the net\n8:00 okafor into the net")
    assert "Sent before, counted once: 1." in again
    assert len(times_of(demo)) == 8
    demo.say("undo")
    assert len(times_of(demo)) == 7


def told_live(talk: Talk) -> None:
    talk.say("next: okafor and lindqvist, to 11")
    talk.say("we serve")
    talk.say("lost it, my dink popped up")
    talk.say("our point, okafor missed the return")


def test_a_rally_told_live_and_again_in_its_video_counts_once_and_is_kept(demo: Talk) -> None:
    """By the same words, and by the score as it was called, whatever the words are then."""
    told_live(demo)
    reply = demo.say(
        "0:42 Lost it: my dink popped up!\n"
        "1:10 won, hale netted\n"
        "2:10 0-0-1 our point, his return sailed\n"
        "3:00 lost it, my dink popped up\n"
        "3:30 4-4-1 our point, okafor missed the return"
    )
    assert "Told in the match, counted once: 2." in reply, reply
    kept = next(note.text for note in demo.notes() if note.text.startswith("Of a video"))
    assert "0:42 Lost it: my dink popped up!" in kept
    assert times_of(demo) == [180, 210]
    demo.say("undo")
    assert times_of(demo) == []
    assert not any(note.text.startswith("Of a video") for note in demo.notes())
    demo.say("redo")
    assert times_of(demo) == [180, 210]


def test_only_lines_told_live_store_no_rally_twice(demo: Talk) -> None:
    told_live(demo)
    reply = demo.say("0:42 lost it, my dink popped up\n2:10 our point, okafor missed the return")
    assert reply.startswith("Told in the match already, counted once: 2.")
    assert "0:42 lost it, my dink popped up" in demo.notes()[0].text
    with demo.book() as book:
        assert not any(row.format.get("video") for row in book.matches())
    assert demo.say("undo").startswith("Taken back")


def test_bare_words_and_another_pairs_video_are_nobodys_double(demo: Talk) -> None:
    told_live(demo)
    demo.say("our point")
    assert "Told in the match" not in demo.say("0:42 our point\n1:10 our point, okafor netted")
    demo.say("undo")
    other = "video vs ruiz/hale:\n0:42 lost it, my dink popped up\n1:15 hale missed the return"
    assert "Told in the match" not in demo.say(other)


def test_a_video_is_no_meeting(demo: Talk) -> None:
    """What changed since the last meeting does not mean the evening before the screen."""
    demo.say("video vs ruiz/hale:\n0:42 hale missed the return\n1:15 lost it, my dink popped up")
    demo.later(days=1)
    asked = demo.say("what changed since we last played ruiz and hale")
    assert asked.startswith("No earlier meeting with Ana Ruiz/Hale")


def test_after_something_else_or_later_it_is_a_new_batch(demo: Talk) -> None:
    demo.say(LINES)
    demo.later(days=1)
    assert demo.say("0:10 okafor into the net\n0:30 tom missed the return").startswith("Rallies: 2")


def test_lines_of_another_pair_by_the_line_above_them(demo: Talk) -> None:
    demo.say("video vs ruiz/hale:\n0:42 hale missed the return\n1:15 lost it, my dink popped up")
    row = video_of(demo)
    assert row.their_pair is not None
    assert set(row.their_pair.players) == {demo.player("Ana Ruiz"), demo.player("Ben Hale")}


def test_only_noise_is_said_kept_and_undone(demo: Talk) -> None:
    reply = demo.say("0:42 camera wobbles\n1:15 water")
    assert reply.startswith("No rally in these 2 lines")
    assert "1:15 water" in demo.notes()[0].text
    demo.say("undo")
    assert all("1:15 water" not in note.text for note in demo.notes())


def test_two_hundred_lines_of_which_half_are_noise(demo: Talk) -> None:
    told = ["we won it", "they won it", "our point", "their point", "okafor netted it"]
    lines = [
        f"{n // 60}:{n % 60:02d} {told[n % 5] if n % 2 else NOISE[n // 2 % len(NOISE)]}"
        for n in range(200)
    ]
    text = "\n".join(lines)[:4096].rsplit("\n", 1)[0]
    rest = lines[text.count("\n") + 1 :]
    started = time.process_time()
    demo.say(text)
    reply = demo.say("\n".join(rest)) if rest else demo.sent[-1]
    assert time.process_time() - started < 20  # a bound on runaway work, not a figure of speed
    assert reply.splitlines()[0].startswith("Rallies: 100,")
    assert len(times_of(demo)) == 100
    kept = "\n".join(note.text for note in demo.notes())
    assert all(line in kept for line in lines[::2])
    assert wrapped(reply.splitlines()) <= MOST_LIST_LINES


def test_a_huge_line_is_kept_and_costs_no_look(demo: Talk) -> None:
    demo.say("0:42 lost it\n1:15 " + "we won and " * 300)
    assert times_of(demo) == [42]
    assert "we won and we won" in demo.notes()[0].text


@settings(max_examples=8, deadline=None)
@given(st.lists(st.sampled_from([one["said"] for one in RALLIES]), min_size=1, max_size=6))
def test_a_batch_stores_what_telling_the_rallies_one_by_one_stores(said: list[str]) -> None:
    told = [line for line in said if rally_told(line, chat=MATCH) is not None]
    batch, single = demo_talk(), demo_talk()
    batch.say(
        "video vs okafor/lindqvist\n" + "\n".join(f"{n}:07 {line}" for n, line in enumerate(told))
    )
    single.say("next: okafor and lindqvist, to 21")
    for line in told:
        single.now = type(single.now)(single.now + 60_000_000)
        single.say(line)
    match = single.context.match
    if told:
        assert match is not None
        assert details_of(batch, video_of(batch).match) == details_of(single, match)
    batch.store.close()
    single.store.close()


def test_the_groups_of_lost_rallies_add_up(demo: Talk) -> None:
    demo.say("\n".join(f"{n}:07 {one['said']}" for n, one in enumerate(RALLIES[:40])))
    shown = demo.sent[-1]
    while any(one.label == "more" for one in demo.buttons):
        shown += "\n" + demo.say("more")
    counts = [
        int(line.split(": ")[1].split(" of ")[0])
        for line in shown.splitlines()
        if line.endswith(" lost.") and " of " in line
    ]
    lost = int(shown.splitlines()[0].split(" won, ")[1].split(" lost")[0])
    assert sum(counts) == lost


@pytest.mark.parametrize(
    ("typed", "at_s"),
    [
        ("0:42", 42),
        ("[1:15]", 75),
        ("1:02:33", 3753),
        ("12.05", 725),
        ("7m30s", 450),
        ("- 2:00", 120),
    ],
)
def test_times_as_they_are_typed(typed: str, at_s: int) -> None:
    found = video_said(f"{typed} lost it\n59:59 won it", MATCH)
    assert found is not None
    assert found.lines[0].at_s == at_s


@given(st.integers(0, 20_000))
def test_a_time_reads_back_as_it_is_shown(at_s: int) -> None:
    found = video_said(f"{clock_words(at_s)} lost it\n0:01 won it", MATCH)
    assert found is not None
    assert found.lines[0].at_s == at_s


@settings(deadline=None)
@given(st.text(max_size=200))
def test_no_text_breaks_the_reader_and_none_of_it_is_lost(text: str) -> None:
    found = video_said(f"0:42 lost it\n{text}\n1:15 won it", MATCH)
    assert found is not None
    kept = " ".join(one.words for one in found.lines)
    assert all(word in kept for word in text.split() if word.isalpha())


def test_an_edited_batch_changes_no_rally(demo: Talk) -> None:
    demo.say(LINES, external_message_id=77)
    stored = demo.stored()
    reply = demo.send(IncomingKind.EDIT, text=LINES + "\n9:00 we won", external_message_id=77)
    assert reply.startswith("I keep a batch as it was sent.")
    assert demo.stored() == stored


def test_rallies_of_a_video_teach_rates_but_no_chance_on_serve(demo: Talk) -> None:
    before = demo.say("how likely do we win")
    demo.say("\n".join(f"{n}:07 we won it" for n in range(30)))
    assert demo.say("how likely do we win") == before


# The review to share.


def test_a_review_for_a_student_has_no_name_of_the_book_and_no_word_of_a_note(demo: Talk) -> None:
    demo.say("okafor: xylophone grip, zanzibar slice")
    demo.say(LINES)
    pages = [demo.say("review for a student")]
    while any(one.label == "more" for one in demo.buttons):
        pages.append(demo.say("more"))
    text = "\n".join(pages).lower()
    with demo.book() as book:
        names = {part for row in book.players() for part in row.name.lower().split()}
        aliases = {"chidi", "ingrid"}
    words = {word.strip(".,!?:;()·“”") for word in text.split()}
    assert not words & (names | aliases)
    assert "xylophone" not in text
    assert "zanzibar" not in text
    assert "camera" not in text
    assert "drill: soft-grip dinks" in text
    assert "cue:" in text


def test_the_shared_review_is_the_same_whatever_notes_and_names_there_are(demo: Talk) -> None:
    demo.say(LINES)
    before = demo.say("share the review")
    player = PlayerId(demo.player("Okafor"))
    with demo.book() as book:
        book.rename(player, "Qwertyson Zug")
        book.add_note("lindqvist hates wobblegong lobs")
    assert demo.say("share the review") == before


@pytest.mark.parametrize("said", ["leaks", "review for a student", "share the review"])
def test_a_review_without_a_match_is_said_kindly(fresh_anywhere: Talk, said: str) -> None:
    assert fresh_anywhere.say(said).startswith("Nothing to review: no rally is logged.")


def test_a_match_told_rally_by_rally_is_reviewed_too(demo: Talk) -> None:
    demo.say("next: okafor and lindqvist, to 11")
    demo.say("tom missed the return")
    demo.now = type(demo.now)(demo.now + 60_000_000)
    demo.say("our point")
    reply = demo.say("leaks")
    assert reply.splitlines()[0] == "Rallies: 2, 1 won, 1 lost."
    assert "1 Missed returns: 1" in reply


def test_rallies_logged_are_listed_by_the_videos_clock(demo: Talk) -> None:
    reply = demo.say("2:00 lost it, my dink popped up\n1:00 lost it, my dink popped up")
    assert "Dinks pop up: 2 (1:00 2:00)" in reply


@pytest.mark.parametrize(
    ("said", "drill"),
    [
        ("how do i practise resets", "Drill: Resets from mid-court into the kitchen, 10 min"),
        (
            "how can we practice the third shot?",
            "Drill: Third drops to the middle, ten in a row, 12 min",
        ),
        ("drills for my serve pls", "Drill: Ten serves in a row to deep middle, 8 min"),
        (
            "how do i get better at dinking",
            "Drill: Cross dinks to the middle, thirty in a row, 10 min",
        ),
        ("return drills", "Drill: Twenty returns past mid-box, in a row, 10 min"),
        ("my return is trash, drill?", "Drill: Twenty returns past mid-box, in a row, 10 min"),
    ],
)
def test_how_to_practise_a_stroke_is_its_drill(demo: Talk, said: str, drill: str) -> None:
    told = demo.say(said).splitlines()
    assert told[0] == drill
    assert any(line.startswith("Cue: ") for line in told)


def test_what_we_have_no_drill_for_is_said_honestly(demo: Talk) -> None:
    assert demo.say("how do i practise my around the post").startswith("I have no drill for that")


@pytest.mark.parametrize(
    "said", ["what should i drill", "how do we beat their drop", "hale drills every volley"]
)
def test_what_asks_for_no_drill_gets_none(demo: Talk, said: str) -> None:
    assert "Cue: " not in demo.say(said)


def test_lost_and_won_count_as_they_are_told_whoever_missed(demo: Talk) -> None:
    """Whom a coach does not coach may be on the other side, or a slip of the name."""
    demo.say("i'm coaching jo and sam")
    assert demo.say("0:42 lost, mira netted third").startswith("Rallies: 1, 0 won, 1 lost.")
