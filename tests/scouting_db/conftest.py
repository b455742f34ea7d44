"""Every test here may ask for a store: it runs on SQLite and on PostgreSQL."""

from databases import database_url, migrated, store

__all__ = ["database_url", "migrated", "store"]
