"""How messages come in and replies go out: the console and the Telegram bot."""
