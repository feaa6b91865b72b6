"""Conversions as Python hands them out: spread by both names, figures beside, regions."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from scalepan_command.start import main


def test_one_fact_leaves_one_spread() -> None:
    """USDA SR28 02047: cup 292 g; tsp 6 g, tbsp 18 g (288 a cup)."""
    salt = scalepan.convert("1 cup", "g", food="salt", measures="us")
    assert (salt.low.value, salt.value, salt.high.value) == (288, 292, 292)
    assert (salt.rss_low, salt.rss_high) == (salt.low, salt.high)


def test_two_facts_leave_a_worst_case_and_a_root_sum_square() -> None:
    """TM 10-412 has 0.46 to 0.78 for broccoli; USDA SR28 11090 0.61, and 88 to 91 g a cup."""
    cups = scalepan.convert("1 kg AP", "cup_us EP", food="broccoli", state="chopped")
    assert cups.value == Fraction(610, 91)
    assert cups.low.value == Fraction(460, 91)
    assert cups.high.value == Fraction(780, 88)
    # Relative spreads above: 0.78 / 0.61 - 1 = 17/61, and 91 / 88 - 1 = 3/88.
    square = Fraction(17, 61) ** 2 + Fraction(3, 88) ** 2
    root = cups.rss_high.value / cups.value - 1
    assert 0 < root**2 - square < Fraction(1, 10**11)
    assert root.denominator <= 10**12
    assert cups.rss_low == cups.low


def test_no_fact_leaves_no_spread() -> None:
    plain = scalepan.convert("1 kg", "g")
    assert plain[2:] == (plain.amount,) * 4


def test_the_figure_used_and_the_one_beside_it_are_told() -> None:
    """USDA SR28 11124: refuse 11 %; TM 10-412, M-G No. 1: 6 lb 9 oz of 8 lb."""
    (used,) = scalepan.convert("1 kg AP", "g EP", food="carrot").facts
    assert (used.id, str(used.value)) == ("carrot.edible", "0.89 EP/AP")
    assert [str(other) for other in used.beside] == [
        "beside it: ≈ 0.8203 EP/AP (Armed Forces Recipe Service 2003 (TM 10-412), M-G No. 1 "
        "relish table, carrots, fresh, strips, 6 lb 9 oz of 8 lb)"
    ]


def test_a_costing_tells_the_figure_beside_too() -> None:
    """As above; the price is invented."""
    recipe = scalepan.parse_recipe('name = "x"\nserves = 1\nlines = ["890 g carrots, peeled"]\n')
    prices = scalepan.parse_prices("item,sold_as,pack,price,keeps\ncarrots,AP,1 kg,1,no\n")
    assert scalepan.cost(recipe, prices).why("carrots.edible") == (
        "carrots.edible = 0.89 EP/AP\n"
        "  = edible_share(carrots.food)   [USDA SR28 11124, refuse 11 % (Crown, tops and "
        "scrapings)]\n"
        '├─ carrots.food = carrot   ["carrots" in the catalogue]\n'
        "└─ beside it = ≈ 0.8203 EP/AP  (exactly 105/128 EP/AP)   [Armed Forces Recipe Service "
        "2003 (TM 10-412), M-G No. 1 relish table, carrots, fresh, strips, 6 lb 9 oz of 8 lb]\n"
    )


def test_a_preferred_figure_is_used_instead() -> None:
    catalog = scalepan.catalog_with(prefer=["carrot.edible.afrs"])
    carrots = scalepan.convert("1 kg AP", "g EP", food="carrot", catalog=catalog)
    assert carrots.value == Fraction(105, 128) * 1000
    assert [other.id for other in carrots.facts[0].beside] == ["carrot.edible"]
    assert scalepan.convert("1 kg AP", "g EP", food="carrot").value == 890


def test_the_bundled_figure_stands_beside_an_own_one() -> None:
    own = {"fact": "own", "food": "leek", "kind": "edible", "value": "0.5 EP/AP"}
    (used,) = scalepan.convert(
        "1 kg AP", "g EP", food="leek", catalog=scalepan.catalog_with([own])
    ).facts
    assert used.id == "own"
    assert [other.id for other in used.beside] == ["leek.edible"]


def test_a_preparation_chooses_its_share() -> None:
    """USDA SR28 09003 refuse 10 %, 09004 (without skin) 23 %."""
    assert scalepan.convert("1 kg AP", "g EP", food="apple").value == 900
    for words in ("peeled", "peeled, sliced"):
        peeled = scalepan.convert("1 kg AP", "g EP", food="apple", preparation=words)
        assert peeled.value == 770


def grams_a_cup(food: str, region: str | None = None) -> Fraction:
    return scalepan.convert("1 cup", "g", food=food, measures="us", region=region).value


def test_a_region_settles_a_name() -> None:
    """USDA SR28 20027, cornstarch: cup 128 g; 20016, whole-grain corn flour: cup 117 g."""
    assert grams_a_cup("cornflour", "GB") == grams_a_cup("cornstarch") == 128
    assert grams_a_cup("cornflour", "US") == grams_a_cup("corn flour", "US") == 117
    assert scalepan.bundled_catalog().food_of("coriander", "US") == "coriander_seed"
    assert scalepan.bundled_catalog().food_of("coriander", region="GB") == "coriander_leaf"


def test_without_a_region_the_name_stays_open() -> None:
    with pytest.raises(scalepan.FoodError) as caught:
        grams_a_cup("cornflour")
    assert str(caught.value) == (
        '"cornflour" means more than one food (write one of: corn starch (GB), maize flour (US); '
        'or choose in the recipe: region = "GB", or names = { cornflour = "corn_starch" })'
    )


def test_a_catalogue_may_have_its_names_settled() -> None:
    """USDA SR28 20027 and 20016, as above; costs and recipes read with it find the same foods."""
    british = scalepan.catalog_with(region="GB")
    chosen = scalepan.catalog_with(
        region="GB", choose={"Cornflour": "corn_flour_wholegrain", "pepper": "black pepper"}
    )
    assert british.food_of("cornflour") == "corn_starch"
    assert chosen.food_of("cornflour") == "corn_flour_wholegrain"
    assert chosen.food_of("peppers") == "black_pepper"
    assert chosen.food_of("coriander") == "coriander_leaf"
    assert chosen.food_of("cornflour", "GB") == "corn_starch"
    line = scalepan.parse_recipe(
        'name = "x"\nserves = 1\nlines = ["30 g cornflour"]\n', catalog=british
    ).lines[0]
    assert line.food_id == "corn_starch"


def test_a_choice_of_an_unknown_food_is_refused() -> None:
    with pytest.raises(scalepan.FoodError) as caught:
        scalepan.catalog_with(choose={"cornflour": "corn starhc"})
    assert str(caught.value) == (
        'no food is called "corn starhc" (nearest: corn starch, cornstarch)'
    )


def test_an_unknown_region_is_refused() -> None:
    with pytest.raises(scalepan.FoodError) as caught:
        grams_a_cup("cornflour", "UK")
    assert str(caught.value) == (
        'no food has a name of the region "UK" (there are: AU, GB, NZ, US)'
    )


@pytest.mark.parametrize(
    ("written", "nearest"),
    [
        ("zuchini", "nearest: zucchini, zucchinis, chili"),
        ("aubergin", "nearest: aubergine, aubergines"),
    ],
)
def test_a_misspelling_gets_the_nearest_names(written: str, nearest: str) -> None:
    with pytest.raises(scalepan.FoodError) as caught:
        grams_a_cup(written)
    assert str(caught.value) == f'no food is called "{written}" ({nearest})'


def test_the_command_line_tells_spread_region_and_the_figure_beside(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["convert", "1 kg AP", "g EP", "--food", "carrots"]) == 0
    assert capsys.readouterr().out == (
        "1 kg AP = 890 g EP\n"
        "  * 0.89 EP/AP   [USDA SR28 11124, refuse 11 % (Crown, tops and scrapings)]\n"
        "    beside it: ≈ 0.8203 EP/AP (Armed Forces Recipe Service 2003 (TM 10-412), M-G\n"
        "    No. 1 relish table, carrots, fresh, strips, 6 lb 9 oz of 8 lb)\n"
    )
    arguments = ["convert", "1 cup", "g", "--food", "cornflour", "--measures", "us"]
    assert main([*arguments, "--region", "GB"]) == 0
    assert capsys.readouterr().out.startswith("1 cup = 128 g\n")
    assert main(["convert", "1 kg AP", "g EP", "--food", "apple", "--preparation", "peeled"]) == 0
    assert capsys.readouterr().out.startswith("1 kg AP = 770 g EP\n")
    assert main(["convert", "1 kg AP", "cup_us EP", "--food", "broccoli"]) == 0
    assert capsys.readouterr().out.splitlines()[1:3] == [
        "  spread: ≈ 5.055 cups to ≈ 8.864 cups (worst case)",
        "  spread: ≈ 5.055 cups to ≈ 8.585 cups (root-sum-square)",
    ]
