"""What a deliver_sm that somebody wrote says."""

from datetime import datetime
from typing import Any

from coachbot.channels.base import Incoming, Part
from coachbot.channels.sms.numbers import INTERNATIONAL, e164
from coachbot.channels.sms.pdus import text
from coachbot.channels.sms.segments import decoded, unheaded

NAME = "sms"

HEADED = 0x40
"""In `esm_class`: the words begin with a user data header."""


def incoming(pdu: Any, at: datetime, region: str | None) -> Incoming:
    """A message, or a piece of one. SMPP gives it no name, so it has no `channel_id`."""
    data = pdu.message_payload or pdu.short_message or b""
    part = _sar(pdu)
    if (pdu.esm_class or 0) & HEADED:
        headed, data = unheaded(data)
        part = headed or part
    return Incoming(
        channel=NAME,
        channel_id=None,
        address=sender(pdu, region),
        at=at,
        text=decoded(data, pdu.data_coding),
        part=part,
    )


def sender(pdu: Any, region: str | None) -> str:
    """Who wrote, in E.164 if it is a number, else as the network has it: a short code, a firm's name."""
    address = text(pdu.source_addr)
    return e164(address, region, international=pdu.source_addr_ton == INTERNATIONAL) or address


def _sar(pdu: Any) -> Part | None:
    """The piece that optional parameters tell of (SMPP 3.4, sections 5.3.2.22 to 5.3.2.24)."""
    reference, total, number = pdu.sar_msg_ref_num, pdu.sar_total_segments, pdu.sar_segment_seqnum
    if reference is None or not total or not number or not 1 <= number <= total or total == 1:
        return None
    return Part(reference=reference, total=total, number=number)
