"""Fixtures of the channels: a Bot API server that others wrote."""

from peers.telegram_peer import telegram_peer, telegram_server

__all__ = ["telegram_peer", "telegram_server"]
