"""Facts in, advice out: pure functions of what is known, without database, chat, clock or I/O."""
