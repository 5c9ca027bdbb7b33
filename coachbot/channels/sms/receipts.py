"""Delivery receipts (SMPP 3.4, section 5.2.12 and appendix B): how a message that was taken has fared since."""

import re
from typing import Any

from coachbot.channels.base import Ending
from coachbot.channels.sms.pdus import text

KIND = 0x3C
"""In `esm_class`: the bits that say what a deliver_sm is. A receipt is 0x04; other kinds are no reply either."""

STATES = {2: "DELIVRD", 3: "EXPIRED", 4: "DELETED", 5: "UNDELIV", 8: "REJECTD"}
"""Final states as the parameter `message_state` numbers them (section 5.2.28)."""

ENDINGS = {
    "DELIVRD": Ending.SENT,
    "EXPIRED": Ending.NEVER,
    "DELETED": Ending.NEVER,
    "UNDELIV": Ending.NEVER,
    "REJECTD": Ending.NEVER,
}

_ID = re.compile(rb"\bid:([^\s:]{1,65})", re.IGNORECASE)
_STATE = re.compile(rb"\bstat:([A-Z]{5,7})", re.IGNORECASE)


def is_receipt(pdu: Any) -> bool:
    """Whether a deliver_sm is about a message of ours, whatever its words are."""
    return bool((pdu.esm_class or 0) & KIND) or bool(pdu.receipted_message_id)


def read(pdu: Any) -> tuple[tuple[str, ...], Ending] | None:
    """The names that the message may have been given, likeliest first, and how it ended; None while it has not."""
    words = pdu.short_message or pdu.message_payload or b""
    given, said = _ID.search(words), _STATE.search(words)
    name = text(pdu.receipted_message_id) or (given[1].decode("latin-1") if given else "")
    state = STATES.get(pdu.message_state) or (said[1].decode().upper() if said else "")
    return (names(name), ENDINGS[state]) if name and state in ENDINGS else None


def names(name: str) -> tuple[str, ...]:
    """A message's name as the receipt gives it, and as the answer to its submission may: in hexadecimal or decimal."""
    plain = name.lstrip("0") or name
    found = [name, plain, plain.upper(), plain.lower()]
    if plain.isdecimal():
        found += [f"{int(plain):x}", f"{int(plain):X}", f"{int(plain):08X}", f"{int(plain):08x}"]
    if re.fullmatch("[0-9A-Fa-f]{1,16}", plain):
        found += [str(int(plain, 16)), f"{int(plain, 16):010d}"]
    return tuple(dict.fromkeys(found))
