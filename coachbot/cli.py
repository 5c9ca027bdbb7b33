"""The `coachbot` command. Each subcommand is a thin door to a room; a mistake that its user can mend is one line.

Rooms are imported when their command runs, so that the engines start quickly.
"""

import argparse
import gc
import sys
from collections.abc import Sequence
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING, TextIO, TypeAlias

from coachbot.settings import SettingError, Settings

if TYPE_CHECKING:
    from coachbot.store import Store

Commands: TypeAlias = "argparse._SubParsersAction[argparse.ArgumentParser]"  # noqa: SLF001 - it has no public name


_REACHED = {
    "telegram": ("COACHBOT_TELEGRAM_TOKEN", "the chat's own number, such as 123456789; a name will not do"),
    "sms": ("COACHBOT_SMS_HOST", "the number with its country's code, such as +15551234567"),
}
"""The channels on which alerts reach a clinician: the setting that sets each up, and what an address looks like."""


def main(argv: Sequence[str] | None = None) -> int:
    """Run one subcommand. Returns the exit code: 0 done, 1 a mistake that the message names, 2 misuse, 130 stopped."""
    arguments = _parser().parse_args(argv)
    try:
        arguments.run(arguments)
    except BrokenPipeError:
        sys.stderr.close()
    except KeyboardInterrupt:
        return 130
    except (SettingError, ValueError, OSError, RuntimeError) as error:
        say(f"coachbot: {error}", file=sys.stderr)
        return 1
    return 0


def say(words: object, file: TextIO | None = None) -> None:
    """Print to the terminal that called."""
    print(words, file=file)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="coachbot", description=import_module("coachbot").__doc__)
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    _add_engines(commands)
    _add_service(commands)
    _add_clinic(commands)
    return parser


def _add_engines(commands: Commands) -> None:
    for name, room, told in (
        ("read", "reading", "read replies: ratings, best, note"),
        ("triage", "triage", "triage replies: level, category, evidence"),
        ("favourite", "insight", "estimate the favourite position"),
    ):
        command = commands.add_parser(name, help=f"{told} (JSON Lines in, JSON Lines out)")
        if name != "favourite":
            command.add_argument("--score", metavar="FILE", type=Path, help="score a file of labelled replies instead")
        command.set_defaults(run=_engine, engine=f"coachbot.{room}.engine")
    orders = commands.add_parser("orders", help="the fixed orders of a child's nights, as one JSON list")
    orders.add_argument("--positions", required=True, help="for example center,left,right,up,down")
    orders.add_argument("--nights", required=True, type=int)
    orders.add_argument("--seed", required=True, type=int)
    orders.set_defaults(run=_orders)


def _add_service(commands: Commands) -> None:
    serve = commands.add_parser("serve", help="run channels, heartbeat, outbox and desk")
    parts = ("channels", "heartbeat", "outbox", "desk")
    serve.add_argument("--only", choices=parts, action="append", help="run just this part (may be given again)")
    serve.set_defaults(run=_serve)
    rehearse = commands.add_parser("rehearse", help="the whole thing on this machine, with a clock that can be moved")
    rehearse.add_argument("--auto", action="store_true", help="play a fortnight unattended and write the report")
    rehearse.add_argument("--out", type=Path, default=Path(), help="folder for the report (with --auto)")
    rehearse.add_argument("--port", type=int, default=8090, help="port of the local page (default %(default)s)")
    phones = ("parent", "child", "clinician", "backup")
    rehearse.add_argument(
        "--sms", choices=phones, action="append", help="a phone with text messages only (may be given again)"
    )
    rehearse.add_argument("--no-browser", action="store_true", help="do not open a browser window")
    rehearse.set_defaults(run=_rehearse)


def _add_clinic(commands: Commands) -> None:
    key = commands.add_parser("key", help="make a new key for the clinic")
    key.set_defaults(run=_key)
    rotate = key.add_subparsers(metavar="DO").add_parser(
        "rotate", help="seal all that is kept anew with the first of COACHBOT_KEY's keys; may be broken off"
    )
    rotate.set_defaults(run=_rotate)
    database = commands.add_parser("database", help="the store's tables").add_subparsers(required=True, metavar="DO")
    database.add_parser("upgrade", help="make the tables, or bring them up to date").set_defaults(run=_upgrade)
    check = database.add_parser("check", help="see that the tables fit this program and the key opens them")
    check.set_defaults(run=_check)
    erased = database.add_parser("erased", help="the proof of every erasure, a JSON line each")
    erased.set_defaults(run=_erased)
    retain = commands.add_parser("retain", help="erase now what is past its time, as `serve` does every hour")
    retain.add_argument("--erased", metavar="FILE", type=Path, help="erase again what this list names, after a restore")
    retain.set_defaults(run=_retain)
    enrol = commands.add_parser("enrol", help="enrol a family from its file; prints the invitation codes")
    enrol.add_argument("file", type=Path)
    enrol.set_defaults(run=_enrol)
    clinician = commands.add_parser("clinician", help="the clinic's people").add_subparsers(required=True, metavar="DO")
    add = clinician.add_parser("add", help="add a clinician; prints what is needed to sign in")
    add.add_argument("name")
    add.add_argument("--role", choices=("clinician", "lead", "researcher"), default="clinician")
    add.add_argument("--duty", choices=("on_call", "backup", "none"), default="on_call")
    add.add_argument("--language", choices=("en", "es", "fr"), default="en")
    add.add_argument("--channel", choices=tuple(_REACHED), help="where alerts reach them")
    add.add_argument("--address", help="their chat id or number there")
    add.set_defaults(run=_add_clinician)
    export = commands.add_parser("export", help="the de-identified study export, as CSV")
    export.add_argument("folder", type=Path)
    export.set_defaults(run=_export)
    voice = commands.add_parser("voice", help="what families are told").add_subparsers(required=True, metavar="DO")
    proof = voice.add_parser("proof", help="every text on one page per language, to be signed off")
    proof.add_argument("folder", type=Path)
    proof.set_defaults(run=_proof)
    transcripts = voice.add_parser(
        "transcripts", help="a fortnight with each of six invented families, to be read aloud"
    )
    transcripts.add_argument("folder", type=Path)
    transcripts.set_defaults(run=_transcripts)


def _engine(arguments: argparse.Namespace) -> None:
    engine = import_module(arguments.engine)
    if getattr(arguments, "score", None):
        say(engine.score(arguments.score))
        return
    for stream in (sys.stdin, sys.stdout):
        stream.reconfigure(encoding="utf-8", errors="replace")  # type: ignore[union-attr]
    for line in engine.run(sys.stdin):
        say(line)


def _orders(arguments: argparse.Namespace) -> None:
    say(import_module("coachbot.programme.orders").render(arguments.positions, arguments.nights, arguments.seed))


def _serve(arguments: argparse.Namespace) -> None:
    gc.disable()  # until it serves: all that is made by then stays, and looking through it would double the start
    from coachbot.serving import serve  # noqa: PLC0415

    serve(Settings.from_environment(), tuple(arguments.only or ()))


def _rehearse(arguments: argparse.Namespace) -> None:
    if arguments.auto:
        import_module("coachbot.rehearsal.auto").play(arguments.out)
    else:
        page = import_module("coachbot.rehearsal.page")
        page.serve(arguments.port, browser=not arguments.no_browser, texting=arguments.sms or ())


def _key(_: argparse.Namespace) -> None:
    from coachbot.store import new_key  # noqa: PLC0415

    say(new_key())


def _rotate(_: argparse.Namespace) -> None:
    from coachbot.bootstrap import system_clock  # noqa: PLC0415

    store = _store()
    store.check()
    count = store.reseal()
    until = store.run(lambda tx: tx.invites.open_until(system_clock()))
    store.close()
    say(f"{count} values sealed anew; nothing that is kept needs an earlier key any more")
    if until:
        say(f"but invitations do: give the earlier key after a comma until {until:%Y-%m-%d}, when the last runs out")


def _upgrade(_: argparse.Namespace) -> None:
    store = _store()
    store.upgrade()
    store.close()
    say("the database is up to date")


def _check(_: argparse.Namespace) -> None:
    store = _store()
    try:
        store.check()
    finally:
        store.close()
    say("the tables fit and the key opens them")


def _erased(_: argparse.Namespace) -> None:
    store = _store()
    for stone in store.run(lambda tx: tx.tombstones()):
        say(import_module("msgspec").json.encode(stone).decode())
    store.close()


def _retain(arguments: argparse.Namespace) -> None:
    from coachbot.bootstrap import retain  # noqa: PLC0415

    settings = Settings.from_environment()
    lines = arguments.erased.read_text(encoding="utf-8").splitlines() if arguments.erased else []
    store = _store()
    try:
        store.check()
        say(f"{retain(store, settings, lines)} erased")
    finally:
        store.close()


def _enrol(arguments: argparse.Namespace) -> None:
    from coachbot.bootstrap import system_clock  # noqa: PLC0415
    from coachbot.service.enrolling import enrol, family, new_seed  # noqa: PLC0415

    wanted = family(arguments.file.read_text(encoding="utf-8"))
    number = Settings.from_environment().get("EMERGENCY_NUMBER")
    store = _store()
    now = system_clock()
    done = store.run(lambda tx: enrol(tx, wanted, emergency_number=number, seed=new_seed(tx), now=now))
    store.close()
    for caution in done.screening.cautions:
        say(f"caution: {caution}")
    for role, code in done.codes:
        say(f"{role}\t{code}")


def _add_clinician(arguments: argparse.Namespace) -> None:
    from coachbot.bootstrap import system_clock  # noqa: PLC0415
    from coachbot.desk.accounts import add  # noqa: PLC0415

    if bool(arguments.channel) != bool(arguments.address):
        raise SettingError("give --channel and --address together, or neither")
    reach = _reach(arguments.channel, arguments.address) if arguments.channel else None
    store = _store()
    account = store.run(
        lambda tx: add(
            tx,
            arguments.name,
            system_clock(),
            role=arguments.role,
            duty=arguments.duty,
            language=arguments.language,
            reach=reach,
        )
    )
    store.close()
    say(f"password\t{account.password}")
    say(f"one-time codes\t{account.totp_uri}")


def _reach(name: str, given: str) -> tuple[str, str]:
    """A channel and an address there, as messages from there will name it."""
    from coachbot.serving import channels  # noqa: PLC0415

    setting, wanted = _REACHED[name]
    channel = channels(Settings.from_environment()).get(name)
    if channel is None:
        raise SettingError(f"the channel {name} is not set up: set {setting}")
    address = channel.canonical(given)
    if address is None:
        raise SettingError(f"{given!r} is no address that {name} can write to: give {wanted}")
    return name, address


def _export(arguments: argparse.Namespace) -> None:
    from coachbot.service.exporting import export  # noqa: PLC0415

    store = _store()
    for path in store.run(lambda tx: export(tx, arguments.folder)):
        say(path)
    store.close()


def _proof(arguments: argparse.Namespace) -> None:
    from coachbot.voice.catalogue import Catalogue  # noqa: PLC0415
    from coachbot.voice.proof import proof  # noqa: PLC0415

    catalogue = Catalogue.load(overrides=Settings.from_environment().texts)
    arguments.folder.mkdir(parents=True, exist_ok=True)
    for language in ("en", "es", "fr"):
        path = arguments.folder / f"proof-{language}.html"
        path.write_text(proof(catalogue, language), encoding="utf-8")
        say(path)


def _transcripts(arguments: argparse.Namespace) -> None:
    for path in import_module("coachbot.rehearsal.families").write(arguments.folder):
        say(path)


def _store() -> "Store":
    from coachbot.store import Store  # noqa: PLC0415

    settings = Settings.from_environment()
    return Store.open(settings.database_url, settings.get("KEY"))
