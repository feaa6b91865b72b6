"""Pickles of what the core makes, and what counts as equal.

Every object can be pickled, copied and compared. Objects that never change are equal where all
their figures and words are, whatever units these are shown in and wherever they were read, and
have a hash. What can be changed (a catalogue, changes, a costing, a sheet) is compared likewise,
and has no hash. A pickle is for the version that made it: what shall last goes into files.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.foods import base_catalog

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping
    from typing import TypeAlias

    from scalepan._core import Catalog, Changes, Costing
    from scalepan.sheets import Sheet

    Reduced: TypeAlias = tuple[Callable[..., Any], tuple[Any, ...]]
    Parts: TypeAlias = tuple[tuple[Any, ...], Changes | None, dict[str, Changes]]

_as_asked: Callable[[Costing], Reduced] = _core.Costing.__reduce__  # type: ignore[assignment]
_asked_alike = _core.Costing.__eq__
_whole_catalog: Callable[[Catalog], Reduced] = _core.Catalog.__reduce__  # type: ignore[assignment]


def restored(name: str, state: bytes, *beside: object) -> Any:
    """An object of a class of the core.

    Args:
        name: of the class.
        state: what ``__reduce__`` gave.
        beside: the objects that it refers to.

    Raises:
        FileError: ``pickle.version`` for a pickle of another version, ``pickle.damaged``, and
            ``pickle.catalog`` where the bundled facts are others.
    """
    return _core.restored(name, state, beside)


def restored_costing(
    state: tuple[Any, ...], changes: Changes | None, variants: Mapping[str, Changes]
) -> Costing:
    """A costing with the changes made to its sheet."""
    costing: Costing = restored(*state)
    if changes is not None:
        costing.sheet.apply(changes)
    for name, variant in variants.items():
        costing.sheet.variants[name] = variant
    return costing


def restored_costing_sheet(*parts: Any) -> Sheet:
    """The sheet of a costing."""
    return restored_costing(*parts).sheet


def restored_sheet(changes: Changes, variants: Mapping[str, Changes]) -> Sheet:
    """A sheet of its own."""
    from scalepan.sheets import Sheet

    sheet = Sheet()
    sheet.restore(changes)
    for name, variant in variants.items():
        sheet.variants[name] = variant
    return sheet


def costing_parts(costing: Costing, variants: Mapping[str, Changes]) -> Parts:
    """What ``restored_costing`` takes.

    Raises:
        FileError: ``pickle.thing`` where a cell was given offers or packs of another costing.
        CostError: ``cost.kept`` where the changes do not lead to the same figures.
    """
    _, state = _as_asked(costing)
    return state, _changes_made(state, costing) if costing.is_changed else None, dict(variants)


def keep_core_classes() -> None:
    """Has costings kept with the changes of their sheets, and the bundled catalogue by its name."""
    costing, catalog = _core.Costing, _core.Catalog
    costing.__reduce__ = _reduced  # type: ignore[method-assign, assignment]
    costing.__eq__ = _equal  # type: ignore[method-assign, assignment]
    catalog.__reduce__ = _reduced_catalog  # type: ignore[method-assign, assignment]
    catalog.__copy__ = catalog.copy  # type: ignore[method-assign, assignment]
    catalog.__deepcopy__ = _deep_copy  # type: ignore[method-assign, assignment]


def _deep_copy(catalog: Catalog, memo: dict[int, object]) -> Catalog:
    return catalog.copy()


def _reduced(costing: Costing) -> Reduced:
    parts = costing_parts(costing, _variants(costing))
    state, changes, variants = parts
    if changes is None and not variants:
        return restored, state
    return restored_costing, parts


def _reduced_catalog(catalog: Catalog) -> Reduced:
    return (base_catalog, (catalog.base,)) if catalog.is_base else _whole_catalog(catalog)


def _equal(costing: Costing, other: object) -> Any:
    alike = _asked_alike(costing, other)
    if alike is not True:
        return alike
    assert isinstance(other, _core.Costing)
    if _variants(costing) != _variants(other):
        return False
    if not costing.is_changed and not other.is_changed:
        return True
    return bool(costing.sheet == other.sheet)


def _variants(costing: Costing) -> dict[str, Changes]:
    """None where its sheet was never asked for."""
    return dict(costing.sheet.variants) if hasattr(costing, "_sheet") else {}


def _changes_made(state: tuple[Any, ...], costing: Costing) -> Changes:
    from scalepan.costing_files import expect_same_figures
    from scalepan.sheet_content import Content
    from scalepan.sheet_edits import edits

    trial: Costing = restored(*state)
    plain = Content(trial.sheet.changes())
    changes = edits(plain, Content(costing.sheet.changes()))
    trial.sheet.apply(changes)
    expect_same_figures(trial, costing)
    return changes
