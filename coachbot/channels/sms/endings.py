"""What an SMSC's status means for the message that it answers (SMPP 3.4, section 5.1.3)."""

from datetime import timedelta

from coachbot.channels.base import Ending, Receipt

OK = 0x00
NOT_BOUND, SYSTEM_ERROR = 0x04, 0x08
WRONG_SENDER, WRONG_NUMBER = 0x0A, 0x0B
WRONG_PASSWORD, WRONG_NAME = 0x0E, 0x0F
QUEUE_FULL, THROTTLED = 0x14, 0x58
TEMPORARY_FAULT = 0x64
"""What we answer when a message cannot be kept now: it comes again."""

LATER = (NOT_BOUND, SYSTEM_ERROR, QUEUE_FULL, THROTTLED)
"""Nothing was taken, and the next try may do."""

REFUSED = (WRONG_PASSWORD, WRONG_NAME)
"""The SMSC does not know us, and will not tomorrow."""

SETTING_WAIT = timedelta(minutes=1)
"""How long to wait when our own number is refused: somebody must set another."""


def ending(status: int) -> Receipt:
    """How a message ended that was answered with this status."""
    if status in LATER:
        return Receipt(ending=Ending.LATER)
    if status == WRONG_SENDER:
        return Receipt(ending=Ending.LATER, wait=SETTING_WAIT)
    return Receipt(ending=Ending.GONE if status == WRONG_NUMBER else Ending.NEVER)
