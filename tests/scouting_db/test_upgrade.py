"""Migrations: one truth with the models, and a copy of the file before anything is changed."""

from __future__ import annotations

import shutil
import sqlite3
import subprocess
import sys
import threading
from contextlib import closing
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from databases import new_team
from sqlalchemy import Connection, create_engine, inspect, text
from sqlalchemy.dialects.postgresql import base as pg_dialect
from sqlalchemy.dialects.sqlite import base as sqlite_dialect
from sqlalchemy.schema import CreateIndex

import scouting_db.migrations
import scouting_db.models
from scouting_db.base import Base, tell_postgresql
from scouting_db.migrations.configuration import configuration
from scouting_db.session import Store, StoreError, open_store
from scouting_db.upgrade import REVISION, bring_up_to_date, stored_revision

NEXT = '''
"""A later migration: rebuilds the player table on SQLite, which others refer to."""
import sqlalchemy as sa
from alembic import op

revision = "next"
down_revision = "REVISION"


def upgrade() -> None:
    recreate = "always" if op.get_bind().dialect.name == "sqlite" else "never"
    with op.batch_alter_table("player", recreate=recreate) as batch:
        batch.add_column(sa.Column("club", sa.Text()))
    if BROKEN:
        raise RuntimeError("half way")


def downgrade() -> None:
    pass
'''


def later_scripts(folder: Path, *, broken: bool) -> str:
    """Our migrations and one more, revision "next"."""
    scripts = folder / "scripts"
    shutil.copytree(Path(scouting_db.migrations.__file__).parent, scripts)
    body = NEXT.replace("REVISION", REVISION).replace("BROKEN", str(broken))
    (scripts / "versions" / "next.py").write_text(body, encoding="utf-8")
    return str(scripts)


def constraints(connection: Connection) -> set[tuple[str, str, str]]:
    """Every CHECK constraint as the database has it; Alembic does not compare these."""
    reader = inspect(connection)
    return {
        (table, str(one["name"]), one["sqltext"])
        for table in reader.get_table_names()
        for one in reader.get_check_constraints(table)
    }


def test_models_and_migrations_agree(store: Store) -> None:
    with store.engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, Base.metadata) == []


def test_migrations_check_what_the_models_check(store: Store) -> None:
    """A new word in the vocabulary needs a migration: python -m scouting_db.migrations."""
    with store.engine.connect() as connection:
        migrated = constraints(connection)
    with store.engine.begin() as connection:
        connection.execute(text("DROP TABLE alembic_version"))
        Base.metadata.drop_all(connection)
        Base.metadata.create_all(connection)
        assert constraints(connection) == migrated


def described(store: Store) -> dict[str, dict[str, set[str]]]:
    """What the database itself says of each table: columns, keys, references, indexes, checks."""
    with store.reading() as connection:
        reader = inspect(connection)
        return {
            table: {
                "columns": set(map(repr, reader.get_columns(table))),
                "key": {repr(reader.get_pk_constraint(table))},
                "references": set(map(repr, reader.get_foreign_keys(table))),
                "indexes": {
                    f"{one['name']} {one['column_names']} {one['unique']} "
                    f"{one.get('dialect_options', {}).get('sqlite_where')}"
                    for one in reader.get_indexes(table)
                },
                "unique": set(map(repr, reader.get_unique_constraints(table))),
                "checks": set(map(repr, reader.get_check_constraints(table))),
            }
            for table in reader.get_table_names()
        }


def test_a_store_in_memory_is_what_the_migrations_make(tmp_path: Path) -> None:
    """Made from the models at once, stamped so that a copy in a file can be upgraded later."""
    file = tmp_path / "book.sqlite"
    migrated, made = open_store(f"sqlite:///{file}"), open_store("sqlite://")
    found, wanted = described(made), described(migrated)
    assert found.keys() == wanted.keys()
    for table, said in wanted.items():
        assert {table: found[table]} == {table: said}
    with made.reading() as connection:
        assert stored_revision(connection) == REVISION
    made.close()
    migrated.close()


def test_a_store_in_memory_does_not_import_alembic() -> None:
    code = (
        "import sys; from scouting_db.session import open_store; "
        "open_store('sqlite://').close(); sys.exit('alembic' in sys.modules)"
    )
    root = Path(scouting_db.migrations.__file__).parents[2]
    assert subprocess.run([sys.executable, "-c", code], cwd=root, check=False).returncode == 0


def test_the_constant_is_the_newest_script() -> None:
    with create_engine("sqlite://").connect() as connection:
        scripts = ScriptDirectory.from_config(configuration(connection))
    assert scripts.get_heads() == [REVISION]


def test_a_usual_start_does_not_import_alembic(tmp_path: Path) -> None:
    url = f"sqlite:///{tmp_path / 'book.sqlite'}"
    open_store(url).close()
    code = (
        "import sys; from scouting_db.session import open_store; "
        f"open_store({url!r}).close(); sys.exit('alembic' in sys.modules)"
    )
    root = Path(scouting_db.migrations.__file__).parents[2]
    assert subprocess.run([sys.executable, "-c", code], cwd=root, check=False).returncode == 0


def test_two_that_open_a_fresh_database_at_once_both_succeed(database_url: str) -> None:
    problems: list[BaseException] = []

    def open_it() -> None:
        try:
            open_store(database_url).close()
        except BaseException as error:
            problems.append(error)

    threads = [threading.Thread(target=open_it) for _ in range(4)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert problems == []


def test_a_copy_is_kept_and_the_rows_stay_through_an_upgrade(tmp_path: Path) -> None:
    file = tmp_path / "book.sqlite"
    store = open_store(f"sqlite:///{file}")
    team = new_team(store, "Mira")
    with store.writing() as connection:
        okafor = team.book(connection).add_player("Okafor")
        team.book(connection).add_alias(okafor, "Big O")
    bring_up_to_date(store.engine, newest="next", scripts=later_scripts(tmp_path, broken=False))
    with store.reading() as connection:
        assert stored_revision(connection) == "next"
        assert connection.execute(text("SELECT name, club FROM player")).all() == [("Okafor", None)]
        assert connection.execute(text("SELECT words FROM alias")).all() == [("Big O",)]
        assert connection.exec_driver_sql("PRAGMA foreign_keys").scalar() == 1
    store.close()
    with closing(sqlite3.connect(tmp_path / f"book.sqlite.{REVISION}.bak")) as copy:
        assert copy.execute("SELECT version_num FROM alembic_version").fetchall() == [(REVISION,)]
        assert copy.execute("SELECT name FROM player").fetchall() == [("Okafor",)]


def test_an_upgrade_that_fails_changes_nothing(store: Store, tmp_path: Path) -> None:
    team = new_team(store, "Mira")
    with store.writing() as connection:
        team.book(connection).add_player("Okafor")
    scripts = later_scripts(tmp_path, broken=True)
    with pytest.raises(RuntimeError, match="half way"):
        bring_up_to_date(store.engine, newest="next", scripts=scripts)
    with store.reading() as connection:
        assert stored_revision(connection) == REVISION
        assert [row.name for row in team.book(connection).players()] == ["Okafor"]
        assert "club" not in {each["name"] for each in inspect(connection).get_columns("player")}


def test_an_earlier_copy_is_never_written_over(tmp_path: Path) -> None:
    file = tmp_path / "book.sqlite"
    store = open_store(f"sqlite:///{file}")
    scripts = later_scripts(tmp_path, broken=True)
    for _ in range(2):
        with pytest.raises(RuntimeError, match="half way"):
            bring_up_to_date(store.engine, newest="next", scripts=scripts)
    store.close()
    copies = {each.name for each in tmp_path.glob("*.bak")}
    assert copies == {f"book.sqlite.{REVISION}.bak", f"book.sqlite.{REVISION}.2.bak"}


def test_a_newer_database_is_refused(database_url: str) -> None:
    store = open_store(database_url)
    with store.writing() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))
    store.close()
    with pytest.raises(StoreError, match="another version of Seamwise"):
        open_store(database_url)


def test_a_database_of_another_program_is_refused_and_left_alone(database_url: str) -> None:
    store = open_store(database_url)
    with store.writing() as connection:
        for table in ("alembic_version", "reminder"):
            connection.execute(text(f"DROP TABLE {table}"))
    store.close()
    with pytest.raises(StoreError, match="tables that are not Seamwise's"):
        open_store(database_url)


def test_one_dialect_does_not_load_the_other() -> None:
    code = (
        "import sys; from scouting_db.session import open_store; import scouting_db.book;"
        "open_store('sqlite://').close();"
        "sys.exit('sqlalchemy.dialects.postgresql' in sys.modules)"
    )
    root = Path(scouting_db.migrations.__file__).parents[2]
    assert subprocess.run([sys.executable, "-c", code], cwd=root, check=False).returncode == 0


def test_both_databases_are_told_which_rows_an_index_has() -> None:
    """As the migrations write it (0001 and 0006)."""
    tell_postgresql(Base.metadata)
    both = (sqlite_dialect.SQLiteDialect(), pg_dialect.PGDialect())  # type: ignore[no-untyped-call]
    partial = {
        index.name: [
            str(CreateIndex(index).compile(dialect=dialect)).partition(" WHERE ")[2]
            for dialect in both
        ]
        for table in Base.metadata.tables.values()
        for index in table.indexes
        if index.info
    }
    assert partial == {
        "ix_reminder_due": ["claimed_at IS NULL"] * 2,
        "ix_inbox_open": ["state = 'open'"] * 2,
        "ix_outbox_unsent": ["state IN ('waiting', 'sending')"] * 2,
    }
