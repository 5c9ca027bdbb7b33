"""The reading room: words of families into ratings, the best, a note, a request, causes. Pure."""

from coachbot.reading.causes import Cause, causes
from coachbot.reading.reader import Asking, read
from coachbot.reading.readings import Mark, Reading, Word
from coachbot.reading.requests import Request, Wish, request
from coachbot.reading.wordfiles import LANGUAGES, LexiconError

__all__ = [
    "LANGUAGES",
    "Asking",
    "Cause",
    "LexiconError",
    "Mark",
    "Reading",
    "Request",
    "Wish",
    "Word",
    "causes",
    "read",
    "request",
]
