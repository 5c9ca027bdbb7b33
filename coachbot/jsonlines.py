"""JSON Lines in, JSON Lines out, in the order given: the frame of the engines that can be called alone.

A line that cannot be answered gives ``{"id": ..., "error": "..."}`` and the rest goes on.
"""

import json
from collections.abc import Callable, Iterable, Iterator
from typing import Any

Record = dict[str, Any]


def run(lines: Iterable[str], answer: Callable[[Record], Record]) -> Iterator[str]:
    """One line out for each line in that is not blank.

    `answer` gets the object of a line and gives what is to stand beside its ``id``; a KeyError, TypeError or
    ValueError that it raises becomes the line's error.
    """
    for line in lines:
        if line.strip():
            yield json.dumps(_answered(line, answer), ensure_ascii=False)


def _answered(line: str, answer: Callable[[Record], Record]) -> Record:
    try:
        record = json.loads(line)
    except (ValueError, RecursionError) as error:
        return {"id": None, "error": f"this line is not JSON ({error}); write one JSON object a line"}
    if not isinstance(record, dict):
        return {"id": None, "error": "this line is not a JSON object; write {...} with the fields by name"}
    id_ = record.get("id")
    try:
        return {"id": id_, **answer(record)}
    except KeyError as error:
        return {"id": id_, "error": f"the field {error.args[0]!r} is missing; add it"}
    except (TypeError, ValueError) as error:
        return {"id": id_, "error": str(error)}


def text_field(record: Record, name: str) -> str:
    """The field `name` of `record`.

    Raises:
        KeyError: it is missing.
        TypeError: it is not text.
    """
    value = record[name]
    if not isinstance(value, str):
        raise TypeError(f"the field {name!r} must be text in quotes, not {json.dumps(value)}")
    return value
