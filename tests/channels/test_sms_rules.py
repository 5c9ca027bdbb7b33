"""What the SMS channel knows by itself: numbers, segments, receipts' names. No server is needed."""

import pytest

from coachbot.channels.base import Part
from coachbot.channels.sms import Account, SmsChannel
from coachbot.channels.sms.numbers import e164, typed
from coachbot.channels.sms.receipts import names
from coachbot.channels.sms.segments import decoded, segments, unheaded


@pytest.mark.parametrize(
    ("number", "region", "international", "found"),
    [
        ("+1 (415) 555-2671", None, False, "+14155552671"),
        ("14155552671", None, True, "+14155552671"),
        ("(415) 555-2671", "US", False, "+14155552671"),
        ("020 7183 8750", "GB", False, "+442071838750"),
        ("442071838750", "GB", False, "+442071838750"),
        ("442071838750", None, False, "+442071838750"),
        ("5512345678", "MX", False, "+525512345678"),
        ("12345", None, False, None),
        ("CLINIC", "US", False, None),
        ("", "US", False, None),
    ],
)
def test_numbers_are_brought_to_one_form(
    number: str, region: str | None, *, international: bool, found: str | None
) -> None:
    """ITU-T E.164, with the country's code; 442071838750 is the worked example of the phonenumbers library."""
    assert e164(number, region, international=international) == found


def test_what_a_clinician_types_is_what_the_phone_will_be_called() -> None:
    """A number typed the national way is known again when a message comes from it."""
    channel = SmsChannel(Account(host="127.0.0.1", port=1, system_id="", password=""), number="70707", region="US")

    assert channel.canonical("(415) 555-2671") == "+14155552671"
    assert channel.canonical("dr. osei") is None


@pytest.mark.parametrize(
    ("number", "found"),
    [
        ("+442071838750", (1, 1, "442071838750")),
        ("70707", (3, 0, "70707")),
        ("442071838750", None),
        ("FIRM", None),
        ("+", None),
        ("٠١٢", None),
    ],
)
def test_a_number_has_the_type_that_networks_route_by(number: str, found: tuple[int, int, str] | None) -> None:
    """SMPP 3.4, sections 5.2.5 and 5.2.6: international of the ISDN plan; a short code is the network's own."""
    assert typed(number) == found


def test_a_long_message_has_the_header_of_the_standard() -> None:
    """TS 23.040 section 9.2.3.24.1: length 5, element 0, length 3, reference, total, number."""
    first, second = segments("a" * 161)
    assert first.data[:3] == second.data[:3] == bytes.fromhex("050003")
    assert (first.data[4:6], second.data[4:6]) == (b"\x02\x01", b"\x02\x02")
    assert first.data[3] == second.data[3]
    assert unheaded(bytes.fromhex("050003cc0201") + b"Hi") == (Part(reference=0xCC, total=2, number=1), b"Hi")


@pytest.mark.parametrize(
    ("header", "part"),
    [
        ("0608041234 0201", Part(reference=0x1234, total=2, number=1)),
        ("0b05040b8423f0 0003cc0301", Part(reference=0xCC, total=3, number=1)),
        ("05000311 0101", None),
        ("05000311 0203", None),
        ("0403020100", None),
        ("ff", None),
    ],
)
def test_a_header_says_which_piece_it_is(header: str, part: Part | None) -> None:
    """Also beside ports; one piece of one is whole, the third of two is none, and what is cut off is nothing."""
    assert unheaded(bytes.fromhex(header))[0] == part


@pytest.mark.parametrize(
    ("data", "coding", "text"),
    [
        ("1b65", 0x00, "€"),
        ("7d", 0x01, "ñ"),
        ("f1", 0x03, "ñ"),
        ("00f1d83dde00", 0x08, "ñ😀"),
        ("00f1", 0x18, "ñ"),
        ("7d", 0x11, "ñ"),
        ("7d", 0xF0, "ñ"),
        ("7d", 0xF5, "[data]"),
        ("7d", 0x15, "[data]"),
    ],
)
def test_words_are_read_in_the_coding_that_they_came_in(data: str, coding: int, text: str) -> None:
    """TS 23.038 sections 4 and 6.2.1 (groups, default alphabet), SMPP 3.4 section 5.2.19."""
    assert decoded(bytes.fromhex(data), coding) == text


def test_a_name_may_come_back_in_another_base() -> None:
    """Some SMSCs answer in hexadecimal and report in decimal, or with zeros in front (common practice, no source)."""
    assert names("0000004097")[0] == "0000004097"
    assert "1001" in names("0000004097")
    assert "4097" in names("1001")
    assert "1A" in names("1a")
    assert names("no-number") == ("no-number", "NO-NUMBER")
    assert names("0")[0] == "0"
