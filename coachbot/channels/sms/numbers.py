"""Telephone numbers: E.164 inside, digits with their type outside."""

import phonenumbers
from phonenumbers import NumberParseException, PhoneNumberFormat

INTERNATIONAL, NETWORK_SPECIFIC, UNKNOWN = 1, 3, 0
"""Types of number (SMPP 3.4, 5.2.5)."""

ISDN = 1
"""The numbering plan of E.164 (SMPP 3.4, 5.2.6)."""

LONGEST_SHORT_CODE = 8


def e164(number: str, region: str | None, *, international: bool = False) -> str | None:
    """A number in E.164, ``+15551234567``, or None if it is none that can be called from abroad.

    Args:
        number: as somebody wrote it or a network gave it.
        region: the country (ISO 3166) whose national numbers are understood; None for none.
        international: that a number without a plus sign begins with the country's code.
    """
    digits = number.strip()
    guesses = [(digits, None if international else region), ("+" + digits.lstrip("+"), None)]
    found = [one for one in (_parse(*guess) for guess in guesses) if one is not None]
    for fits in (phonenumbers.is_valid_number, phonenumbers.is_possible_number):
        for one in found:
            if fits(one):
                return phonenumbers.format_number(one, PhoneNumberFormat.E164)
    return None


def typed(number: str) -> tuple[int, int, str] | None:
    """Type, plan and digits of a number to send to or from; None if nothing can be sent there."""
    digits = number.removeprefix("+")
    if not digits.isascii() or not digits.isdecimal():
        return None
    if number.startswith("+"):
        return INTERNATIONAL, ISDN, digits
    return (NETWORK_SPECIFIC, UNKNOWN, digits) if len(digits) <= LONGEST_SHORT_CODE else None


def _parse(number: str, region: str | None) -> phonenumbers.PhoneNumber | None:
    try:
        return phonenumbers.parse(number, region)
    except NumberParseException:
        return None
