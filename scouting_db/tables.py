"""The models' tables, for Core statements."""

from __future__ import annotations

from sqlalchemy import Table

from scouting_db import models
from scouting_db.base import Base


def _table(model: type[Base]) -> Table:
    table = model.__table__
    assert isinstance(table, Table)
    return table


account = _table(models.Account)
person = _table(models.Person)
identity = _table(models.Identity)
book = _table(models.Book)
chat = _table(models.Chat)
preference = _table(models.Preference)
member = _table(models.Member)
invitation = _table(models.Invitation)
wrong_code = _table(models.WrongCode)
player = _table(models.Player)
alias = _table(models.Alias)
pair = _table(models.Pair)
agreement = _table(models.Agreement)
note = _table(models.Note)
observation = _table(models.Observation)
event = _table(models.Event)
match = _table(models.Match)
entry = _table(models.Entry)
rally = _table(models.Rally)
rally_rate = _table(models.RallyRate)
choice = _table(models.Choice)
plan = _table(models.Plan)
change = _table(models.Change)
reminder = _table(models.Reminder)
inbox = _table(models.Inbox)
outbox = _table(models.Outbox)
