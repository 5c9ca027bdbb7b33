"""Triage beside two plain baselines, in one run: a list of words, and TF-IDF with logistic regression.

    python tests/bench/bench_triage.py [LABELLED.jsonl]

The learned baseline is trained on the development set, as triage was tuned on it, and all three are scored on the
replies held back from both. Prints a table and, on the last line, the same as JSON. Speed is in replies per second of
processor time on one core: in a first pass, where every word is new to the caches, and in a second.
"""

import json
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from sklearn.feature_extraction.text import TfidfVectorizer
from sklearn.linear_model import LogisticRegression
from sklearn.pipeline import make_pipeline

from coachbot.triage import Level, assess

DATA = Path(__file__).parents[1] / "triage" / "data"
KEYWORDS = {
    Level.EMERGENCY: "breathe breath choking blue unconscious battery magnet overdose die "
    "respirar ahogando azul pila morir respirer étouffe bleu mourir",
    Level.URGENT: "choked cough wheeze stuck blood fever hives swallowed forced hit "
    "atragantó tos sangre fiebre étouffé toux sang fièvre",
    Level.CONCERN: "cry cried scared refused gag stupid sick lloró miedo niega arcada pleuré peur refuse",
    Level.MEDICINE: "medicine pill tablet dose medicina pastilla dosis médicament pilule comprimé",
}
Record = dict[str, Any]


def records(path: Path) -> list[Record]:
    """The labelled replies of a file."""
    return [json.loads(line) for line in path.read_text("utf-8").splitlines()]


def by_keywords(record: Record) -> str:
    """The worst level of which a word stands in the reply."""
    text = record["text"].lower()
    found = (level for level in sorted(KEYWORDS, reverse=True) if any(word in text for word in KEYWORDS[level].split()))
    return next(found, Level.NONE).word


def by_regression() -> Callable[[Record], str]:
    """TF-IDF of words and pairs with logistic regression, trained on the development set."""
    train = records(DATA / "development.jsonl")
    model = make_pipeline(
        TfidfVectorizer(ngram_range=(1, 2), sublinear_tf=True), LogisticRegression(C=10, max_iter=500)
    )
    model.fit([r["text"] for r in train], [r["level"] for r in train])
    return lambda record: str(model.predict([record["text"]])[0])


def by_triage(record: Record) -> str:
    """Our own."""
    return assess(record["text"], lang=record["lang"], sender=record["sender"]).level.word


def measured(name: str, judge: Callable[[Record], str], replies: list[Record]) -> Record:
    """Speed and shares of one judge over the replies, in percent."""
    for language in ("en", "es", "fr"):
        judge({"text": "ok", "lang": language, "sender": "parent"})
    given, first = _timed(judge, replies)
    _, again = _timed(judge, replies)
    pairs = [(Level[reply["level"].upper()], Level[level.upper()]) for reply, level in zip(replies, given, strict=True)]
    danger = [level for wanted, level in pairs if wanted >= Level.URGENT]
    none = [level for wanted, level in pairs if wanted == Level.NONE]
    return {
        "judge": name,
        "per_second_first": round(len(replies) / first),
        "per_second_again": round(len(replies) / again),
        "exact": _percent([wanted == level for wanted, level in pairs]),
        "danger_found": _percent([level >= Level.URGENT for level in danger]),
        "none_raised": _percent([level > Level.NONE for level in none]),
        "none_raised_to_urgent": _percent([level >= Level.URGENT for level in none]),
    }


def _timed(judge: Callable[[Record], str], replies: list[Record]) -> tuple[list[str], float]:
    """The verdicts, and the processor time that they took in seconds."""
    start = time.process_time()
    given = [judge(reply) for reply in replies]
    return given, time.process_time() - start


def _percent(answers: list[bool]) -> float:
    return round(100 * sum(answers) / len(answers), 1)


def main() -> None:
    """Run the comparison."""
    path = Path(sys.argv[1]) if len(sys.argv) > 1 else DATA / "held_back.jsonl"
    replies = records(path)
    judges = {"keywords": by_keywords, "tf-idf + regression": by_regression(), "triage": by_triage}
    rows = [measured(name, judge, replies) for name, judge in judges.items()]
    print(f"{'judge':<22}" + "".join(f"{column:>24}" for column in list(rows[0])[1:]))
    for row in rows:
        print(f"{row['judge']:<22}" + "".join(f"{value:>24}" for value in list(row.values())[1:]))
    print(json.dumps(rows))


if __name__ == "__main__":
    main()
