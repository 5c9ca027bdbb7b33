"""Train ``coachbot/triage/second_reader.npz`` on the sentences in ``data/training`` and ``data/development.jsonl``.

The sentences are our own. A training line may hold alternatives, ``(she|he) is (coughing|wheezing)``: a few of the
sentences that it stands for are drawn. Some are drawn again with a slip of the keyboard, or joined to an everyday
reply, as people write. All draws are seeded, so that the same data give the same weights. Nothing in
``data/held_back.jsonl`` is trained on. About two minutes on a core.
"""

import hashlib
import json
import random
import re
import warnings
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import numpy as np
from scipy.sparse import csr_matrix
from sklearn.exceptions import ConvergenceWarning
from sklearn.linear_model import LogisticRegression

from coachbot.triage.assess import unexplained
from coachbot.triage.features import BUCKETS, between, codes, inside, kinship
from coachbot.triage.levels import Level
from coachbot.triage.rulebook import LANGUAGES
from coachbot.triage.signs import signs
from coachbot.triage.words import split

HERE = Path(__file__).parent
DATA = HERE / "data"
TARGET = HERE.parents[1] / "coachbot" / "triage" / "second_reader.npz"
NONE = "none"
DRAWS, DRAWS_NONE = 4, 5
LINE_WEIGHT = 3.0
"""The weight of a line of few alternatives, shared among its sentences; no sentence weighs less than one."""
NONE_WEIGHT = 2.5
DEVELOPMENT_WEIGHT = 3.0
STRENGTH = 10.0
PASSES = 16
ROUGHENED = 0.7
THRESHOLDS = (0.3, 0.3, 0.3, 0.3, 0.2, 0.02, 0.05, 0.08, 0.08)
"""How sure the reader must be of emergency, urgent, concern, medicine; how much surer from one sentence of several; and
where it agrees with a sign of each of these levels that the rules ask about."""
JOINS = {
    "en": (", ", " ", " and ", " but ", ". "),
    "es": (", ", " ", " y ", " pero ", ". "),
    "fr": (", ", " ", " et ", " mais ", ". "),
}
_CHOICE = re.compile(r"\(([^()]*)\)")


class Example(NamedTuple):
    """A labelled sentence."""

    language: str
    text: str
    level: str
    category: str
    weight: float = 1.0


def lines(language: str) -> Iterator[Example]:
    """The lines of a language's training files as written, alternatives and all."""
    level = category = ""
    for file in sorted((DATA / "training" / language).iterdir()):
        for line in file.read_text("utf-8").splitlines():
            if line.startswith("# "):
                _, level, category = line[2:].split()
            elif line.strip():
                yield Example(language, line.strip(), level, category)


def records(name: str) -> list[dict[str, str]]:
    """The labelled replies of a file in ``data``."""
    return [json.loads(line) for line in (DATA / name).read_text("utf-8").splitlines()]


def development() -> list[Example]:
    """The development set as examples."""
    return [
        Example(r["lang"], r["text"], r["level"], r["category"] or NONE, DEVELOPMENT_WEIGHT)
        for r in records("development.jsonl")
    ]


def not_held_back(found: list[Example]) -> list[Example]:
    """The examples without any that is, by chance of the draw, word for word a reply of the sets kept for judging."""
    held = {r["text"] for r in records("held_back.jsonl")}
    return [example for example in found if example.text not in held]


def drawn(pattern: str, number: int, dice: random.Random) -> list[str]:
    """At most `number` of the sentences that `pattern` stands for."""
    found: set[str] = set()
    for _ in range(number * 3):
        sentence = _CHOICE.sub(lambda match: dice.choice(match.group(1).split("|")), pattern)
        found.add(" ".join(sentence.split()))
        if len(found) == number:
            break
    return sorted(found)


def slip(sentence: str, dice: random.Random) -> str:
    """The sentence with two letters swapped, or one left out or doubled, in one word."""
    words = sentence.split()
    long = [n for n, word in enumerate(words) if len(word) > 3]
    if not long:
        return sentence
    n = dice.choice(long)
    at = dice.randrange(1, len(words[n]) - 1)
    before, here, after = words[n][:at], words[n][at], words[n][at + 1 :]
    words[n] = dice.choice((before + after, before + after[:1] + here + after[1:], before + here + here + after))
    return " ".join(words)


def examples(dice: random.Random) -> list[Example]:
    """Everything to train on, but for the development set."""
    found: list[Example] = []
    for language in LANGUAGES:
        for line in lines(language):
            number = DRAWS_NONE if line.level == NONE else DRAWS
            texts = drawn(line.text, number, dice)
            found += [line._replace(text=text, weight=max(1.0, LINE_WEIGHT / len(texts))) for text in texts]
    everyday = {lang: [e.text for e in found if e.level == NONE and e.language == lang] for lang in LANGUAGES}
    return found + [_roughened(e, everyday[e.language], dice) for e in found if dice.random() < ROUGHENED]


def _roughened(example: Example, everyday: list[str], dice: random.Random) -> Example:
    """The sentence with a slip, or beside or between ratings and everyday sentences."""
    if dice.random() < 0.4:
        return example._replace(text=slip(example.text, dice))
    beside = [_ratings(dice) if dice.random() < 0.4 else dice.choice(everyday) for _ in range(dice.randint(1, 2))]
    said = [example.text, *beside]
    dice.shuffle(said)
    join = dice.choice(JOINS[example.language]) if len(said) == 2 else ". "
    return example._replace(text=join.join(said))


def _ratings(dice: random.Random) -> str:
    return " ".join(dice.choices("12345", k=dice.randint(1, 5)))


def seen(example: Example) -> list[str]:
    """The words of an example as the second reader gets them: without what the rules explain."""
    words = split(example.text)
    explained = signs(words, example.language).explained
    return [words.folded[place] for place in unexplained(words, explained)]


def matrix(sentences_: list[list[str]]) -> csr_matrix:
    """One row for each sentence: each of the three groups of features scaled to length one."""
    columns: list[int] = []
    values: list[float] = []
    ends = [0]
    for words in sentences_:
        coded = [codes(word) for word in words]
        for group in ([b for word in words for b in inside(word)], between(coded), kinship(coded)):
            columns += group
            values += [1 / max(len(group), 1) ** 0.5] * len(group)
        ends.append(len(columns))
    rows = csr_matrix((np.array(values, np.float32), columns, ends), shape=(len(sentences_), BUCKETS))
    rows.sum_duplicates()
    return rows


def fit(found: list[Example]) -> LogisticRegression:
    """The linear model of the categories.

    SAGA (Defazio et al. 2014) comes as near in a few passes as L-BFGS in hundreds of steps; it is stopped there, as
    further passes only fit the writers more closely.
    """
    weights = [e.weight * (NONE_WEIGHT if e.level == NONE else 1.0) for e in found]
    model = LogisticRegression(C=STRENGTH, solver="saga", max_iter=PASSES, tol=1e-4, random_state=0)
    return model.fit(matrix([seen(e) for e in found]), [e.category for e in found], sample_weight=weights)


def source_checksum() -> str:
    """A checksum of everything that the weights depend on and that people edit."""
    files = [Path(__file__), *sorted((DATA / "training").rglob("*.txt")), DATA / "development.jsonl"]
    return hashlib.sha256(b"".join(file.read_bytes() for file in files)).hexdigest()


def save(model: LogisticRegression, levels: dict[str, str]) -> None:
    """Write the weights, in eight bits each, with what the reader needs to use them."""
    scale = float(np.abs(model.coef_).max()) / 127
    weights = np.clip(np.round(model.coef_.T / scale), -127, 127).astype(np.int8)
    names = "\n".join(f"{name} {levels[name]}" for name in model.classes_)
    np.savez_compressed(
        TARGET,
        weights=weights,
        start=model.intercept_.astype("<f4"),
        scale=np.array([scale], "<f4"),
        thresholds=np.array(THRESHOLDS, "<f4"),
        categories=np.frombuffer(names.encode(), np.uint8),
        source=np.frombuffer(source_checksum().encode(), np.uint8),
    )


def main() -> None:
    """Train and write."""
    found = not_held_back(examples(random.Random(2026)) + development())
    levels = {e.category: e.level for e in found}
    assert all(level == NONE or level.upper() in Level.__members__ for level in levels.values())
    with warnings.catch_warnings(action="ignore", category=ConvergenceWarning):
        model = fit(found)
    save(model, levels)
    print(f"{len(found)} sentences, {len(levels)} categories, {TARGET.stat().st_size} bytes")


if __name__ == "__main__":
    main()
