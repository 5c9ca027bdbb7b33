"""The summary that a clinician gets when a programme has ended: words, picture and paper."""

from coachbot.coach.actions import Line, Say, Urgency, Value
from coachbot.coach.case import Case
from coachbot.coach.finish import first_and_last
from coachbot.insight.favourite import estimate
from coachbot.insight.record import swallows
from coachbot.programme.protocol import Who
from coachbot.service.files import REPORT_PAPER, REPORT_PICTURE


def summary(case: Case, key: str) -> list[Say]:
    """Two messages to the clinician on call: the words with the report as a picture, then the report as a file."""
    paper = Line(id="summary-cautions")
    return [
        Say(to=Who.ON_CALL, lines=tuple(_lines(case)), key=key, urgency=Urgency.NEWS, attachment=REPORT_PICTURE),
        Say(to=Who.ON_CALL, lines=(paper,), key=f"{key}:paper", urgency=Urgency.NEWS, attachment=REPORT_PAPER),
    ]


def _lines(case: Case) -> list[Line]:
    counts = {"practised": case.practised, "nights": case.protocol.nights, "evenings": len(case.nights)}
    lines = [Line(id="summary", args=counts)]
    first, last = first_and_last(case)
    if first and last:
        lines.append(Line(id="summary-favourites", args={"first": first, "last": last}))
    found = estimate(case.protocol.positions, swallows(case))
    if found.favourite:
        percent = round(100 * found.probability[found.favourite])
        args: dict[str, Value] = {"favourite": found.favourite, "percent": percent}
        lines.append(Line(id="summary-clear" if found.clear else "summary-unclear", args=args))
    return lines
