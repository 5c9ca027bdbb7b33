"""A paper as a reader sees it, by PDFium: an engine that none of our libraries shares."""

import ctypes
import re
from collections.abc import Iterator
from typing import Any

import pypdfium2 as pdfium  # type: ignore[import-untyped]
from pypdfium2 import raw


class Paper:
    """A PDF, opened."""

    def __init__(self, data: bytes) -> None:
        self.data = data
        self.document = pdfium.PdfDocument(data)

    @property
    def pages(self) -> int:
        """How many pages it has."""
        return len(self.document)

    @property
    def text(self) -> str:
        """All its words, with single spaces."""
        texts = (page.get_textpage().get_text_bounded() for page in self.document)
        return " ".join(re.sub(r"[\s\u200b\ufffe]+", " ", one).strip() for one in texts)

    @property
    def title(self) -> str:
        """The title of the document."""
        return str(self.document.get_metadata_dict()["Title"])

    @property
    def language(self) -> str:
        """The language that a screen reader is told."""
        size = raw.FPDFCatalog_GetLanguage(self.document, None, 0)
        buffer = ctypes.create_string_buffer(size)
        raw.FPDFCatalog_GetLanguage(self.document, ctypes.cast(buffer, ctypes.POINTER(ctypes.c_ushort)), size)
        return buffer.raw.decode("utf-16-le").rstrip("\x00")

    @property
    def tagged(self) -> bool:
        """Whether it has a structure for screen readers."""
        return bool(raw.FPDFCatalog_IsTagged(self.document))

    def span(self, words: str) -> tuple[float, float]:
        """The bottom and the top of words on the first page, in points from its foot."""
        page = self.document[0].get_textpage()
        found = page.search(words).get_next()
        assert found, f"{words!r} does not stand on the page"
        boxes = [page.get_charbox(found[0] + place) for place in range(found[1])]
        return min(box[1] for box in boxes), max(box[3] for box in boxes)

    def right(self) -> float:
        """How far to the right the ink of the words goes, as a share of the page's width."""
        page = self.document[0].get_textpage()
        edges = [page.get_charbox(place)[2] for place in range(page.count_chars())]
        return float(max(edges) / self.document[0].get_width())

    def picture(self, page: int = 0) -> Any:
        """A page as an array of dots."""
        return self.document[page].render(scale=2).to_numpy()

    def alternatives(self) -> list[str]:
        """What a screen reader says in place of the pictures of the first page."""
        tree = raw.FPDF_StructTree_GetForPage(self.document[0])
        count = raw.FPDF_StructTree_CountChildren(tree)
        roots = [raw.FPDF_StructTree_GetChildAtIndex(tree, place) for place in range(count)]
        return [text for root in roots for text in _alternatives(root)]


def _alternatives(element: Any) -> Iterator[str]:
    size = raw.FPDF_StructElement_GetAltText(element, None, 0)
    if size > 2:
        buffer = ctypes.create_string_buffer(size)
        raw.FPDF_StructElement_GetAltText(element, buffer, size)
        yield buffer.raw.decode("utf-16-le").rstrip("\x00")
    for place in range(raw.FPDF_StructElement_CountChildren(element)):
        if child := raw.FPDF_StructElement_GetChildAtIndex(element, place):
            yield from _alternatives(child)
