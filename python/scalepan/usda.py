"""The USDA Standard Reference releases, read from their published files."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from scalepan.errors import make_error
from scalepan.files import read_bytes
from scalepan.foods import bundled_catalog

if TYPE_CHECKING:
    from scalepan._core import Catalog
    from scalepan.files import PathLike

_FOODS, _WEIGHTS, _ABBREVIATED = "FOOD_DES.txt", "WEIGHT.txt", "ABBREV.txt"


def read_usda_sr(
    folder: PathLike, *, release: str = "SR28", catalog: Catalog | None = None
) -> Catalog:
    """All foods of a USDA Standard Reference release, laid under a catalogue.

    The folder has the release's own files: ``FOOD_DES.txt`` and ``WEIGHT.txt``, or in place of
    the latter ``ABBREV.txt``, which has the first two weights of each food. Food 11246 is found
    as ``sr28 11246`` and by its description; where a description is already the name of a food,
    that food keeps it. Cups, spoons and the like become densities by state, other measures piece
    weights, refuse the edible share; all in the layer ``dataset``, so own and bundled facts win.

    Args:
        folder: where the files are.
        release: of ids and sources.
        catalog: what the release is laid under; left out, the bundled one. It is left as it is.

    Raises:
        FileError: ``file.unreadable``, ``file.too_large``.
        FoodError: ``food.release`` with file, line and column; ``food.duplicate``.
    """
    weights = _path(folder, _WEIGHTS)
    abbreviated = not os.path.exists(weights)
    if abbreviated:
        weights = _path(folder, _ABBREVIATED)
    if not os.path.exists(weights):
        message = f"the folder has neither {_WEIGHTS} nor {_ABBREVIATED}"
        raise make_error("file.unreadable", message, file=str(folder))
    laid = (catalog or bundled_catalog()).copy()
    laid.add_release(release, _file(_path(folder, _FOODS)), _file(weights), abbreviated)
    return laid


def _path(folder: PathLike, name: str) -> str:
    return os.path.join(os.fspath(folder), name)


def _file(path: str) -> tuple[str, str]:
    """Text and name; the releases are in Latin-1."""
    return read_bytes(path).decode("latin-1"), path
