"""Sharing a book: invitations, roles, leaving, switching, and groups, on both databases."""

from __future__ import annotations

import re

import pytest
from databases import store
from sqlalchemy import select, update
from walled import GROUP, Chatter, chatter

from bot.chat.wording import wording
from scouting_db import tables
from scouting_db.directory import Directory
from scouting_db.directory.invitations import (
    ALPHABET,
    GOOD_FOR_MICROS,
    HANDLE_LENGTH,
    MOST_ATTEMPTS,
    MOST_OPEN,
    WAIT_MICROS,
    Redeemed,
    code_in,
)
from scouting_db.session import Store
from scouting_db.values import Micros, PersonId, Role

WRONG = "ZZZZ9-ZZZZ-ZZZZ-ZZZZ-ZZZ7"


@pytest.fixture
def mira(store: Store) -> Chatter:
    mira = chatter(store, "mira")
    mira.say("/add Okafor")
    mira.say("okafor is lefty")
    return mira


@pytest.fixture
def tom(mira: Chatter) -> Chatter:
    return chatter(mira.store, "tom")


def invited(mira: Chatter, words: str = "/invite editor") -> str:
    return mira.say(words).splitlines()[1]


def joined(mira: Chatter, tom: Chatter, words: str = "/invite editor") -> None:
    assert tom.say(invited(mira, words)).startswith("You're in")


@pytest.mark.parametrize(
    ("words", "role"),
    [
        ("invite tom as editor", "editor"),
        ("share the book with my coach", "reader"),
        ("/invite", "reader"),
        ("/invite editor", "editor"),
        ("share my notes with my partner to edit", "editor"),
        ("invite kay as reader", "reader"),
        ("give tom access to my book", "reader"),
    ],
)
def test_an_invitation_is_asked_for_in_words(mira: Chatter, words: str, role: str) -> None:
    text = mira.say(words)
    assert text.startswith(wording(f"share.invitation_{role}"))
    assert code_in(text.splitlines()[1]) is not None


@pytest.mark.parametrize("form", ["{}", "/join {}", "/start {}", "  {} \n"])
def test_whoever_sends_the_code_is_in(mira: Chatter, tom: Chatter, form: str) -> None:
    text = tom.say(form.format(invited(mira)))
    assert text == f"You're in: Mira's book.\n{wording('share.as_editor')}"
    assert "Okafor" in tom.say("/players")
    assert tom.say("okafor is tall").startswith("Noted.")
    assert ("height", "tall", False) in mira.claims("Okafor")


def test_a_code_read_aloud_or_typed_without_dashes_works(mira: Chatter, tom: Chatter) -> None:
    code = invited(mira).replace("-", "").lower().replace("0", "o").replace("1", "l")
    assert tom.say(f"/join {code}").startswith("You're in")


def test_the_code_is_a_deep_link_of_the_messenger_too(mira: Chatter) -> None:
    """Bot API, deep linking: ?start= takes A-Z, a-z, 0-9, _ and -, at most 64 of them."""
    with mira.store.writing() as connection:
        Directory(connection).account("console", "walled", name="StandInBot")
    text = mira.say("/invite")
    code = text.splitlines()[1]
    assert f"https://t.me/StandInBot?start={code}" in text
    assert re.fullmatch(r"[A-Za-z0-9_-]{1,64}", code)


def test_privacy_is_told_in_five_lines(mira: Chatter) -> None:
    for words in ("/privacy", "privacy", "what do you store about me?", "is this private"):
        assert mira.say(words) == wording("privacy.text").strip()
    assert len(wording("privacy.text").strip().splitlines()) == 5


@pytest.mark.parametrize(
    "words", ["internationalizations", "never-like-that-with-them", "6-4-2", "", "ABCDE-FGHI"]
)
def test_words_are_no_code(words: str) -> None:
    assert code_in(words) is None


def test_everyone_starts_with_a_book_of_their_own_and_keeps_it(mira: Chatter, tom: Chatter) -> None:
    tom.say("/add Brandt")
    joined(mira, tom)
    assert "Brandt" not in tom.say("/players")
    assert tom.say("my books").startswith("Your books: 2.")
    assert tom.tap("Tom's book").startswith("Now in Tom's book.")
    assert "Brandt" in tom.say("/players")
    assert tom.say("switch to mira's book").startswith("Now in Mira's book.")


def test_a_code_works_once(mira: Chatter, tom: Chatter) -> None:
    code = invited(mira)
    tom.say(code)
    kim = chatter(mira.store, "kim")
    assert kim.say(code) == wording("share.refused")
    assert "Okafor" not in kim.say("/players")


def test_who_is_in_already_does_not_use_it_up(mira: Chatter, tom: Chatter) -> None:
    code = invited(mira)
    assert mira.say(code).startswith("You're in Mira's book already.")
    assert tom.say(code).startswith("You're in: ")


def test_a_reader_becomes_an_editor_by_an_editors_code_and_never_the_reverse(
    mira: Chatter, tom: Chatter
) -> None:
    joined(mira, tom, "/invite")
    assert tom.say("okafor is tall") == wording("unclear.readers_ask")
    joined(mira, tom)
    assert tom.say("okafor is tall").startswith("Noted.")
    assert tom.say(invited(mira, "/invite")).endswith(wording("share.as_editor"))


def test_a_code_expires(mira: Chatter, tom: Chatter) -> None:
    code = invited(mira)
    tom.now = Micros(mira.now + GOOD_FOR_MICROS)
    assert tom.say(code) == wording("share.refused")


def test_invitations_are_called_back(mira: Chatter, tom: Chatter) -> None:
    code = invited(mira)
    assert mira.tap("cancel invitations") == wording("share.cancelled")
    assert tom.say(code) == wording("share.refused")


def test_an_invitation_falls_with_the_right_of_who_made_it(mira: Chatter, tom: Chatter) -> None:
    joined(mira, tom)
    code = invited(tom)
    mira.say("remove tom from the book")
    assert mira.tap("yes, remove").startswith("Tom is out.")
    assert chatter(mira.store, "kim").say(code) == wording("share.refused")


def test_only_so_many_stay_open(mira: Chatter, tom: Chatter) -> None:
    first = invited(mira)
    mira.now = Micros(mira.now + 1)
    for _ in range(MOST_OPEN):
        invited(mira)
    assert tom.say(first) == wording("share.refused")


def test_only_a_hash_is_kept_and_the_message_that_bore_the_code_is_emptied(mira: Chatter) -> None:
    code = invited(mira)
    secret = code.replace("-", "")[HANDLE_LENGTH:]
    with mira.store.reading() as connection:
        for table in (tables.invitation, tables.outbox, tables.inbox, tables.chat):
            for row in connection.execute(select(table)):
                assert code not in repr(row)
                assert secret not in repr(row)


def test_wrong_codes_make_a_person_wait(mira: Chatter, tom: Chatter) -> None:
    code = invited(mira)
    for _ in range(MOST_ATTEMPTS):
        assert tom.say(WRONG) == wording("share.refused")
    assert tom.say(code) == wording("share.too_many")
    assert chatter(mira.store, "kim").say(code).startswith("You're in")
    again = invited(mira)
    tom.now = Micros(tom.now + WAIT_MICROS)
    assert tom.say(again).startswith("You're in")


def test_wrong_secrets_close_the_invitation_whoever_sends_them(mira: Chatter) -> None:
    code = invited(mira)
    guess = code[:HANDLE_LENGTH] + WRONG[HANDLE_LENGTH:]
    for n in range(MOST_ATTEMPTS):
        assert chatter(mira.store, f"guesser {n}").say(guess) == wording("share.refused")
    assert chatter(mira.store, "tom").say(code) == wording("share.refused")


def test_secrets_are_compared_in_constant_time_even_where_there_is_none(
    mira: Chatter, monkeypatch: pytest.MonkeyPatch
) -> None:
    """hmac.compare_digest is the library's comparison against timing (its documentation)."""
    import hmac

    compared: list[bytes] = []
    real = hmac.compare_digest

    def counted(kept: bytes, typed: bytes) -> bool:
        compared.append(kept)
        return real(kept, typed)

    monkeypatch.setattr("scouting_db.directory.invitations.hmac.compare_digest", counted)
    chatter(mira.store, "tom").say(WRONG)
    chatter(mira.store, "tom").say(invited(mira))
    assert [len(kept) for kept in compared] == [32, 32]


def test_codes_are_drawn_by_the_systems_own_randomness() -> None:
    import inspect
    from secrets import choice

    from scouting_db.directory.invitations import Invitations

    assert inspect.signature(Invitations.invite).parameters["letter"].default is choice
    assert len(set(ALPHABET)) == 32


def test_a_handle_taken_is_drawn_again(mira: Chatter) -> None:
    letters = iter("AAAAA" + "7" * 16 + "AAAAA" + "BBBBB" + "8" * 16)
    book, by = mira.chat_row().book, PersonId(mira_number(mira))
    with mira.store.writing() as connection:
        codes = [
            Directory(connection).invite(
                book, Role.READER, by=by, now=mira.now, letter=lambda _: next(letters)
            )
            for _ in range(2)
        ]
    assert [code[:HANDLE_LENGTH] for code in codes] == ["AAAAA", "BBBBB"]


def test_two_who_use_one_code_at_once_do_not_both_get_in(mira: Chatter) -> None:
    code = code_in(invited(mira))
    assert code is not None
    with mira.store.writing() as connection:
        directory = Directory(connection)
        account = directory.account("console", "walled")
        # Another worker was faster between our look and our use.
        connection.execute(update(tables.invitation).values(used_at=int(mira.now)))
        tom = directory.person(account, "tom", "Tom")
        assert directory.redeem(code, tom, now=mira.now).outcome is Redeemed.REFUSED
        assert directory.memberships(tom) == ()


def test_readers_ask_and_do_not_write(mira: Chatter, tom: Chatter) -> None:
    joined(mira, tom, "/invite")
    before = mira.stored()
    assert "Okafor" in tom.say("where do i dink okafor")
    for words in ("okafor is slow", "/add Hale", "undo", "/invite", "remove mira from the book"):
        assert tom.say(words) in (wording("unclear.readers_ask"), wording("share.editors_only"))
    assert mira.stored() == before


def test_members_are_listed_changed_and_taken_out(mira: Chatter, tom: Chatter) -> None:
    joined(mira, tom, "/invite")
    assert mira.say("who can see my book?").splitlines() == [
        "In this book: 2.",
        "· you: editor",
        "· Tom: reader",
    ]
    mira.tap("Tom")
    assert mira.tap("make editor") == "Tom can write now."
    mira.say("/members")
    mira.tap("Tom")
    mira.tap("remove")
    assert mira.tap("yes, remove").startswith("Tom is out. What they noted stays.")
    assert mira.say("/members").splitlines() == ["In this book: 1.", "· you: editor"]


def test_a_renamed_user_stays_the_same_member(mira: Chatter, tom: Chatter) -> None:
    joined(mira, tom, "/invite")
    tom.name = "Mira"
    assert tom.say("okafor is slow") == wording("unclear.readers_ask")
    assert "· Mira: reader" in mira.say("/members")


def test_somebody_else_under_a_members_name_gets_nothing(mira: Chatter, tom: Chatter) -> None:
    joined(mira, tom)
    kim = chatter(mira.store, "kim")
    kim.name = "Tom"
    assert "Okafor" not in kim.say("/players")


def test_the_last_editor_cannot_lock_everybody_out(mira: Chatter, tom: Chatter) -> None:
    joined(mira, tom, "/invite")
    assert mira.say("/leave") == wording("share.last_editor")
    assert mira.press("1:book:leave") == wording("share.last_editor")
    mine = mira_number(mira)
    for act in ("really", "reader"):
        assert mira.press(f"1:mem:{act}:{mine}") == wording("share.last_editor")
    mira.say("/members")
    mira.tap("Tom")
    mira.tap("make editor")
    mira.say("/leave")
    assert mira.tap("leave this book") == wording("share.left")
    assert "Okafor" not in mira.say("/players")
    assert "Okafor" in tom.say("/players")


def mira_number(mira: Chatter) -> int:
    with mira.store.reading() as connection:
        return int(
            connection.execute(
                select(tables.identity.c.person_id).where(
                    tables.identity.c.external_user_id == "mira"
                )
            ).scalar_one()
        )


def test_who_is_alone_in_a_book_does_not_leave_it(mira: Chatter) -> None:
    assert mira.say("leave the book") == wording("share.alone")


def test_a_member_removed_mid_conversation_is_refused_at_once(mira: Chatter, tom: Chatter) -> None:
    joined(mira, tom)
    tom.say("okafor is tall")
    undo = tom.button("undo").payload
    mira.say("remove tom from the book")
    mira.tap("yes, remove")
    before = mira.stored()
    assert tom.press(undo) == wording("unclear.other_book")
    assert "Okafor" not in tom.say("/players")
    assert mira.stored() == before


def test_they_are_told_in_their_own_chat(mira: Chatter, tom: Chatter) -> None:
    joined(mira, tom)
    mira.say("remove tom from the book")
    mira.tap("yes, remove")
    with mira.store.reading() as connection:
        told = connection.execute(
            select(tables.outbox.c.payload).where(tables.outbox.c.inbox_id.is_(None))
        ).scalars()
        assert [one["text"] for one in told] == [wording("share.taken_out")]


def test_a_chat_that_bears_another_id_than_its_user_is_refused_too(mira: Chatter) -> None:
    tom = chatter(mira.store, "tom")
    tom.chat = "a terminal"
    joined(mira, tom)
    tom.say("okafor is tall")
    undo = tom.button("undo").payload
    mira.say("remove tom from the book")
    mira.tap("yes, remove")
    before = mira.stored()
    assert tom.press(undo) == wording("share.no_longer")
    assert mira.stored() == before


def test_what_they_type_then_goes_to_their_own_book_and_they_are_told(mira: Chatter) -> None:
    tom = chatter(mira.store, "tom")
    tom.chat = "a terminal"
    joined(mira, tom)
    mira.say("remove tom from the book")
    mira.tap("yes, remove")
    assert tom.say("/add Brandt") == f"{wording('share.no_longer')}\n\nAdded Brandt."
    assert "Brandt" not in mira.say("/players")


def test_old_buttons_and_replies_of_another_book_do_nothing(mira: Chatter, tom: Chatter) -> None:
    """Numbers of one book mean something else in another."""
    tom.say("/add Brandt")
    tom.say("brandt is tall")
    undo, number = tom.button("undo").payload, tom.reply_number
    joined(mira, tom)
    before = mira.stored()
    assert tom.press(undo) == wording("unclear.other_book")
    tom.say("delete", reply_to=number)
    assert mira.stored() == before
    tom.say("my books")
    tom.tap("Tom's book")
    assert tom.press(undo).startswith("Taken back")


def group(mira: Chatter, user: str = "mira") -> Chatter:
    return chatter(mira.store, user, group=True)


def test_a_group_has_no_book_until_an_editor_binds_one(mira: Chatter) -> None:
    here = group(mira)
    assert here.say("who covers the middle") == wording("group.no_book")
    assert here.say("okafor is slow") == wording("group.no_book")
    here.say("/bind")
    assert here.tap("the book I use") == wording("group.bound")
    assert "Okafor" in here.say("/players")
    stranger = group(mira, "sam")
    assert "Okafor" in stranger.say("where do i dink okafor")
    assert stranger.say("okafor is slow") == wording("unclear.members_only")


@pytest.mark.parametrize("words", ["/start", "/bind", "use my book here", "bind this book"])
def test_binding_is_asked_for_in_words(mira: Chatter, words: str) -> None:
    assert group(mira).say(words) == wording("group.which")


def test_a_stranger_cannot_bind_somebody_elses_book_or_take_a_group_over(mira: Chatter) -> None:
    here, sam = group(mira), group(mira, "sam")
    here.say("/bind")
    mine = here.button("the book I use").payload
    assert sam.press(mine) == wording("group.none_to_edit")
    here.press(mine)
    for words in ("/bind", "/unbind"):
        sam.say(words)
    for payload in (mine, "1:book:bind:fresh", "1:book:use:1", "1:book:leave"):
        sam.press(payload)
    assert "Okafor" in here.say("/players")
    assert here.say("/unbind") == wording("group.unbound")
    assert sam.say("/players") == wording("group.no_book")


def test_a_reader_binds_nothing(mira: Chatter, tom: Chatter) -> None:
    joined(mira, tom, "/invite")
    here = group(mira, "tom")
    here.say("/bind")
    here.tap("the book I use")
    assert "Okafor" not in here.say("/players")


def test_an_anonymous_admin_binds_nothing(mira: Chatter) -> None:
    hidden = group(mira, GROUP)
    assert hidden.say("/bind") == wording("group.anonymous")
    assert hidden.press("1:book:bind:fresh") == wording("group.anonymous")


def test_an_upgraded_group_keeps_its_book(mira: Chatter) -> None:
    """Bot API: Message.migrate_to_chat_id."""
    here = group(mira)
    here.say("/bind")
    here.tap("the book I use")
    row = here.chat_row()
    with mira.store.writing() as connection:
        Directory(connection).move_chat(row.chat, "-100999")
    here.chat = "-100999"
    assert "Okafor" in here.say("/players")
    sam = group(mira, "sam")
    sam.chat = "-100999"
    assert sam.say("okafor is slow") == wording("unclear.members_only")


def test_codes_and_members_are_no_matter_for_a_group(mira: Chatter) -> None:
    here = group(mira)
    here.say("/bind")
    here.tap("the book I use")
    assert here.say("/invite") == wording("share.in_private")
    assert here.say(invited(mira)) == wording("share.join_in_private")
    assert group(mira, "sam").say("/members") == wording("share.members_only")


__all__ = ["store"]
