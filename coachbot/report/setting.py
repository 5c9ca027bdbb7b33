"""Sets a paper: a layout in Typst, the words and numbers as data beside it, a PDF or a picture out of it."""

import json
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Literal

import typst

Form = Literal["pdf", "png"]

LAYOUTS = Path(__file__).parent
DOTS = 150
"""Dots per inch of a picture: an A4 page is 1240 by 1754."""


def printed(layout: str, data: Mapping[str, object], *, language: str, form: Form) -> bytes:
    """The paper as a file. A PDF is tagged and checked against PDF/UA-1 (ISO 14289-1) while it is made.

    `data` goes in as JSON and never as markup, so that no name and no note can change the layout.
    """
    made = typst.compile(
        str(LAYOUTS / f"{layout}.typ"),
        root=str(LAYOUTS),
        format=form,
        ppi=DOTS,
        font_paths=_fonts(),
        sys_inputs={"data": json.dumps({**data, "language": language}, ensure_ascii=False)},
        pdf_standards=["ua-1"] if form == "pdf" else [],
    )
    assert isinstance(made, bytes), "a paper that is to be a picture has one page"
    return made


@cache
def _fonts() -> typst.Fonts:
    """The fonts that come with the library and no others: a paper looks the same on every machine."""
    return typst.Fonts(include_system_fonts=False)
