"""From the invitation to the first evening. Consent comes before anything else."""

from coachbot.coach.actions import Button, Urgency
from coachbot.coach.case import Contact, Role, State
from coachbot.coach.due import next_free_evening
from coachbot.coach.events import Joined
from coachbot.coach.turn import Turn, line
from coachbot.programme.protocol import Who


def joined(turn: Turn, event: Joined) -> None:
    """A chat was linked: ask an adult for consent, or welcome whoever comes after it."""
    if any(contact.id == event.contact for contact in turn.case.contacts):
        return
    contact = Contact(
        id=event.contact, role=event.role, channel=event.channel, language=event.language, joined=turn.now
    )
    turn.change(contacts=(*turn.case.contacts, contact))
    if turn.case.consent is None:
        ask_consent(turn, contact)
    elif turn.case.state is State.ON_HOLD:
        turn.say(contact.id, line("hold-reply"))
    else:
        turn.say(contact.id, line("welcome-also", bedtime=turn.case.bedtime))


def ask_consent(turn: Turn, contact: Contact, text: str = "consent-ask") -> None:
    """Ask an adult for consent; a child is told to wait for one."""
    if contact.role is Role.CHILD:
        turn.say(contact.id, line("consent-wait"))
        return
    buttons = tuple((Button(data=f"consent:{name}", label=line(f"button-{name}")),) for name in ("agree", "decline"))
    turn.say(contact.id, line(text), buttons=buttons)


def consent(turn: Turn, contact: Contact) -> None:
    """An adult agreed: note who and when, and plan the first evening."""
    first = next_free_evening(turn.case, turn.now)
    turn.change(state=State.LESSON, consent=turn.now, consent_by=contact.id, next_evening=first)
    turn.say_all(line("welcome", bedtime=turn.case.bedtime, nights=turn.case.protocol.nights))


def decline(turn: Turn, contact: Contact) -> None:
    """An adult declined: nothing more is sent, and the clinician hears of it."""
    turn.change(state=State.WITHDRAWN)
    turn.say(contact.id, line("consent-declined"))
    turn.say(Who.ON_CALL, line("news-declined"), urgency=Urgency.NEWS)
