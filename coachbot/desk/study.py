"""For the study: de-identified files, which name nobody."""

import asyncio
import io
import tempfile
import zipfile
from pathlib import Path

from starlette.responses import Response

from coachbot.desk.papers import file
from coachbot.desk.visit import Visit
from coachbot.service.exporting import ExportError, export
from coachbot.store import Accessed


async def study(visit: Visit) -> Response:
    """What can be had, and how many children it is about."""
    states = await visit.read(lambda tx: [one.state for one in tx.cases.summaries()])
    return await visit.page("study.html", children=len(states))


async def files(visit: Visit) -> Response:
    """All files of the export in one archive. Who took it is written down."""
    entry = Accessed(at=visit.now, by=visit.name, case_id=None, what="study.files")
    await visit.desk.coachbot.store.transact(lambda tx: tx.access.add([entry]))
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
