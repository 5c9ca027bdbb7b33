"""How many segments texts take, for the tests of what counts them and of what cuts them."""

PUBLISHED = [
    ("a" * 160, 1),
    ("a" * 161, 2),
    ("a" * 306, 2),
    ("a" * 307, 3),
    ("€" * 80, 1),
    ("€" * 81, 2),
    ("a" * 152 + "€" + "a" * 152, 3),
    ("é" * 160, 1),
    ("ê" * 70, 1),
    ("ê" * 71, 2),
    ("😀" * 35, 1),
    ("😀" * 36, 2),
    ("Don’t" + "x" * 60, 1),
    ("ê" + "x" * 65 + "😀" + "x" * 10, 2),
]
"""Worked out from the sizes in TS 23.040: 160 or 153 septets, 70 or 67 UTF-16 units, no pair cut in two."""
