"""Telegram's Bot API. The only room that knows python-telegram-bot, and of that only its lower floor."""

from coachbot.channels.telegram.channel import TelegramChannel

__all__ = ["TelegramChannel"]
