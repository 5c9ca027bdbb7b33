"""Keeps it: tables, migrations, and the only SQL."""

from coachbot.store.access import Accessed
from coachbot.store.cases import Change, Summary
from coachbot.store.envelopes import Backlog, Body, Claimed, EndedSend, Envelope, Status, Written
from coachbot.store.erasing import Tombstone
from coachbot.store.errors import (
    BadKeyError,
    LawError,
    NoSuchCaseError,
    SchemaError,
    StaleCaseError,
    StoreError,
    UnavailableError,
    UnsealError,
)
from coachbot.store.messages import WHICH, Message
from coachbot.store.notes import Note
from coachbot.store.people import Clinician, ContactRow, Invite, InviteFault, SignIn
from coachbot.store.pieces import Gathered, Longer
from coachbot.store.sealing import new_key
from coachbot.store.sessions import Session
from coachbot.store.store import Store, Work
from coachbot.store.transaction import Transaction

__all__ = [
    "WHICH",
    "Accessed",
    "Backlog",
    "BadKeyError",
    "Body",
    "Change",
    "Claimed",
    "Clinician",
    "ContactRow",
    "EndedSend",
    "Envelope",
    "Gathered",
    "Invite",
    "InviteFault",
    "LawError",
    "Longer",
    "Message",
    "NoSuchCaseError",
    "Note",
    "SchemaError",
    "Session",
    "SignIn",
    "StaleCaseError",
    "Status",
    "Store",
    "StoreError",
    "Summary",
    "Tombstone",
    "Transaction",
    "UnavailableError",
    "UnsealError",
    "Work",
    "Written",
    "new_key",
]
