"""`python -m scouting_db.migrations 0002 "words"`: draft the migration from the models' changes.

For developers: compares the models with a database in memory at the newest revision. Read the
draft before you keep it: CHECK constraints are not compared.
"""

from __future__ import annotations

import sys

from alembic import command
from sqlalchemy import create_engine

from scouting_db.migrations.configuration import configuration


def main(revision: str, message: str) -> None:
    with create_engine("sqlite://").begin() as connection:
        config = configuration(connection)
        command.upgrade(config, "head")
        command.revision(config, message, autogenerate=True, rev_id=revision)


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(sys.argv[1], sys.argv[2])
