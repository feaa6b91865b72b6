"""The arguments of the command line."""

from __future__ import annotations

import argparse
import sys
from typing import TYPE_CHECKING

from scalepan_command import argument_groups as groups
from scalepan_command.parsers import (
    ALL_COMMANDS,
    CommandParser,
    TopParser,
    nearest,
    refuse_rest,
)

if TYPE_CHECKING:
    from collections.abc import Sequence

_MEASURES = ("metric", "us", "imperial", "au")


def options_of(words: Sequence[str]) -> argparse.Namespace:
    """The options of a command line; ``command`` among them is the name of one, or None.

    A call for help ends the process with 0, and a wrong command line with 2.
    """
    # Both may stand before the command or behind it.
    flags = words[: words.index("--")] if "--" in words else words
    as_json = "--json" in flags
    top = parser(as_json=as_json)
    named = next((word for word in words if not word.startswith("-")), None)
    if named is not None and named not in top.texts:
        hint = nearest(named, top.texts) or ALL_COMMANDS
        top.refuse(f'no command is called "{named}"', hint=hint)
    if named is not None:
        top.commands[named].words = flags
    options, rest = top.parse_known_args(words)
    if rest:
        refuse_rest(top, options.command, rest)
    if options.command is None and not options.version:
        top.print_help(sys.stderr)
        top.exit(2)
    _expect_one_reader(top, options)
    options.json, options.debug = as_json, "--debug" in flags
    return options


def _expect_one_reader(top: TopParser, options: argparse.Namespace) -> None:
    readers = [
        name
        for name, value in vars(options).items()
        for path in (value if name == "prices" and value else [value])
        if path == "-"
    ]
    if len(readers) > 1:
        message = f"standard input is read once, but {' and '.join(readers[:2])} both name it"
        top.refuse(message, place="-", hint="name a file for one of them")


def parser(*, as_json: bool = False) -> TopParser:
    """The parser; ``as_json`` has it tell what is wrong as one object."""
    top = TopParser(prog="scalepan", allow_abbrev=False)
    top.as_json = as_json
    top.add_argument("--version", action="store_true", help="of Scalepan")
    _add_to_all(top)
    commands = top.add_subparsers(dest="command", metavar="command", parser_class=CommandParser)
    _add_beginning(commands)
    _add_recipe_commands(commands)
    _add_choices(commands)
    _add_basket(commands)
    _add_convert(commands)
    _add_measure(commands)
    _add_loads(commands)
    _add_read(commands)
    _add_foods(commands)
    _add_yield(commands)
    _add_sheets(commands)
    _add_write(commands)
    for command in top.commands.values():
        command.as_json = as_json
    return top


def _add_to_all(command: argparse.ArgumentParser) -> None:
    command.add_argument("--json", action="store_true", help="one JSON document, exact figures")
    command.add_argument(
        "--debug", action="store_true", help="also how the program came to an error"
    )


_Commands = argparse._SubParsersAction


def _command(commands: _Commands[CommandParser], name: str, text: str) -> CommandParser:
    command = commands.add_parser(name, help=text, description=text, allow_abbrev=False)
    _add_to_all(command)
    return command


def _add_beginning(commands: _Commands[CommandParser]) -> None:
    new = _command(commands, "new", "Recipes, prices and facts to start from, in a folder.")
    new.add_argument("folder", metavar="FOLDER", nargs="?", default=".", help="(this one)")
    check = _command(commands, "check", "Everything doubtful in recipes and price books.")
    check.add_argument(
        "paths", metavar="PATH", nargs="*", default=["."], help="folders or files (this folder)"
    )
    text = "A script that completes this command in a shell."
    completion = _command(commands, "completion", text)
    completion.add_argument("shell", choices=("bash", "zsh", "fish"), help="the shell it is for")


def _add_recipe_commands(commands: _Commands[CommandParser]) -> None:
    scale = _command(commands, "scale", "The amounts at another size.")
    _recipe(scale, prices=False)
    groups.add_size(scale)
    _sets(scale)
    page = _command(commands, "page", "All that another kitchen needs, on one page.")
    _recipe(page, prices=False)
    groups.add_size(page)
    _sets(page)
    groups.add_page(page)
    buy = _command(commands, "buy", "The whole packs to buy.")
    _recipe(buy, prices=True)
    groups.add_size(buy)
    groups.add_page(buy)
    shops = _command(commands, "shops", "The same dish bought at each shop alone, and at all.")
    _recipe(shops, prices=True)
    groups.add_size(shops)
    cost = _command(commands, "cost", "Amounts, packs, and the four costs.")
    _recipe(cost, prices=True)
    groups.add_size(cost)
    cost.add_argument("--save", metavar="FILE", help="keep the costing with all it goes by (TOML)")
    groups.add_page(cost)
    price = _command(commands, "price", "What a portion sells for at a food-cost percentage.")
    _recipe(price, prices=True)
    groups.add_size(price)
    price.add_argument(
        "--food-cost", required=True, metavar="SHARE", help='of the price without tax, as "30 %%"'
    )
    price.add_argument("--tax", default="0", metavar="SHARE", help='on top of it, as "7 %%"')
    price.add_argument(
        "--ending", type=groups.number, metavar="N", help="raise to the next such price, as 0.90"
    )
    price.add_argument(
        "--ending-step",
        type=groups.number,
        default=1,
        metavar="N",
        help="from one such price to the next: 100 with an ending of 80 (1 if left out)",
    )
    spend = _command(commands, "spend", "How many portions a spend allows, and what drives it.")
    _recipe(spend, prices=True)
    asked = spend.add_mutually_exclusive_group(required=True)
    asked.add_argument("--most", metavar="MONEY", help='to spend, as "50 EUR"')
    asked.add_argument(
        "--portions", type=groups.number, metavar="N", help="the least spend for so many"
    )
    spend.add_argument(
        "--more", default="10 %", metavar="SHARE", help='more of each item, as "10 %%" (default)'
    )
    curve = _command(commands, "curve", "The costs over a range of portions.")
    _recipe(curve, prices=True)
    curve.add_argument(
        "--portions",
        required=True,
        type=groups.range_of_portions,
        metavar="FROM:TO",
        help="first and last number, as 1:60",
    )
    curve.add_argument("--plot", metavar="FILE", help="also draw it (png, svg or pdf)")
    why = _command(commands, "why", "How a figure came about.")
    _recipe(why, prices=True, cell=True)
    why.add_argument(
        "--depth",
        type=int,
        metavar="N",
        help="so many levels below FIGURE (all; of a large tree 3 if left out)",
    )
    groups.add_size(why)


def _add_choices(commands: _Commands[CommandParser]) -> None:
    even = _command(commands, "break-even", "The price at which each pack is the better buy.")
    _recipe(even, prices=True)
    even.add_argument("item", metavar="ITEM", help="an item or a line, such as leeks")
    groups.add_size(even)
    swap = _command(commands, "swap", "What other lines in place of one would save.")
    _recipe(swap, prices=True)
    swap.add_argument(
        "--swap",
        required=True,
        action="append",
        metavar="LINE=LINES",
        help='for the written size, as "cream = 150 g milk; 50 g butter"; may repeat',
    )
    swap.add_argument(
        "--rank",
        choices=("till", "used", "thrown", "borne"),
        default="till",
        help="by what is saved of this cost (till)",
    )
    groups.add_size(swap)
    ready = _command(commands, "make-or-buy", "A base made, beside an item bought ready.")
    _recipe(ready, prices=True)
    ready.add_argument("base", metavar="BASE", help="as the dish names it")
    ready.add_argument("item", metavar="ITEM", help="an item of the price book")
    groups.add_size(ready)


def _recipe(command: argparse.ArgumentParser, *, prices: bool, cell: bool = False) -> None:
    command.add_argument("recipe", metavar="RECIPE", help="a recipe file (TOML)")
    _facts(command)
    if cell:
        command.add_argument("cell", metavar="FIGURE", help="such as leeks.buy, till or borne")
    if prices:
        _prices(command)


def _price_rows(command: argparse.ArgumentParser, *, required: bool) -> None:
    command.add_argument(
        "--prices",
        required=required,
        action="append",
        metavar="FILE",
        help="a price book (CSV or TOML); may repeat: all rows of all books count",
    )
    command.add_argument("--currency", metavar="CODE", help="of rows that name none, as EUR")
    command.add_argument("--date", default="", metavar="DAY", help="prices of that day, 2026-11-24")
    command.add_argument("--shop", action="append", default=[], help="only this shop; may repeat")


def _prices(command: argparse.ArgumentParser) -> None:
    _price_rows(command, required=True)
    command.add_argument("--on-hand", metavar="FILE", help="a stock list (CSV or TOML), used first")
    command.add_argument(
        "--without-tax", action="store_true", help="count prices without their tax"
    )
    command.add_argument(
        "--strict", action="store_true", help="an unknown edible share is an error"
    )


def _add_basket(commands: _Commands[CommandParser]) -> None:
    basket = _command(commands, "basket", "Several dishes, each at its size, bought together.")
    basket.add_argument("dishes", metavar="DISHES", help="a file of dishes and sizes (TOML)")
    basket.add_argument(
        "--measures", choices=_MEASURES, help="which pint and fluid ounce the prices mean"
    )
    basket.add_argument(
        "--why", metavar="FIGURE", help="tell only how it came about, as pea_soup.leeks.packs"
    )
    _facts(basket)
    _prices(basket)
    groups.add_page(basket)


def _add_convert(commands: _Commands[CommandParser]) -> None:
    convert = _command(commands, "convert", "An amount in another unit.")
    convert.add_argument("amount", metavar="AMOUNT", help='such as "2 cup"')
    convert.add_argument("unit", metavar="UNIT", help="such as g, kg AP, piece")
    convert.add_argument("--food", help="needed between weight, volume and count")
    convert.add_argument("--measures", choices=_MEASURES, help="which cup and spoon are meant")
    convert.add_argument("--state", help="of a volume, such as chopped")
    convert.add_argument("--size", help="of a count, such as large")
    convert.add_argument("--preparation", help="of a share, such as peeled")
    convert.add_argument("--region", help="whose names are meant, such as GB or US")
    _facts(convert)


def _add_measure(commands: _Commands[CommandParser]) -> None:
    text = "An amount as spoons, cups, jugs, scales, dishers or ladles give it."
    measure = _command(commands, "measure", text)
    measure.add_argument("amount", metavar="AMOUNT", help='such as "47/12 tbsp" or "172.3 g"')
    measure.add_argument(
        "set", metavar="SET", help='such as "us spoons and cups"; all are named below'
    )
    measure.takes_sets = True
    measure.add_argument("--measures", choices=_MEASURES, help="which spoon AMOUNT means")
    measure.add_argument("--food", help="needed from a weight to a volume or back")
    measure.add_argument("--state", help="of the food's volume, such as chopped")
    measure.add_argument("--sets", metavar="FILE", help="sets of your own (CSV)")
    measure.add_argument("--at-most", type=int, metavar="N", help="at most so many fills")
    _within(measure)
    _facts(measure)


def _add_loads(commands: _Commands[CommandParser]) -> None:
    loads = _command(commands, "loads", "A total shared out into as few loads as hold it.")
    loads.add_argument("total", metavar="TOTAL", help='such as "13 kg" or "52"')
    loads.add_argument(
        "capacity", metavar="CAPACITY", help='of one load, such as "4 kg", or a pan: "GN 1/1 65"'
    )
    loads.add_argument("--equal", action="store_true", help="all alike, none short")
    loads.add_argument("--time", metavar="TIME", help='that one load takes, as "30 min"')
    loads.add_argument("--measures", choices=_MEASURES, help="which cup and pint are meant")


def _add_read(commands: _Commands[CommandParser]) -> None:
    read = _command(commands, "read", "What a line of a recipe says.")
    read.add_argument("line", metavar="LINE", help='such as "juice of 2 lemons"')
    read.add_argument("--measures", choices=_MEASURES, help="which cup and spoon are meant")
    read.add_argument(
        "--decimal", choices=("point", "comma"), default="point", help="as numbers are written"
    )


def _sets(command: CommandParser) -> None:
    command.takes_sets = True
    command.add_argument("--volumes", metavar="SET", help="tell volumes by a set of measures")
    command.add_argument("--weights", metavar="SET", help="tell weights by a set of measures")
    _within(command)


def _add_yield(commands: _Commands[CommandParser]) -> None:
    test = _command(commands, "yield", "What trials of trimming and cooking say together.")
    test.add_argument("test", metavar="FILE", help="a yield test (CSV), one weight a row")
    test.add_argument("--portion", metavar="SIZE", help='such as "150 g" or "5 oz cooked"')
    test.add_argument("--price", metavar="PRICE", help='of what is bought now, as "7.00 USD/lb"')
    test.add_argument(
        "--as-facts", action="store_true", help="print its shares as a file that --facts takes"
    )
    test.add_argument("--measures", choices=_MEASURES, help="which pint and fluid ounce are meant")


def _add_foods(commands: _Commands[CommandParser]) -> None:
    foods = _command(commands, "foods", "The foods there are, their names, and the facts on them.")
    foods.add_argument(
        "words", metavar="WORD", nargs="*", help="only foods with such a name, as leek (all)"
    )
    _facts(foods)


def _add_sheets(commands: _Commands[CommandParser]) -> None:
    sheet = _command(commands, "sheet", "The cells of a saved sheet or costing with their figures.")
    sheet.add_argument("sheet", metavar="FILE", help="a saved sheet or costing (TOML)")
    sheet.add_argument("cell", metavar="CELL", nargs="?", help="only this one, as leeks.buy")
    sheet.add_argument("--why", action="store_true", help="how the figure of CELL came about")
    text = "A saved costing by the prices and facts of today: what moved, as a list."
    refresh = _command(commands, "refresh", text)
    refresh.add_argument("costing", metavar="FILE", help="a saved costing (TOML)")
    _price_rows(refresh, required=False)
    _facts(refresh)
    refresh.add_argument("--save", metavar="FILE", help="keep the costing as it is now")
    text = "What differs between two saved sheets or costings, as a list."
    difference = _command(commands, "sheet-difference", text)
    difference.add_argument("old", metavar="OLD", help="a saved sheet or costing (TOML)")
    difference.add_argument("new", metavar="NEW", help="the same, as it is now")


def _within(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--within",
        metavar="SHARE",
        help='only the largest measures that come so near, as "1 %%"; of recipes 2 %% if left out',
    )


def _facts(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--facts", metavar="FILE", help="facts of your own (CSV), laid over the bundled ones"
    )
    command.add_argument(
        "--foods", metavar="FILE", help="foods that the catalogue has not (CSV), for such facts"
    )


def _add_write(commands: _Commands[CommandParser]) -> None:
    text = (
        "One file out of another, by the endings of their names: a page with a recipe (.html, "
        ".jsonld) to .toml, a recipe to .jsonld, a price book to .csv or .toml, and these and kept "
        "costings to .xlsx or .json."
    )
    write = _command(commands, "write", text)
    write.add_argument("source", help="a page, a recipe, a price book or a kept costing")
    write.add_argument("target", help="its name says the form")
    write.add_argument("--name", help="of the recipe meant, where a page has several")
    write.add_argument("--serves", help="portions, where a page does not say one number")
    write.add_argument("--measures", choices=_MEASURES, help="which cup and spoon are meant")
    write.add_argument("--decimal", choices=("point", "comma"), default="point")
    write.add_argument("--region", default="", help="whose names of foods are meant, GB")
    write.add_argument(
        "--draft", action="store_true", help="lines of a page that cannot be read become remarks"
    )
    write.add_argument("--portions", help="the size that a page or a workbook shows")
    write.add_argument("--overwrite", action="store_true", help="the target, if it is there")
    _facts(write)
