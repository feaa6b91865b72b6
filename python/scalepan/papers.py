"""The papers that pages are printed on."""

PAPERS = ("A4", "Letter")
