"""A troubling reply: the safety text, the alert and the hold in one decision (laws 2, 3 and 8)."""

from datetime import timedelta

from coachbot.coach import evening, lesson
from coachbot.coach.actions import Button, Line, MarkUnread, TakeBack, Urgency
from coachbot.coach.alerts import raise_alert
from coachbot.coach.case import Contact, Question, Role, State
from coachbot.coach.due import bedtime_on, next_free_evening
from coachbot.coach.texts import CONCERNS
from coachbot.coach.turn import Turn, line
from coachbot.programme.zones import local
from coachbot.triage import Assessment, Level

SAFETY_TEXT = {
    "choking": "breathing",
    "breathing": "breathing",
    "colour": "breathing",
    "collapse": "breathing",
    "allergy": "allergy",
    "battery_or_magnet": "object",
    "overdose": "poison",
    "self_harm": "self-harm",
    "danger": "danger",
    "hives": "allergy",
    "forced": "forced",
    "unsafe": "forced",
}
"""Which safety text a category gets; any other gets the text for its level."""

LEVEL_TEXT = {Level.EMERGENCY: "breathing", Level.URGENT: "urgent"}

AT_HOME = ("forced", "unsafe", "danger", "self_harm")
"""Categories in which a parent must not be told that it was the child who wrote."""

WATCHED = ("choking", "breathing", "colour", "choked", "airway", "stuck", "after_choke")
"""Categories after which the family is asked on the next days how the child is, since signs may come late."""

SAFETY = "safety"


def troubled(turn: Turn, contact: Contact, assessment: Assessment, message: int) -> None:
    """Emergency or urgent: safety text first, then the alert, then practice on hold, all in this one decision."""
    stop_practice(turn)
    _tell_family(turn, contact, assessment, message)
    raise_alert(turn, assessment, contact=contact.id, message=message)
    days = turn.case.protocol.watch_days if assessment.category in WATCHED else 0
    if days:
        today = local(turn.now, turn.case.zone).date()
        turn.change(watch=today + timedelta(days=1), watch_until=today + timedelta(days=days))


def concerned(turn: Turn, contact: Contact, assessment: Assessment, message: int) -> None:
    """Concern: a kind answer, practice over for tonight, an alert."""
    category = assessment.category if assessment.category in CONCERNS else "distress"
    tonight = turn.case.open_night is not None or turn.case.lesson_open is not None
    evening.close(turn)
    lesson.put_off(turn)
    over = [line("tonight-over")] if tonight else []
    turn.say(contact.id, line(f"concern-{category}"), *over)
    if tonight:
        turn.say_all(*over, to=[one for one in turn.case.contacts if one.id != contact.id])
    raise_alert(turn, assessment, contact=contact.id, message=message)


def medicine(turn: Turn, contact: Contact, assessment: Assessment, message: int) -> None:
    """A question about a medicine is for pharmacist or prescriber; the clinician hears of it. Practice goes on."""
    turn.say(contact.id, line("medicine"))
    raise_alert(turn, assessment, contact=contact.id, message=message)
    if turn.case.open_night:
        evening.ask(turn, contact)


def stop_practice(turn: Turn) -> None:
    """Put practice on hold: close what is open, and remember where lifting the hold leads back to."""
    turn.act(TakeBack())
    evening.close(turn)
    lesson.put_off(turn)
    if turn.case.state is not State.ON_HOLD:
        turn.change(state=State.ON_HOLD, back_to=turn.case.state, question=None)


def lift(turn: Turn) -> None:
    """Practice may go on where it stopped. The named clinician and the note are the caller's to demand."""
    back = turn.case.back_to or turn.case.running
    turn.change(state=back, back_to=None, watch=None, watch_until=None, question=None, came_back=True)
    if back in (State.LESSON, State.PRACTISING):
        turn.change(next_evening=next_free_evening(turn.case, turn.now))
        turn.say_all(line("hold-lifted", bedtime=turn.case.bedtime))
    else:
        turn.say_all(line("hold-lifted-rest"))


def reply(turn: Turn, contact: Contact, message: int) -> None:
    """Words while on hold that are not themselves troubling: kept for the clinician, answered without any request."""
    turn.act(MarkUnread(message=message))
    turn.say(contact.id, line("hold-reply"))


def watch(turn: Turn) -> None:
    """Ask how the child is on each of the days after a choke, while nobody has lifted the hold."""
    case = turn.case
    if case.watch is None or bedtime_on(case, case.watch) > turn.now:
        return
    following = local(turn.now, case.zone).date() + timedelta(days=1)
    last = case.watch_until is None or following > case.watch_until
    turn.change(watch=None if last else following, question=Question.WATCH)
    day = following - timedelta(days=1)
    buttons = tuple((Button(data=f"watch:{day}:{answer}", label=line(f"button-{answer}")),) for answer in ("yes", "no"))
    turn.say_all(line("watch-ask"), to=case.parents, buttons=buttons, key=f"watch:{day}", urgency=Urgency.PROMPT)


def watch_answer(turn: Turn, contact: Contact, message: int, *, signs: bool) -> None:
    """The family's answer to the watch question: any sign is urgent."""
    turn.change(question=None)
    if signs:
        troubled(turn, contact, Assessment(level=Level.URGENT, category="after_choke"), message)
    else:
        turn.say(contact.id, line("watch-fine"))


def _tell_family(turn: Turn, contact: Contact, assessment: Assessment, message: int) -> None:
    said = safety_line(assessment)
    key = f"{SAFETY}:{message}"
    turn.say(contact.id, said, line("hold"), key=key, urgency=Urgency.SAFETY)
    others = [one for one in turn.case.contacts if one.id != contact.id]
    if contact.role is Role.CHILD:
        first = [] if assessment.category in AT_HOME else [line("safety-child-wrote")]
        parents = [one for one in others if one.role is Role.PARENT]
        turn.say_all(said, *first, line("hold"), to=parents, key=key, urgency=Urgency.SAFETY)
        others = [one for one in others if one.role is Role.CHILD]
    turn.say_all(line("hold"), to=others)


def safety_line(assessment: Assessment) -> Line:
    """The safety text for an assessment at urgent or emergency."""
    name = SAFETY_TEXT.get(assessment.category, LEVEL_TEXT[assessment.level])
    return line(f"safety-{name}")
