"""The post: what came in, what goes out, and the turns in between, the same for every channel."""

from bot.post.batch import BATCH_ROWS, Batch, Turn, run_batch
from bot.post.incoming import Incoming, IncomingKind
from bot.post.office import LEASE_MICROS, Arrival, accept, answer, hand_out
from bot.post.outgoing import NO_LIMITS, Limits, Outgoing, messages_of
from bot.post.reminders import Remind, give_reminders

__all__ = [
    "BATCH_ROWS",
    "LEASE_MICROS",
    "NO_LIMITS",
    "Arrival",
    "Batch",
    "Incoming",
    "IncomingKind",
    "Limits",
    "Outgoing",
    "Remind",
    "Turn",
    "accept",
    "answer",
    "give_reminders",
    "hand_out",
    "messages_of",
    "run_batch",
]
