"""Recipes that pages publish: schema.org ``Recipe`` as JSON-LD, read into recipes of our own.

What a recipe file has no key for (times, authors, pictures) stands as remarks in its text. Words
and their order are those of https://schema.org/Recipe.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any, NamedTuple

from scalepan import _core
from scalepan.errors import Error, make_error
from scalepan.foods import bundled_catalog, catalog_with
from scalepan.json_ld_page import Node, listed, plain, plain_lines, recipes_of, short, types_of
from scalepan.recipe_writer import toml_of
from scalepan.recipes import Library

if TYPE_CHECKING:
    from fractions import Fraction

    from scalepan._core import Catalog, Recipe, WrittenLine
    from scalepan.json_document import Path

_LINES = ("recipeIngredient", "ingredients")
_STEPS = ("recipeInstructions", "step", "steps")
_YIELD = ("recipeYield", "yield")
_PORTIONS = re.compile(
    r"(?:(?:serves|for|makes|yields?)\s*:?\s*)?([0-9]+(?:[./][0-9]+| [0-9]+/[0-9]+)?)"
    r"\s*(?:servings?|serves|portions?|people|persons?|helpings?|guests?)?\.?",
    re.IGNORECASE,
)
# Where a step has its text, and where it has others inside.
_TEXTS = ("text", "description")
_INSIDE = ("itemListElement", "item", "step", "steps", "@list")
# What an ingredient that is an object may have beside its text.
_NO_AMOUNTS = {"@type", "type", "@id", "position", "url", "image"}
_DEEPEST = 20
_LONGEST_REMARK = 300
_MOST_LINES = 2000
_MOST_DIGITS = 16  # of a whole number that stands without quotes


class _Line(NamedTuple):
    """An ingredient line as it is read, and where it stands."""

    text: str
    path: Path


class Words(NamedTuple):
    """How hints say what can be given: as in Python, or as on the command line."""

    name: str = "give name=, one of"
    serves: str = "serves=4"
    measures: str = "measures = "
    unread: str = 'or have another line read: replace={{"{}": "..."}}'


class Asked(NamedTuple):
    """What ``scalepan.read_json_ld`` is given beside the text."""

    name: str | None = None
    serves: int | Fraction | str | None = None
    measures: str = ""
    decimal: str = "point"
    region: str = ""
    replace: Mapping[str, str] = {}
    draft: bool = False
    words: Words = Words()


def recipe_of_json_ld(text: str, file: str, asked: Asked, catalog: Catalog | None) -> Recipe:
    """As ``scalepan.parse_json_ld``."""
    reader = _Reader(_chosen(recipes_of(text, file), asked, file), asked)
    data: dict[str, Any] = {"name": reader.name(), "serves": reader.serves(asked.serves)}
    decimal = asked.decimal if asked.decimal != "point" else ""
    given = {"measures": asked.measures, "decimal": decimal, "region": asked.region}
    data |= {key: word for key, word in given.items() if word}
    laid = catalog or bundled_catalog()
    if asked.region:
        laid = catalog_with(region=asked.region, catalog=laid)
    lines = reader.readable(reader.lines(), asked, data, laid)
    data["lines"] = _with_ids(lines)
    if steps := reader.steps():
        data["method"] = steps
    kept = f"{_plain_id(data['name']) or 'recipe'}.toml"
    toml = toml_of(data, reader.remarks())
    return Library(catalog).made_of(data, reader.places(lines), file, (kept, toml))


def _chosen(found: list[Node], asked: Asked, file: str) -> Node:
    name = asked.name
    names = [_name_of(node) for node in found]
    wanted = [node for node, known in zip(found, names, strict=True) if name in (None, known)]
    if wanted and all(node.data == wanted[0].data for node in wanted):
        return wanted[0]
    message = f"{'no' if not wanted else 'more than one'} recipe"
    message += " is there" if name is None else f' is called "{name}"'
    raise make_error("recipe.json_ld", message, f"{asked.words.name}: {'; '.join(names)}", file)


def _name_of(node: Node) -> str:
    for key, value in node.data.items():
        if short(key) == "name":
            return plain("".join(one for one in listed(value) if isinstance(one, str)))
    return ""


class _Reader:
    """One recipe."""

    def __init__(self, node: Node, asked: Asked) -> None:
        self._node = node
        self._replace = asked.replace
        self._words = asked.words
        self._keys = {short(key): key for key in node.data}
        for key in node.data:
            if (other := self._keys[short(key)]) != key:
                message = f"the recipe has {short(key)} twice, as {key} and as {other}"
                raise node.error("recipe.json_ld", message, (other,))
        self._offsets = node.source.offsets(node.path)
        self._steps = 0
        self.refused: list[str] = []
        self._taken = {"@type", "type", "@context", "@id", "name"}

    def name(self) -> str:
        name = _name_of(self._node)
        if not name:
            raise self._node.error("recipe.missing", "the recipe has no name", ())
        return name

    def serves(self, given: int | Fraction | str | None) -> int | str:
        """How many portions: as given, else as the yield says."""
        if given is not None:
            return _whole_or_text(_core.exact_text(given))
        key = next((key for key in _YIELD if key in self._keys), None)
        if key is None:
            hint = f"say how many portions: {self._words.serves}"
            raise self._node.error("recipe.missing", "the recipe has no recipeYield", (), hint)
        self._taken.add(key)
        return self._portions(key)

    def lines(self) -> list[_Line]:
        """Not blank, with those in place that were given for others."""
        found, others = (list(self._lines_of(key)) for key in _LINES)
        if found and others and [line.text for line in found] != [line.text for line in others]:
            message = f"{_LINES[0]} and {_LINES[1]} list different lines"
            path = (self._keys[_LINES[1]],)
            raise self._node.error("recipe.json_ld", message, path, "leave one of them out")
        found = found or others
        if not found:
            hint = "a recipe lists them as recipeIngredient"
            raise self._node.error("recipe.missing", "the recipe has no lines", (), hint)
        if len(found) > _MOST_LINES:
            message = f"the recipe has more than {_MOST_LINES} lines"
            raise self._node.error("recipe.too_many_lines", message, ())
        unknown = [text for text in self._replace if text not in {line.text for line in found}]
        if unknown:
            near = _core.nearest_names(unknown[0], [line.text for line in found])
            hint = f"nearest: {'; '.join(near)}" if near else ""
            message = f'no line is "{unknown[0]}"'
            raise self._node.error("recipe.json_ld", message, (), hint)
        return [line._replace(text=self._replace.get(line.text, line.text)) for line in found]

    def readable(
        self, lines: list[_Line], asked: Asked, data: Mapping[str, Any], catalog: Catalog
    ) -> list[tuple[_Line, str]]:
        """Each line with the id it would have by itself; a heading has none.

        One that no recipe could have is an error, whose hint names the others; in a draft it is a
        remark.
        """
        texts = [line.text for line in lines]
        read: list[Any] = [
            one if isinstance(one, Error) else _id_of(one, text, data, catalog)
            for one, text in zip(
                _core.read_lines(texts, asked.measures, asked.decimal, catalog, make_error),
                texts,
                strict=True,
            )
        ]
        wrong = [place for place, one in enumerate(read) if isinstance(one, Error)]
        if wrong and (not asked.draft or len(wrong) == len(read)):
            raise self._refusal(lines, read, wrong)
        self.refused += [f"not read: {texts[at]} ({read[at].message})" for at in wrong]
        pairs = zip(lines, read, strict=True)
        return [(line, one) for line, one in pairs if not isinstance(one, Error)]

    def _refusal(self, lines: list[_Line], read: list[Any], wrong: list[int]) -> Error:
        error, line = read[wrong[0]], lines[wrong[0]]
        row, column = self._place(line)
        hint = f"{error.hint}; ".replace("measures = ", self._words.measures) if error.hint else ""
        hint += self._words.unread.format(_shown(line.text))
        if len(wrong) > 1:
            others = "; ".join(_shown(lines[place].text) for place in wrong[1:])
            hint += f"; not read either: {others}"
        column = column and column + max(error.column, 1) - 1
        file = self._node.source.file
        return make_error(error.code, error.message, hint, file, row, column)

    def steps(self) -> list[str]:
        """Of the first property that has any."""
        for key in _STEPS:
            if key in self._keys:
                self._taken.add(key)
                if steps := list(self._steps_of(self._value(key), (self._keys[key],), 0)):
                    return steps
        return []

    def remarks(self) -> Iterator[str]:
        """Lines that were not read, and what no key of a recipe file takes."""
        yield from self.refused
        for name, key in self._keys.items():
            if name in self._taken:
                continue
            each = listed(self._node.data[key])
            texts = [one.get("name", one) if isinstance(one, dict) else one for one in each]
            if all(isinstance(one, str | int) for one in texts):
                told = "; ".join(plain(str(one)) for one in texts)
                yield f"{name}: {told[:_LONGEST_REMARK]}{'...' * (len(told) > _LONGEST_REMARK)}"
            else:
                yield f"{name}: not taken over"

    def places(self, lines: list[tuple[_Line, str]]) -> dict[Path, tuple[int, int]]:
        """Of the values of the recipe's file."""
        places: dict[Path, tuple[int, int]] = {
            ("lines", place): self._place(line) for place, (line, _) in enumerate(lines)
        }
        start = self._node.source.place(self._offsets[self._node.path])
        return {("name",): start, ("serves",): start, ("lines",): start, **places}

    def _place(self, line: _Line) -> tuple[int, int]:
        """Without a column where the text is not written as it reads, or is another's."""
        source = self._node.source
        at = self._offsets[(*self._node.path, *line.path)]
        row, column = source.place(at)
        return row, column if source.text.startswith(line.text, at) else 0

    def _value(self, name: str) -> Any:
        return self._node.data[self._keys[name]]

    def _lines_of(self, key: str) -> Iterator[_Line]:
        if key not in self._keys:
            return
        self._taken.add(key)
        value = self._value(key)
        base: Path = (self._keys[key],)
        for inside in ("itemListElement", "@list"):
            if isinstance(value, dict) and inside in value:
                value, base = value[inside], (*base, inside)
        is_list = isinstance(value, list)
        for place, one in enumerate(listed(value)):
            path = (*base, place) if is_list else base
            if isinstance(one, dict):
                one = self._only_text(one, path)
            if not isinstance(one, str):
                message = f"an ingredient is a {type(one).__name__}, not a text"
                raise self._node.error("recipe.type", message, path)
            for text in [plain(one)] if is_list else plain_lines(one):
                if text:
                    yield _Line(text, path)

    def _only_text(self, one: dict[str, Any], path: Path) -> Any:
        """Of an ingredient that is an object, if it says nothing else."""
        said = {short(key): value for key, value in one.items() if short(key) not in _NO_AMOUNTS}
        texts = list(said.values())
        if said.keys() <= {"name", "text", "item"} and texts and texts.count(texts[0]) == len(said):
            return texts[0]
        message = f"an ingredient is an object of {', '.join(said) or 'nothing'}, not a text"
        raise self._node.error("recipe.type", message, path)

    def _portions(self, key: str) -> int | str:
        texts = [self._yield_text(one) for one in listed(self._value(key))]
        numbers = [found[1] for text in texts if (found := _PORTIONS.fullmatch(text))]
        try:
            values = {_core.parse_amount_number(number) for number in numbers}
        except Error:  # as 4/0 is
            values = set()
        if len(values) != 1 or len(numbers) < len(texts):
            told = '", "'.join(texts)[:_LONGEST_REMARK]
            message = f'the yield "{told}" does not say one number of portions'
            hint = f"say how many portions: {self._words.serves}"
            raise self._node.error("recipe.yield", message, (self._keys[key],), hint)
        return _whole_or_text(_core.exact_text(values.pop()))

    @staticmethod
    def _yield_text(one: Any) -> str:
        if isinstance(one, dict):
            known = [key for key in ("value", "unitText") if key in one]
            others = [key for key in one if key not in (*known, "@type", "type", "@id")]
            one = " ".join(str(one[key]) for key in (*known, *others))
        return plain(str(one))

    def _steps_of(self, value: Any, path: Path, depth: int) -> Iterator[str]:
        """One text a step; the first of a section begins with the section's name."""
        if depth > _DEEPEST:
            raise self._node.error("recipe.type", "steps nest too deeply", path)
        for place, one in enumerate(listed(value)):
            at = (*path, place) if isinstance(value, list) else path
            self._steps += 1
            if self._steps > _MOST_LINES:
                message = f"the recipe has more than {_MOST_LINES} steps"
                raise self._node.error("recipe.too_many_lines", message, ())
            if isinstance(one, str):
                yield from plain_lines(one)
            elif isinstance(one, dict):
                yield from self._step_of(self._meant(one), at, depth)
            else:
                message = f"a step is a {type(one).__name__}, not a text"
                raise self._node.error("recipe.type", message, at)

    def _meant(self, step: dict[str, Any]) -> dict[str, Any]:
        """The object elsewhere that a step names, or itself."""
        name = step.get("@id", "")
        return self._node.ids.get(name, step) if isinstance(name, str) else step

    def _step_of(self, step: dict[str, Any], path: Path, depth: int) -> Iterator[str]:
        node = {short(key): value for key, value in step.items()}
        name = _text_of(node, "name")
        text = next(filter(None, (_text_of(node, key) for key in _TEXTS)), "")
        if (name or text) and isinstance(node.get("item"), str):
            del node["item"]  # the address of a page
        inner = [one for key in _INSIDE for one in self._steps_of(node.get(key), path, depth + 1)]
        if not (name or text or inner) and "" not in (node.get("name"), node.get("text")):
            self.refused.append(f"not read: a step of {', '.join(node) or 'nothing'}")
        if inner and "HowToStep" in types_of(step):
            inner = [" ".join(inner)]
        whole = text if text.startswith(name.rstrip(".")) else f"{name}: {text}" if text else name
        if not inner:
            yield from [whole] if whole else []
        else:
            yield f"{whole}: {inner[0]}" if whole else inner[0]
            yield from inner[1:]


def _whole_or_text(number: str) -> int | str:
    return int(number) if number.isdecimal() and len(number) < _MOST_DIGITS else number


def _text_of(node: Mapping[str, Any], key: str) -> str:
    return plain(" ".join(one for one in listed(node.get(key)) if isinstance(one, str)))


def _id_of(read: WrittenLine, text: str, data: Mapping[str, Any], catalog: Catalog) -> str | Error:
    """The id of the line in a recipe of its own, or why no recipe can have it."""
    if read.kind != "ingredient":
        return ""
    alone = {**data, "name": "x", "serves": 1, "lines": [text]}
    try:
        made = Library(catalog).made_of(alone, {("lines", 0): (1, 1)}, "", ("", ""))
    except Error as error:
        return error
    return made.lines[0].id


def _with_ids(lines: list[tuple[_Line, str]]) -> list[Any]:
    """The lines, those of a food that an earlier one has with an id of their own."""
    counts: dict[str, int] = {}
    told: list[Any] = []
    for line, plain_id in lines:
        count = counts[plain_id] = counts.get(plain_id, 0) + 1
        is_first = count == 1 or not plain_id
        told.append(line.text if is_first else {"id": f"{plain_id}_{count}", "line": line.text})
    return told


def _shown(text: str) -> str:
    return "".join(c if c.isprintable() else "?" for c in text[:_LONGEST_REMARK])


def _plain_id(name: str) -> str:
    return re.sub(r"[\W_]+", "_", name.lower()).strip("_")
