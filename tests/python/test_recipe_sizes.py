"""Sizes that a recipe cannot be made for: code and message."""

from __future__ import annotations

import pytest
import scalepan

RECIPE = scalepan.RecipeError
LEEK = 'name = "x"\nserves = 4\nlines = ["1 leek"]\n'


WAYS = (
    'write one of: scale(portions=40), scale(factor=10), scale(batch="12 kg"), '
    'scale(raw_batch="12 kg"), scale(stock={"eggs": "30"})'
)


@pytest.mark.parametrize(
    ("sizes", "code", "message"),
    [
        (
            {},
            "recipe.size",
            f"no size is given ({WAYS})",
        ),
        (
            {"portions": 4, "factor": 2},
            "recipe.size",
            f"a size is given in two ways, by portions and by factor ({WAYS})",
        ),
        (
            {"portions": 0},
            "recipe.portions",
            "a recipe cannot be made for 0 portions (the number of portions must be above zero)",
        ),
        (
            {"factor": -1},
            "recipe.portions",
            "a recipe cannot be made for -4 portions (the number of portions must be above zero)",
        ),
    ],
)
def test_sizes(sizes: dict[str, int], code: str, message: str) -> None:
    recipe = scalepan.parse_recipe(LEEK)
    with pytest.raises(RECIPE) as caught:
        recipe.scale(**sizes)
    assert (caught.value.code, str(caught.value)) == (code, message)
