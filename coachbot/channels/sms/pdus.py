"""PDUs as the library reads them, but for their optional parameters.

The library gives up on a PDU over a parameter that it does not expect there, and reads numbers by the length that they
should have: a family's words would be lost over a parameter that nobody needs.
"""

import struct
from collections.abc import Iterator
from typing import Any

from smpplib import pdu as library
from smpplib import smpp

NUMBERS = {
    0x020C: "sar_msg_ref_num",
    0x020E: "sar_total_segments",
    0x020F: "sar_segment_seqnum",
    0x0427: "message_state",
}
OCTETS = {0x0424: "message_payload", 0x001E: "receipted_message_id"}
"""The optional parameters that mean something to us (SMPP 3.4, section 5.3.2)."""


def parsed(raw: bytes, client: object) -> Any:
    """Read a whole PDU; `client` counts the library's sequence numbers.

    Raises:
        smpplib.exceptions.UnknownCommandError: there is no such command.
        Exception: whatever the library raises over a PDU that is mis-formed.
    """
    pdu = smpp.make_pdu(library.extract_command(raw), client=client)
    pdu.parse_optional_params = lambda data: vars(pdu).update(_optional(data))
    pdu.parse(raw)
    return pdu


def text(value: bytes | str | None) -> str:
    """A C-octet string as text."""
    return (value.decode("latin-1") if isinstance(value, bytes) else value or "").rstrip("\0")


def _optional(data: bytes) -> Iterator[tuple[str, int | bytes]]:
    while len(data) >= 4:  # noqa: PLR2004 - tag and length
        tag, size = struct.unpack_from(">HH", data)
        value, data = data[4 : 4 + size], data[4 + size :]
        if tag in NUMBERS:
            yield NUMBERS[tag], int.from_bytes(value)
        elif tag in OCTETS:
            yield OCTETS[tag], value
