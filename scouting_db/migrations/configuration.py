"""Alembic's settings, without a file: the scripts are in this package."""

from __future__ import annotations

from alembic.config import Config
from sqlalchemy import Connection

from scouting_db.upgrade import SCRIPTS


def configuration(connection: Connection, scripts: str = SCRIPTS) -> Config:
    """Settings for commands on the connection, whose transaction stays the caller's."""
    config = Config()
    config.set_main_option("script_location", scripts)
    config.set_main_option("path_separator", "os")
    config.attributes["connection"] = connection
    return config
