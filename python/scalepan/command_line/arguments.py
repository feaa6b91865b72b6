"""The arguments of the command line."""

from __future__ import annotations

import argparse

from scalepan import __version__
from scalepan.command_line import page_files, sizing, writing
from scalepan.measure_sets import measure_sets

_EXAMPLES = """examples:
  scalepan scale soup.toml --portions 40
  scalepan page  soup.toml --portions 40 --volumes "us spoons and cups"
  scalepan buy   soup.toml --prices prices.csv --portions 40
  scalepan page  soup.toml --portions 40 --html soup.html --paper Letter
  scalepan buy   soup.toml --prices prices.csv --portions 40 --on-hand larder.csv
  scalepan shops soup.toml --prices prices.csv --portions 40
  scalepan cost  soup.toml --prices prices.csv --portions 40
  scalepan price soup.toml --prices prices.csv --food-cost "30 %" --tax "7 %" --ending 0.90
  scalepan spend soup.toml --prices prices.csv --most "50 EUR"
  scalepan spend soup.toml --prices prices.csv --portions 40
  scalepan break-even soup.toml leeks --prices prices.csv --portions 40
  scalepan swap  soup.toml --prices prices.csv --swap "cream = 200 g sour cream"
  scalepan make-or-buy soup.toml stock "vegetable stock" --prices prices.csv
  scalepan basket week.toml --prices prices.csv
  scalepan curve soup.toml --prices prices.csv --portions 1:60 --plot curve.png
  scalepan why   soup.toml leeks.buy --prices prices.csv --portions 40
  scalepan convert "2 cup" g --food "granulated sugar" --measures us
  scalepan measure "47/12 tbsp" "us spoons and cups" --measures us
  scalepan loads "13 kg" "4 kg" --time "30 min"
  scalepan read "1 lb 4 oz carrots, peeled"
  scalepan yield rump.csv --portion "150 g" --price "9.80 EUR/kg"
  scalepan cost  soup.toml --prices prices.csv --portions 40 --save soup_at_forty.toml
  scalepan refresh soup_at_forty.toml --prices prices_of_today.csv
  scalepan sheet night.toml leeks.buy --why
  scalepan sheet-difference night.toml night_at_sixty.toml
  scalepan write page.html soup.toml --measures us

exit: 0 done, 1 the input is wrong (one clear error), 2 the command line is wrong"""

_MEASURES = ("metric", "us", "imperial", "au")


MOST_POINTS = 100_000


def range_of_portions(text: str) -> range:
    """An argument such as ``1:60``, both ends counted."""
    ends = [sizing.number(end) for end in text.split(":")]
    if len(ends) != 2 or any(end.denominator != 1 for end in ends):
        raise argparse.ArgumentTypeError("write first and last number, as 1:60")
    first, last = (int(end) for end in ends)
    if first < 1 or last < first or last - first >= MOST_POINTS:
        message = f"a range goes up from 1 or more, by at most {MOST_POINTS} points, as 1:60"
        raise argparse.ArgumentTypeError(message)
    return range(first, last + 1)


def parser() -> argparse.ArgumentParser:
    """The parser; ``command`` of its result is the name of one."""
    top = argparse.ArgumentParser(
        prog="scalepan",
        description="Scale a recipe, buy it in whole packs, and cost it, on exact numbers.",
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    top.add_argument("--version", action="version", version=f"scalepan {__version__}")
    commands = top.add_subparsers(
        dest="command", required=True, metavar="command", parser_class=_Command
    )
    _add_recipe_commands(commands)
    _add_choices(commands)
    _add_basket(commands)
    _add_convert(commands)
    _add_measure(commands)
    _add_loads(commands)
    _add_read(commands)
    _add_yield(commands)
    _add_sheets(commands)
    writing.add_arguments(_command(commands, "write", writing.HELP))
    return top


class _Command(argparse.ArgumentParser):
    """A command whose help names the sets of measures, where it takes one."""

    takes_sets = False

    def format_help(self) -> str:
        if self.takes_sets:
            self.epilog = "sets of measures: " + "; ".join(measure_sets())
        return super().format_help()


_Commands = argparse._SubParsersAction


def _command(commands: _Commands[_Command], name: str, text: str) -> _Command:
    command = commands.add_parser(name, help=text, description=text, allow_abbrev=False)
    command.add_argument("--json", action="store_true", help="one JSON document, exact figures")
    return command


def _add_recipe_commands(commands: _Commands[_Command]) -> None:
    scale = _command(commands, "scale", "The amounts at another size.")
    _recipe(scale, prices=False)
    sizing.add_arguments(scale)
    _sets(scale)
    page = _command(commands, "page", "All that another kitchen needs, on one page.")
    _recipe(page, prices=False)
    sizing.add_arguments(page)
    _sets(page)
    page_files.add_arguments(page)
    buy = _command(commands, "buy", "The whole packs to buy.")
    _recipe(buy, prices=True)
    sizing.add_arguments(buy)
    page_files.add_arguments(buy)
    shops = _command(commands, "shops", "The same dish bought at each shop alone, and at all.")
    _recipe(shops, prices=True)
    sizing.add_arguments(shops)
    cost = _command(commands, "cost", "Amounts, packs, and the four costs.")
    _recipe(cost, prices=True)
    sizing.add_arguments(cost)
    cost.add_argument("--save", metavar="FILE", help="keep the costing with all it goes by (TOML)")
    page_files.add_arguments(cost)
    price = _command(commands, "price", "What a portion sells for at a food-cost percentage.")
    _recipe(price, prices=True)
    sizing.add_arguments(price)
    price.add_argument(
        "--food-cost", required=True, metavar="SHARE", help='of the price without tax, as "30 %%"'
    )
    price.add_argument("--tax", default="0", metavar="SHARE", help='on top of it, as "7 %%"')
    price.add_argument(
        "--ending", type=sizing.number, metavar="N", help="raise to the next such price, as 0.90"
    )
    price.add_argument(
        "--ending-step",
        type=sizing.number,
        default=1,
        metavar="N",
        help="from one such price to the next: 100 with an ending of 80 (1 if left out)",
    )
    spend = _command(commands, "spend", "How many portions a spend allows, and what drives it.")
    _recipe(spend, prices=True)
    asked = spend.add_mutually_exclusive_group(required=True)
    asked.add_argument("--most", metavar="MONEY", help='to spend, as "50 EUR"')
    asked.add_argument(
        "--portions", type=sizing.number, metavar="N", help="the least spend for so many"
    )
    spend.add_argument(
        "--more", default="10 %", metavar="SHARE", help='more of each item, as "10 %%" (default)'
    )
    curve = _command(commands, "curve", "The costs over a range of portions.")
    _recipe(curve, prices=True)
    curve.add_argument(
        "--portions",
        required=True,
        type=range_of_portions,
        metavar="FROM:TO",
        help="first and last number, as 1:60",
    )
    curve.add_argument("--plot", metavar="FILE", help="also draw it (png, svg or pdf)")
    why = _command(commands, "why", "How a figure came about.")
    _recipe(why, prices=True, cell=True)
    sizing.add_arguments(why)


def _add_choices(commands: _Commands[_Command]) -> None:
    even = _command(commands, "break-even", "The price at which each pack is the better buy.")
    _recipe(even, prices=True)
    even.add_argument("item", metavar="ITEM", help="an item or a line, such as leeks")
    sizing.add_arguments(even)
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
    sizing.add_arguments(swap)
    ready = _command(commands, "make-or-buy", "A base made, beside an item bought ready.")
    _recipe(ready, prices=True)
    ready.add_argument("base", metavar="BASE", help="as the dish names it")
    ready.add_argument("item", metavar="ITEM", help="an item of the price book")
    sizing.add_arguments(ready)


def _recipe(command: argparse.ArgumentParser, *, prices: bool, cell: bool = False) -> None:
    command.add_argument("recipe", metavar="RECIPE", help="a recipe file (TOML)")
    _facts(command)
    if cell:
        command.add_argument("cell", metavar="FIGURE", help="such as leeks.buy, till or borne")
    if prices:
        _prices(command)


def _price_rows(command: argparse.ArgumentParser, *, required: bool) -> None:
    command.add_argument("--prices", required=required, metavar="FILE", help="a price book (CSV)")
    command.add_argument("--currency", metavar="CODE", help="of rows that name none, as EUR")
    command.add_argument("--date", default="", metavar="DAY", help="prices of that day, 2026-11-24")
    command.add_argument("--shop", action="append", default=[], help="only this shop; may repeat")


def _prices(command: argparse.ArgumentParser) -> None:
    _price_rows(command, required=True)
    command.add_argument("--on-hand", metavar="FILE", help="a stock list (CSV), used before buying")
    command.add_argument(
        "--without-tax", action="store_true", help="count prices without their tax"
    )
    command.add_argument(
        "--strict", action="store_true", help="an unknown edible share is an error"
    )


def _add_basket(commands: _Commands[_Command]) -> None:
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
    page_files.add_arguments(basket)


def _add_convert(commands: _Commands[_Command]) -> None:
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


def _add_measure(commands: _Commands[_Command]) -> None:
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


def _add_loads(commands: _Commands[_Command]) -> None:
    loads = _command(commands, "loads", "A total shared out into as few loads as hold it.")
    loads.add_argument("total", metavar="TOTAL", help='such as "13 kg" or "52"')
    loads.add_argument(
        "capacity", metavar="CAPACITY", help='of one load, such as "4 kg", or a pan: "GN 1/1 65"'
    )
    loads.add_argument("--equal", action="store_true", help="all alike, none short")
    loads.add_argument("--time", metavar="TIME", help='that one load takes, as "30 min"')
    loads.add_argument("--measures", choices=_MEASURES, help="which cup and pint are meant")


def _add_read(commands: _Commands[_Command]) -> None:
    read = _command(commands, "read", "What a line of a recipe says.")
    read.add_argument("line", metavar="LINE", help='such as "juice of 2 lemons"')
    read.add_argument("--measures", choices=_MEASURES, help="which cup and spoon are meant")
    read.add_argument(
        "--decimal", choices=("point", "comma"), default="point", help="as numbers are written"
    )


def _sets(command: _Command) -> None:
    command.takes_sets = True
    command.add_argument("--volumes", metavar="SET", help="tell volumes by a set of measures")
    command.add_argument("--weights", metavar="SET", help="tell weights by a set of measures")
    _within(command)


def _add_yield(commands: _Commands[_Command]) -> None:
    test = _command(commands, "yield", "What trials of trimming and cooking say together.")
    test.add_argument("test", metavar="FILE", help="a yield test (CSV), one weight a row")
    test.add_argument("--portion", metavar="SIZE", help='such as "150 g" or "5 oz cooked"')
    test.add_argument("--price", metavar="PRICE", help='of what is bought now, as "7.00 USD/lb"')
    test.add_argument(
        "--as-facts", action="store_true", help="print its shares as a file that --facts takes"
    )
    test.add_argument("--measures", choices=_MEASURES, help="which pint and fluid ounce are meant")


def _add_sheets(commands: _Commands[_Command]) -> None:
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
    text = "What differs between two saved sheets, as a list of changes."
    difference = _command(commands, "sheet-difference", text)
    difference.add_argument("old", metavar="OLD", help="a saved sheet (TOML)")
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
