"""Carries it out: the inbox, the heartbeat, the outbox. Thin: what to do is decided in `coach`."""
