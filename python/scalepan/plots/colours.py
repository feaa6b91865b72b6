"""Colours that every eye tells apart, and marks that tell them apart in grey print too."""

from __future__ import annotations

# Okabe and Ito, Color Universal Design (2008), without the two that are too pale on white.
ORANGE, BLUE, GREEN, PURPLE = "#D55E00", "#0072B2", "#009E73", "#CC79A7"
AMBER, SKY = "#E69F00", "#56B4E9"
CYCLE = (BLUE, ORANGE, GREEN, PURPLE, AMBER, SKY)

LINES = ("-", "--", "-.", ":")
MARKERS = ("o", "s", "^", "D", "v", "P")
HATCHES = ("", "///", "..", "xx", "\\\\\\", "oo")

COLOUR_OF = {"till": ORANGE, "borne": BLUE, "used": GREEN, "thrown": PURPLE, "kept": SKY}
HATCH_OF = {"used": "", "kept": "", "thrown": "////"}
