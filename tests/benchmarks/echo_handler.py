"""The yardstick: a bare echo handler with the library's defaults. Arguments: root, token."""

from __future__ import annotations

import sys

from telegram import Update
from telegram.ext import Application, ContextTypes, MessageHandler, filters


async def echo(update: Update, _context: ContextTypes.DEFAULT_TYPE) -> None:
    """Send the text back."""
    if update.message is not None and update.message.text is not None:
        await update.message.reply_text(update.message.text)


def main() -> None:
    """Poll until killed."""
    root, token = sys.argv[1:3]
    application = Application.builder().token(token).base_url(f"{root}/bot").build()
    application.add_handler(MessageHandler(filters.TEXT, echo))
    application.run_polling()


if __name__ == "__main__":
    main()
