"""Reading a reply for danger: `assess` gives the worst thing said, its kind, and the words that say it."""

from coachbot.triage.assess import assess
from coachbot.triage.levels import Assessment, Level

__all__ = ["Assessment", "Level", "assess"]
