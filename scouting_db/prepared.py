"""Statements of every message, run by the database's driver itself.

A Core statement costs SQLAlchemy 25 to 45 microseconds at each execution, the driver 2 to 5
(measured, SQLAlchemy 2.1, SQLite): with some ten statements a message that is a sixth of what a
message costs. So those are compiled once for each dialect, and their values go straight to the
driver, in the connection's own transaction. Whoever listens to the engine's statements is told of
them, and errors are SQLAlchemy's own (`scouting_db.passing` reads them).
"""

from __future__ import annotations

from collections import namedtuple
from collections.abc import Callable, Mapping, Sequence
from typing import Any, NoReturn

from sqlalchemy import Connection, Dialect, Select, UpdateBase
from sqlalchemy.engine.interfaces import DBAPICursor
from sqlalchemy.exc import DBAPIError
from sqlalchemy.sql.compiler import SQLCompiler

from knowledge.dataclass import dataclass

Values = Mapping[str, Any]
_Statement = Select[*tuple[Any, ...]] | UpdateBase
_Convert = Callable[[Any], Any]


class Prepared:
    """A statement whose text does not depend on its values: no list of any length is bound.

    `fills` are the columns of an INSERT that values are given for.
    """

    def __init__(self, statement: _Statement, *, fills: Sequence[str] | None = None) -> None:
        self._statement = statement
        self._fills = fills
        self._compiled: dict[str, _Compiled] = {}

    def rows(self, connection: Connection, values: Values) -> list[Any]:
        """Its rows, as named tuples."""
        compiled = self._of(connection)
        found = _run(connection, compiled.text, compiled.bound(values)).fetchall()
        return list(map(compiled.row, found))

    def row(self, connection: Connection, values: Values) -> Any | None:
        """Its first row; None without one."""
        found = self.rows(connection, values)
        return found[0] if found else None

    def run(self, connection: Connection, values: Values) -> None:
        """For one that gives no rows."""
        compiled = self._of(connection)
        _run(connection, compiled.text, compiled.bound(values))

    def run_each(self, connection: Connection, many: Sequence[Values]) -> None:
        """Once for each of the values; nothing without any."""
        compiled = self._of(connection)
        if len(many) == 1:
            _run(connection, compiled.text, compiled.bound(many[0]))
        elif many:
            _run(connection, compiled.text, [*map(compiled.bound, many)], many=True)

    def _of(self, connection: Connection) -> _Compiled:
        dialect = connection.dialect
        found = self._compiled.get(dialect.name)
        if found is None:
            found = _compile(self._statement, dialect, self._fills)
            self._compiled[dialect.name] = found
        return found


def run_text(connection: Connection, text: str) -> None:
    """A statement without values or rows."""
    _run(connection, text, ())


@dataclass(frozen=True, slots=True, kw_only=True)
class _Compiled:
    """The text; how values are bound to it, by position or by name; and how a row is read."""

    text: str
    names: tuple[str, ...]
    constants: Values
    binds: Mapping[str, _Convert]
    positional: bool
    row: Callable[[Sequence[Any]], Any]

    def bound(self, values: Values) -> tuple[Any, ...] | dict[str, Any]:
        """KeyError where a value is missing."""
        given = {**self.constants, **values}
        for name, convert in self.binds.items():
            given[name] = convert(given[name])
        if self.positional:
            return tuple([given[name] for name in self.names])
        return {name: given[name] for name in self.names}


def _compile(statement: _Statement, dialect: Dialect, fills: Sequence[str] | None) -> _Compiled:
    keys = None if fills is None else list(fills)
    compiled = statement.compile(dialect=dialect, column_keys=keys)
    assert isinstance(compiled, SQLCompiler), "a statement of tables"
    binds = {}
    constants = {}
    for name, parameter in compiled.binds.items():
        assert not parameter.expanding, f"{name}: a list is bound"
        convert = parameter.type.dialect_impl(dialect).bind_processor(dialect)
        if convert is not None:
            binds[name] = convert
        if not parameter.required:
            constants[name] = parameter.effective_value
    return _Compiled(
        text=str(compiled),
        names=tuple(compiled.positiontup or compiled.binds),
        constants=constants,
        binds=binds,
        positional=bool(compiled.positional),
        row=_reader(statement, dialect),
    )


def _reader(statement: _Statement, dialect: Dialect) -> Callable[[Sequence[Any]], Any]:
    columns = list(statement.exported_columns)
    # A column without a name of its own is read by its place.
    row: Any = namedtuple("Row", [str(one.key) for one in columns], rename=True)  # type: ignore[misc]
    make: Callable[[Sequence[Any]], Any] = row._make
    converts: list[tuple[int, _Convert]] = []
    for n, one in enumerate(columns):
        convert = one.type.dialect_impl(dialect).result_processor(dialect, None)
        if convert is not None:
            converts.append((n, convert))
    if not converts:
        return make

    def read(found: Sequence[Any]) -> Any:
        values = list(found)
        for n, convert in converts:
            values[n] = convert(values[n])
        return make(values)

    return read


def _run(connection: Connection, text: str, values: Any, *, many: bool = False) -> DBAPICursor:
    if not connection.in_transaction():
        connection.begin()
    cursor = connection.connection.cursor()
    for look in connection.dispatch.before_cursor_execute:
        look(connection, cursor, text, values, None, many)
    try:
        if many:
            cursor.executemany(text, values)
        else:
            cursor.execute(text, values)
    except connection.dialect.loaded_dbapi.Error as error:
        _raise(connection, cursor, text, error)
    return cursor


def _raise(connection: Connection, cursor: DBAPICursor, text: str, error: Any) -> NoReturn:
    """As `Connection.execute` would: wrapped, and a connection that is gone is given up."""
    dialect = connection.dialect
    pooled = connection.connection
    is_gone = dialect.is_disconnect(error, pooled, cursor)
    wrapped = DBAPIError.instance(
        text,
        None,
        error,
        dialect.loaded_dbapi.Error,
        hide_parameters=True,
        connection_invalidated=is_gone,
        dialect=dialect,
    )
    if is_gone:
        connection.invalidate(error)
    raise wrapped from error
