"""Decides what becomes of a case. Pure: no I/O, no clock, no random number, no text."""
