"""Fixtures of the channels: a Bot API server and an SMSC that others wrote."""

from peers.smsc_peer import smsc_peer, smsc_server
from peers.telegram_peer import telegram_peer, telegram_server

__all__ = ["smsc_peer", "smsc_server", "telegram_peer", "telegram_server"]
