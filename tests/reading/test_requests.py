"""Promises of reading requests: the whole reply is the wish, or there is none."""

import datetime as dt

import pytest

from coachbot.reading import Request, Wish, request

NONE = "-"
"""What `said` gives where there is no request."""


def said(found: Request | None) -> str:
    if found is None:
        return NONE
    parts = [found.wish, f"{found.at:%H:%M}" if found.at else "", str(found.days) if found.days else ""]
    return " ".join(part for part in parts if part)


@pytest.mark.parametrize(
    ("lang", "text", "expected"),
    [
        ("en", "yes", "yes"),
        ("en", "yeah sure", "yes"),
        ("en", "yep!", "yes"),
        ("en", "no", "no"),
        ("en", "nope", "no"),
        ("en", "ok", "ready"),
        ("en", "next", "ready"),
        ("en", "done!", "ready"),
        ("en", "ready", "ready"),
        ("en", "we're ready", "ready"),
        ("en", "all done", "ready"),
        ("en", "👍", "yes"),
        ("en", "pause", "pause"),
        ("en", "we're ill this week", "pause"),
        ("en", "away for 3 days", "pause 3"),
        ("en", "we're on vacation for two weeks", "pause 14"),
        ("en", "away until monday", "-"),
        ("en", "pause for a week", "pause 7"),
        ("en", "everyone is sick", "pause"),
        ("en", "we're back", "resume"),
        ("en", "resume", "resume"),
        ("en", "resume please", "resume"),
        ("en", "STOP", "stop"),
        ("en", "stop please", "stop"),
        ("en", "STOPALL", "stop"),
        ("en", "unsubscribe", "stop"),
        ("en", "cancel", "stop"),
        ("en", "quit", "stop"),
        ("en", "END", "stop"),
        ("en", "we want to stop the programme", "stop"),
        ("en", "please stop texting me", "stop"),
        ("en", "I don't want to do this anymore", "stop"),
        ("en", "we quit", "stop"),
        ("en", "delete everything you have about us", "delete"),
        ("en", "please delete our data", "delete"),
        ("en", "delete my account", "delete"),
        ("en", "stop and delete everything", "delete"),
        ("en", "make it 7:30", "bedtime 19:30"),
        ("en", "move bedtime to 8", "bedtime 20:00"),
        ("en", "bedtime 8", "bedtime 20:00"),
        ("en", "can we do 7:15 instead", "bedtime 19:15"),
        ("en", "7:30", "bedtime 19:30"),
        ("en", "8pm", "bedtime 20:00"),
        ("en", "8 pm please", "bedtime 20:00"),
        ("en", "half past seven", "bedtime 19:30"),
        ("en", "quarter past 7", "bedtime 19:15"),
        ("en", "quarter to eight", "bedtime 19:45"),
        ("en", "change bedtime to 7.45", "bedtime 19:45"),
        ("en", "7:30 am", "bedtime 07:30"),
        ("en", "20:15", "bedtime 20:15"),
        ("en", "seven thirty", "bedtime 19:30"),
        ("en", "at 8 o'clock", "bedtime 20:00"),
        ("en", "8", "-"),
        ("en", "25:00", "-"),
        ("en", "help", "help"),
        ("en", "HELP", "help"),
        ("en", "?", "help"),
        ("en", "info", "help"),
        ("en", "what do I do", "help"),
        ("en", "show me the lesson again", "lesson"),
        ("en", "can we see the lesson again?", "lesson"),
        ("en", "lesson", "lesson"),
        ("en", "not tonight", "not_tonight"),
        ("en", "can we skip tonight", "not_tonight"),
        ("en", "skip tonight", "not_tonight"),
        ("en", "too tired tonight", "not_tonight"),
        ("en", "she's too tired", "not_tonight"),
        ("en", "already asleep", "not_tonight"),
        ("en", "she is already asleep", "not_tonight"),
        ("en", "he fell asleep", "not_tonight"),
        ("en", "maybe tomorrow", "not_tonight"),
        ("en", "start", "start"),
        ("en", "unstop", "start"),
        ("en", "wrong number", "wrong_number"),
        ("en", "who is this", "wrong_number"),
        ("en", "I don't know who this is", "wrong_number"),
        ("en", "you have the wrong number", "wrong_number"),
        ("en", "sorry wrong number", "wrong_number"),
        ("en", "we had to stop because the water was too cold", "-"),
        ("en", "4 3 5 2 4", "-"),
        ("en", "she was tired", "-"),
        ("en", "stop it hurts", "-"),
        ("en", "help she is choking", "-"),
        ("en", "not tonight josephine", "-"),
        ("en", "she stopped crying", "-"),
        ("en", "cancel the last rating", "-"),
        ("en", "left was 3", "-"),
        ("en", "it was ok", "-"),
        ("en", "we're back from the doctor, she has a cold", "-"),
        ("en", "no more water", "-"),
        ("en", "end of the candy", "-"),
        ("en", "start with left", "-"),
        ("en", "yes but she is scared", "-"),
        ("es", "sí", "yes"),
        ("es", "claro", "yes"),
        ("es", "no", "no"),
        ("es", "listo", "ready"),
        ("es", "siguiente", "ready"),
        ("es", "ya", "ready"),
        ("es", "pausa", "pause"),
        ("es", "estamos enfermos", "pause"),
        ("es", "de viaje por 3 días", "pause 3"),
        ("es", "estamos de vacaciones una semana", "pause 7"),
        ("es", "ya volvimos", "resume"),
        ("es", "baja", "stop"),
        ("es", "parar", "stop"),
        ("es", "STOP", "stop"),
        ("es", "queremos dejar el programa", "stop"),
        ("es", "no queremos seguir", "stop"),
        ("es", "ya no queremos seguir", "stop"),
        ("es", "no me escriban más", "stop"),
        ("es", "borren todos mis datos", "delete"),
        ("es", "borra todo lo que tienen de nosotros", "delete"),
        ("es", "a las 8 y media", "bedtime 20:30"),
        ("es", "a las 8", "bedtime 20:00"),
        ("es", "19:30", "bedtime 19:30"),
        ("es", "cambia la hora a las 7:30", "bedtime 19:30"),
        ("es", "mejor a las 9", "bedtime 21:00"),
        ("es", "a las ocho", "bedtime 20:00"),
        ("es", "8 de la noche", "bedtime 20:00"),
        ("es", "a las siete y cuarto", "bedtime 19:15"),
        ("es", "a las ocho menos cuarto", "bedtime 19:45"),
        ("es", "20h", "bedtime 20:00"),
        ("es", "ayuda", "help"),
        ("es", "?", "help"),
        ("es", "la lección otra vez", "lesson"),
        ("es", "quiero ver la lección de nuevo", "lesson"),
        ("es", "hoy no", "not_tonight"),
        ("es", "esta noche no", "not_tonight"),
        ("es", "hoy no podemos", "not_tonight"),
        ("es", "está muy cansada", "not_tonight"),
        ("es", "ya se durmió", "not_tonight"),
        ("es", "mañana mejor", "not_tonight"),
        ("es", "número equivocado", "wrong_number"),
        ("es", "quién es", "wrong_number"),
        ("es", "no sé quién es", "wrong_number"),
        ("es", "empezar", "start"),
        ("es", "estaba cansada y lloró", "-"),
        ("es", "4 3 5", "-"),
        ("es", "paramos porque tenía miedo", "-"),
        ("es", "no le gustó", "-"),
        ("fr", "oui", "yes"),
        ("fr", "d'accord", "yes"),
        ("fr", "non", "no"),
        ("fr", "prêt", "ready"),
        ("fr", "suivant", "ready"),
        ("fr", "c'est fait", "ready"),
        ("fr", "on est prêts", "ready"),
        ("fr", "pause", "pause"),
        ("fr", "on est malades", "pause"),
        ("fr", "en vacances 3 jours", "pause 3"),
        ("fr", "en vacances pour une semaine", "pause 7"),
        ("fr", "on est de retour", "resume"),
        ("fr", "STOP", "stop"),
        ("fr", "arrêt", "stop"),
        ("fr", "ARRET", "stop"),
        ("fr", "arrêter", "stop"),
        ("fr", "on veut arrêter le programme", "stop"),
        ("fr", "nous voulons arrêter", "stop"),
        ("fr", "désabonner", "stop"),
        ("fr", "arrêtez de m'écrire", "stop"),
        ("fr", "supprimez mes données", "delete"),
        ("fr", "effacez tout ce que vous avez sur nous", "delete"),
        ("fr", "20h", "bedtime 20:00"),
        ("fr", "19h30", "bedtime 19:30"),
        ("fr", "à 20h", "bedtime 20:00"),
        ("fr", "mettez le coucher à 19h30", "bedtime 19:30"),
        ("fr", "plutôt 20h", "bedtime 20:00"),
        ("fr", "huit heures et demie", "bedtime 20:30"),
        ("fr", "huit heures moins le quart", "bedtime 19:45"),
        ("fr", "7 heures et quart", "bedtime 19:15"),
        ("fr", "8 heures du soir", "bedtime 20:00"),
        ("fr", "aide", "help"),
        ("fr", "AIDE", "help"),
        ("fr", "?", "help"),
        ("fr", "revoir la leçon", "lesson"),
        ("fr", "montrez-moi la leçon encore", "lesson"),
        ("fr", "pas ce soir", "not_tonight"),
        ("fr", "on peut sauter ce soir", "not_tonight"),
        ("fr", "trop fatiguée", "not_tonight"),
        ("fr", "elle est trop fatiguée ce soir", "not_tonight"),
        ("fr", "elle dort déjà", "not_tonight"),
        ("fr", "demain", "not_tonight"),
        ("fr", "mauvais numéro", "wrong_number"),
        ("fr", "c'est qui ?", "wrong_number"),
        ("fr", "qui êtes-vous ?", "wrong_number"),
        ("fr", "je ne sais pas qui c'est", "wrong_number"),
        ("fr", "commencer", "start"),
        ("fr", "elle était fatiguée", "-"),
        ("fr", "4 3 5", "-"),
        ("fr", "on a arrêté parce qu'elle pleurait", "-"),
    ],
)
def test_a_request_is_the_whole_reply(lang: str, text: str, expected: str) -> None:
    """A wish is heard in its usual phrasings, and only where the reply says nothing else."""
    assert said(request(text, lang=lang)) == expected


@pytest.mark.parametrize("word", ["STOP", "STOPALL", "UNSUBSCRIBE", "CANCEL", "END", "QUIT"])
@pytest.mark.parametrize("lang", ["en", "es", "fr"])
def test_carriers_opt_out_words_stop_in_every_language(lang: str, word: str) -> None:
    """The opt-out words of industry guidance (CTIA, as summarised by carriers; STOPALL from vendor lists) mean stop."""
    assert request(word, lang=lang) == Request(wish=Wish.STOP)


@pytest.mark.parametrize("hour", range(1, 12))
def test_an_hour_without_more_is_an_evening_hour(hour: int) -> None:
    """One to eleven mean the evening; the morning has to be said."""
    assert request(f"make it {hour}:30", lang="en") == Request(wish=Wish.BEDTIME, at=dt.time(hour + 12, 30))
    assert request(f"make it {hour}:30 am", lang="en") == Request(wish=Wish.BEDTIME, at=dt.time(hour, 30))


def test_a_long_reply_is_no_request() -> None:
    """Words of a request in a tale are a tale."""
    assert request("stop " * 100, lang="en") is None


@pytest.mark.parametrize(
    ("text", "lang"),
    [
        ("not tonight, he fell asleep in the car", "en"),
        ("cant today, exam tomorrow", "en"),
        ("hoy no, se quedó dormido en el coche", "es"),
        ("pas ce soir, elle s'est endormie dans l'auto", "fr"),
    ],
)
def test_not_tonight_may_bring_its_reason(text: str, lang: str) -> None:
    """Families say why; the reason is theirs and changes nothing."""
    assert request(text, lang=lang) == Request(wish=Wish.NOT_TONIGHT)


@pytest.mark.parametrize(
    "text", ["not tonight, 4 3 5", "not tonight, and stop with the car", "not sure, he fell asleep in it"]
)
def test_a_reason_holds_no_number_and_no_weightier_wish(text: str) -> None:
    """What could be ratings or a wish to stop is left to a person."""
    assert request(text, lang="en") is None
