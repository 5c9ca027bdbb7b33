"""Which ids and variables the files in `prompts/` must and may have, beyond the coach's own table of texts."""

from coachbot.coach.texts import TEXTS, Audience

LANGUAGES = ("en", "es", "fr")

SHARED = "shared"
"""The file whose entries every audience's texts may use."""

FILES = (SHARED, *Audience)
"""The files of one language, by name without ending."""

COMMON = frozenset({"child", "emergency", "tone"})
"""Variables that any text of the coach may use."""

POSITIONAL = frozenset({"position", "first", "last", "favourite"})
"""Variables that hold a position: ``$position`` is its name, ``$position-key`` the bare word to choose a wording by."""

SMS = "sms"
"""The attribute that holds a text's shorter form."""

WORDS: dict[str, frozenset[str]] = {
    name: frozenset(variables.split())
    for name, variables in {
        "position": "position",
        "order-item": "number position",
        "mark": "mark",
        "mark-item": "position mark",
        "candy-name": "candy",
        "candy": "candy size",
        "category": "category",
        "none": "",
        "clock": "hour hour12 minute half sharp",
        "day": "weekday day month",
        "fallback": "",
        "picture-mirror": "",
        "picture-left-hand": "",
        "picture-right-hand": "",
        "picture-left-letter": "",
        "picture-right-letter": "",
        "picture-position": "position",
        "picture-order": "",
        "picture-posture": "",
        "picture-posture-back": "",
        "picture-posture-feet": "",
        "picture-posture-adult": "",
        "picture-tongue": "",
        "picture-tongue-here": "",
        "picture-tongue-not": "",
        "picture-sip": "",
        "picture-sip-good": "",
        "picture-sip-much": "",
        "picture-throat": "",
        "picture-throat-candy": "",
        "certificate-title": "",
        "certificate-for": "",
        "certificate-body": "nights",
        "certificate-praise": "",
        "proof-title": "",
        "proof-intro": "",
        "proof-signed": "",
        "proof-pictures": "",
        "proof-audience": "audience",
        "proof-tone": "tone",
        "proof-chat": "length",
        "proof-sms": "length segments",
    }.items()
}
"""The ids of `shared.ftl` that are voice's own, with their variables."""


def allowed(name: str) -> frozenset[str]:
    """The variables that the text `name` may use; none for an id that does not exist."""
    own = WORDS.get(name, frozenset())
    if name in TEXTS:
        own = TEXTS[name].variables | COMMON
    return own | {f"{variable}-key" for variable in own & POSITIONAL}


def wanted(file: str) -> frozenset[str]:
    """The ids that may stand in a file: an audience's own texts, or voice's words and any text in `shared`."""
    if file == SHARED:
        return frozenset(WORDS) | frozenset(TEXTS)
    return frozenset(name for name, text in TEXTS.items() if file in text.audiences)
