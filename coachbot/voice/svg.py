"""The few shapes that all drawings are made of, in one style: dark line, paper ground, two colours, no skin colour."""

from collections.abc import Iterable
from html import escape

INK = "#2b3a4a"
PAPER = "#ffffff"
CLOTH = "#cfe3ee"
HAIR = "#e9e4da"
FAINT = "#9fb0bd"
SOFT = "#5f7486"
ACCENT = "#d9622b"
WATER = "#8cc4e8"
THROAT = "#f6d9d2"
FONT = "Libertinus Serif"

Point = tuple[float, float]


def element(name: str, content: str = "", /, **attributes: object) -> str:
    """One element; an underscore in an attribute's name stands for a hyphen."""
    written = "".join(f' {key.replace("_", "-")}="{_number(value)}"' for key, value in attributes.items())
    return f"<{name}{written}>{content}</{name}>"


def _number(value: object) -> str:
    return f"{value:.1f}" if isinstance(value, float) else escape(str(value))


def shape(name: str, *, fill: str = "none", stroke: str = INK, width: float = 4, **attributes: object) -> str:
    """An element drawn with the project's pen."""
    return element(
        name,
        fill=fill,
        stroke=stroke,
        stroke_width=width,
        stroke_linecap="round",
        stroke_linejoin="round",
        **attributes,
    )


def path(d: str, *, fill: str = "none", stroke: str = INK, width: float = 4, **attributes: object) -> str:
    """A free path."""
    return shape("path", fill=fill, stroke=stroke, width=width, d=d, **attributes)


def line(points: Iterable[Point], **style: str | float) -> str:
    """A line through points."""
    return path("M" + " L".join(f"{x:.1f} {y:.1f}" for x, y in points), **style)  # type: ignore[arg-type]


def circle(x: float, y: float, radius: float, **style: str | float) -> str:
    """A circle."""
    return shape("circle", cx=x, cy=y, r=radius, **style)  # type: ignore[arg-type]


def ellipse(x: float, y: float, rx: float, ry: float, **style: str | float) -> str:
    """An upright ellipse."""
    return shape("ellipse", cx=x, cy=y, rx=rx, ry=ry, **style)  # type: ignore[arg-type]


def box(x: float, y: float, width: float, height: float, radius: float = 0, **style: str | float) -> str:
    """A rectangle with rounded corners. `pen` is the width of its line."""
    pen = style.pop("pen", 4)
    return element(
        "rect",
        **{"x": x, "y": y, "width": width, "height": height, "rx": radius, "fill": "none", "stroke": INK}
        | {"stroke_width": pen}
        | style,
    )


def text(x: float, y: float, words: str, size: float = 26, *, bold: bool = False, fill: str = INK) -> str:
    """Words centered on x, standing on y."""
    weight = "bold" if bold else "normal"
    return element(
        "text",
        escape(words),
        x=x,
        y=y,
        font_family=FONT,
        font_size=size,
        font_weight=weight,
        text_anchor="middle",
        fill=fill,
    )


def badge(x: float, y: float, letter: str, *, radius: float = 26, fill: str = SOFT) -> str:
    """A big letter or number in a disc."""
    disc = circle(x, y, radius, fill=fill, stroke=fill)
    return disc + text(x, y + radius * 0.45, letter, radius * 1.3, bold=True, fill=PAPER)


def arrow(points: Iterable[Point], *, stroke: str = ACCENT, width: float = 9, head: float = 20) -> str:
    """An arrow along a curve of two, three or four points: straight, quadratic or cubic."""
    way = list(points)
    (x0, y0), (x1, y1) = way[-2], way[-1]
    long = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
    ux, uy = (x1 - x0) / long * head, (y1 - y0) / long * head
    tip = [(x1 - ux - uy * 0.7, y1 - uy + ux * 0.7), (x1, y1), (x1 - ux + uy * 0.7, y1 - uy - ux * 0.7)]
    letter = {2: "L", 3: "Q", 4: "C"}[len(way)]
    rest = " ".join(f"{x:.1f} {y:.1f}" for x, y in way[1:])
    shaft = path(f"M{way[0][0]:.1f} {way[0][1]:.1f} {letter}{rest}", stroke=stroke, width=width)
    return shaft + line(tip, stroke=stroke, width=width)


def group(content: str, *, x: float = 0, y: float = 0, scale: float = 1, flip: bool = False) -> str:
    """Content moved, scaled, and mirrored left to right where asked."""
    across = -scale if flip else scale
    return element("g", content, transform=f"translate({x:.1f} {y:.1f}) scale({across:.3f} {scale:.3f})")


def document(width: float, height: float, content: str) -> str:
    """A whole drawing on paper ground."""
    ground = element("rect", x=0, y=0, width=width, height=height, fill=PAPER)
    return element(
        "svg",
        ground + content,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {width:g} {height:g}",
        width=width,
        height=height,
    )
