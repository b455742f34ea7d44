"""`dataclass` as the standard library has it, without compiling methods that are never called.

The library writes six functions as text for each class and compiles them, which for the five
hundred classes here was a quarter of a start (tests/benchmarks/startup.py) and 3 MB. Here classes
share what prints and guards a value, compare and hash by fields fetched in C, and only `__init__`
is written and compiled, when a first value is made. Fields are the library's own, so `replace`,
`fields` and `field` work, and a type checker sees nothing but the library's decorator.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterable
from operator import attrgetter
from reprlib import recursive_repr
from types import MethodType
from typing import TYPE_CHECKING, Any, NoReturn, TypeVar, cast

Made = TypeVar("Made", bound=type[Any])
Field = dataclasses.Field[Any]
Method = Callable[..., Any]


def _dataclass(
    *, slots: bool, frozen: bool = False, kw_only: bool = False, eq: bool = True
) -> Callable[[Made], Made]:
    """A decorator whose options mean what the library's do; `slots` must be true, and fields that
    are an `InitVar` are not known. Methods of the class's own are kept.
    """
    if not slots:
        raise TypeError("slots=True is expected; without slots take the standard library's own")

    def make(cls: Made) -> Made:
        own = frozenset(vars(cls))
        cls.__doc__ = cls.__doc__ or cls.__name__  # or the library works out a signature for it
        library = dataclasses.dataclass(
            init=False, repr=False, eq=False, slots=True, kw_only=kw_only
        )
        made = cast("Made", library(cls))
        for name, method in _methods(made, frozen=frozen, eq=eq).items():
            if name not in own:
                setattr(made, name, method)
        return made

    return make


if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
else:
    dataclass = _dataclass


def _methods(made: type[Any], *, frozen: bool, eq: bool) -> dict[str, object]:
    fields = dataclasses.fields(made)
    methods: dict[str, object] = {
        "__init__": _Unwritten(made, is_frozen=frozen),
        "__repr__": _printed,
    }
    if eq:
        methods["__eq__"] = _equal_in([one for one in fields if one.compare])
        methods["__hash__"] = None
    if frozen:
        methods |= _GUARDS
        if eq:
            methods["__hash__"] = _hash_of([one for one in fields if _is_hashed(one)])
    return methods


def _is_hashed(field: Field) -> bool:
    return field.compare if field.hash is None else field.hash


class _Unwritten:
    """`__init__` of a class until somebody looks at it. Two threads that do so at once both write
    it, to the same end.
    """

    __slots__ = ("_is_frozen", "_made")

    def __init__(self, made: type[Any], *, is_frozen: bool) -> None:
        self._made = made
        self._is_frozen = is_frozen

    def __get__(self, value: object, owner: object = None) -> Method:
        written = _init(self._made, is_frozen=self._is_frozen)
        setattr(self._made, "__init__", written)  # noqa: B010  mypy takes it for a mistake
        found: Method = written if value is None else MethodType(written, value)
        return found


def _init(made: type[Any], *, is_frozen: bool) -> Method:
    """`__init__` of its fields: those by place first, then those by name alone."""
    fields = dataclasses.fields(made)
    known: dict[str, Any] = {"_MADE": _MADE}
    taken = [one for one in fields if one.init]
    by_name = [_parameter(one, known) for one in taken if one.kw_only]
    by_place = [_parameter(one, known) for one in taken if not one.kw_only]
    heads = ", ".join([_SELF, *by_place, *(["*", *by_name] if by_name else [])])
    lines = [_assignment(made, one, known, is_frozen=is_frozen) for one in fields]
    if hasattr(made, "__post_init__"):
        lines.append(f"{_SELF}.__post_init__()")
    body = "\n ".join(filter(None, lines)) or "pass"
    exec(f"def __init__({heads}):\n {body}", known)
    init: Method = known.pop("__init__")
    init.__qualname__ = f"{made.__qualname__}.__init__"
    init.__module__ = made.__module__
    return init


_SELF = "__value__"
"""No field's name."""

_MADE = object()
"""Stands for what a default factory is to make."""


def _parameter(field: Field, known: dict[str, Any]) -> str:
    if field.default is not dataclasses.MISSING:
        known[f"_default_{field.name}"] = field.default
        return f"{field.name}=_default_{field.name}"
    if field.default_factory is not dataclasses.MISSING:
        return f"{field.name}=_MADE"
    return field.name


def _assignment(made: type[Any], field: Field, known: dict[str, Any], *, is_frozen: bool) -> str:
    """The line that sets it; none for a field that nobody gives a value."""
    name, value = field.name, field.name
    if field.default_factory is not dataclasses.MISSING:
        known[f"_make_{name}"] = field.default_factory
        value = f"_make_{name}()"
        if field.init:
            value += f" if {name} is _MADE else {name}"
    elif not field.init:
        if field.default is dataclasses.MISSING:
            return ""
        value = f"_default_{name}"
        known[value] = field.default
    if not is_frozen:
        return f"{_SELF}.{name} = {value}"
    known[f"_set_{name}"] = getattr(made, name).__set__  # past the guard
    return f"_set_{name}({_SELF}, {value})"


def _equal_in(fields: Iterable[Field]) -> Method:
    values = _values(fields)

    def __eq__(self: Any, other: object) -> Any:  # noqa: N807
        if other.__class__ is self.__class__:
            return values(self) == values(other)
        return NotImplemented

    return __eq__


def _hash_of(fields: Iterable[Field]) -> Method:
    values = _values(fields)

    def __hash__(self: Any) -> int:  # noqa: N807
        return hash(values(self))

    return __hash__


def _values(fields: Iterable[Field]) -> Callable[[Any], tuple[Any, ...]]:
    """What reads these of a value, as a tuple."""
    names = [one.name for one in fields]
    if len(names) > 1:
        return attrgetter(*names)
    return lambda value: tuple(getattr(value, name) for name in names)


@recursive_repr()
def _printed(self: Any) -> str:
    shown = (
        f"{one.name}={getattr(self, one.name)!r}" for one in dataclasses.fields(self) if one.repr
    )
    return f"{self.__class__.__qualname__}({', '.join(shown)})"


def _refuse_to_set(_self: Any, name: str, _value: object) -> NoReturn:
    raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")


def _refuse_to_delete(_self: Any, name: str) -> NoReturn:
    raise dataclasses.FrozenInstanceError(f"cannot delete field {name!r}")


def _state(self: Any) -> list[Any]:
    return [getattr(self, one.name) for one in dataclasses.fields(self)]


def _set_state(self: Any, state: list[Any]) -> None:
    for one, value in zip(dataclasses.fields(self), state, strict=True):
        object.__setattr__(self, one.name, value)


_GUARDS: dict[str, object] = {
    "__setattr__": _refuse_to_set,
    "__delattr__": _refuse_to_delete,
    "__getstate__": _state,  # pickled and copied past the guards
    "__setstate__": _set_state,
}
