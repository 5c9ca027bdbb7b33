"""Alerts: raised once, told up the ladder until somebody takes them on (law 4)."""

from dataclasses import replace
from datetime import timedelta

from coachbot.coach.actions import Button, Line, Urgency
from coachbot.coach.case import Alert, State
from coachbot.coach.turn import Refused, Rows, Turn, line
from coachbot.programme.protocol import Protocol, Step
from coachbot.triage.levels import Assessment, Level

MISSED = "missed"
LESSON = "lesson"
UNREACHABLE = "unreachable"
UNDELIVERED = "undelivered"
STUCK = "stuck"


def raise_alert(turn: Turn, assessment: Assessment, *, contact: int | None = None, message: int | None = None) -> Alert:
    """Add an alert to the case and take the first step of its ladder at once."""
    alert = Alert(
        number=len(turn.case.alerts) + 1,
        level=assessment.level,
        category=assessment.category,
        evidence=assessment.evidence,
        raised=turn.now,
        contact=contact,
        message=message,
        next_step=turn.now,
    )
    turn.change(alerts=(*turn.case.alerts, alert))
    climb(turn)
    return alert


def raise_once(turn: Turn, category: str, *, level: Level = Level.CONCERN, evidence: tuple[str, ...] = ()) -> None:
    """Raise an alert of our own making unless the same stands open."""
    if not any((alert.category, alert.evidence) == (category, evidence) for alert in turn.case.open_alerts):
        raise_alert(turn, Assessment(level=level, category=category, evidence=evidence))


def climb(turn: Turn) -> None:
    """Take every step that is due. Steps that came due while nobody was awake count as one, the latest."""
    for alert in turn.case.open_alerts:
        if _of_another_time(turn, alert):
            _take_step(turn, replace(alert, raised=min(alert.raised, turn.now)))
        elif alert.next_step and alert.next_step <= turn.now:
            _take_step(turn, alert)


def hurry(turn: Turn, number: int) -> None:
    """A step reached nobody: take the next one now, as long as the ladder has another to try."""
    alert = _find(turn, number)
    if alert and alert.open and alert.steps < len(_ladder(turn.case.protocol, alert)):
        _put(turn, replace(alert, next_step=turn.now))


def acknowledge(turn: Turn, number: int, by: str) -> None:
    """Note who took the alert on. It climbs no further."""
    alert = _find(turn, number)
    if alert is None:
        raise Refused("no-such-alert")
    if not alert.open:
        raise Refused("alert-taken-already", by=alert.acknowledged_by or "")
    _put(turn, replace(alert, acknowledged_by=by, acknowledged=turn.now, next_step=None))


def acknowledge_all(turn: Turn, by: str) -> None:
    """Whoever lifts the hold or ends the programme has taken on everything that stands open."""
    for alert in turn.case.open_alerts:
        acknowledge(turn, alert.number, by)


def code(turn: Turn, alert: Alert) -> str:
    """The short name by which people speak of an alert."""
    return f"{turn.case.id}-{alert.number}"


def _take_step(turn: Turn, alert: Alert) -> None:
    ladder = _ladder(turn.case.protocol, alert)
    due = [step for step in ladder if alert.raised + step.after <= turn.now]
    taken = max(len(due), alert.steps + 1)
    step = ladder[min(taken, len(ladder)) - 1]
    if taken < len(ladder):
        following = max(alert.raised + ladder[taken].after, turn.now)
    else:
        following = turn.now + _repeat(turn.case.protocol, alert)
    _put(turn, replace(alert, steps=taken, next_step=following))
    _tell(turn, alert, step, taken)


def _tell(turn: Turn, alert: Alert, step: Step, taken: int) -> None:
    lines = [_words(turn, alert)]
    if taken > 1:
        lines.append(line("alert-again", steps=taken))
    if turn.case.state is State.ON_HOLD:
        lines.append(line("alert-hold"))
    turn.say(
        step.who,
        *lines,
        key=f"alert:{alert.number}:{taken}",
        urgency=Urgency.ALERT,
        buttons=_buttons(turn, alert),
        alert=alert.number,
    )


def _words(turn: Turn, alert: Alert) -> Line:
    own = {
        MISSED: line("alert-missed", count=turn.case.missed_in_a_row, code=code(turn, alert)),
        LESSON: line("alert-lesson", count=turn.case.lesson_missed, code=code(turn, alert)),
        UNREACHABLE: line("alert-unreachable", code=code(turn, alert)),
        UNDELIVERED: line("alert-undelivered", code=code(turn, alert)),
        STUCK: line("alert-stuck", words="".join(alert.evidence), code=code(turn, alert)),
    }
    words = ", ".join(alert.evidence)
    if alert.contact is None and alert.message is not None:
        return line("alert-stranger", level=alert.level.word, words=words, code=code(turn, alert))
    told = line("alert", level=alert.level.word, category=alert.category, words=words, code=code(turn, alert))
    return own.get(alert.category, told)


def _buttons(turn: Turn, alert: Alert) -> Rows:
    names = ["acknowledge", *(["lift"] if turn.case.state is State.ON_HOLD else []), "end"]
    return tuple((Button(data=f"{name}:{alert.number}", label=line(f"button-{name}")),) for name in names)


def _of_another_time(turn: Turn, alert: Alert) -> bool:
    """Whether the clock was set back since the last step: the next would come that much too late."""
    protocol = turn.case.protocol
    longest = max(_repeat(protocol, alert), *(step.after for step in _ladder(protocol, alert)))
    return alert.raised > turn.now or (alert.next_step is not None and alert.next_step > turn.now + longest)


def _ladder(protocol: Protocol, alert: Alert) -> tuple[Step, ...]:
    return protocol.ladder if alert.level >= Level.URGENT else protocol.calm_ladder


def _repeat(protocol: Protocol, alert: Alert) -> timedelta:
    return protocol.repeat_every if alert.level >= Level.URGENT else protocol.calm_repeat_every


def _find(turn: Turn, number: int) -> Alert | None:
    return next((alert for alert in turn.case.alerts if alert.number == number), None)


def _put(turn: Turn, changed: Alert) -> None:
    turn.change(alerts=tuple(changed if alert.number == changed.number else alert for alert in turn.case.alerts))
