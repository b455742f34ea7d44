"""Statements run by the driver itself: rows, effects and errors as SQLAlchemy's own."""

from __future__ import annotations

import pytest
from databases import NOON, new_team, watched
from sqlalchemy import bindparam, func, insert, select, update
from sqlalchemy.exc import IntegrityError

from scouting_db.prepared import Prepared, run_text
from scouting_db.session import Store, savepoint
from scouting_db.tables import chat, inbox

_SELECT = select(chat).where(chat.c.chat_id == bindparam("chat"))
_UPDATE = (
    update(chat)
    .where(chat.c.chat_id == bindparam("chat"))
    .values(context=bindparam("told"), posted=chat.c.posted + 2)
    .returning(chat.c.posted, chat.c.context, chat.c.is_group)
)
_FILLED = (
    "account_id",
    "update_id",
    "chat_id",
    "kind",
    "payload",
    "received_at",
    "state",
    "attempts",
)


def test_rows_are_those_of_sqlalchemy(store: Store) -> None:
    """Columns of every type that messages use: numbers, text, truth, JSON and nothing at all."""
    team = new_team(store, "Mira")
    statement = Prepared(_SELECT)
    with store.reading() as connection:
        (found,) = statement.rows(connection, {"chat": team.chat})
        expected = connection.execute(_SELECT, {"chat": team.chat}).one()
        assert found._asdict() == expected._asdict()
        assert [type(one) for one in found] == [type(one) for one in expected]
        assert statement.row(connection, {"chat": -1}) is None


def test_what_is_bound_is_stored_as_sqlalchemy_does(store: Store) -> None:
    team = new_team(store, "Mira")
    told = {"said": 'a "quoted" word, ü and \N{TENNIS RACQUET AND BALL}', "n": [1, None, 2.5]}
    with store.writing() as connection:
        found = Prepared(_UPDATE).row(connection, {"chat": team.chat, "told": told})
        assert found is not None
        assert (found.posted, found.context, found.is_group) == (2, told, False)
    with store.reading() as connection:
        stored = connection.execute(select(chat.c.context).where(chat.c.chat_id == team.chat))
        assert stored.scalar_one() == told


def test_a_column_without_a_name_is_read_by_its_place(store: Store) -> None:
    team = new_team(store, "Mira")
    statement = Prepared(select(func.max(chat.c.chat_id), func.count()).select_from(chat))
    with store.reading() as connection:
        found = statement.row(connection, {})
    assert found is not None
    assert (found[0], found[1]) == (team.chat, 1)


def _arrivals(team_account: int, chat_id: int, *updates: int) -> list[dict[str, object]]:
    same = {"account_id": team_account, "chat_id": chat_id, "kind": "text", "payload": {}}
    return [
        {**same, "update_id": one, "received_at": NOON, "state": "open", "attempts": 0}
        for one in updates
    ]


@pytest.mark.parametrize("updates", [(), (1,), (1, 2, 3)])
def test_each_of_many_is_run(store: Store, updates: tuple[int, ...]) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        rows = _arrivals(team.account, team.chat, *updates)
        Prepared(insert(inbox), fills=_FILLED).run_each(connection, rows)
        stored = connection.execute(select(inbox.c.update_id).order_by(inbox.c.update_id)).scalars()
        assert tuple(stored) == updates


def test_a_refused_row_is_an_error_of_sqlalchemy_and_a_savepoint_undoes_it(store: Store) -> None:
    team = new_team(store, "Mira")
    statement = Prepared(insert(inbox), fills=_FILLED)
    with store.writing() as connection:
        statement.run_each(connection, _arrivals(team.account, team.chat, 1))
        with pytest.raises(IntegrityError) as raised, savepoint(connection):
            statement.run_each(connection, _arrivals(team.account, team.chat, 2, 1))
        # What people write is not for the log.
        assert (raised.value.params, raised.value.hide_parameters) == (None, True)
        stored = connection.execute(select(inbox.c.update_id)).scalars()
        assert list(stored) == [1]


def test_what_is_not_given_is_an_error(store: Store) -> None:
    with store.reading() as connection, pytest.raises(KeyError, match="chat"):
        Prepared(_SELECT).rows(connection, {})


def test_a_bound_list_is_refused(store: Store) -> None:
    listed = select(chat).where(chat.c.chat_id.in_(bindparam("chats", expanding=True)))
    with store.reading() as connection, pytest.raises(AssertionError, match="a list is bound"):
        Prepared(listed).rows(connection, {"chats": [1]})


def test_it_is_part_of_the_transaction(store: Store) -> None:
    team = new_team(store, "Mira")

    def rename_and_fail() -> None:
        with store.writing() as connection:
            Prepared(_UPDATE).row(connection, {"chat": team.chat, "told": {"a": 1}})
            raise RuntimeError("on purpose")

    with pytest.raises(RuntimeError):
        rename_and_fail()
    with store.reading() as connection:
        found = Prepared(_SELECT).row(connection, {"chat": team.chat})
        assert found is not None
        assert (found.context, found.posted) == ({}, 0)


def test_who_listens_hears_of_it(store: Store) -> None:
    team = new_team(store, "Mira")
    with watched(store) as seen, store.writing() as connection:
        Prepared(_SELECT).rows(connection, {"chat": team.chat})
        run_text(connection, "SELECT 1")
    assert [one.split()[0] for one, _ in seen] == ["SELECT", "SELECT"]
    assert team.chat in (seen[0][1] if isinstance(seen[0][1], tuple) else seen[0][1].values())
