"""Amounts by measures, as the command line prints them: one amount, and a whole recipe."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.documents import facts_document, quantity_document
from scalepan.command_line.report import base_section, facts_parts, titled
from scalepan.command_line.sections import NOTE, Section, Table, Texts
from scalepan.command_line.tables import bound
from scalepan.measuring import measure_out_recipe

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan._core import Recipe
    from scalepan.measuring import MeasuredLine, MeasuredOut

    # By the name of the base, the dish's own under "".
    Measured = dict[str, list[MeasuredLine]]


# A cook takes an amount so near for the exact one, and is spared spoons of next to nothing.
NEAR_ENOUGH = "2 %"


def measuring_section(given: str, result: MeasuredOut) -> Section:
    """The measures, how far they are from exact, and the facts on the way."""
    answer = Texts((f"{given} = {result.text}",))
    error = Texts((f"{result.measures}: {result.told_error}",), NOTE)
    return Section("", (answer, error, *facts_parts(result.facts)))


def measuring_document(result: MeasuredOut) -> dict[str, Any]:
    """Everything exact, for ``--json``."""
    return {
        "text": result.text,
        "pieces": [{"count": count, "measure": measure} for count, measure in result.pieces],
        "amount": quantity_document(result.amount),
        "exact": quantity_document(result.exact),
        "error": quantity_document(result.error),
        "error_share": str(result.error_share),
        "set": result.measures,
        "facts": facts_document(result.facts),
    }


def recipe_sections(
    recipe: Recipe, measured: Measured, remarks: Sequence[str] = ()
) -> list[Section]:
    """Title, tested sizes, every line by the measures, and how far each is from exact; the bases
    first."""
    bases = [base_section(base, _amounts(measured[base.name])) for base in recipe.bases]
    own = titled(recipe, _amounts(measured[""]), remarks)
    meant = measures_meant(recipe)
    below = Texts([meant] if meant else [], NOTE)
    return [*bases, Section(own.title, (*own.parts, below))]


def _amounts(measured: Sequence[MeasuredLine]) -> Table:
    rows = [(line.told, *_exact_of(line)) for line in measured]
    return Table(("by measures", "as written", "off"), rows)


def _exact_of(line: MeasuredLine) -> tuple[str, str]:
    """The amount in the recipe's own words, and how far the measures are from it."""
    if line.measured is None or line.line.amount is None:
        return "", line.note
    if line.too_large:
        return bound(line.line.amount.told), "measures too large"
    return bound(line.line.amount.told), bound(line.measured.told_share)


def measures_meant(recipe: Recipe) -> str:
    """Which spoons and cups the recipe's own amounts mean, where it has any."""
    volumes: dict[str, dict[str, str]] = {}
    for line in recipe.food_lines:
        if line.amount is None or not line.amount.dimension.startswith("volume"):
            continue
        unit = line.amount.unit.split(" ")[0]
        name, _, measures = unit.rpartition("_")
        if name:
            volume = _core.quantity(1, unit).to("mL").told
            volumes.setdefault(measures, {})[name.replace("_", " ")] = volume
    told = [
        f"{measures} {', '.join(bound(f'{name} {volume}') for name, volume in units.items())}"
        for measures, units in volumes.items()
    ]
    return f"As written: {'; '.join(told)}." if told else ""


def measured_with_bases(
    recipe: Recipe, volumes: str | None, weights: str | None, within: str | None
) -> Measured:
    """The recipe's lines and those of its bases, as ``measure_out_recipe`` tells them."""
    recipes = {"": recipe, **{base.name: base.recipe for base in recipe.bases}}
    return {
        name: measure_out_recipe(each, volumes=volumes, weights=weights, within=within)
        for name, each in recipes.items()
    }


def doubts(recipe: Recipe, measured: Measured) -> list[str]:
    """The lines that measuring out moves further than the recipe allows."""
    found = []
    for name, lines in measured.items():
        lead = f"{name}." if name else ""
        found += [lead + doubt for line in lines if (doubt := line.doubt(recipe.rounding))]
    return found


def recipe_document(measured: Measured) -> list[dict[str, Any]]:
    """A line each; ``measured`` is null where ``note`` says why it stays as it is."""
    return [
        {
            "id": f"{name}.{line.line.id}" if name else line.line.id,
            "told": line.told,
            "measured": None if line.measured is None else measuring_document(line.measured),
            "note": line.note,
        }
        for name, lines in measured.items()
        for line in lines
    ]
