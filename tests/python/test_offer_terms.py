"""Terms of offers: what they come to by plain sums, and what is refused, to the letter."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan

HEAD = "item,sold_as,pack,price,currency,keeps,shop,date,offer,least,limit,tax,deposit\n"


def till(need: str, *rows: str, taxes: str = "with") -> Fraction:
    return costing(need, *rows, taxes=taxes).till.value


def costing(need: str, *rows: str, taxes: str = "with") -> scalepan.Costing:
    prices = scalepan.parse_prices(HEAD + "\n".join(rows) + "\n", file="p.csv")
    recipe = scalepan.parse_recipe(f'name = "Supper"\nserves = 1\nlines = ["{need}"]\n')
    return scalepan.cost(recipe, prices, taxes=taxes)


def row(
    pack: str, price: str, offer: str = "", least: str = "", limit: str = "", **other: str
) -> str:
    tax, deposit = other.get("tax", ""), other.get("deposit", "")
    return f"lentils,AP,{pack},{price},EUR,yes,,,{offer},{least},{limit},{tax},{deposit}"


@pytest.mark.parametrize(
    ("need", "offer", "expected"),
    [
        ("1.4 kg lentils", "3 for 2.40", "3.40"),  # 3 together and 1: 4 packs of 400 g
        ("1.2 kg lentils", "3 for 2.40", "2.40"),
        ("800 g lentils", "3 for 2.40", "2.00"),  # 2 at 1.00; 3 for 2.40 would be dearer
        ("800 g lentils", "3 for 1.90", "1.90"),  # 3 together are cheaper than 2
        ("2.4 kg lentils", "3 for the price of 2", "4.00"),
        ("2.4 kg lentils", "3 for price of 2; 6 for 3.50", "3.50"),
        ("2.4 kg lentils", "from 6 at 0.80", "4.80"),
        ("2 kg lentils", "from 6 at 0.80", "4.80"),  # 6 at 0.80 against 5 at 1.00
        ("1.6 kg lentils", "from 6 at 0.80", "4.00"),
        ("4.8 kg lentils", "from 6 at 0.80; from 12 at 0.60", "7.20"),
    ],
)
def test_terms_by_plain_sums(need: str, offer: str, expected: str) -> None:
    assert till(need, row("400 g", "1.00", offer)) == Fraction(expected)


def test_a_limit_holds_for_all_packs_of_a_row_however_they_are_sold() -> None:
    limited = row("400 g", "1.00", "3 for 2.00", limit="5")
    other = row("500 g", "3.00")
    # 2.5 kg: 5 packs hold 2 kg (3 for 2.00 and 2 at 1.00), and one pack of 500 g.
    assert till("2.5 kg lentils", limited, other) == 7
    # 2.4 kg without the limit would be twice 3 for 2.00.
    assert till("2.4 kg lentils", limited, other) == 7
    assert till("2.4 kg lentils", row("400 g", "1.00", "3 for 2.00"), other) == 4


def test_loose_goods_are_sold_in_steps() -> None:
    loose = row("1 kg loose in 50 g", "2.10")
    bought = costing("330 g lentils", loose)
    assert bought.till.value == Fraction("2.10") * 350 / 1000
    assert bought.shopping[0].packs == [(7, "50 g loose")]
    assert bought.shopping[0].leftover.value == 20
    assert till(
        "30 g lentils", row("1 kg loose in steps of 50 g", "2.10", least="200 g")
    ) == Fraction("0.42")
    cheaper = row("1 kg loose in 50 g", "2.10", offer="from 2 kg at 1.80")
    assert till("1.9 kg lentils", cheaper) == Fraction("3.60")  # 2 kg at 1.80 against 3.99
    assert till("1.6 kg lentils", cheaper) == Fraction("3.36")


def test_a_least_number_is_bought_or_none() -> None:
    assert till("300 g lentils", row("400 g", "1.00", least="3")) == 3
    assert till("300 g lentils", row("400 g", "1.00", least="3"), row("500 g", "2.90")) == Fraction(
        "2.90"
    )


def test_taxes_are_counted_or_left_out() -> None:
    included = row("400 g", "1.07", tax="7 %")
    assert till("400 g lentils", included) == Fraction("1.07")
    assert till("400 g lentils", included, taxes="without") == 1
    added = row("400 g", "1.00", tax="7 % added")
    assert till("400 g lentils", added) == Fraction("1.07")
    assert till("400 g lentils", added, taxes="without") == 1
    why = costing("400 g lentils", added).why("lentils.packs")
    assert "pack 400 g = 1.07 EUR\n" in why
    assert "1.00 EUR and its 7 % tax" in why


def test_terms_are_taxed_as_prices_are() -> None:
    added = row("400 g", "1.00", "3 for 2.40", tax="10 % added")
    assert till("1.2 kg lentils", added) == Fraction("2.64")


def test_a_deposit_is_paid_besides_and_is_no_cost() -> None:
    deposit = row("400 g jar", "1.00", "3 for 2.40", deposit="0.15")
    bought = costing("1.2 kg lentils", deposit)
    assert bought.till.value == Fraction("2.40")
    assert bought.deposit.value == Fraction("0.45")
    assert bought.shopping[0].deposit.value == Fraction("0.45")
    assert bought.borne.value == Fraction("2.40")
    # The jar that comes with a deposit is chosen by its price alone.
    assert till("400 g lentils", deposit, row("400 g", "1.10")) == 1


def test_the_terms_it_goes_by_are_told() -> None:
    bought = costing("1.6 kg lentils", row("400 g", "1.00", "3 for the price of 2"))
    assert bought.shopping[0].packs == [(4, "400 g")]
    assert bought.shopping[0].terms == ["400 g: 3 for the price of 2"]
    why = bought.why("lentils.till")
    assert "\n  = price_of(lentils.packs)\n" in why
    assert "terms = 400 g: 3 for the price of 2\n" in why
    assert "= 3 x 400 g for 2.00 EUR\n" in why


def test_terms_are_told_with_the_tax_that_they_cost() -> None:
    # 4 packs of 400 g: 3 together for 2.40, and one at 1.00, with a tenth added.
    why = costing("1.6 kg lentils", row("400 g", "1.00", "3 for 2.40", tax="10 % added")).why(
        "lentils.till"
    )
    assert why.startswith("lentils.till = 3.74 EUR\n")
    assert "= 3 x 400 g for 2.64 EUR\n" in why
    assert "pack 400 g = 1.10 EUR\n" in why


HINT = "(write 3 for 4.50, 3 for the price of 2, or from 6 at 1.10)"


@pytest.mark.parametrize(
    ("text", "code", "message"),
    [
        (
            row("400 g", "1.00", "3 for 2"),
            "price.offer",
            'p.csv:2:33: "3 for 2" may mean a price of 2, or the price of 2 packs '
            "(write 3 for 2.00, or 3 for the price of 2)",
        ),
        (
            row("400 g", "1.00", "cheap"),
            "price.offer",
            f'p.csv:2:33: "cheap" is no offer that is known {HINT}',
        ),
        (
            row("400 g", "1.00", "1 for 0.90"),
            "price.offer",
            f'p.csv:2:33: "1 for 0.90" is no offer that is known {HINT}',
        ),
        (
            row("400 g", "1.00", "3 for the price of 3"),
            "price.offer",
            f'p.csv:2:33: "3 for the price of 3" is no offer that is known {HINT}',
        ),
        (
            row("400 g", "1.00", "3 for 2.40; from x at 1.10"),
            "price.number",
            'p.csv:2:50: "x" is no number of packs for the offer (write a whole number above zero)',
        ),
        (
            row("400 g", "1.00", "from 6 at much"),
            "price.unreadable",
            'p.csv:2:43: "much" is no price '
            "(write a number such as 1.05, and the currency's code in its own column)",
        ),
        (
            row("400 g", "1.00", "3 for 2.40; from 6 at 0.70"),
            "price.offer",
            "p.csv:2:33: what several packs sold together count for in a price from a number is "
            "not known (keep one of the two)",
        ),
        (
            row("400 g", "1.00", "3 for 2.40", least="4"),
            "price.offer",
            "p.csv:2:1: whether packs sold together count for the least number of 4 is not known "
            "(keep one of the two)",
        ),
        (
            row("400 g", "1.00", least="4", limit="2"),
            "price.number",
            "p.csv:2:1: at least 4 packs must be bought, but at most 2 may be",
        ),
        (
            row("400 g", "1.00", limit="0"),
            "price.number",
            'p.csv:2:35: "0" is no number of packs for the limit (write a whole number above zero)',
        ),
        (
            row("1 kg loose in 50 g", "2.10", limit="520 g"),
            "price.number",
            "p.csv:2:48: the limit is of 520 g, but 50 g loose is sold in steps of 50 g AP "
            "(give an amount that is a whole number of steps)",
        ),
        (
            row("1 kg loose", "2.10"),
            "price.pack",
            "p.csv:2:17: it is not said in what steps loose goods are weighed out "
            "(write 1 kg loose in 50 g)",
        ),
        (
            row("1 kg loose in 5 mL", "2.10"),
            "price.pack",
            "p.csv:2:26: the price is of 1 kg AP, but the steps are of 5 mL AP",
        ),
        (
            row("1 kg loose in 50 g", "2.10", "3 for 5.00"),
            "price.offer",
            "p.csv:2:46: loose goods have no packs to be sold 3 together (write from 1 kg at 1.10)",
        ),
        (
            row("1 kg loose at least 200 g in 50 g", "2.10"),
            "price.pack",
            'p.csv:2:22: "at least 200 g" between loose and its steps is not understood '
            "(write 1 kg loose in 50 g, and an amount that must be bought in the column least)",
        ),
        (
            row("1 kg loose in 50 g", "2.10", deposit="0.15"),
            "price.offer",
            "p.csv:2:50: loose goods have no packs to pay a deposit on",
        ),
        (
            row("400 g", "1.00", "2 for 1"),
            "price.offer",
            'p.csv:2:33: "2 for 1" may mean a price of 1, or the price of 1 pack '
            "(write 2 for 1.00, or 2 for the price of 1)",
        ),
        (
            row("400 g", "1.00", "from 6 at 4.80"),  # 0.80 each was meant
            "price.offer",
            'p.csv:2:33: "from 6 at 4.80" is dearer than the 1 that it costs without the offer '
            "(from 6 at 1.10 gives the price of one, 3 for 4.50 that of all together)",
        ),
        (
            row("400 g", "1.00", "6 for 6; 3 for 24.0"),
            "price.offer",
            'p.csv:2:42: "3 for 24.0" is dearer than the 3 that it costs without the offer '
            "(from 6 at 1.10 gives the price of one, 3 for 4.50 that of all together)",
        ),
        (
            row("1 kg loose in 50 g", "2.10", "from 2 kg at 2.11"),
            "price.offer",
            'p.csv:2:46: "from 2 kg at 2.11" is dearer than the 2.1 that it costs without the '
            "offer (from 6 at 1.10 gives the price of one, 3 for 4.50 that of all together)",
        ),
        (
            row("400 g", "1.00", tax="700 %"),
            "price.tax",
            "p.csv:2:36: a tax of 700 % is more than the price that it comes on",
        ),
        (
            row("400 g", "1.00", tax="7"),
            "price.tax",
            'p.csv:2:36: "7" does not say a tax '
            "(write 7 % where the price has it in it, or 7 % added)",
        ),
        (
            row("400 g", "1.00", deposit="-0.15"),
            "price.negative",
            "p.csv:2:37: the price -0.15 is below zero",
        ),
    ],
)
def test_what_is_refused(text: str, code: str, message: str) -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices(HEAD + text + "\n", file="p.csv")
    assert (caught.value.code, str(caught.value)) == (code, message)


def test_a_limit_beside_terms_has_a_bound() -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        till("1 kg lentils", row("400 g", "1.00", "3 for 2.40", limit="301"))
    assert str(caught.value) == (
        "p.csv:2:1: a limit of 301 packs beside other terms is more than the 300 that are looked "
        "at (leave the limit out where it is never reached)"
    )


def test_a_need_beyond_all_limits_is_one_clear_error() -> None:
    with pytest.raises(scalepan.CostError) as caught:
        till("3 kg lentils", row("400 g", "1.00", limit="2"), row("500 g", "1.50", limit="1"))
    assert caught.value.code == "cost.limit"
    assert str(caught.value) == (
        "p.csv:2:1: of lentils at most 1.3 kg can be bought, but 3 kg is needed "
        "(add rows of other packs or shops)"
    )


def test_a_price_of_a_step_is_told_exactly() -> None:
    # 1.27 a kilogram is 0.0635 for 50 g, and 7 of those are 0.4445.
    why = costing("330 g lentils", row("1 kg loose in 50 g", "1.27")).why("lentils.till")
    assert "pack 50 g loose = 0.06 EUR  (exactly 0.0635 EUR)" in why
    assert "0.4445 EUR" in why


def test_too_many_covers_name_the_row_of_the_item() -> None:
    rows = [row(f"{g} g", "1.00", "3 for the price of 2", limit="300") for g in range(101, 121)]
    with pytest.raises(scalepan.PriceError) as caught:
        till("90 kg lentils", *rows)
    assert str(caught.value) == (
        "p.csv:2:1: the packs' sizes and prices make too many covers to look at "
        "(leave out packs that are hardly worth it, or buy for a smaller need)"
    )


def test_a_price_of_nothing_and_a_need_of_a_nonillion_grams() -> None:
    assert till("100 g lentils", row("400 g", "0")) == 0
    huge = "1" + "0" * 30
    # 10^30 g are 10^27 packs of 1 kg at 2.20, dearer in packs of 400 g at 1.00.
    assert till(f"{huge} g lentils", row("400 g", "1.00"), row("1 kg", "2.20")) == Fraction(
        22 * 10**26
    )


def test_ten_thousand_offers_of_one_item() -> None:
    rows = [row(f"{100 + place} g", f"{50 + place * 7919 % 900}/100") for place in range(10_000)]
    # The cheapest of those that hold 900 g alone, or better: checked against every single pack.
    single = min(Fraction(50 + place * 7919 % 900, 100) for place in range(800, 10_000))
    found = till("900 g lentils", *rows)
    assert found <= single
    assert found == Fraction(1, 2)  # no pack costs less than 0.50, and one of 0.50 holds 900 g
