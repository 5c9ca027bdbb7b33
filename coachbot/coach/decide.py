"""`decide(case, event, now)`: the one way in which a case changes.

Laws of this room: no I/O, no clock, no random number, no text. The same case, event and instant always give the same
decision, so that replaying a case's history gives the case. An event that means nothing in the case's state changes
nothing.
"""

from collections.abc import Callable
from datetime import date, datetime
from typing import Any

from coachbot.coach import alerts, clinician, enrolment, evening, hold, lesson, presses, replies
from coachbot.coach import events as happened
from coachbot.coach.actions import Decision
from coachbot.coach.case import Case, State
from coachbot.coach.due import bedtime_on, evening_day
from coachbot.coach.turn import Turn
from coachbot.triage import Level


def decide(case: Case, event: happened.Event, now: datetime) -> Decision:
    """What becomes of the case, and what is to be done.

    Args:
        case: the case as it was kept last.
        event: what happened.
        now: the instant at which it is decided, aware.

    Raises:
        Refused: if a clinician's event cannot be done; the case stays as it was.
        KeyError: if a family's event names a contact that the case does not have.
    """
    if now.tzinfo is None:
        raise ValueError("now must carry a time zone")
    turn = Turn(case, now)
    _DEEDS[type(event)](turn, event)
    return turn.decision()


def _ticked(turn: Turn, _: happened.Ticked) -> None:
    alerts.climb(turn)
    lesson.close_if_over(turn)
    evening.close_if_over(turn)
    evening.remind(turn)
    hold.watch(turn)
    if (day := evening_day(turn.case)) and bedtime_on(turn.case, day) <= turn.now:
        _begin_evening(turn, day)


def _begin_evening(turn: Turn, day: date) -> None:
    if turn.case.state is State.PAUSED:
        turn.change(state=turn.case.running, paused_until=None, came_back=True)
    evening.close(turn)
    if turn.case.state is State.LESSON:
        lesson.open_lesson(turn, day)
    else:
        evening.open_evening(turn, day)


def _replied(turn: Turn, event: happened.Replied) -> None:
    turn.change_contact(event.contact, reachable=True)
    replies.replied(turn, event)


def _pressed(turn: Turn, event: happened.Pressed) -> None:
    turn.change_contact(event.contact, reachable=True)
    presses.pressed(turn, event)


def _send_ended(turn: Turn, event: happened.SendEnded) -> None:
    kind, _, rest = event.key.partition(":")
    lost = event.outcome in (happened.Outcome.NEVER, happened.Outcome.GONE)
    if event.contact is None:
        if lost and kind == "alert":
            alerts.hurry(turn, int(rest.partition(":")[0]))
        return
    if kind == evening.PROMPT and lost and rest == str(turn.case.nights[-1].day if turn.case.nights else ""):
        evening.undelivered(turn)
    if kind == hold.SAFETY and lost:
        alerts.raise_once(turn, alerts.UNDELIVERED, level=Level.EMERGENCY)
    if event.outcome is happened.Outcome.GONE:
        turn.change_contact(event.contact, reachable=False)
        if turn.case.state is not State.WITHDRAWN:
            alerts.raise_once(turn, alerts.UNREACHABLE)


def _stranger_wrote(turn: Turn, event: happened.StrangerWrote) -> None:
    alerts.raise_alert(turn, event.assessment, message=event.message)


def _stuck(turn: Turn, event: happened.Stuck) -> None:
    alerts.raise_once(turn, alerts.STUCK, level=Level.URGENT, evidence=(str(event.case),))


_DEEDS: dict[type, Callable[[Turn, Any], None]] = {
    happened.Joined: enrolment.joined,
    happened.Replied: _replied,
    happened.Pressed: _pressed,
    happened.Ticked: _ticked,
    happened.SendEnded: _send_ended,
    happened.ClinicianWrote: clinician.wrote,
    happened.ClinicianPressed: clinician.pressed,
    happened.Acknowledged: clinician.acknowledged,
    happened.Held: clinician.held,
    happened.HoldLifted: clinician.lifted,
    happened.Ended: clinician.ended,
    happened.Paused: clinician.paused,
    happened.Resumed: clinician.resumed,
    happened.BedtimeSet: clinician.bedtime_set,
    happened.CandySet: clinician.candy_set,
    happened.TargetSet: clinician.target_set,
    happened.Told: clinician.told,
    happened.NightEntered: clinician.night_entered,
    happened.FollowedUp: clinician.followed_up,
    happened.Erased: clinician.erased,
    happened.StrangerWrote: _stranger_wrote,
    happened.Stuck: _stuck,
}
