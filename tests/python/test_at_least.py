"""Figures that lines without a price are missing from say so wherever they are told."""

from __future__ import annotations

from pathlib import Path

import pytest
import scalepan
from scalepan_command.start import main

SOUP = """\
name = "Barley soup"
serves = 4
lines = ["500 g leeks", "240 g chickpeas, drained", "200 g pearl barley"]
"""
# Invented. Pearl barley and butter beans have no price.
PRICES = """\
item,sold_as,pack,price,currency,keeps
leeks,AP,1 kg,2.10,EUR,no
chickpeas,drained,400 g tin (240 g drained),0.60,EUR,no
rice,AP,500 g,1.50,EUR,yes
"""
BOOK = scalepan.parse_prices(PRICES, file="prices.csv")
POT = scalepan.parse_recipe(SOUP, file="soup.toml")
COSTING = scalepan.cost(POT, BOOK)


def rows_of(text: str, *starts: str) -> list[list[str]]:
    """The cells of the table rows that begin so, cut where two spaces stand."""
    lines = [line.strip() for line in text.splitlines() if line.strip().startswith(starts)]
    return [[cell.strip() for cell in line.split("  ") if cell.strip()] for line in lines]


def test_a_costing_is_printed_as_a_notebook_shows_it() -> None:
    printed = str(COSTING)
    assert printed == COSTING._repr_mimebundle_()["text/plain"]
    # One kilogram of leeks and one tin: 2.10 + 0.60.
    assert "  till at least 2.70 EUR" in printed
    assert rows_of(printed, "till  ")[0][:3] == ["till", "at least 2.70", "at least 0.68"]
    assert rows_of(printed, "closing stock")[0][:2] == ["closing stock", "at least 0.00"]


def test_a_basket_says_so_of_each_dish() -> None:
    all_priced = scalepan.parse_recipe('name = "Leeks"\nserves = 1\nlines = ["1 kg leeks"]')
    printed = str(scalepan.basket([POT, all_priced], BOOK))
    unpriced, priced = rows_of(printed, "Barley soup  ", "Leeks  ")
    # 1.5 kg of leeks in two packs: a third for the soup, 4.20 / 3, beside its tin of 0.60.
    assert unpriced[2:6] == ["at least 2.00", "at least 2.00", "at least 0.50", "at least 2.70"]
    assert priced[2:6] == ["2.80", "2.80", "2.80", "2.10"]


def test_a_curve_says_so_in_its_title() -> None:
    printed = str(COSTING.curve(range(1, 4)))
    assert printed.startswith("Costs by portions, at least, in EUR\n")
    assert "\nLeast a portion, of what has a price\n" in printed


@pytest.mark.parametrize(
    ("line", "other", "till", "saved"),
    [
        ("chickpeas", "240 g butter beans, drained", "at least 2.10", "at most 0.60"),
        ("chickpeas", "200 g rice", "at least 3.60", "-0.90"),
        ("pearl_barley", "200 g rice", "4.20", "at least -1.50"),
        ("pearl_barley", "200 g bulgur", "at least 2.70", "not known"),
    ],
)
def test_a_swap_tells_which_way_it_is_open(
    line: str, other: str, till: str, saved: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "soup.toml").write_text(SOUP, encoding="utf-8")
    (tmp_path / "prices.csv").write_text(PRICES, encoding="utf-8")
    files = [str(tmp_path / "soup.toml"), "--prices", str(tmp_path / "prices.csv")]
    assert main(["swap", *files, "--swap", f"{line} = {other}"]) == 0
    as_it_is, swapped, *_ = rows_of(capsys.readouterr().out, "as it is", f"{line}  ")
    assert as_it_is == ["as it is", "at least 2.70", "at least 2.70"]
    assert swapped[2:4] == [till, saved]


def test_a_base_without_a_price_says_so_where_it_is_made_or_bought() -> None:
    dish = scalepan.parse_recipe("""
name = "Bake"
serves = 4
lines = ["1 kg leeks", "all of the sauce"]
[bases.sauce]
name = "Sauce"
serves = 4
makes = "300 g"
lines = ["300 g rice", "20 g butter"]
""")
    found = scalepan.cost(dish, BOOK).make_or_buy("sauce", "leeks")
    made, bought = rows_of(str(found), "made  ", "bought  ")
    # 300 g of rice from a pack of 500 g at 1.50, which keeps: 1.50 * 300 / 500 = 0.90.
    assert made[1:3] == ["at least 1.50", "at least 0.90"]
    # 1.3 kg of leeks in two packs, of which 300 g are for the sauce: 4.20 * 300 / 1300.
    assert bought[1] == "0.97"
    (less,) = rows_of(str(found), "bought less made")
    assert less[1].startswith("at most ")


def test_the_exact_figure_beside_a_rounded_one_says_so_too() -> None:
    third = scalepan.parse_recipe(
        'name = "Pot"\nserves = 3\nlines = ["1 kg leeks", "1 kg rice", "1 kg butter"]'
    )
    costing = scalepan.cost(third, scalepan.parse_prices(PRICES.replace("2.10", "2.00")))
    # (2 + 2 * 1.50) / 3
    assert 'title="exactly at least 1 2/3 EUR"' in costing._repr_mimebundle_()["text/html"]
