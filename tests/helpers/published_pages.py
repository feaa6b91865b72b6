"""A recipe as a page publishes it, schema.org ``Recipe`` in JSON-LD; invented."""

from __future__ import annotations

import json


def page_of(**properties: object) -> str:
    whole = {"name": "Broth", "recipeYield": "4", "recipeIngredient": ["2 eggs"], **properties}
    return json.dumps({"@type": "Recipe", **{k: v for k, v in whole.items() if v is not None}})
