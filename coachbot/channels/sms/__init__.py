"""Text messages over SMPP 3.4. The only room that knows an SMPP library, and only how it writes and reads PDUs.

Two libraries were tried against a server that neither of them wrote. `aiosmpplib` garbles long messages outside the GSM
alphabet, confirms the first parts of a long reply before the last has come, misreads 16-bit references and fails on
status codes that only one vendor knows. The client of `smpplib` blocks a thread and matches no answer to its request,
but its PDUs are right and hand over what came as it came. So the PDUs are `smpplib`'s, the alphabet is `gsm0338`'s, the
numbers are those of `phonenumbers`, and what asyncio makes short is ours: a session, a line that is kept up.
"""

from coachbot.channels.sms.channel import SmsChannel
from coachbot.channels.sms.line import Account
from coachbot.channels.sms.numbers import e164

__all__ = ["Account", "SmsChannel", "e164"]
