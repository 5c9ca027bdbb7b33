"""What the texts themselves must be: alike in all languages, easy to read, short, safe, kind, and understood back."""

import re
import tomllib
from collections.abc import Iterator
from importlib.resources import files
from itertools import product

import pytest
from fluent.syntax import ast

from coachbot.coach.actions import Line, Value
from coachbot.coach.texts import CONCERNS, SAFETY, TEXTS, TIPS, WORDINGS, Audience, Situation
from coachbot.programme.positions import Position
from coachbot.programme.protocol import CandyKind
from coachbot.reading import Mark, Wish, Word, read, request
from coachbot.reading.causes import Cause
from coachbot.triage import Level, assess
from coachbot.voice.catalogue import Catalogue, Form
from coachbot.voice.gsm import ALPHABET, EXTENSION, segments
from coachbot.voice.proof import SAMPLES, TONES
from coachbot.voice.sources import default_folder, read_language, uses
from coachbot.voice.vocabulary import LANGUAGES, SHARED
from helpers.readability import Counts, counts, ease, grade

PARENT, CHILD, CLINICIAN = Audience.PARENT, Audience.CHILD, Audience.CLINICIAN
FORMS: tuple[Form, ...] = ("chat", "sms")

FAMILIES = list(product(LANGUAGES, (PARENT, CHILD)))

LONGEST_NAME = "Maximiliana-Alexandrina Featherstonehaug"
"""Forty letters, the most that enrolment takes."""

CAPTION, MESSAGE = 1024, 4096
"""Telegram Bot API: the longest caption of a picture and the longest message."""


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    """The project's own texts."""
    return Catalogue.load()


def say(
    catalogue: Catalogue, name: str, language: str, audience: Audience, form: Form = "chat", tone: str = "middle"
) -> str:
    """One text with example values."""
    line = Line(id=name, args={variable: SAMPLES[variable] for variable in TEXTS[name].variables})
    common: dict[str, Value] = {"child": "Sam", "emergency": "112", "tone": tone}
    return catalogue.render(line, language=language, audience=audience, common=common, form=form)


def everything(catalogue: Catalogue, language: str, *audiences: Audience) -> Iterator[tuple[str, str]]:
    """All texts of some audiences, in every form and tone, as (where it comes from, words)."""
    for name, text in TEXTS.items():
        for audience, form, tone in product(audiences, FORMS, TONES):
            if audience in text.audiences:
                words = say(catalogue, name, language, audience, form, tone)
                yield f"{language}/{audience}/{name}/{form}/{tone}", words


@pytest.mark.parametrize("audience", Audience)
def test_a_text_takes_the_same_variables_in_every_language(audience: Audience) -> None:
    """Nothing that matters is said in one language only. The tone may be needed in one and not in another."""
    needed = {}
    for language in LANGUAGES:
        sources = read_language(default_folder(), language, whole=True)
        entries = sources[SHARED].entries | sources[audience].entries
        needed[language] = {
            name: {one.removesuffix("-key") for one in uses(entries[name], entries)} - {"tone"}
            for name, text in TEXTS.items()
            if audience in text.audiences
        }
    assert needed["es"] == needed["en"]
    assert needed["fr"] == needed["en"]


def test_no_text_takes_a_variable_for_nothing() -> None:
    """What the coach is asked to hand over is used, in one wording of a situation or in one audience's version."""
    spare = {("ask-best", "order"), ("unclear-best", "order")}  # the buttons show it
    sources = read_language(default_folder(), "en", whole=True)
    used: dict[str, set[str]] = {}
    for file, source in sources.items():
        for name, entry in source.entries.items():
            entries = sources[SHARED].entries | source.entries
            used.setdefault(re.sub(r"-\d$", "", name), set()).update(uses(entry, entries))
            assert file
    for name, text in TEXTS.items():
        wanted = {(name, variable) for variable in text.variables} - spare
        if not name.startswith("cheer-"):
            assert {variable for _, variable in wanted} <= {
                one.removesuffix("-key") for one in used[re.sub(r"-\d$", "", name)]
            }


def test_english_is_within_the_grade_that_was_set(catalogue: Catalogue) -> None:
    """Parents at sixth grade (the AMA's advice), children at third, text by text, by Flesch-Kincaid."""
    for audience, most in ((PARENT, 6), (CHILD, 3)):
        hard = {
            where: words for where, words in everything(catalogue, "en", audience) if grade(counts(words, "en")) > most
        }
        assert hard == {}


@pytest.mark.parametrize("language", ["es", "fr"])
def test_spanish_and_french_are_as_easy_by_their_own_indexes(catalogue: Catalogue, language: str) -> None:
    """Fernández Huerta, and Kandel and Moles: parents 70 and over, children 80 and over, all together 90 and over.

    70 to 80 is "fairly easy" (sixth grade), 80 to 90 "easy", from 90 "very easy" (bands from memory). A text of fewer
    than a dozen words has too few for an index of its own.
    """
    for audience, least in ((PARENT, 70), (CHILD, 80)):
        found = {where: (words, counts(words, language)) for where, words in everything(catalogue, language, audience)}
        hard = {where: words for where, (words, of) in found.items() if of.words >= 12 and ease(of, language) < least}
        assert hard == {}
        whole = Counts(*map(sum, zip(*(of for _, of in found.values()), strict=True)))
        assert ease(whole, language) >= 90


def nightly(catalogue: Catalogue, language: str, audience: Audience, form: Form, candy: str, tone: str) -> str:
    """The longest prompt of a night: all positions, two-digit nights, the longest name."""
    order = tuple(Position)
    common: dict[str, Value] = {"child": LONGEST_NAME, "emergency": "112", "tone": tone}
    lines = (
        Line(id="night-prompt", args={"night": 60, "nights": 60, "order": order, "candy": candy, "size": 22}),
        Line(id="night-howto-3"),
        Line(id="night-safety"),
        Line(id="ask-swallow", args={"position": Position.LEFT}),
    )
    return "\n\n".join(
        catalogue.render(one, language=language, audience=audience, common=common, form=form) for one in lines
    )


@pytest.mark.parametrize(("language", "audience"), FAMILIES)
def test_the_longest_nightly_prompt_fits(catalogue: Catalogue, language: str, audience: Audience) -> None:
    """Under a picture in Telegram, with room for a cheer before it; in two segments as a text message."""
    cheers = [say(catalogue, name, language, audience) for name in TEXTS if name.startswith("cheer-")]
    late = say(catalogue, "night-late", language, audience)
    for candy, tone in product(CandyKind, TONES):
        chat = nightly(catalogue, language, audience, "chat", candy, tone)
        assert len(chat) + len(late) + max(map(len, cheers)) + len(LONGEST_NAME) + 4 <= CAPTION
        assert segments(nightly(catalogue, language, audience, "sms", candy, tone)) <= 2


@pytest.mark.parametrize(("language", "audience"), FAMILIES)
def test_the_longest_step_of_the_lesson_fits_under_its_picture(
    catalogue: Catalogue, language: str, audience: Audience
) -> None:
    """The first step of an evening comes with a greeting and the safety line before it."""
    steps = [name for name in TEXTS if name.startswith("lesson-")]
    for tone in TONES:
        said = {name: say(catalogue, name, language, audience, tone=tone) for name in (*steps, "night-safety")}
        before = max(len(said["lesson-intro"]), len(said["lesson-again"])) + len(said["night-safety"]) + 4
        assert before + max(map(len, said.values())) + 4 * len(LONGEST_NAME) <= CAPTION


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_button_can_be_read_on_a_small_phone(catalogue: Catalogue, language: str) -> None:
    """A label of more than two dozen letters is cut by some phones (common practice, no source)."""
    for where, words in everything(catalogue, language, *Audience):
        if "/button-" in where:
            assert len(words) <= 24, where


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_question_for_a_rating_takes_one_segment(catalogue: Catalogue, language: str) -> None:
    """Asked five times a night, it must be cheap."""
    for name, audience in product(("ask-swallow", "unclear-swallow", "ask-best", "ask-note"), (PARENT, CHILD)):
        assert segments(say(catalogue, name, language, audience, "sms")) == 1, name


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_text_message_is_in_the_cheap_alphabet_and_short(catalogue: Catalogue, language: str) -> None:
    """No text forces the expensive alphabet. Consent takes what it takes; all else at most three segments."""
    for where, words in everything(catalogue, language, *Audience):
        if "/sms/" in where:
            assert set(words) <= ALPHABET | EXTENSION, where
            assert segments(words) <= (5 if "consent-ask" in where else 3), where


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_message_fits_the_channel(catalogue: Catalogue, language: str) -> None:
    """Far under Telegram's limit, and no text is empty."""
    for where, words in everything(catalogue, language, *Audience):
        assert 0 < len(words.strip()) <= MESSAGE / 4, where


BANNED = {
    "en": """mg ml milligram* dose doses dosage diagnos* patient* disorder* disease* autis* adhd dysphagia cure*
        guarantee* always\\ works every\\ child most\\ children lazy naughty disappoint* asham* should\\ have good\\ boy
        good\\ girl reward* treat treats dessert bribe* he she him her his hers son daughter boy girl""",
    "es": """mg ml miligramo* dosis diagn* paciente* trastorno* enfermedad* autis* tdah disfagia curar garantiza*
        siempre\\ funciona premio* postre* castig* vergüenza flojo floja vago vaga hijo hija chico chica cansado cansada
        contento contenta listo lista listos listas asustado asustada valiente debiste debieron""",
    "fr": """mg ml milligramme* dose doses diagnosti* patient* trouble* maladie* autis* tdah dysphagie guérir garanti*
        marche\\ toujours récompens* dessert* puni* honte paresseu* fils fille garçon fatigué fatiguée content contente
        prêt prête fier fière courageu* aurais\\ dû auriez\\ dû""",
}
"""No dose, no diagnosis, no promise, no shame, no bargain, no guess at whether the child is a boy or a girl.

Whole words; a star stands for any ending.
"""


def banned_in(words: str, language: str) -> str | None:
    """The first word that must not be said, or None."""
    listed = re.findall(r"(?:\\ |\S)+", BANNED[language])
    pattern = "|".join(one.replace("*", r"\w*") for one in listed)
    hit = re.search(rf"(?<!\w)({pattern})(?!\w)", words, re.IGNORECASE)
    return hit and hit[0]


@pytest.mark.parametrize(
    ("language", "words", "hit"),
    [
        ("en", "Take the dose", "dose"),
        ("en", "You should have tried", "should have"),
        ("es", "Un premio", "premio"),
        ("fr", "Le diagnostic", "diagnostic"),
        ("en", "A dozen good sips", None),
    ],
)
def test_the_word_list_finds_what_it_lists(language: str, words: str, hit: str | None) -> None:
    """The check below can fail."""
    assert banned_in(words, language) == hit


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_family_hears_a_word_that_must_not_be_said(catalogue: Catalogue, language: str) -> None:
    """The list is ours, in each language, by whole words."""
    banned = re.compile(rf"(?<!\w)({BANNED[language]})(?!\w)", re.IGNORECASE)
    found = {
        where: hit[0]
        for where, words in everything(catalogue, language, PARENT, CHILD)
        if (hit := banned.search(words))
    }
    assert found == {}


NAMES = {
    "en": "Center Left Right Up Down Sam Ana I Next Tuesday December",
    "es": "Centro Izquierda Derecha Arriba Abajo Sam Ana Siguiente",
    "fr": "Centre Gauche Droite Haut Bas Sam Ana Suivant",
}


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_brand_is_named(catalogue: Catalogue, language: str) -> None:
    """A capital inside a sentence can only be one of our own names: no product's or person's name slips in."""
    inside = re.compile(r"(?<=[^\s.!?:\"«»][ \u00a0])[\"«¿¡]?[A-ZÀ-Ý][a-zà-ÿ]+")
    allowed = set(NAMES[language].split())
    found = {
        where: strange
        for where, words in everything(catalogue, language, PARENT, CHILD)
        if (strange := {hit.strip('"«¿¡') for hit in inside.findall(words)} - allowed)
    }
    assert found == {}


URGENT = ("safety-breathing", "safety-allergy", "safety-object", "safety-poison")

COACHING = {
    "en": r"candy|practice|swallow|sip|night|rate|tap|reply|position",
    "es": r"caramelo|práctica|tragar|sorbo|noche|toque|responda|posición",
    "fr": r"bonbon|pratique|avaler|gorgée|soir|touchez|répondez|position",
}


@pytest.mark.parametrize(("language", "audience"), FAMILIES)
@pytest.mark.parametrize("name", URGENT)
def test_an_emergency_text_begins_with_the_number_and_neither_asks_nor_coaches(
    catalogue: Catalogue, language: str, audience: Audience, name: str
) -> None:
    """First the number, then first aid or the voice on the phone, then nothing (rule drawn from AHA 2025 wording)."""
    words = say(catalogue, name, language, audience)
    assert "112" in words.splitlines()[0]
    assert "?" not in words
    assert not re.search(COACHING[language], words, re.IGNORECASE)
    assert segments(say(catalogue, name, language, audience, "sms")) == 1


@pytest.mark.parametrize("language", LANGUAGES)
def test_an_emergency_text_sends_a_parent_to_their_own_first_aid(catalogue: Catalogue, language: str) -> None:
    """No manoeuvre is taught by chat: guidelines change, and training is hands-on."""
    first_aid = {"en": "first-aid training", "es": "primeros auxilios", "fr": "premiers secours"}[language]
    for name in URGENT:
        assert first_aid in say(catalogue, name, language, PARENT)


@pytest.mark.parametrize(("language", "audience"), FAMILIES)
def test_every_safety_text_names_the_number(catalogue: Catalogue, language: str, audience: Audience) -> None:
    """Whatever happened, the way to help is in the message."""
    for name in SAFETY:
        assert "112" in say(catalogue, f"safety-{name}", language, audience), name


def test_a_parent_is_not_told_that_the_child_spoke_up(catalogue: Catalogue) -> None:
    """What a child wrote about being forced, in danger or hurting itself must not be held against it at home."""
    for language, name in product(LANGUAGES, ("forced", "danger", "self-harm")):
        words = say(catalogue, f"safety-{name}", language, PARENT)
        assert "Sam" not in words


@pytest.mark.parametrize("language", LANGUAGES)
def test_consent_says_all_that_it_must(catalogue: Catalogue, language: str) -> None:
    """Choking, an adult, upright, from four years on, never forced, who reads it, stop and erase, no emergency line."""
    must = {
        "en": "choke|adult|sits up tall|4 or older|forced|clinic's team|STOP|DELETE|see|not an emergency line|112",
        "es": "ahogar|adulto|espalda va recta|4 años|obliga|clínica|BAJA|BORRAR|ver|no es una línea de emergencias|112",
        "fr": "étouffer|adulte|dos bien droit|4 ans|force|clinique|STOP|EFFACER|voir|pas une ligne d'urgence|112",
    }
    words = say(catalogue, "consent-ask", language, PARENT)
    for part in must[language].split("|"):
        assert part in words, part


WISHES = (
    Wish.YES, Wish.NO, Wish.READY, Wish.PAUSE, Wish.RESUME, Wish.LESSON, Wish.NOT_TONIGHT, Wish.STOP, Wish.DELETE,
    Wish.START, Wish.HELP, Wish.BEDTIME, Wish.BEDTIME,
)  # fmt: skip

TYPED = {
    "en": "YES|NO|NEXT|PAUSE|RESUME|LESSON|NOT TONIGHT|STOP|DELETE|START|INFO|bedtime 7:30 pm|bedtime 7 pm",
    "es": "SI|NO|SIGUIENTE|PAUSA|REANUDAR|LECCION|HOY NO|BAJA|BORRAR|EMPEZAR|INFO|mejor a las 19:30|mejor a las 19:00",
    "fr": "OUI|NON|SUIVANT|PAUSE|REPRENDRE|LEÇON|PAS CE SOIR|STOP|EFFACER|COMMENCER|INFO|coucher 19 h 30|coucher 19 h",
}
"""The words that texts tell people to write, and what they are meant to do."""


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_people_are_told_to_write_is_understood(catalogue: Catalogue, language: str) -> None:
    """Each typed form stands in some text message, and reading takes it for what it is."""
    said = "\n".join(words for where, words in everything(catalogue, language, PARENT, CHILD) if "/sms/" in where)
    for typed, wish in zip(TYPED[language].split("|"), WISHES, strict=True):
        assert typed in said
        understood = request(typed, lang=language)
        assert understood is not None, typed
        assert understood.wish is wish, typed


MARKS: dict[str, dict[str, Mark]] = {
    "en": {"5": 5, "NO GO": Word.NOT_DOWN, "SKIP": Word.SKIPPED},
    "es": {"5": 5, "NO BAJO": Word.NOT_DOWN, "SALTAR": Word.SKIPPED},
    "fr": {"5": 5, "PAS DESCENDU": Word.NOT_DOWN, "SAUTER": Word.SKIPPED},
}
NO_BEST = {"en": "NONE", "es": "NINGUNA", "fr": "AUCUNE"}


@pytest.mark.parametrize(("language", "audience"), FAMILIES)
def test_the_typed_answers_of_a_night_are_understood(catalogue: Catalogue, language: str, audience: Audience) -> None:
    """Every button of a night has a short word in its place, and reading takes it for the same."""
    order = tuple(Position)
    asked = say(catalogue, "ask-swallow", language, audience, "sms")
    for typed, mark in MARKS[language].items():
        assert typed in asked
        for position in order:
            assert read(typed, lang=language, order=order, asking=position).ratings == {position: mark}
    assert NO_BEST[language] in say(catalogue, "ask-best", language, audience, "sms")
    none = read(NO_BEST[language], lang=language, order=order, asking="best")
    assert not none.unclear
    assert none.best is None
    for position in Position:
        name = catalogue.word("position", language, position=position)
        assert read(name.upper(), lang=language, order=order, asking="best").best is position


@pytest.mark.parametrize(("language", "audience"), FAMILIES)
def test_what_people_are_told_to_write_alarms_nobody(language: str, audience: Audience) -> None:
    """Triage reads first: a word that we ask for must not stop practice. So it is INFO, since HELP is a cry."""
    typed = [*TYPED[language].split("|"), *MARKS[language], NO_BEST[language]]
    alarming = {one for one in typed if assess(one, lang=language, sender=audience.value).level is not Level.NONE}
    assert alarming == set()


@pytest.mark.parametrize(("language", "audience"), FAMILIES)
def test_the_wordings_of_a_situation_differ(catalogue: Catalogue, language: str, audience: Audience) -> None:
    """No two wordings are the same, so that a week brings no repetition."""
    families = [[f"cheer-{one}-{n}" for n in range(1, WORDINGS[one] + 1)] for one in Situation]
    families += [[f"tip-{one}-{n}" for n in range(1, TIPS + 1)] for one in Cause]
    said = [say(catalogue, name, language, audience) for family in families for name in family]
    assert len(set(said)) == len(said)


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_concern_has_a_kind_answer_without_a_question_of_coaching(catalogue: Catalogue, language: str) -> None:
    """A trouble is never answered by a request for numbers."""
    for name, audience in product(CONCERNS, (PARENT, CHILD)):
        words = say(catalogue, f"concern-{name}", language, audience)
        assert not re.search(r"\b[1-5] (to|a|à) [1-5]\b", words)
        assert {"en": "clinic", "es": "clínica", "fr": "clinique"}[language] in words


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_category_of_trouble_has_a_name_for_the_clinician(language: str) -> None:
    """Whatever the rules of triage can find reads as words and not as a code."""
    rules = tomllib.loads(files("coachbot.triage").joinpath(f"rules/{language}.toml").read_text(encoding="utf-8"))
    categories = {rule["category"] for rule in _tables(rules) if "category" in rule}
    assert len(categories) > 20
    entry = read_language(default_folder(), language, whole=True)[SHARED].entries["category"]
    assert isinstance(entry.value, ast.Pattern)
    choice = entry.value.elements[0]
    assert isinstance(choice, ast.Placeable)
    assert isinstance(choice.expression, ast.SelectExpression)
    named = {variant.key.name for variant in choice.expression.variants if isinstance(variant.key, ast.Identifier)}
    assert categories <= named


def _tables(tree: object) -> Iterator[dict[str, object]]:
    """All tables of a TOML file, however deep."""
    if isinstance(tree, dict):
        yield tree
        for value in tree.values():
            yield from _tables(value)
    elif isinstance(tree, list):
        for value in tree:
            yield from _tables(value)
