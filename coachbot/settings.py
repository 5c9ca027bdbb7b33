"""Settings by environment: one table, which the README repeats and a test compares."""

import os
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta
from pathlib import Path

PREFIX = "COACHBOT_"


class SettingError(ValueError):
    """A setting is missing or cannot be used; the message names it and says what to do."""


@dataclass(frozen=True, slots=True)
class Setting:
    """One setting: its name without the prefix, its default (None: must be given where needed), its meaning."""

    name: str
    default: str | None
    meaning: str


SETTINGS = (
    Setting("DATA", "data", "Folder for what coachbot keeps, made if it is missing."),
    Setting("DATABASE_URL", "", "SQLAlchemy URL; empty means an SQLite file in the data folder."),
    Setting("KEY", None, "The clinic's key, or several with commas, newest first; `coachbot key` makes one."),
    Setting("EMERGENCY_NUMBER", "112", "The local emergency number that safety texts name."),
    Setting("TEXTS", "", "Folder of the clinic's own texts, laid out like `prompts/`; empty means none."),
    Setting("TELEGRAM_TOKEN", "", "The bot's token; empty means no Telegram."),
    Setting("TELEGRAM_API_URL", "", "Another Bot API server; empty means Telegram's own."),
    Setting("TELEGRAM_WEBHOOK_URL", "", "Public address that Telegram posts to; empty means long polling."),
    Setting("TELEGRAM_WEBHOOK_SECRET", "", "The secret that those posts must carry; needed with a webhook."),
    Setting("SMS_HOST", "", "The SMSC's address; empty means no text messages."),
    Setting("SMS_PORT", "2775", "The SMSC's port."),
    Setting("SMS_TLS", "no", "`yes` to speak TLS with the SMSC; without it words cross the network as they are."),
    Setting("SMS_SYSTEM_ID", "", "Our name at the SMSC, at most 15 signs."),
    Setting("SMS_PASSWORD", "", "Our password there, at most 8 signs."),
    Setting("SMS_SYSTEM_TYPE", "", "The system type, if the provider asks for one."),
    Setting("SMS_NUMBER", "", "Our own number or short code, which families write to."),
    Setting("SMS_COUNTRY", "", "Country (ISO 3166: `US`) whose national numbers are understood; empty means none."),
    Setting("SMS_PER_SECOND", "10", "Segments a second that the provider allows."),
    Setting("SMS_WINDOW", "10", "Segments that may be under way unanswered."),
    Setting("DESK_HOST", "127.0.0.1", "Address that the desk listens on."),
    Setting("DESK_PORT", "8080", "Port that the desk listens on."),
    Setting("DESK_URL", "", "The desk's public address, for links; empty means host and port."),
    Setting("BEAT_SECONDS", "15", "Seconds between two looks at the clock."),
    Setting("KEEP_DAYS", "365", "Days after which a family that has finished or stopped is erased; `never` keeps it."),
    Setting("BACKUPS", "backups", "Folder of `deploy/backup` and `deploy/restore`."),
    Setting("BACKUP_DAYS", "30", "Days after which `deploy/backup` deletes a backup."),
    Setting(
        "WATCH_URL", "", "Address outside, asked for while all is well: its silence is the alarm; empty means none."
    ),
    Setting("WATCH_FAIL_URL", "", "Address posted to when an alert reaches nobody; empty means that one with `/fail`."),
    Setting("LOG", "json", "`json` for one object a line, `console` for people."),
)
"""All settings there are."""

_BY_NAME = {setting.name: setting for setting in SETTINGS}


@dataclass(frozen=True, slots=True)
class Settings:
    """The settings as given by an environment."""

    environment: Mapping[str, str]

    @classmethod
    def from_environment(cls) -> "Settings":
        """The process's own. A name with our prefix that means nothing is a mistake and refused.

        Raises:
            SettingError: naming it.
        """
        given = {name: value for name, value in os.environ.items() if name.startswith(PREFIX)}
        known = {PREFIX + name for name in _BY_NAME} | {f"{PREFIX}TEST_REQUIRE_ALL"}
        if unknown := sorted(given.keys() - known):
            raise SettingError(f"{', '.join(unknown)}: no such setting; the README lists them all")
        return cls(given)

    def get(self, name: str) -> str:
        """The value of a setting, or its default.

        Raises:
            SettingError: if it has no default and was not given.
        """
        setting = _BY_NAME[name]
        value = self.environment.get(PREFIX + name) or setting.default
        if value is None:
            raise SettingError(f"{PREFIX}{name} is not set: {setting.meaning}")
        return value

    def number(self, name: str) -> float:
        """The value of a setting that is a number above zero.

        Raises:
            SettingError: if it is none.
        """
        value = self.get(name)
        try:
            number = float(value)
        except ValueError:
            number = 0.0
        if not number > 0:
            raise SettingError(f"{PREFIX}{name} is {value!r}: give a number above 0")
        return number

    def yes(self, name: str) -> bool:
        """The value of a setting that is yes or no.

        Raises:
            SettingError: if it is neither.
        """
        value = self.get(name)
        if value not in ("yes", "no"):
            raise SettingError(f"{PREFIX}{name} is {value!r}: give yes or no")
        return value == "yes"

    @property
    def data(self) -> Path:
        """The data folder, which exists."""
        folder = Path(self.get("DATA"))
        folder.mkdir(parents=True, exist_ok=True)
        return folder

    @property
    def database_url(self) -> str:
        """Where the store is."""
        return self.get("DATABASE_URL") or f"sqlite:///{self.data.resolve() / 'coachbot.sqlite3'}"

    @property
    def keep(self) -> timedelta | None:
        """How long a family that has finished or stopped is kept; None for ever."""
        return None if self.get("KEEP_DAYS") == "never" else timedelta(days=self.number("KEEP_DAYS"))

    @property
    def texts(self) -> Path | None:
        """The clinic's own texts."""
        return Path(self.get("TEXTS")) if self.get("TEXTS") else None

    @property
    def desk_url(self) -> str:
        """Where the desk is reached."""
        return self.get("DESK_URL") or f"http://{self.get('DESK_HOST')}:{self.get('DESK_PORT')}"
