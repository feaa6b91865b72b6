"""What each command does: reads, computes in the core, and gives what is to be printed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.baskets import basket, parse_dishes
from scalepan.command_line import (
    basketing,
    choosing,
    curving,
    documents,
    keeping,
    loading,
    measuring,
    page_files,
    paging,
    pricing,
    reading,
    report,
    sizing,
    spending,
    stocking,
    trees,
    writing,
    yield_documents,
    yielding,
)
from scalepan.command_line.costing import costing_sections
from scalepan.command_line.inputs import catalog_asked, prices_asked
from scalepan.command_line.sections import report_lines
from scalepan.command_line.standard_input import read_from
from scalepan.command_line.tables import terminal_width
from scalepan.conversion import convert
from scalepan.costs import by_shop, cost
from scalepan.errors import MeasureError
from scalepan.lines import read_line
from scalepan.load_split import loads, pan_meant
from scalepan.measure_sets import measure_sets, named_set, read_measure_sets
from scalepan.measuring import measure_out
from scalepan.prices import parse_stock
from scalepan.recipes import parse_recipe
from scalepan.selling import selling_price
from scalepan.yield_tests import parse_yield_test

if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterable, Iterator

    from scalepan._core import Costing, Recipe
    from scalepan.command_line.output import Output
    from scalepan.command_line.sections import Section


def _printed(sections: Iterable[Section]) -> Iterator[str]:
    """Set when they are printed, for with --json they never are."""
    yield from report_lines(sections, terminal_width())


def _sized_recipe(options: argparse.Namespace) -> Recipe:
    catalog = catalog_asked(options)
    return sizing.sized(read_from(options.recipe, parse_recipe, catalog=catalog), options)


def _costing(options: argparse.Namespace, recipe: Recipe) -> Costing:
    measures = recipe.measures or None
    prices = prices_asked(options, measures)
    return cost(recipe, prices, **_cost_options(options, measures))


def _cost_options(options: argparse.Namespace, measures: str | None) -> dict[str, Any]:
    stock = None
    if options.on_hand:
        stock = read_from(
            options.on_hand, parse_stock, currency=options.currency, measures=measures
        )
    return {
        "strict": options.strict,
        "taxes": "without" if options.without_tax else "with",
        "stock": stock,
        "day": options.date,
    }


def _new(options: argparse.Namespace) -> Output:
    from scalepan.command_line.beginning import new_command  # here: others need none of it

    return new_command(options)


def _check(options: argparse.Namespace) -> Output:
    from scalepan.command_line.checking import check_command

    return check_command(options)


def _completion(options: argparse.Namespace) -> Output:
    from scalepan.command_line.completing import completion_command

    return completion_command(options)


def _foods(options: argparse.Namespace) -> Output:
    from scalepan.command_line.food_list import foods_command

    return foods_command(options)


def _scale(options: argparse.Namespace) -> Output:
    recipe = _sized_recipe(options)
    cautions = _core.cautions(recipe)
    notes = _core.lines_to_check(recipe)
    remarks = sizing.remarks(recipe, options)
    document = {
        "recipe": documents.recipe_document(recipe),
        **sizing.document(recipe, options),
        "to_check": notes,
        "cautions": documents.cautions_document(cautions),
    }
    amounts = report.recipe_sections(recipe, remarks)
    if options.volumes or options.weights:
        measured = measuring.measured_with_bases(
            recipe, options.volumes, options.weights, options.within or measuring.NEAR_ENOUGH
        )
        document["measured_out"] = measuring.recipe_document(measured)
        amounts = measuring.recipe_sections(recipe, measured, remarks)
        notes += measuring.doubts(recipe, measured)
    return document, _printed(report.with_notes(amounts, notes, cautions))


def _page(options: argparse.Namespace) -> Output:
    recipe = _sized_recipe(options)
    sets = {key: getattr(options, key) for key in ("volumes", "weights", "within")}
    fills = sizing.trays_filled(recipe, options)
    page = paging.page_lines(recipe, terminal_width(), **sets, fills=fills)
    page_files.save_kitchen_page(options, recipe, sets, fills)
    return {**paging.page_document(recipe), **sizing.document(recipe, options)}, page


def _buy(options: argparse.Namespace) -> Output:
    recipe = _sized_recipe(options)
    costing = _costing(options, recipe)
    sections = [
        report.shopping_section(costing),
        stocking.left_section(costing),
        report.notes_section([*sizing.remarks(recipe, options), *costing.to_check]),
    ]
    document = {
        **documents.shopping_document(costing),
        "left": stocking.left_document(costing),
        **sizing.document(recipe, options),
    }
    page_files.save_shopping_page(options, costing, sizing.remarks(recipe, options))
    return document, _printed(sections)


def _shops(options: argparse.Namespace) -> Output:
    recipe = _sized_recipe(options)
    measures = recipe.measures or None
    prices = prices_asked(options, measures)
    rows = by_shop(recipe, prices, **_cost_options(options, measures))
    sections = stocking.shops_sections(report.title_text(recipe), rows)
    document = {
        "shops": stocking.shops_document(rows),
        "to_check": stocking.shops_to_check(rows),
        **sizing.document(recipe, options),
    }
    return document, _printed(sections)


def _cost(options: argparse.Namespace) -> Output:
    recipe = _sized_recipe(options)
    costing = _costing(options, recipe)
    if options.save:
        costing.save(options.save)
    page_files.save_costing_page(options, costing, sizing.remarks(recipe, options))
    document = {
        "recipe": documents.recipe_document(recipe),
        **sizing.document(recipe, options),
        **documents.shopping_document(costing),
        **documents.costs_document(costing),
        "left": stocking.left_document(costing),
        "cautions": documents.cautions_document(costing.cautions),
    }
    return document, _printed(costing_sections(costing, sizing.remarks(recipe, options)))


def _price(options: argparse.Namespace) -> Output:
    recipe = _sized_recipe(options)
    costing = _costing(options, recipe)
    portion = costing.per_portion("borne") * _core.quantity(1, "portion")
    found = selling_price(
        portion,
        food_cost=options.food_cost,
        tax=options.tax,
        ending=options.ending,
        step=options.ending_step,
    )
    sections = [
        pricing.price_section(report.title_text(costing.recipe), found, costing.unpriced),
        report.notes_section([*sizing.remarks(recipe, options), *costing.to_check]),
    ]
    document = {**pricing.price_document(found), **sizing.document(recipe, options)}
    return document, _printed(sections)


def _spend(options: argparse.Namespace) -> Output:
    written = _costing(
        options, read_from(options.recipe, parse_recipe, catalog=catalog_asked(options))
    )
    if options.most is None:
        least = written.least_spend(options.portions)
        portions, title = least.portions, spending.least_section(written.recipe.name, least)
    else:
        spend = _core.quantity(options.most)
        found = written.most_portions(spend)
        portions, title = found.portions, spending.spend_section(written.recipe.name, spend, found)
    costing = _costing(options, written.recipe.scale(portions=portions))
    drivers = costing.drivers(options.more)
    sections = [
        title,
        spending.drivers_section(drivers, options.more),
        report.notes_section(costing.to_check),
    ]
    if options.most is None:
        return spending.least_document(least, drivers), _printed(sections)
    return spending.spend_document(spend, found, drivers), _printed(sections)


def _break_even(options: argparse.Namespace) -> Output:
    costing = _costing(options, _sized_recipe(options))
    prices = costing.pack_prices(options.item)
    section = choosing.pack_prices_section(costing, options.item, prices)
    return choosing.pack_prices_document(prices), _printed([section])


def _swap(options: argparse.Namespace) -> Output:
    costing = _costing(options, _sized_recipe(options))
    swaps = costing.swaps([choosing.swap_asked(text) for text in options.swap], options.rank)
    sections = [
        choosing.swaps_section(costing.till, costing.borne, swaps, costing.unpriced),
        report.notes_section(costing.to_check),
    ]
    return choosing.swaps_document(costing, swaps), _printed(sections)


def _make_or_buy(options: argparse.Namespace) -> Output:
    costing = _costing(options, _sized_recipe(options))
    found = costing.make_or_buy(options.base, options.item)
    sections = [
        choosing.make_or_buy_section(found),
        report.notes_section(costing.to_check),
    ]
    return choosing.make_or_buy_document(found), _printed(sections)


def _basket(options: argparse.Namespace) -> Output:
    dishes = read_from(options.dishes, parse_dishes, catalog=catalog_asked(options))
    prices = prices_asked(options, options.measures)
    bought = basket(dishes, prices, **_cost_options(options, options.measures))
    if options.why:
        why = bought.explain(options.why)
        return documents.why_document(why), str(why).splitlines()
    page_files.save_shopping_page(options, bought)
    return basketing.basket_document(bought), _printed(basketing.basket_sections(bought))


def _curve(options: argparse.Namespace) -> Output:
    recipe = read_from(options.recipe, parse_recipe, catalog=catalog_asked(options))
    curve = _costing(options, recipe).curve(options.portions)
    if options.plot:
        curving.save_plot(curve, recipe.name, options.plot)
    return curving.curve_document(curve), curving.curve_lines(curve, terminal_width())


def _why(options: argparse.Namespace) -> Output:
    why = _costing(options, _sized_recipe(options)).explain(options.cell)
    return documents.why_document(why), trees.tree_lines(why, options.depth)


def _convert(options: argparse.Namespace) -> Output:
    keys = ("food", "measures", "state", "size", "preparation", "region")
    asked = {key: getattr(options, key) for key in keys}
    try:
        result = convert(options.amount, options.unit, **asked, catalog=catalog_asked(options))
    except MeasureError as error:
        hint = error.hint.replace("food=", "--food ")
        if hint == error.hint:
            raise
        raise MeasureError(error.code, error.message, hint) from None
    section = report.conversion_section(options.amount, result)
    return documents.conversion_document(result), _printed([section])


def _measure(options: argparse.Namespace) -> Output:
    sets = read_measure_sets(options.sets) if options.sets else measure_sets()
    result = measure_out(
        options.amount,
        named_set(options.set, sets),
        measures=options.measures,
        food=options.food,
        state=options.state,
        at_most=options.at_most,
        within=options.within,
        catalog=catalog_asked(options),
    )
    section = measuring.measuring_section(options.amount, result)
    return measuring.measuring_document(result), _printed([section])


def _loads(options: argparse.Namespace) -> Output:
    capacity = pan_meant(options.capacity)
    split = loads(options.total, capacity, options.equal, measures=options.measures)
    time = None if options.time is None else _core.quantity(options.time)
    lines = loading.loads_section(options.total, capacity, split, time, terminal_width())
    return loading.split_document(capacity, split, time), lines


def _read(options: argparse.Namespace) -> Output:
    line = read_line(options.line, measures=options.measures, decimal=options.decimal)
    return reading.line_document(line), reading.line_section(line, terminal_width())


def _yield(options: argparse.Namespace) -> Output:
    test = read_from(options.test, parse_yield_test, measures=options.measures)
    portion, price = (
        _core.quantity(text, measures=options.measures) if text else None
        for text in (options.portion, options.price)
    )
    if options.as_facts:
        return {"facts": test.facts()}, yielding.facts_lines(test)
    lines = _printed(yielding.yield_sections(test, portion, price))
    return yield_documents.yield_document(test, portion, price), lines


COMMANDS = {
    "completion": _completion,
    "new": _new,
    "check": _check,
    "foods": _foods,
    "scale": _scale,
    "page": _page,
    "buy": _buy,
    "shops": _shops,
    "cost": _cost,
    "price": _price,
    "spend": _spend,
    "break-even": _break_even,
    "swap": _swap,
    "make-or-buy": _make_or_buy,
    "basket": _basket,
    "curve": _curve,
    "why": _why,
    "convert": _convert,
    "measure": _measure,
    "loads": _loads,
    "read": _read,
    "yield": _yield,
    "refresh": keeping.refresh_command,
    "sheet": keeping.sheet_command,
    "sheet-difference": keeping.difference_command,
    "write": writing.write_command,
}
