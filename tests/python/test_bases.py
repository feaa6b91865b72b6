"""Recipes that use recipes: over files, shared, nested, costed; and every error.

The dishes are of an observatory's night kitchen; the prices are invented. Amounts are held against
arithmetic by hand, which stands beside each.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
import scalepan

SAUCE = """\
name = "White sauce"
serves = 8
makes = "1 kg"
lines = ["1 L whole milk", "80 g butter", "80 g plain flour"]
"""
BAKE = """\
name = "Fennel bake"
serves = 4
bases = { white_sauce = "basics/sauce.toml" }
lines = ["1 kg fennel, trimmed", "3/5 of the white sauce", "40 g butter, melted"]
"""
PIE = """\
name = "Leek pie"
serves = 6
bases = { white_sauce = "basics/../basics/sauce.toml" }
lines = ["1 kg leeks, trimmed", "rest of the white sauce", "60 g plain flour"]
"""
MENU = """\
name = "Night menu"
serves = 10
bases = { fennel_bake = "bake.toml", pie = "pie.toml" }
lines = ["8 portions of fennel bake", "2 portions of leek pie"]
"""
PRICES = """\
item,sold_as,pack,price,currency,keeps
whole milk,AP,1 L,1.10,GBP,no
butter,AP,250 g,2.00,GBP,no
plain flour,AP,1 kg,0.90,GBP,yes
fennel,AP,1 kg,3.00,GBP,no
leeks,AP,1 kg,2.10,GBP,no
"""


def write(folder: Path, **files: str) -> Path:
    for name, text in files.items():
        path = folder / f"{name.replace('__', '/')}.toml"
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


@pytest.fixture
def kitchen(tmp_path: Path) -> Path:
    return write(tmp_path, basics__sauce=SAUCE, bake=BAKE, pie=PIE, menu=MENU)


def menu(kitchen: Path) -> scalepan.Recipe:
    return scalepan.read_recipe(kitchen / "menu.toml")


def amounts(recipe: scalepan.Recipe) -> dict[str, scalepan.Quantity]:
    return {line.id: line.amount for line in recipe.food_lines}


def refusal(path: Path) -> tuple[str, str]:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.read_recipe(path)
    return caught.value.code, str(caught.value).replace(str(path.parent), "...")


def test_one_base_of_two_dishes_at_two_factors_over_four_files(kitchen: Path) -> None:
    """8 portions are two bakes, so 6/5 of a sauce; 2 are a third of a pie, so the rest (all of
    it, as no other line of the pie takes any) a third of one: 6/5 + 1/3 = 23/15."""
    sauce = next(base for base in menu(kitchen).bases if base.name == "white_sauce")
    batches = Fraction(6, 5) + Fraction(1, 3)
    assert sauce.batches == batches == Fraction(23, 15)
    assert sorted((use.line, use.batches) for use in sauce.uses) == [
        ("fennel_bake.white_sauce", Fraction(6, 5)),
        ("pie.rest_of_white_sauce", Fraction(1, 3)),
    ]
    assert sauce.recipe.batch_weight.to("g").value == 1000 * batches
    found = amounts(menu(kitchen))
    assert found["white_sauce.whole_milk"].to("mL AP").value == 1000 * batches
    assert found["white_sauce.butter"].to("g AP").value == 80 * batches
    assert found["fennel_bake.fennel"].to("kg EP").value == 2
    assert found["fennel_bake.butter"].to("g EP").value == 80
    assert found["pie.leeks"].to("g EP").value == Fraction(1000, 3)


def test_a_base_is_made_before_what_uses_it(kitchen: Path) -> None:
    names = [base.name for base in menu(kitchen).bases]
    assert names[0] == "white_sauce"
    assert sorted(names) == ["fennel_bake", "pie", "white_sauce"]


@pytest.mark.parametrize("portions", [1, 10, Fraction(35, 2), 400])
def test_the_whole_menu_scales(kitchen: Path, portions: Fraction) -> None:
    written = amounts(menu(kitchen))
    scaled = amounts(menu(kitchen).scale(portions=portions))
    assert scaled == {name: amount * Fraction(portions, 10) for name, amount in written.items()}


def test_a_shared_base_is_bought_once(kitchen: Path) -> None:
    """Milk 23/15 L: 2 packs. Butter 80 * 23/15 + 80 = 608/3 g: 1. Flour 368/3 + 20 g: 1. Fennel:
    SR28 11957 has 28 % refuse, 2 kg EP are 25/9 kg AP: 3. Leeks 1/3 kg EP at 44 %: 25/33 kg: 1."""
    costing = scalepan.cost(menu(kitchen), scalepan.parse_prices(PRICES))
    rows = {row.item: row for row in costing.shopping}
    assert {item: row.packs for item, row in rows.items()} == {
        "whole milk": [(2, "1 L")],
        "butter": [(1, "250 g")],
        "plain flour": [(1, "1 kg")],
        "fennel": [(3, "1 kg")],
        "leeks": [(1, "1 kg")],
    }
    assert rows["butter"].need.to("g AP").value == Fraction(608, 3)
    assert rows["plain flour"].need.to("g AP").value == Fraction(368, 3) + 20
    assert costing.till.value == Fraction("16.20")


def test_curves_over_bases_are_the_costings_point_by_point(kitchen: Path) -> None:
    prices = scalepan.parse_prices(PRICES)
    sizes = [*range(1, 60, 4), Fraction(7, 2)]
    curve = scalepan.cost(menu(kitchen), prices).curve(portions=sizes)
    for i, size in enumerate(sizes):
        costing = scalepan.cost(menu(kitchen).scale(portions=size), prices)
        assert curve.till[i] == costing.till.value
        assert curve.used[i] == costing.used.value
        assert curve.borne[i] == costing.borne.value


def test_why_goes_down_to_the_files(kitchen: Path) -> None:
    costing = scalepan.cost(menu(kitchen), scalepan.parse_prices(PRICES))
    why = costing.why("white_sauce.butter.need")
    for part in (
        "white_sauce.batches = ≈ 1.533  (exactly 1 8/15)",
        "sum of its uses / what one batch makes",
        "fennel_bake.white_sauce.need = 1.2 kg",
        "pie.rest_of_white_sauce.need",
        "80 g butter",
        "sauce.toml:4:29",
    ):
        assert part in why, why


def test_allergens_and_cautions_come_through_bases(kitchen: Path) -> None:
    custard = 'name = "Custard"\nserves = 4\nlines = ["4 eggs", "500 mL whole milk"]\n'
    tart = (
        'name = "Tart"\nserves = 8\nbases = { custard = "custard.toml" }\n'
        'lines = ["all of the custard", "200 g apples, peeled"]\n'
    )
    write(kitchen, custard=custard, tart=tart)
    recipe = scalepan.read_recipe(kitchen / "tart.toml")
    plain = scalepan.parse_recipe(custard)
    costing = scalepan.cost(recipe, scalepan.parse_prices(PRICES))
    alone = scalepan.cost(plain, scalepan.parse_prices(PRICES))
    assert [line.food for line in recipe.food_lines] == ["apples", "eggs", "whole milk"]
    for name in ("allergens", "cautions"):
        if hasattr(costing, name):
            told = str(getattr(costing, name))
            assert str(getattr(alone, name)) != "[]"
            assert "egg" in told


def test_tables_inside_the_file(kitchen: Path) -> None:
    text = (
        'name = "Soup"\nserves = 4\nlines = ["1 kg leeks, trimmed", "1/4 of the oil"]\n'
        '[bases.oil]\nname = "Herb oil"\nserves = 8\nlines = ["200 mL olive oil", "40 g parsley"]\n'
    )
    found = amounts(scalepan.parse_recipe(text).scale(portions=8))
    assert found["oil.olive_oil"].to("mL AP").value == 100
    assert found["oil.parsley"].to("g AP").value == 20


def test_a_table_may_name_a_file_beside_its_own(kitchen: Path) -> None:
    text = (
        'name = "Plate"\nserves = 4\nlines = ["4 portions of bake"]\n'
        '[bases.bake]\nname = "Bake"\nserves = 4\nlines = ["1/2 of the sauce"]\n'
        'bases = { sauce = "basics/sauce.toml" }\n'
    )
    write(kitchen, plate=text)
    found = amounts(scalepan.read_recipe(kitchen / "plate.toml"))
    assert found["sauce.butter"].to("g AP").value == 40


def test_a_recipe_of_itself_tells_the_chain(tmp_path: Path) -> None:
    text = 'name = "x"\nserves = 1\nbases = {{ b = "{}.toml" }}\nlines = ["1/2 of the b"]\n'
    write(tmp_path, a=text.format("b"), b=text.format("c"), c=text.format("a"))
    assert refusal(tmp_path / "a.toml") == (
        "base.cycle",
        ".../c.toml:3:16: a recipe cannot be made from itself: a.toml uses b.toml uses c.toml uses "
        "a.toml (take the recipe out of its own base)",
    )
    write(tmp_path, d=text.format("d"))
    assert refusal(tmp_path / "d.toml")[1] == (
        ".../d.toml:3:16: a recipe cannot be made from itself: d.toml uses d.toml (take the recipe "
        "out of its own base)"
    )
    # A cycle below another dish names the files of the cycle alone.
    write(tmp_path, e=text.format("d"))
    assert refusal(tmp_path / "e.toml")[1].startswith(
        ".../d.toml:3:16: a recipe cannot be made from itself: d.toml uses d.toml ("
    )


def test_a_recipe_by_another_path_is_still_itself(tmp_path: Path) -> None:
    text = 'name = "x"\nserves = 1\nbases = { b = "link.toml" }\nlines = ["1/2 of the b"]\n'
    write(tmp_path, a=text)
    (tmp_path / "link.toml").symlink_to(tmp_path / "a.toml")
    assert refusal(tmp_path / "a.toml")[0] == "base.cycle"


def test_forty_deep_is_the_end(tmp_path: Path) -> None:
    text = 'name = "x"\nserves = 1\nbases = {{ b{0} = "r{0}.toml" }}\nlines = ["1/2 of the b{0}"]\n'
    files = {f"r{i}": text.format(i + 1) for i in range(41)}
    write(tmp_path, **files, r41='name = "x"\nserves = 1\nlines = ["1 kg leeks"]\n')
    code, message = refusal(tmp_path / "r0.toml")
    assert (code, message) == (
        "base.depth",
        ".../r39.toml:3:18: bases stand more than 40 deep in one another",
    )
    ends = scalepan.read_recipe(tmp_path / "r2.toml")
    (leeks,) = ends.food_lines
    assert leeks.amount.to("g AP").value == Fraction(1000, 2**39)


def test_tables_inside_one_another_end_there_too() -> None:
    text, path = 'name = "x"\nserves = 1\nlines = ["1 kg leeks"]\n', "bases"
    for depth in range(60):
        text += f'[{path}.b{depth}]\nname = "x"\nserves = 1\nlines = ["1 kg leeks"]\n'
        path += f".b{depth}.bases"
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.parse_recipe(text, file="x.toml")
    assert caught.value.code == "base.depth"
    assert caught.value.message == "bases stand more than 40 deep in one another"


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    text = 'name = "x"\nserves = 1\nbases = {{ b = "{}.toml" }}\nlines = ["1/2 of the b"]\n'
    write(tmp_path, a=text.format("gone"))
    assert refusal(tmp_path / "a.toml") == (
        "file.unreadable",
        ".../a.toml:3:16: the base b cannot be read: cannot read the file: No such file or "
        "directory (.../gone.toml) (looked in ...)",
    )


DISH = 'name = "Dish"\nserves = 4\nlines = [{}]\n[bases.white_sauce]\n' + SAUCE


# Place, message and hint.
@pytest.mark.parametrize(
    ("lines", "code", "message"),
    [
        (
            '"3/5 of the white sauce", { id = "top", line = "1/2 of the white sauce" }',
            "share.over",
            "dish.toml:3:58: the uses of white_sauce come to 3/5 + 1/2 = 1 1/10, more than the "
            "whole (make the shares smaller, or let one take the rest)",
        ),
        (
            '"rest of the white sauce", { id = "top", line = "the rest of the white sauce" }',
            "share.two_rests",
            "dish.toml:3:59: two of the uses of white_sauce take the rest of it (give one of them "
            "a share)",
        ),
        (
            '"1 kg white sauce", "rest of the white sauce"',
            "share.no_rest",
            "dish.toml:3:31: nothing of white_sauce is left for the rest: the other uses come to 1",
        ),
        (
            '"rest of the white sause"',
            "base.unknown",
            'dish.toml:3:23: no base is called "white sause" (nearest: white sauce)',
        ),
        (
            '"1/2 of the whtie sauce"',
            "base.unknown",
            'dish.toml:3:22: no base is called "whtie sauce" (nearest: white sauce)',
        ),
        (
            '"2 L white sauce"',
            "base.measure",
            "dish.toml:3:13: the line takes 2 L of white_sauce, but its recipe does not say how "
            'much it makes in volume (state it there: makes = "...", or take a share: 1/2 of the '
            "white sauce)",
        ),
        (
            '"0 of the white sauce"',
            "line.amount",
            "dish.toml:3:11: an amount must be above zero",
        ),
        (
            '"white sauce, to taste"',
            "line.no_amount",
            "dish.toml:3:11: it is not written how much the line takes of the base white_sauce "
            "(write an amount, or take a share: 1/2 of the white sauce)",
        ),
        (
            '{ id = "white_sauce.butter", line = "20 g butter" }, "1/2 of the white sauce"',
            "recipe.duplicate_id",
            "dish.toml:8:29: two lines have the id white_sauce.butter, this one and the one at "
            'dish.toml:3:47 (give one an id of its own: { id = "white_sauce.butter_2", line = '
            '"80 g butter" })',
        ),
    ],
)
def test_errors(lines: str, code: str, message: str) -> None:
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.parse_recipe(DISH.format(lines), file="dish.toml")
    assert (caught.value.code, str(caught.value)) == (code, message)


def test_two_recipes_under_one_name(kitchen: Path) -> None:
    tomato = 'name = "Tomato sauce"\nserves = 4\nlines = ["1 kg tomatoes"]\n'
    plate = (
        'name = "Plate"\nserves = 4\n'
        'bases = { bake = "bake.toml", "white sauce" = "tomato.toml" }\n'
        'lines = ["4 portions of bake", "1/2 of the white sauce"]\n'
    )
    write(kitchen, tomato=tomato, plate=plate)
    code, message = refusal(kitchen / "plate.toml")
    assert code == "base.name_clash"
    assert "Tomato sauce" in message
    assert "White sauce" in message
    assert message.endswith("(give one of them another name)")


@pytest.mark.parametrize("name", ['""', '" "', '"a\\nb"'])
def test_a_base_needs_a_name(name: str) -> None:
    text = f'name = "x"\nserves = 1\nlines = ["1 kg leeks"]\n[bases.{name}]\n{SAUCE}'
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.parse_recipe(text, file="x.toml")
    assert caught.value.code == "base.name"
    assert caught.value.message == "the name of a base is empty or holds a control character"


def test_a_base_that_no_size_makes_large_enough_is_named() -> None:
    text = (
        'name = "x"\nserves = 4\nlines = ["all of the stock"]\n'
        '[bases.stock]\nname = "Stock"\nserves = 4\nlines = ["200 g butter | fixed"]\n'
    )
    recipe = scalepan.parse_recipe(text, file="x.toml")
    with pytest.raises(scalepan.RecipeError) as caught:
        recipe.scale(portions=8)
    assert caught.value.code == "size.target"
    assert caught.value.message == (
        "the base stock: no size comes to 400 g: the amounts do not grow with it, and make 200 g"
    )


def test_a_taper_that_ends_inside_a_base_names_its_line() -> None:
    text = (
        'name = "x"\nserves = 4\nlines = ["all of the stock"]\n'
        '[bases.stock]\nname = "Stock"\nserves = 4\nload = "1 kg"\n'
        'lines = ["200 g butter", "4 g salt | tapered (2, 1.5)"]\n'
    )
    recipe = scalepan.parse_recipe(text, file="x.toml")
    with pytest.raises(scalepan.RecipeError) as caught:
        recipe.scale(portions=12)
    assert caught.value.code == "rule.taper_end"
    assert str(caught.value) == (
        "x.toml:8:27: the taper ends at 2 times the written amounts; 3 times is asked for "
        "(give it a further point, or say how it goes on: then 1/2)"
    )
