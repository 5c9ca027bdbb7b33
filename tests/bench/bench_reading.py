"""How well and how fast replies are read, against a plain reader of digits, in one run.

Run: ``python tests/bench/bench_reading.py`` from the top of the repository.
"""

import json
import re
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from coachbot.reading.engine import answer, tally

Record = dict[str, Any]
DATA = Path(__file__).parent.parent / "reading" / "data"
ROUNDS = 5


def baseline(record: Record) -> Record:
    """The plain reader: digits in the order of the night, the first position named as the best, else a note."""
    order, asking, text = record["order"], record["asking"], record["text"]
    reading: Record = {"ratings": {}, "best": None, "note": None, "unclear": False}
    named = re.search("|".join(order), text.lower())
    digits = [int(digit) for digit in re.findall(r"[1-5]", text)]
    if asking == "note":
        return {**reading, "note": text.strip()}
    if asking == "best":
        return {**reading, "best": named.group(), "unclear": False} if named else {**reading, "unclear": True}
    places = order if asking == "all" else [asking]
    if len(digits) != len(places):
        return {**reading, "unclear": True}
    return {**reading, "ratings": dict(zip(places, digits, strict=True))}


def speed(reader: Callable[[Record], Record], records: list[Record]) -> float:
    """Replies a second: the best of some rounds of processor time, after one to warm up."""
    list(map(reader, records))
    times = []
    for _ in range(ROUNDS):
        start = time.process_time()
        list(map(reader, records))
        times.append(time.process_time() - start)
    return len(records) / min(times)


def growth(times: int) -> float:
    """How much longer a reply takes that is `times` as long; linear growth gives about `times`."""
    text = "she left at 4 and looked right up " * 4
    short: Record = {"lang": "en", "order": ["left", "right"], "asking": "note", "text": text}
    return speed(answer, [short] * 50) / speed(answer, [{**short, "text": text * times}] * 50)


def main() -> None:
    for name in ("seen", "other", "held", "exam"):
        records = [
            json.loads(line)
            for path in sorted(DATA.glob(f"{name}.*.jsonl"))
            for line in path.read_text(encoding="utf-8").split("\n")
            if line
        ]
        print(f"{name}: {len(records)} replies")
        for title, reader in (("ours", answer), ("digits in order", baseline)):
            counts = tally([(record, reader(record)) for record in records])
            print(
                f"  {title:16} exact {counts['exact'] / len(records):7.2%}"
                f"   wrong values {counts['wrong'] / counts['values']:7.2%}"
                f"   recorded on unclear {counts['recorded'] / counts['unclear']:7.2%}"
                f"   {speed(reader, records):10,.0f} replies/s"
            )
    print(f"a reply ten times as long takes {growth(10):.1f} times as long")


if __name__ == "__main__":
    main()
