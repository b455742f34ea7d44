"""The schema step by step: Alembic's scripts and how they are run."""
