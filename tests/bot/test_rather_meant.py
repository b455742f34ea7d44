"""Where the likeliest of alike names was taken, the others are one tap away."""

from __future__ import annotations

from talk import Talk


def labels(talk: Talk) -> list[str]:
    return [one.label for one in talk.buttons]


def test_an_answer_about_the_likeliest_offers_the_others(demo: Talk) -> None:
    told = demo.say("where do i dink anna")
    assert told.startswith("Dink Ruis")
    assert labels(demo)[-2:] == ["meant Ana Ruiz", "meant Ana Ruiz-Peña"]
    assert demo.tap("meant Ana Ruiz").startswith("Dink Ana Ruiz's backhand")
    assert not any(label.startswith("meant") for label in labels(demo))


def test_a_note_about_the_likeliest_moves_by_one_tap(demo: Talk) -> None:
    demo.say("anna lobs a lot")
    assert ("lob", "often", False) in demo.claims("Anna Ruis")
    before = demo.claims("Ana Ruiz")
    demo.tap("meant Ana Ruiz")
    assert demo.claims("Ana Ruiz") == before | {("lob", "often", False)}
    assert ("lob", "often", False) not in demo.claims("Anna Ruis")
    demo.say("undo")
    assert ("lob", "often", False) in demo.claims("Anna Ruis")


def test_what_is_typed_next_is_no_answer_to_it(demo: Talk) -> None:
    demo.say("where do i dink anna")
    assert "Ruiz" not in demo.say("and hale").splitlines()[0]


def test_a_name_spelled_out_offers_nobody_else(demo: Talk) -> None:
    demo.say("where do i dink ana ruiz")
    assert not any(label.startswith("meant") for label in labels(demo))


def test_whoever_is_on_court_is_meant_and_nobody_else_offered(demo: Talk) -> None:
    demo.say("next: anna ruis and hale")
    demo.say("where do i dink anna")
    assert not any(label.startswith("meant") for label in labels(demo))
