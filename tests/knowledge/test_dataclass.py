"""Our dataclasses behave as the library's do: each is compared with its twin made by the library.

What is expected is what Python's documentation says of `dataclasses`, asked of the library itself.
"""

from __future__ import annotations

import copy
import dataclasses
import gc
import importlib
import inspect
import pickle
import pkgutil
import threading
from collections.abc import Callable, Iterator
from typing import Any

import pytest

import bot
import knowledge
import scouting_db
from knowledge.dataclass import _Unwritten, dataclass

LEFT_OUT = ("bot.__main__", "scouting_db.migrations")
"""What runs when it is imported."""

Class = type[Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Aim:
    """Of every kind of field."""

    where: str
    share: float = 0.5
    seen: list[str] = dataclasses.field(default_factory=list)
    why: str = dataclasses.field(default="", repr=False)
    origin: str = dataclasses.field(default="live", compare=False)
    bulk: str = dataclasses.field(default="", hash=False)

    @property
    def is_known(self) -> bool:
        return bool(self.where)


@dataclass(frozen=True, slots=True, kw_only=True)
class HighAim(Aim):
    height_m: float
    share: float = 0.25


@dataclass(slots=True)
class Count:
    name: str
    n: int = 0
    last: int = dataclasses.field(default=7, init=False)
    names: list[str] = dataclasses.field(default_factory=list, init=False)


@dataclass(frozen=True, slots=True, eq=False)
class Token:
    key: int


@dataclass(frozen=True, slots=True)
class Empty:
    pass


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    part: float

    def __post_init__(self) -> None:
        if not 0 <= self.part <= 1:
            raise ValueError(f"{self.part} is no share; expected 0 to 1")

    def __hash__(self) -> int:
        return 5


OPTIONS: dict[Class, dict[str, bool]] = {
    Aim: {"frozen": True, "kw_only": True},
    HighAim: {"frozen": True, "kw_only": True},
    Count: {},
    Token: {"frozen": True, "eq": False},
    Empty: {"frozen": True},
    Share: {"frozen": True, "kw_only": True},
}


def twin(made: Class) -> Class:
    """The same class, made by the library."""
    options = OPTIONS[made]
    own: dict[str, Any] = {
        "__annotations__": {one.name: one.type for one in dataclasses.fields(made)},
        "__module__": made.__module__,
        "__qualname__": made.__qualname__,
    }
    for one in dataclasses.fields(made):
        given: dict[str, Any] = {
            name: getattr(one, name)
            for name in ("default", "default_factory", "init", "repr", "compare", "hash", "kw_only")
        }
        own[one.name] = dataclasses.field(**given)
    if made is Share:
        own |= {name: getattr(made, name) for name in ("__post_init__", "__hash__")}
    found: Class = dataclasses.dataclass(slots=True, **options)(type(made.__name__, (), own))
    return found


CALLS: list[tuple[Class, tuple[Any, ...], dict[str, Any]]] = [
    (Aim, (), {"where": "middle"}),
    (Aim, (), {"where": "middle", "share": 0.5, "seen": [], "why": "slow", "origin": "video"}),
    (Aim, (), {"where": "line", "bulk": "x", "seen": ["a"]}),
    (Aim, (), {"where": "line", "bulk": "y", "seen": ["a"]}),
    (HighAim, (), {"where": "line", "height_m": 1.5}),
    (HighAim, (), {"where": "line", "height_m": 1.5, "share": 0.75}),
    (Count, ("rallies",), {}),
    (Count, ("rallies", 3), {}),
    (Count, (), {"name": "rallies", "n": 3}),
    (Token, (1,), {}),
    (Empty, (), {}),
    (Share, (), {"part": 1}),
]

WRONG: list[tuple[Class, tuple[Any, ...], dict[str, Any]]] = [
    (Aim, (), {}),
    (Aim, ("middle",), {}),
    (Aim, (), {"where": "middle", "wher": 1}),
    (Count, ("rallies", 3, 4), {}),
    (Count, ("rallies",), {"last": 1}),
    (Empty, (1,), {}),
    (Share, (), {"part": 2}),
]


def outcome(work: Any) -> tuple[str, object]:
    """What it gives, or which error."""
    try:
        return "gives", work()
    except Exception as error:
        return type(error).__name__, str(error).replace("twin.<locals>.", "")


@pytest.mark.parametrize(("made", "by_place", "named"), CALLS)
def test_a_value_is_and_prints_as_the_librarys(
    made: Class, by_place: tuple[Any, ...], named: dict[str, Any]
) -> None:
    ours, theirs = made(*by_place, **named), twin(made)(*by_place, **named)
    for one in dataclasses.fields(made):
        assert getattr(ours, one.name) == getattr(theirs, one.name)
    assert repr(ours) == repr(theirs)
    assert outcome(lambda: hash(ours)) == outcome(lambda: hash(theirs)) or made is Token
    assert dataclasses.asdict(ours) == dataclasses.asdict(theirs)
    assert made.__match_args__ == twin(made).__match_args__
    assert not hasattr(ours, "__dict__")


def test_values_compare_as_the_librarys() -> None:
    twins = {made: twin(made) for made in OPTIONS}
    ours = [made(*by_place, **named) for made, by_place, named in CALLS]
    theirs = [twins[made](*by_place, **named) for made, by_place, named in CALLS]
    found = [[one == other for other in ours] for one in ours]
    assert found == [[one == other for other in theirs] for one in theirs]
    assert {True, False} == {each for row in found for each in row}
    nan = float("nan")
    assert Share.__eq__(Share(part=1), 1) is NotImplemented
    assert (Token(1) == Token(1)) is False
    # As the library's does: the same object inside is equal to itself, even where it is not.
    assert Aim(where="", share=nan) == Aim(where="", share=nan)


@pytest.mark.parametrize(("made", "by_place", "named"), WRONG)
def test_what_is_wrong_is_refused_in_the_librarys_words(
    made: Class, by_place: tuple[Any, ...], named: dict[str, Any]
) -> None:
    kind, told = outcome(lambda: made(*by_place, **named))
    assert kind in {"TypeError", "ValueError"}
    assert (kind, told) == outcome(lambda: twin(made)(*by_place, **named))


def test_a_frozen_value_stays_as_it_is() -> None:
    aim = Aim(where="middle")
    changes: tuple[Callable[[], None], ...] = (
        lambda: setattr(aim, "where", "line"),
        lambda: setattr(aim, "nothing", 1),
        lambda: delattr(aim, "where"),
    )
    for change in changes:
        with pytest.raises(dataclasses.FrozenInstanceError, match=r"field '(where|nothing)'"):
            change()
    assert aim == Aim(where="middle")
    count = Count("rallies")
    count.n = 4
    assert count == Count("rallies", 4)


def test_a_default_factory_makes_one_for_each() -> None:
    assert Aim(where="").seen is not Aim(where="").seen
    assert Count("").names is not Count("").names


def test_values_are_copied_pickled_and_replaced() -> None:
    aim = HighAim(where="line", height_m=1.5, seen=["a"], origin="video")
    for again in (copy.copy(aim), copy.deepcopy(aim), pickle.loads(pickle.dumps(aim))):
        assert again == aim
        assert again.origin == "video"
    count = Count("rallies", 3)
    count.last = 9
    assert pickle.loads(pickle.dumps(count)) == count
    assert dataclasses.replace(aim, share=1.0) == HighAim(
        where="line", height_m=1.5, seen=["a"], share=1.0
    )
    assert aim.share == 0.25


def test_a_value_that_holds_itself_prints() -> None:
    held: list[Any] = []
    aim = Aim(where="", seen=held)
    held.append(aim)
    assert repr(aim).count("Aim") == 1


def test_slots_are_a_must() -> None:
    with pytest.raises(TypeError, match="slots=True is expected"):
        dataclass(slots=False)


def unwritten_yet() -> Class:
    """A class that nobody has made a value of."""

    @dataclass(frozen=True, slots=True, kw_only=True)
    class Fresh:
        a: int
        b: int = 2

    return Fresh


def test_the_first_value_writes_what_makes_it() -> None:
    fresh = unwritten_yet()
    assert isinstance(vars(fresh)["__init__"], _Unwritten)
    assert (fresh(a=1).a, fresh(a=1).b) == (1, 2)
    assert not isinstance(vars(fresh)["__init__"], _Unwritten)
    assert str(inspect.signature(unwritten_yet())) == "(*, a, b=2)"


def test_many_threads_may_make_the_first_at_once() -> None:
    fresh, gate = unwritten_yet(), threading.Barrier(8)
    found: list[Any] = []

    def use() -> None:
        gate.wait()
        found.append(fresh(a=3))

    threads = [threading.Thread(target=use) for _ in range(8)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert found == [fresh(a=3)] * 8


OURS = ("bot.", "knowledge.", "scouting_db.")
"""Other tests of this process may have loaded libraries whose classes look alike."""


def ours() -> Iterator[Class]:
    """Every class of the packages that is made this way."""
    for package in (bot, knowledge, scouting_db):
        for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
            if not module.name.startswith(LEFT_OUT):
                importlib.import_module(module.name)
    gc.unfreeze()  # what a test in this process had loaded for serving is not listed
    for one in gc.get_objects():
        own = one.__dict__ if isinstance(one, type) else {}
        if "__slots__" in own and "__dataclass_fields__" in own and one.__module__.startswith(OURS):
            yield one


def test_every_class_of_ours_takes_its_fields_as_the_library_has_them() -> None:
    met = 0
    for made in ours():
        if made.__init__.__code__.co_filename != "<string>":
            continue  # its own
        parameters = inspect.signature(made).parameters
        taken = [one for one in dataclasses.fields(made) if one.init]
        assert set(parameters) == {one.name for one in taken}, made
        for one in taken:
            kind = parameters[one.name].kind
            assert (kind is inspect.Parameter.KEYWORD_ONLY) == one.kw_only, made
            has_default = (
                one.default is not dataclasses.MISSING
                or one.default_factory is not dataclasses.MISSING
            )
            assert (parameters[one.name].default is not inspect.Parameter.empty) == has_default
        met += 1
    assert met > 400
