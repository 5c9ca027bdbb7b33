"""What a clinician does to a case, at the desk or in chat. Refusals carry the text that says why."""

from dataclasses import replace
from datetime import timedelta

from coachbot.coach import alerts, evening, hold, wishes
from coachbot.coach.actions import AwaitNote, Forget
from coachbot.coach.case import Night, NoteAsked, State
from coachbot.coach.due import next_free_evening
from coachbot.coach.events import (
    Acknowledged,
    BedtimeSet,
    CandySet,
    ClinicianPressed,
    ClinicianWrote,
    Ended,
    Erased,
    FollowedUp,
    Held,
    HoldLifted,
    NightEntered,
    Paused,
    Resumed,
    TargetSet,
    Told,
)
from coachbot.coach.turn import Refused, Turn, line
from coachbot.programme.zones import instant, zone


def pressed(turn: Turn, event: ClinicianPressed) -> None:
    """A button under an alert: take it on, or begin what needs a note."""
    name, _, number = event.data.partition(":")
    try:
        alert = int(number) if number.isdecimal() else 0
        if name == "acknowledge":
            acknowledged(turn, Acknowledged(by=event.by, alert=alert))
        elif name in ("lift", "end"):
            _ask_note(turn, event.by, name, alert)
        else:
            raise Refused("clinician-help")
    except Refused as refused:
        turn.say(event.by, refused.line)


def wrote(turn: Turn, event: ClinicianWrote) -> None:
    """The note that was asked for. Without words nothing is done, and the note is asked for again."""
    asked = turn.case.note_asked
    try:
        if asked is None or asked.clinician != event.by:
            raise Refused("clinician-help")
        if not event.text.strip():
            turn.act(AwaitNote(by=event.by))
            raise Refused("note-empty")
        turn.change(note_asked=None)
        if asked.what == "lift":
            lifted(turn, HoldLifted(by=event.by, note=event.text))
        else:
            ended(turn, Ended(by=event.by, note=event.text))
    except Refused as refused:
        turn.say(event.by, refused.line)


def acknowledged(turn: Turn, event: Acknowledged) -> None:
    """Take an alert on. What the family wished erased goes once nothing grave stands open."""
    alerts.acknowledge(turn, event.alert, event.by)
    turn.say(event.by, line("alert-taken", by=event.by))
    if turn.case.forget_asked and not turn.case.open_alerts:
        wishes.forget(turn)


def held(turn: Turn, event: Held) -> None:
    """Put practice on hold by a clinician's own judgement."""
    if turn.case.state not in (State.LESSON, State.PRACTISING, State.PAUSED):
        raise Refused("not-running")
    hold.stop_practice(turn)
    turn.say_all(line("hold-by-clinician"))


def lifted(turn: Turn, event: HoldLifted) -> None:
    """Lift the hold. A note is required: it stays in the history with the name."""
    if turn.case.state is not State.ON_HOLD:
        raise Refused("lift-not-held")
    if not event.note.strip():
        raise Refused("note-empty")
    alerts.acknowledge_all(turn, event.by)
    hold.lift(turn)
    turn.say(event.by, line("lift-done", by=event.by))
    if turn.case.forget_asked:
        wishes.forget(turn)


def ended(turn: Turn, event: Ended) -> None:
    """End the programme for good."""
    if turn.case.state in (State.WITHDRAWN, State.FOLLOWED_UP):
        raise Refused("ended-already")
    if not event.note.strip():
        raise Refused("note-empty")
    alerts.acknowledge_all(turn, event.by)
    wishes.withdraw(turn)
    turn.change(state=State.WITHDRAWN, back_to=None, ended_by=event.by, watch=None)
    turn.say_all(line("ended"))
    turn.say(event.by, line("end-done", by=event.by))


def paused(turn: Turn, event: Paused) -> None:
    """Pause on the family's behalf."""
    if turn.case.state not in wishes.ACTIVE:
        raise Refused("not-running")
    wishes.pause(turn, event.until)


def resumed(turn: Turn, event: Resumed) -> None:
    """Go on after a pause."""
    if turn.case.state is not State.PAUSED:
        raise Refused("not-running")
    wishes.resume(turn)
    turn.say_all(line("resumed", bedtime=turn.case.bedtime))


def bedtime_set(turn: Turn, event: BedtimeSet) -> None:
    """Another bedtime, and another zone if the family moved."""
    protocol = turn.case.protocol
    if not protocol.earliest <= event.at <= protocol.latest:
        raise Refused("bedtime-refused", earliest=protocol.earliest, latest=protocol.latest)
    if event.zone:
        turn.change(zone=zone(event.zone).key)
    wishes.set_bedtime(turn, event.at)


def candy_set(turn: Turn, event: CandySet) -> None:
    """Another candy from the next night on; the nights that were keep theirs."""
    protocol = turn.case.protocol
    kept = tuple(protocol.candy(turn_) for turn_ in range(1, turn.case.practised + 1))
    turn.change(protocol=replace(protocol, candies=(*kept, event.candy)))
    turn.say_all(line("candy-changed", candy=event.candy.kind, size=event.candy.size_mm))


def target_set(turn: Turn, event: TargetSet) -> None:
    """Keep how big the real medicine is. It is the clinician's to know: nobody is told."""
    turn.change(target=event.target)


def told(turn: Turn, event: Told) -> None:
    """Pass a clinician's own words to the family."""
    turn.say_all(line("from-clinician", words=event.text))


def night_entered(turn: Turn, event: NightEntered) -> None:
    """Enter a night from a paper sheet."""
    case = turn.case
    if any(night.day == event.day for night in case.nights):
        raise Refused("night-taken", day=event.day)
    if case.complete:
        raise Refused("night-none-left")
    order = case.orders[case.finished_orders]
    if not {swallow.position for swallow in event.swallows} <= set(order):
        raise Refused("night-wrong-positions")
    at = instant(event.day, case.bedtime, case.zone)
    night = Night(
        number=len(case.nights) + 1,
        turn=case.finished_orders + 1,
        day=event.day,
        order=order,
        candy=case.protocol.candy(case.practised + 1),
        prompted=at,
        touched=turn.now,
        recipients=0,
        best=event.best,
        best_asked=True,
        note=event.note,
        note_asked=True,
    )
    for swallow in event.swallows:
        night = night.record(swallow)
    turn.change(nights=(*case.nights, replace(night, status=evening.settled(night))))
    if case.next_evening and case.next_evening <= event.day:
        turn.change(next_evening=max(event.day + timedelta(days=1), next_free_evening(turn.case, turn.now)))


def followed_up(turn: Turn, event: FollowedUp) -> None:
    """Clinician and child have read the ratings together and chosen."""
    if turn.case.state not in (State.FINISHED, State.WITHDRAWN, State.FOLLOWED_UP):
        raise Refused("not-running")
    turn.change(state=State.FOLLOWED_UP, chosen=event.position)


def erased(turn: Turn, event: Erased) -> None:
    """Erase what is kept, at the clinic's hand. After long nobody is told: the number may be somebody else's by now."""
    alerts.acknowledge_all(turn, event.by)
    wishes.withdraw(turn)
    turn.change(state=State.WITHDRAWN, back_to=None)
    if event.told:
        wishes.forget(turn)
    else:
        turn.act(Forget())


def _ask_note(turn: Turn, by: str, what: str, alert: int) -> None:
    if what == "lift" and turn.case.state is not State.ON_HOLD:
        raise Refused("lift-not-held")
    if what == "end" and turn.case.state in (State.WITHDRAWN, State.FOLLOWED_UP):
        raise Refused("ended-already")
    turn.change(note_asked=NoteAsked(clinician=by, what=what, alert=alert))
    turn.act(AwaitNote(by=by))
    turn.say(by, line(f"{what}-ask-note"))
