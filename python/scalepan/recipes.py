"""Recipes from TOML files.

name = "Barley broth"
serves = 4
measures = "metric"     # us, imperial, metric or au; needed where a line has a cup or spoon
decimal = "comma"       # only where numbers in the lines are written 2,5; else a point
region = "GB"           # whose names are meant where one name has several foods
names = { coriander = "coriander_leaf" }   # or the foods themselves, by such a name
tested_at = [4]
makes = "1.4 kg"        # weighed at the test: a weight, a volume or pieces
loss = "12 % of the raw batch"             # in place of makes, where only the loss is known
load = "12 portions"    # what the pan, tray or oven takes at once
tray = "GN 1/2 65"      # the pan that the written size fills,
trays = 1               # and how many of them
rounding = "5 %"        # what rounding may change of an amount without being flagged
flour = "10 kg"         # only where lines are written in baker's percent: "58 % water"
bases = { stock = "stock.toml" }           # recipes its lines take from, by relative path
lines = [
  "200 g pearl barley",
  "3/5 of the stock",
  { id = "topping", line = "30 g butter, melted", rule = "fixed" },
]
method = [               # steps: a text, or what it takes, its temperature and its time
  { text = "Simmer until tender.", uses = ["pearl_barley", "stock"], time = "40 min" },
  { text = "Brown the butter at 150 °C and pour it over.", uses = ["topping"] },
]                        # uses: ids of lines, "2/3 of stock", "rest of stock"; at = "200 °C";
                         # each_load = true for a step done anew for each load
"""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan._core import Catalog, Recipe
from scalepan.errors import FileError
from scalepan.files import read_text
from scalepan.foods import bundled_catalog, catalog_with
from scalepan.toml_table import Placed, TomlTable

if TYPE_CHECKING:
    from scalepan.files import PathLike
    from scalepan.toml_places import Path, Places

LineFields = dict[str, Placed | bool]
StepFields = dict[str, Placed | list[Placed] | bool]

_BATCH_TEXTS = ("makes", "loss", "load", "rounding", "flour")
_KEYS = (
    *("name", "serves", "measures", "decimal", "region", "names", "tested_at"),
    *(*_BATCH_TEXTS, "tray", "trays", "bases", "lines", "method"),
)
_LINE_TEXTS = ("id", "line", "stage", "state", "rule", "note")
LINE_KEYS = (*_LINE_TEXTS, "optional")
_STEP_TEXTS = ("text", "at", "time")
_STEP_KEYS = (*_STEP_TEXTS, "uses", "each_load")


_STEP_HINT = 'method = [{ text = "Roast until soft.", uses = ["fennel"], at = "200 °C" }]'

# No recipe is near this, and reading TOML takes a hundred times as much memory.
MOST_BYTES = 2_000_000
# A chain of bases this long is an oversight, and each link takes some of the stack and the time.
_DEEPEST = 40


def read_recipe(path: PathLike, *, catalog: Catalog | None = None) -> Recipe:
    """Reads a recipe file, and those of its bases.

    Args:
        path: a TOML file.
        catalog: foods and facts; left out, the bundled ones.

    Raises:
        RecipeError, MeasureError, NumberError, FoodError, FileError: with file, line and column.
    """
    return Library(catalog).read(str(path))


def parse_recipe(text: str, *, file: str = "", catalog: Catalog | None = None) -> Recipe:
    """As ``read_recipe``, from text; ``file`` is the name that errors show, and its folder the one
    that paths of bases start from."""
    return Library(catalog).parse(text, file)


def real_path(path: str) -> str:
    """Without links; a name that no file can have is left as it is."""
    try:
        return os.path.realpath(path)
    except ValueError:  # as reading or writing it will say
        return path


class Library:
    """Recipe files read together: each once, so that a base of two dishes is one base."""

    def __init__(self, catalog: Catalog | None) -> None:
        self._catalog = catalog
        self._known: dict[str, Recipe] = {}
        self._open: list[tuple[str, str]] = []  # real path and the path as it is written
        self._tables = 0  # recipes inside the open files that are being read

    def read(self, path: str) -> Recipe:
        real = real_path(path)
        if real not in self._known:
            self._known[real] = self.parse(read_text(path, MOST_BYTES), path)
        return self._known[real]

    def parse(self, text: str, file: str) -> Recipe:
        self._open.append((real_path(file) if file else "", file))
        try:
            return _Reader.of_file(text, file, self).recipe(self._catalog or bundled_catalog())
        finally:
            self._open.pop()

    def made_of(
        self, data: dict[str, Any], places: Places, file: str, kept: tuple[str, str]
    ) -> Recipe:
        """A recipe out of another form than TOML.

        Args:
            data: what its TOML file would hold.
            places: of its values in ``file``.
            kept: name and text of that TOML file.
        """
        self._open.append(("", file))
        try:
            reader = _Reader(data, places, file, (), self, kept)
            return reader.recipe(self._catalog or bundled_catalog())
        finally:
            self._open.pop()

    def chain_to(self, path: str) -> list[str]:
        """The files from this one down to the one being read, where it is among them."""
        real = real_path(path)
        reals = [known for known, _ in self._open]
        return [name for _, name in self._open[reals.index(real) :]] if real in reals else []

    def read_table(self, reader: _Reader, catalog: Catalog) -> Recipe:
        self._tables += 1
        try:
            return reader.recipe(catalog)
        finally:
            self._tables -= 1

    @property
    def depth(self) -> int:
        return len(self._open) + self._tables


class _Reader(TomlTable):
    """One recipe: a file, or a table inside one, whose path is ``root``."""

    def __init__(
        self,
        data: dict[str, Any],
        places: Places,
        file: str,
        root: Path,
        library: Library,
        whole: tuple[str, str] | None = None,
    ) -> None:
        super().__init__(data, places, file, root)
        self._library = library
        self._whole = whole

    @classmethod
    def of_file(cls, text: str, file: str, library: Library) -> _Reader:
        from scalepan.toml_document import load  # here, so that `import scalepan` stays quick

        return cls(*load(text, file), file, (), library, (file, text))

    def recipe(self, catalog: Catalog) -> Recipe:
        self._expect_keys(self._data, _KEYS, ())
        for key in ("name", "serves", "lines"):
            if key not in self._data:
                hint = "keys: " + ", ".join(_KEYS)
                raise self._error("recipe.missing", f"the recipe has no {key}", (), hint)
        places: dict[str, Placed] = {
            "name": self._text(("name",), self._data["name"]),
            "serves": self._placed(("serves",), ""),
            "tested_at": self._placed(("tested_at",), ""),
            "lines": self._placed(("lines",), ""),
        }
        for key in _BATCH_TEXTS:
            if key in self._data:
                places[key] = self._text((key,), self._data[key])
        if "tray" in self._data:
            places["tray"] = self._tray()
        return _core.make_recipe(
            places,
            self._number(("serves",), self._data["serves"]),
            self._measures(),
            self._decimal(),
            self._tested_at(),
            self._trays(),
            self._lines(),
            self._bases(catalog),
            self._method(),
            self._whole,
            self._catalog(catalog),
        )

    def _tray(self) -> Placed:
        from scalepan.pan_table import pan  # here, so that `import scalepan` stays quick

        placed = self._text(("tray",), self._data["tray"])
        self._at(("tray",), lambda: pan(placed[0]))
        return placed

    def _trays(self) -> Any:
        trays = self._number(("trays",), self._data.get("trays", 1))
        if trays <= 0:
            message = f"trays is {_core.exact_text(trays)}, but must be above zero"
            raise self._error("recipe.trays", message, ("trays",))
        return trays

    def _bases(self, catalog: Catalog) -> list[tuple[str, Recipe, Placed]]:
        bases = self._data.get("bases", {})
        if not isinstance(bases, dict):
            hint = 'bases = { sauce = "sauce.toml" }'
            raise self._error("recipe.type", "bases is not a table", ("bases",), hint)
        return [self._base(name, base, catalog) for name, base in bases.items()]

    def _base(self, name: str, base: object, catalog: Catalog) -> tuple[str, Recipe, Placed]:
        path: Path = ("bases", name)
        if not name.isprintable() or not name.strip():
            message = "the name of a base is empty or holds a control character"
            raise self._error("base.name", message, path)
        if self._library.depth >= _DEEPEST:
            message = f"bases stand more than {_DEEPEST} deep in one another"
            raise self._error("base.depth", message, path)
        if isinstance(base, dict):
            reader = _Reader(base, self._places, self._file, (*self._root, *path), self._library)
            return name, self._library.read_table(reader, catalog), self._placed(path, name)
        written, *_ = self._text(path, base)
        file = os.path.join(os.path.dirname(self._file), written)
        chain = [os.path.basename(link) for link in self._library.chain_to(file)]
        if chain:
            uses = " uses ".join([*chain, os.path.basename(file)])
            message = f"a recipe cannot be made from itself: {uses}"
            raise self._error("base.cycle", message, path, "take the recipe out of its own base")
        return name, self._read_base(name, file, path), self._placed(path, name)

    def _read_base(self, name: str, file: str, path: Path) -> Recipe:
        try:
            return self._library.read(file)
        except FileError as error:
            message = f"the base {name} cannot be read: {error.message} ({file})"
            raise self._error(error.code, message, path, error.hint) from None

    def _catalog(self, catalog: Catalog) -> Catalog:
        """With the foods that the recipe chooses where a name means several."""
        region, *_ = self._text(("region",), self._data.get("region", ""))
        names = self._data.get("names", {})
        if not isinstance(names, dict):
            hint = 'names = { cornflour = "corn_starch" }'
            raise self._error("recipe.type", "names is not a table", ("names",), hint)
        choose = {name: self._text(("names", name), food)[0] for name, food in names.items()}
        if not region and not choose:
            return catalog
        path = ("names",) if choose else ("region",)
        return self._at(path, lambda: catalog_with(region=region, choose=choose, catalog=catalog))

    def _measures(self) -> str:
        path = ("measures",)
        text, *_ = self._text(path, self._data.get("measures", ""))
        # The core knows the choices, and names them in its error.
        self._at(path, lambda: _core.quantity("1", measures=text))
        return text

    def _decimal(self) -> str:
        path = ("decimal",)
        text, *_ = self._text(path, self._data.get("decimal", ""))
        if text not in ("", "point", "comma"):
            message = f'decimal is "{text}", but must be point or comma'
            raise self._error("recipe.decimal", message, path)
        return text

    def _tested_at(self) -> list[Any]:
        sizes = self._data.get("tested_at", [])
        sizes = sizes if isinstance(sizes, list) else [sizes]
        return [self._number(("tested_at", i), size) for i, size in enumerate(sizes)]

    def _lines(self) -> list[LineFields]:
        lines = self._data["lines"]
        if not isinstance(lines, list):
            raise self._error("recipe.type", "lines is not a list", ("lines",), 'lines = ["..."]')
        return [self._line(("lines", i), line) for i, line in enumerate(lines)]

    def _line(self, path: Path, line: object) -> LineFields:
        if not isinstance(line, dict):
            return {"line": self._text(path, line)}
        self._expect_keys(line, LINE_KEYS, path)
        if "line" not in line:
            raise self._error("recipe.missing", "a line's table has no line", path)
        fields: LineFields = {
            key: self._text((*path, key), line[key]) for key in _LINE_TEXTS if key in line
        }
        return {**fields, "optional": self._flag(line, "optional", path)}

    def _method(self) -> list[StepFields]:
        steps = self._data.get("method", [])
        if not isinstance(steps, list):
            raise self._error("recipe.type", "method is not a list", ("method",), _STEP_HINT)
        return [self._step(("method", i), step) for i, step in enumerate(steps)]

    def _step(self, path: Path, step: object) -> StepFields:
        if not isinstance(step, dict):
            return {"text": self._text(path, step)}
        self._expect_keys(step, _STEP_KEYS, path)
        if "text" not in step:
            raise self._error("recipe.missing", "a step's table has no text", path, _STEP_HINT)
        uses = step.get("uses", [])
        if not isinstance(uses, list):
            hint = 'uses = ["fennel", "2/3 of olive_oil"]'
            raise self._error("recipe.type", "uses is not a list", (*path, "uses"), hint)
        fields: StepFields = {
            key: self._text((*path, key), step[key]) for key in _STEP_TEXTS if key in step
        }
        fields["uses"] = [self._text((*path, "uses", i), use) for i, use in enumerate(uses)]
        return {**fields, "each_load": self._flag(step, "each_load", path)}
