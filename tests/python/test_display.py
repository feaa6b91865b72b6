"""Displays show the object's own figures, exactly. All prices are invented."""

from __future__ import annotations

import subprocess
import sys
from fractions import Fraction

import pytest
import scalepan
from displayed import displayed, recipe, sheet
from page_reader import Cell, bundle_of, page_of

KINDS = displayed()
COSTS = ("till", "used", "thrown", "borne")


def texts(row: list[Cell]) -> list[str]:
    return [cell.text for cell in row]


def minor_units(amount: Fraction) -> str:
    """Rounded half up to cents, by whole numbers alone."""
    cents = (amount * 200 + 1) // 2
    return f"{cents // 100}.{cents % 100:02d}"


def exactly(told: str, amount: scalepan.Quantity) -> str:
    """What a cell says when one points at it: nothing where the figure is not rounded."""
    return "" if Fraction(told) == amount.value else f"exactly {amount}"


@pytest.fixture
def costing() -> scalepan.Costing:
    made = KINDS["costing"]
    assert isinstance(made, scalepan.Costing)
    return made


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_html_and_plain_text(kind: str) -> None:
    assert set(bundle_of(KINDS[kind])) == {"text/html", "text/plain"}
    assert page_of(KINDS[kind]).text.strip()


def test_a_front_end_asks_for_what_it_shows() -> None:
    amount = scalepan.quantity("1/3 kg")
    assert set(amount._repr_mimebundle_(include=["text/plain"])) == {"text/plain"}
    assert set(amount._repr_mimebundle_(exclude=["text/plain"])) == {"text/html"}


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ("4/7 kg EP", "≈ 571.4 g EP exactly 4/7 kg EP"),
        ("1/3 kg EP", "333 1/3 g EP = 1/3 kg EP"),
        ("3 kg", "3 kg"),
        ("0.44 EP/AP", "0.44 EP/AP"),
        ("10/3 EUR", "3.33 EUR exactly 3 1/3 EUR"),
        ("2.5 EUR", "2.50 EUR"),
    ],
)
def test_a_quantity_is_told_with_the_exact_one_beside_it(written: str, shown: str) -> None:
    amount = scalepan.quantity(written)
    assert page_of(amount).text == shown
    assert bundle_of(amount)["text/plain"] == repr(amount)


def test_a_costing_shows_what_it_costs_and_the_exact_sums(costing: scalepan.Costing) -> None:
    (table,) = [t for t in page_of(costing).tables if t[0][0].text == "cost"]
    assert texts(table[0]) == ["cost", "EUR", "a portion", "meaning"]
    for row, name in zip(table[1:5], COSTS, strict=True):
        whole = getattr(costing, name)
        portion = whole * Fraction(1, 40)
        told = [minor_units(whole.value), minor_units(portion.value)]
        assert texts(row)[:3] == [name, *told]
        assert [cell.exact for cell in row[1:3]] == [
            exactly(told[0], whole),
            exactly(told[1], portion),
        ]
        assert [cell.attributes.get("class") for cell in row] == [None, "n", "n", None]


def test_a_costing_shows_what_to_buy(costing: scalepan.Costing) -> None:
    (table,) = [t for t in page_of(costing).tables if t[0][0].text == "item"]
    for row, bought in zip(table[1:], costing.shopping, strict=True):
        packs = " + ".join(f"{count} x {pack}" for count, pack in bought.packs)
        assert texts(row)[0::2][:2] == [bought.item, packs]
        assert row[3].text == minor_units(bought.price.value)
        assert row[1].text.endswith(f" {bought.need.stage}")
        if row[1].text.startswith("≈"):
            assert row[1].exact == f"exactly {bought.need}"
    # 8 kg edible of 0.72: USDA SR28 11957, refuse 28 %.
    assert texts(table[1])[:2] == ["fennel", "≈ 11.11 kg AP"]
    assert table[1][1].exact == f"exactly {scalepan.quantity(Fraction(8 * 100, 72), 'kg AP')}"


def test_cautions_and_what_to_check_are_part_of_it(costing: scalepan.Costing) -> None:
    for shown in (costing, costing.recipe):
        page = page_of(shown)
        for text, source, _ in shown.cautions if shown is costing else []:
            assert f"{text} [{source}]" in page.text
        for note in costing.to_check:
            assert note in page.text
        assert "no figure here shows that a dish is safe" in page.text
        assert ("div", {"class": "care", "role": "note"}) in page.elements


def test_a_curve_has_every_point(costing: scalepan.Costing) -> None:
    curve = costing.curve(range(1, 13))
    points = page_of(curve).tables[0]
    assert len(points) == 13
    for place, row in enumerate(points[1:]):
        amounts = [curve.till[place], curve.used[place], curve.thrown[place], curve.borne[place]]
        each = [amounts[0] / (place + 1), amounts[3] / (place + 1)]
        assert texts(row) == [str(place + 1), *(minor_units(a) for a in (*amounts, *each))]
        exact = [exactly(minor_units(a), scalepan.quantity(a, "EUR")) for a in (*amounts, *each)]
        assert [cell.exact for cell in row[1:]] == exact


def test_a_sheet_has_its_cells_by_name_and_its_rows() -> None:
    cells, trays = page_of(sheet()).tables
    assert texts(cells[0]) == ["cell", "figure", "formula"]
    names = [row[0].text for row in cells[1:]]
    assert names == sorted(names)
    rows = {row[0].text: row for row in cells[1:]}
    buy = rows["fennel.buy"]
    assert texts(buy) == ["fennel.buy", "≈ 11.11 kg AP", "fennel.need / fennel.edible"]
    assert buy[1].exact == f"exactly {scalepan.quantity(Fraction(800, 72), 'kg AP')}"
    assert rows["share_of_spare"][1].text == "failed: share_of_spare:10: division by zero"
    assert texts(trays[0]) == ["trays", "weight", "price", "cost"]
    # 13/7 kg at 3.20 a kg, and 2 kg at 10/3.
    assert [row[3].exact for row in trays[1:]] == ["exactly 5 33/35 EUR", "exactly 6 2/3 EUR"]
    assert texts(trays[2]) == ["lower", "2 kg", "3 1/3 EUR/kg", "≈ 6.67 EUR"]


def test_variants_stand_side_by_side_with_what_they_change() -> None:
    figures = sheet("sixty")
    compared = figures.compare(["portions", "fennel.buy"])
    (table,) = page_of(compared).tables
    assert texts(table[0]) == ["", "as it is", "sixty"]
    assert texts(table[1]) == ["portions", "40", "60 (+20)"]
    now, then = Fraction(800, 72), Fraction(800, 68)
    assert table[2][2].exact == (
        f"exactly {scalepan.quantity(then, 'kg AP')} "
        f"({scalepan.quantity((then - now) * 1000, 'g AP')})"
    )


def test_a_sweep_has_a_row_a_value() -> None:
    (table,) = page_of(sheet().sweep("portions", range(10, 14), "trays_needed")).tables
    assert texts(table[0]) == ["portions", "trays_needed"]
    for place, row in enumerate(table[1:]):
        portions = 10 + place
        exact = Fraction(portions, 12)
        told = row[1].exact.removeprefix("exactly ") or row[1].text
        assert row[0].text == str(portions)
        assert scalepan.quantity(told).value == exact
    assert len(table) == 5


def test_a_sweep_says_how_it_was_worked_out_only_where_that_is_slow() -> None:
    swept = sheet().sweep("portions", range(10, 14), "trays_needed")
    assert swept.kernel == "in machine words"
    assert "Worked out" not in page_of(swept).text
    uneven = sheet().sweep("portions", [10, 11, 13], "trays_needed")
    told = "Worked out point by point: the values are not evenly spaced."
    assert told in page_of(uneven).text


def test_a_swap_is_shown_beside_the_dish_as_it_is(costing: scalepan.Costing) -> None:
    (swap,) = costing.swaps([("fennel", "700 g leeks, trimmed")])
    (table,) = page_of(swap).tables
    assert texts(table[1])[2:] == [minor_units(costing.till.value), "",
                                   minor_units(costing.borne.value), ""]  # fmt: skip
    assert texts(table[2])[2:4] == [
        f"at least {minor_units(swap.till.value)}",
        f"at most {minor_units(costing.till.value - swap.till.value)}",
    ]


def test_a_cover_function_shows_its_first_steps() -> None:
    # 12 steps of 1 kg to 2 EUR and nothing else: one pack more for each.
    (table,) = page_of(scalepan.cover_function([("1 kg", "2 EUR")])).tables
    assert [texts(row) for row in table[1:]] == [
        [f"{n} kg" if n else "0 g", f"{n + 1} kg", f"{n + 1} x 1 kg", f"{2 * n + 2}.00 EUR", "0 g"]
        for n in range(12)
    ]
    # How it is worked out concerns nobody who reads it; ``kernel`` has it.
    told = str(scalepan.cover_function([("1 kg", "2 EUR")])).splitlines()
    assert told[-1] == "  above 0 kg the covers repeat by 1 kg"


def test_a_bounded_cover_function_ends() -> None:
    packs = [scalepan.Purchase(size="1 kg", price="2 EUR", limit=2)]
    page = page_of(scalepan.cover_function(packs))
    assert len(page.tables[0]) == 3
    assert "no more than 2 kg can be bought" in page.text
    assert "and so on" not in page.text


def test_a_why_is_the_tree_of_the_core() -> None:
    why = sheet().explain("fennel.buy")
    page = page_of(why)
    assert ("div", {"class": "scalepan-why"}) in page.elements
    for part in (why, *why.parts):
        assert (part.name, "b") in [(text, tags[-1]) for text, tags in page.texts]
    assert bundle_of(why)["text/plain"] == str(why).rstrip("\n")


def test_an_error_that_was_caught_shows_place_hint_and_code() -> None:
    with pytest.raises(scalepan.NumberError) as caught:
        sheet().value("share_of_spare")
    page = page_of(caught.value)
    assert page.texts[0][0] == "division by zero"
    assert [texts(row) for row in page.tables[0]] == [
        ["where", "share_of_spare:10"],
        ["code", caught.value.code],
    ]


def test_a_dish_with_bases_shows_them_first() -> None:
    from displayed import with_base

    first, second = page_of(with_base()).tables
    assert texts(first[1])[0] == "24 g butter"
    assert texts(second[1])[0] == "700 g leeks, trimmed"


def test_headings_of_lines_head_their_rows() -> None:
    (table,) = page_of(recipe()).tables
    (head,) = [row for row in table if len(row) == 1]
    assert (head[0].text, head[0].attributes["colspan"]) == ("To serve:", "3")


def test_nothing_of_it_is_loaded_before_something_is_displayed() -> None:
    program = (
        "import sys, scalepan; q = scalepan.quantity('1 kg')\n"
        "print('scalepan.display' in sys.modules); q._repr_mimebundle_()\n"
        "print('scalepan.display' in sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout == "False\nTrue\n"


def test_what_has_no_display_is_refused() -> None:
    from scalepan.display import bundle

    with pytest.raises(TypeError, match=r"^dict has no display$"):
        bundle({})
