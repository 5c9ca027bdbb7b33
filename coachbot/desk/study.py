"""For the study: what all children did together, on a page and in de-identified files, which name nobody."""

import asyncio
import io
import tempfile
import zipfile
from pathlib import Path

from starlette.responses import Response

from coachbot.desk import plots
from coachbot.desk.papers import file
from coachbot.desk.plots import Spot
from coachbot.desk.visit import Visit
from coachbot.insight.export import SMALL_CELL
from coachbot.insight.figures import Figures, figures
from coachbot.service.exporting import ExportError, export, participants
from coachbot.store import Accessed

SMALL_P = 0.001
"""Smaller chances are not told apart."""


async def study(visit: Visit) -> Response:
    """What can be had, how many children it is about, and their figures. Who looked at them is written down."""
    cohort = await visit.read(participants)
    found = await asyncio.to_thread(figures, cohort)
    if found:
        await _note(visit, "study.study")
    return await visit.page(
        "study.html",
        children=len(cohort),
        found=found,
        least=SMALL_CELL,
        adherence=_adherence(visit, found) if found else None,
        staying=_staying(visit, found) if found and found.staying else None,
        edge=lambda p: "small" if p < SMALL_P else "plain",
    )


def _adherence(visit: Visit, found: Figures) -> object:
    told = found.adherence.items()
    spots = [
        Spot(night=night, at=one.share, low=one.low, high=one.high)
        for night, one in told
        if one.low is not None and one.high is not None
    ]
    return plots.shares_by_night(spots, max(found.adherence), visit.t("cohort-adherence"))


def _staying(visit: Visit, found: Figures) -> object:
    steps = [Spot(night=one.night, at=one.share, low=one.low, high=one.high) for one in found.staying]
    return plots.falling(steps, max(found.adherence), visit.t("cohort-staying"))


async def _note(visit: Visit, what: str) -> None:
    entry = Accessed(at=visit.now, by=visit.name, case_id=None, what=what)
    await visit.desk.coachbot.store.transact(lambda tx: tx.access.add([entry]))


async def files(visit: Visit) -> Response:
    """All files of the export in one archive. Who took it is written down."""
    await _note(visit, "study.files")
    with tempfile.TemporaryDirectory() as folder:
        try:
            await visit.read(lambda tx: export(tx, Path(folder)))
        except ExportError as error:
            return await visit.wrong(409, visit.t("study-refused", why=str(error)))
        data = await asyncio.to_thread(_zipped, Path(folder))
    return file("study.zip", "application/zip", data)


def _zipped(folder: Path) -> bytes:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as archive:
        for path in sorted(folder.rglob("*")):
            if path.is_file():
                archive.write(path, path.relative_to(folder))
    return buffer.getvalue()
