"""Invitation codes: 65 random bits that people can read out and type."""

import re
import secrets

ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567"
"""RFC 4648 base 32: no digit that looks like a letter."""

GROUPS = (4, 4, 5)
"""13 signs of 5 bits each, shown in groups."""

_SIGNS = "[A-Za-z2-7]"
_GROUPED = re.compile("[-\\s]".join(f"({_SIGNS}{{{size}}})" for size in GROUPS))
_STARTED = re.compile(rf"/start\s+({_SIGNS}{{4}})-?({_SIGNS}{{4}})-?({_SIGNS}{{5}})")
_BARE = re.compile(f"({_SIGNS}{{13}})")


def new_code() -> str:
    """A fresh code, for example ``ABCD-EFGH-JKLMN``."""
    return "-".join("".join(secrets.choice(ALPHABET) for _ in range(size)) for size in GROUPS)


def find_code(text: str, *, bare: bool) -> str | None:
    """The code that is the whole of `text`, in the form of `new_code`, or None.

    It may follow ``/start``, as a link brings it. With `bare` it may also come without its dashes; among people who
    are known already that would make codes of long words.
    """
    for form in (_GROUPED, _STARTED, *([_BARE] if bare else [])):
        if match := form.fullmatch(text.strip()):
            signs = "".join(match.groups()).upper()
            return f"{signs[:4]}-{signs[4:8]}-{signs[8:]}"
    return None
