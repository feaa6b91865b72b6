"""Types of the compiled core; the classes are documented where scalepan re-exports them."""

from collections.abc import Callable, Container, Iterable, Mapping, Sequence, Set
from fractions import Fraction
from typing import TYPE_CHECKING, Never, Self, SupportsIndex, overload

# Low in the order in which cycles of imports are checked: the core stands below all of them.
if TYPE_CHECKING:
    from scalepan.costing_files import Refreshed
    from scalepan.errors import Error
    from scalepan.files import PathLike
    from scalepan.sheets import Sheet as LiveSheet
    from scalepan.shopping import Shopping
    from scalepan.type_names import (
        CellInput,
        CellValue,
        CostOptions,
        MeasureRow,
        Number,
        Placed,
        WhyData,
    )

__version__: str

class _ObjectType(type): ...

class _Object(metaclass=_ObjectType):
    """What all classes of the core are: only those with a constructor of their own are made."""

    def __init__(self, *args: Never, **kwargs: Never) -> None: ...
    def __copy__(self) -> Self:
        """Itself, where it never changes."""
    def __deepcopy__(self, memo: dict[int, object], /) -> Self:
        """Likewise."""

class _Displayed(_Object):
    """What a notebook shows; ``scalepan.displays`` adds it to the classes."""

    def _repr_mimebundle_(
        self, include: Container[str] | None = None, exclude: Container[str] | None = None
    ) -> dict[str, str]:
        """``text/html`` and ``text/plain`` with the same figures."""

class Quantity(_Displayed):
    """An exact number of a unit. Sums and comparisons need one dimension and stage."""

    def to(self, unit: str, measures: str = "") -> Quantity:
        """The same amount in another unit; a unit without a stage keeps the amount's own.

        Raises MeasureError (``quantity.convert``) naming both sides.
        """
    @property
    def value(self) -> Fraction:
        """The number, in the unit shown."""
    @property
    def unit(self) -> str:
        """As shown: ``g EP``, ``cup_us``, ``EUR/kg``."""
    @property
    def dimension(self) -> str:
        """For people: ``weight EP``, ``volume``, ``money in EUR``."""
    @property
    def stage(self) -> str:
        """``AP``, ``EP``, ``cooked``, ``drained``, ``served`` or empty."""
    @property
    def told(self) -> str:
        """Short text for people; begins with an almost-equal sign where it is rounded."""
    @property
    def told_money(self) -> str:
        """Rounded half up to the currency's minor unit (ISO 4217)."""
    def __add__(self, other: Quantity | Number) -> Quantity: ...
    def __radd__(self, other: Number) -> Quantity: ...
    def __sub__(self, other: Quantity | Number) -> Quantity: ...
    def __rsub__(self, other: Number) -> Quantity: ...
    def __mul__(self, other: Quantity | Number) -> Quantity: ...
    def __rmul__(self, other: Number) -> Quantity: ...
    def __truediv__(self, other: Quantity | Number) -> Quantity: ...
    def __rtruediv__(self, other: Number) -> Quantity: ...
    def __lt__(self, other: Quantity | Number) -> bool: ...
    def __le__(self, other: Quantity | Number) -> bool: ...
    def __gt__(self, other: Quantity | Number) -> bool: ...
    def __ge__(self, other: Quantity | Number) -> bool: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def __neg__(self) -> Quantity: ...
    def __abs__(self) -> Quantity: ...
    def __bool__(self) -> bool: ...
    def __format__(self, form: str) -> str:
        """Fills and alignments, ``f"{amount:>12}"``.

        Raises MeasureError (``quantity.format``) for formats that round, as ``.2f`` does.
        """
    def __round__(self, places: int | None = None) -> Quantity:
        """Raises MeasureError (``quantity.format``)."""
    def __getstate__(self) -> tuple[Fraction, str]: ...
    def __setstate__(self, state: tuple[Fraction, str], /) -> None: ...

def quantity(amount: Number, unit: str | None = None, measures: str | None = None) -> Quantity:
    """A quantity from text (``"1 1/2 cup"``), or from a number and a unit.

    ``measures`` (us, metric, imperial, au) says which cup, spoon and pint are meant.

    >>> scalepan.quantity("1 1/2 cup", measures="us").to("mL")
    Quantity('354.88235475 mL')

    Raises MeasureError and NumberError.
    """

class NumberColumn(_Object):
    """Exact numbers in a row, held over one common denominator where that fits machine words."""

    def __init__(self, numbers: Iterable[Number]) -> None: ...
    def __len__(self) -> int: ...
    def __getitem__(self, place: int) -> Fraction: ...
    def sum(self) -> Fraction:
        """Of all numbers, exactly; 0 of none."""
    def sum_of_products(self, other: NumberColumn) -> Fraction:
        """Of the products of the numbers in the same place, such as needs and prices.

        Raises NumberError (``number.columns``) where the columns differ in length.
        """

def number(x: Number) -> Fraction: ...
def parse_amount_number(text: str) -> Fraction: ...
def parse_formula_number(text: str) -> Fraction: ...
def exact_text(x: Number) -> str: ...
def mixed_text(x: Number) -> str: ...
def fixed_text(x: Number, places: SupportsIndex) -> str: ...
def round_to_multiple(x: Number, step: Number, mode: str) -> tuple[Fraction, Fraction]: ...
def unit_rows() -> list[tuple[str, str, str, str, Fraction, str]]: ...

class MeasureSet(_Object):
    """Measures of a kitchen that are used together, all of weight or all of volume."""

    @property
    def name(self) -> str:
        """``us spoons and cups``."""
    @property
    def dimension(self) -> str:
        """``weight`` or ``volume``."""
    @property
    def measures(
        self,
    ) -> list[
        tuple[str, str, Quantity, Fraction | None, list[tuple[Quantity, Quantity, Quantity]], str]
    ]:
        """The largest first; of each name, plural, size, most, marks (step, from, to), source."""
    def nearest(
        self, exact: Quantity, most_pieces: Number | None = None, within: Quantity | None = None
    ) -> tuple[list[tuple[int, str]], str, Quantity, Quantity]:
        """Pieces, their text, the amount they hold, and its error.

        Raises MeasureError (``measure.kind``, ``measure.negative``, ``measure.pieces``,
        ``measure.within``, ``measure.too_many``).
        """

def make_measure_set(name: str, rows: Sequence[MeasureRow]) -> MeasureSet: ...
def nearest_names(name: str, known: Sequence[str]) -> list[str]: ...

class Loads(_Displayed):
    """A total shared out into the fewest loads; their sum is the total, exactly."""

    @property
    def capacity(self) -> Quantity:
        """What a load holds at most; of counts the whole number below."""
    @property
    def parts(self) -> list[tuple[int, Quantity]]:
        """How many loads hold how much, the larger first; none for a total of zero."""
    @property
    def count(self) -> int:
        """Of all loads."""
    @property
    def full(self) -> int:
        """How many are filled to the capacity."""
    @property
    def each(self) -> Quantity:
        """What the largest holds; zero where there is no load."""
    @property
    def short(self) -> Quantity:
        """What the smallest holds where that is below the capacity, else zero."""
    @property
    def text(self) -> str:
        """``3 loads of 4 kg and one of 1 kg``; a rounded figure is marked so."""
    def in_turn(self, time: Quantity | str) -> Quantity:
        """The time of all loads one after the other, at ``time`` a load.

        How long one load takes is the cook's own figure: it is never scaled with what it holds.
        Raises MeasureError (``load.time``).
        """

def loads(total: Quantity, capacity: Quantity, equal: bool = False) -> Loads: ...

class Fact(_Displayed):
    """One sourced figure about a food."""

    @property
    def id(self) -> str:
        """``carrot.edible``: what ``prefer`` takes."""
    @property
    def food(self) -> str:
        """The food's id."""
    @property
    def kind(self) -> str:
        """``density``, ``piece weight``, ``edible share``, ``cooked share``, ``drained share``."""
    @property
    def state(self) -> str:
        """Of the food: ``chopped``; or empty."""
    @property
    def size(self) -> str:
        """``large``; or empty."""
    @property
    def value(self) -> Quantity:
        """In ``g/mL``, ``EP/AP``, ``g EP/(piece AP)`` and so on."""
    @property
    def low(self) -> Quantity | None:
        """The lowest published; None where no spread is."""
    @property
    def high(self) -> Quantity | None:
        """The highest."""
    @property
    def source(self) -> str:
        """Where it is published."""
    @property
    def layer(self) -> str:
        """``own``, ``bundled`` or ``dataset``."""

class Catalog(_Displayed):
    """Foods, their names, and the facts about them."""

    def __init__(self) -> None: ...
    def copy(self) -> Catalog:
        """One to add to; this one stays as it is."""
    def add_food(
        self,
        names: Sequence[str],
        allergens_eu: Sequence[str],
        allergens_us: Sequence[str],
        cautions: Sequence[str],
        /,
    ) -> None:
        """Names: id, name, plural, usual state and size. Raises FoodError (``food.duplicate``)."""
    def add_name(self, name: str, plural: str, region: str, food: str, near: bool, /) -> None:
        """A further name; near: of a close relative. Raises FoodError (``food.unknown``)."""
    def add_fact(self, row: Sequence[str], layer: str, /) -> None:
        """A row in the columns of facts.csv. Raises FoodError (``fact.value``, ``fact.kind``,
        ``fact.stage``, ``fact.duplicate``, ``food.unknown``)."""
    def add_release(
        self,
        label: str,
        foods: tuple[str, str],
        weights: tuple[str, str],
        abbreviated: bool,
        /,
    ) -> None:
        """Files of a USDA SR release, each its name and text. Raises FoodError (``food.release``,
        ``food.duplicate``)."""
    def prefer(self, fact: str, /) -> None:
        """Uses a fact, by id, before all others. Raises FoodError (``fact.unknown``,
        ``fact.duplicate``)."""
    def choose(self, region: str, names: Mapping[str, str], /) -> None:
        """Settles names: a region, and food by name. Raises FoodError (``food.region``,
        ``food.unknown``)."""
    def food_of(self, name: str, region: str = "") -> str | None:
        """The id of the food of that name.

        Raises FoodError (``food.ambiguous``, ``food.region``).
        """
    def facts(self, food: str, region: str = "") -> list[Fact]:
        """The facts of a food, by layer and id: the order in which they are used.

        Raises FoodError (``food.unknown``, ``food.ambiguous``, ``food.region``).
        """
    def part(self, foods: Set[str], /) -> Catalog:
        """What it has of some foods (ids): their names mean there what they mean here."""
    @property
    def food_rows(self) -> list[tuple[list[str], list[str], list[str], list[str]]]:
        """What ``add_food`` takes, by id."""
    @property
    def name_rows(self) -> list[tuple[str, str, str, str, bool]]:
        """What ``add_name`` takes, in the order it was added."""
    @property
    def fact_rows(self) -> list[tuple[list[str], str]]:
        """What ``add_fact`` takes, by food."""
    @property
    def choices(self) -> tuple[str, dict[str, str]]:
        """What ``choose`` took."""
    def nearest(self, name: str, /) -> list[str]:
        """At most three known names near a misspelt one."""
    def name_base(self, name: str, /) -> None:
        """Names what it holds now: copies that are changed are pickled as that and the changes."""
    @property
    def base(self) -> str:
        """That name and a number by which other contents are noticed; empty without a base."""
    @property
    def is_base(self) -> bool:
        """Whether it has a base and is as this was."""
    @property
    def food_count(self) -> int:
        """Of all layers."""
    @property
    def fact_count(self) -> int:
        """Of all layers."""

_Told = tuple[str, Quantity, str]

def convert(
    catalog: Catalog,
    amount: Quantity,
    unit: str,
    food: str,
    measures: str,
    state: str,
    size: str,
    preparations: Sequence[str],
    region: str,
) -> tuple[
    Quantity,
    list[tuple[str, Quantity, bool, str, tuple[_Told, ...]]],
    Quantity,
    Quantity,
    Quantity,
    Quantity,
]: ...

class TrialPart(_Object):
    """What came off in one trial, or was lost."""

    @property
    def what(self) -> str:
        """``by-product``, ``loss``, ``taken off`` or ``carving loss``."""
    @property
    def name(self) -> str:
        """``peel``; or empty."""
    @property
    def weight(self) -> Quantity:
        """At the stage it came off."""
    @property
    def is_rest(self) -> bool:
        """Whether the weight was derived, as what the others left over."""
    @property
    def value(self) -> Quantity | None:
        """Money, in all."""
    @property
    def use(self) -> str:
        """What it is good for; or empty."""

class YieldTrial(_Object):
    """One trial; weights it did not come to are None."""

    @property
    def name(self) -> str:
        """``1``, as in its rows."""
    @property
    def food(self) -> str:
        """As bought."""
    @property
    def bought(self) -> Quantity | None:
        """A weight AP."""
    @property
    def cost(self) -> Quantity | None:
        """Money, in all."""
    @property
    def priced_per(self) -> str | None:
        """``kg``, where the price was written per unit."""
    @property
    def cut(self) -> list[TrialPart]:
        """By-products and losses before cooking."""
    @property
    def edible(self) -> Quantity | None:
        """A weight EP, left of what was bought."""
    @property
    def drained(self) -> Quantity | None:
        """A weight drained."""
    @property
    def into_the_pan(self) -> Quantity | None:
        """At EP: what was cooked, all of the edible weight where no other is written."""
    @property
    def cooked(self) -> Quantity | None:
        """A weight cooked."""
    @property
    def off(self) -> list[TrialPart]:
        """What was taken off and lost after cooking."""
    @property
    def served(self) -> Quantity | None:
        """A weight served."""

class TrialRatio(_Object):
    """One ratio over several trials, under both its names, with its spread."""

    @property
    def ratio_of_sums(self) -> Quantity:
        """All that remained over all there was."""
    @property
    def mean_of_ratios(self) -> Quantity:
        """The mean of the trials' own ratios."""
    @property
    def low(self) -> Quantity:
        """Of the trial with the lowest ratio."""
    @property
    def high(self) -> Quantity:
        """Of the trial with the highest."""
    @property
    def trials(self) -> int:
        """How many."""

class YieldShare(_Object):
    """What of the weight at one stage remained at another."""

    @property
    def of(self) -> str:
        """``AP``, ``EP`` or ``cooked``: the stage below the line."""
    @property
    def stage(self) -> str:
        """What remained: ``EP``, ``cooked``, ``drained``, ``served``."""
    @property
    def share(self) -> TrialRatio:
        """``EP/AP`` and so on."""
    @property
    def loss(self) -> TrialRatio:
        """1 less the share, a plain number: of the weight at ``of``; below 0 where it gained."""

class PartShare(_Object):
    """What came off over all trials; a trial without the part counts with none of it."""

    @property
    def what(self) -> str:
        """``by-product``, ``loss``, ``taken off`` or ``carving loss``."""
    @property
    def name(self) -> str:
        """Of the part; or empty."""
    @property
    def use(self) -> str:
        """What it is good for; or empty."""
    @property
    def of(self) -> str:
        """``AP`` or ``cooked``: what the share is of."""
    @property
    def weight(self) -> Quantity:
        """In all."""
    @property
    def value(self) -> Quantity | None:
        """Money, in all; None where none is stated."""
    @property
    def share(self) -> TrialRatio:
        """Plain numbers."""

class StageCost(_Object):
    """What the food cost at one stage, all trials with a price together."""

    @property
    def stage(self) -> str:
        """``AP``, ``EP``, ``cooked``, ``served``."""
    @property
    def trials(self) -> int:
        """How many have a price."""
    @property
    def weight(self) -> Quantity:
        """At this stage, in all."""
    @property
    def value(self) -> Quantity:
        """Money: what was paid for this weight, less the value of what came off."""
    @property
    def bought(self) -> Quantity:
        """The bought weight behind it."""
    @property
    def paid(self) -> Quantity:
        """Money, in all."""
    @property
    def credit(self) -> Quantity:
        """Money: the value of what came off."""
    @property
    def per_unit(self) -> Quantity:
        """``USD/(lb EP)`` and so on."""
    @property
    def price(self) -> Quantity:
        """Per unit bought, ``USD/(lb AP)``."""
    @property
    def factor(self) -> Quantity:
        """The cost factor: cost per unit over price per unit bought, ``AP/EP`` and so on."""
    @property
    def yield_factor(self) -> Quantity:
        """100 / yield %: what the cost factor would be without any credit."""
    def at_price(self, price: Quantity | str) -> Quantity:
        """The cost per unit at another price per unit bought: cost factor times price.

        Raises FoodError (``yield.price``).
        """
    def portion_cost(self, size: Quantity | str, price: Quantity | str | None = None) -> Quantity:
        """Money for a portion; a size without a stage is at this one.

        Raises FoodError (``yield.portion``, ``yield.price``) and MeasureError
        (``quantity.convert``) for a size at another stage.
        """
    def portion_factor(self, size: Quantity | str) -> Quantity:
        """Portion cost over price: the bought weight that a portion costs as much as."""

class YieldTest(_Object):
    @property
    def food(self) -> str: ...
    @property
    def trials(self) -> list[YieldTrial]: ...
    @property
    def shares(self) -> list[YieldShare]: ...
    @property
    def parts(self) -> list[PartShare]: ...
    @property
    def costs(self) -> list[StageCost]: ...

def make_yield_test(rows: Sequence[Mapping[str, Placed]], measures: str) -> YieldTest: ...

class Offer(_Displayed):
    """One pack of one item at one price."""

    @property
    def item(self) -> str:
        """Its name in the price book."""
    @property
    def row(self) -> dict[str, str]:
        """As it was written, by column; with ``measures`` and ``at``, its place, where known."""
    @property
    def sold_as(self) -> str:
        """The stage the shop weighs: ``AP``, ``EP``, ``cooked``, ``drained``."""
    @property
    def pack(self) -> str:
        """As written: ``2 x 400 g tin``."""
    @property
    def content(self) -> Quantity:
        """What a pack holds, with its stage."""
    @property
    def price(self) -> Quantity:
        """Money, of one pack, taxes as written."""
    @property
    def keeps(self) -> bool:
        """Whether what is left can be kept."""
    @property
    def keeps_days(self) -> int | None:
        """None where no number is stated."""
    @property
    def shop(self) -> str:
        """Or empty."""
    @property
    def date(self) -> str:
        """ISO 8601, or empty."""
    @property
    def terms(self) -> list[str]:
        """As written: ``3 for 4.50``."""
    @property
    def least(self) -> Fraction:
        """So many packs are bought, or none."""
    @property
    def limit(self) -> Fraction | None:
        """The most packs a customer may buy."""
    @property
    def tax(self) -> Fraction | None:
        """A share of the net price."""
    @property
    def tax_included(self) -> bool:
        """Whether the price is with tax."""
    @property
    def deposit(self) -> Quantity:
        """Money, given back."""

class StockItem(_Object):
    """An amount on hand."""

    @property
    def item(self) -> str:
        """As in the price book."""
    @property
    def row(self) -> dict[str, str]:
        """As it was written, by column; with ``measures`` and ``at``, its place, where known."""
    @property
    def stage(self) -> str:
        """``AP``, ``EP``, ``cooked``, ``drained``."""
    @property
    def amount(self) -> Quantity:
        """What there is."""
    @property
    def value(self) -> Quantity:
        """Money, of all of it."""
    @property
    def use_by(self) -> str:
        """ISO 8601, or empty."""

class Stock(_Object):
    """What is on hand, in the order of use."""

    @property
    def items(self) -> list[StockItem]:
        """In the order of use."""
    def __len__(self) -> int: ...

def make_stock(rows: Sequence[Mapping[str, Placed]], measures: str) -> Stock: ...

class PriceBook(_Displayed):
    """Offers, by shop and date."""

    @property
    def offers(self) -> list[Offer]:
        """One a row, as written."""
    def on(self, date: str = "", shops: Sequence[str] = ()) -> PriceBook:
        """What holds on a day (ISO 8601), in some shops; empty takes the newest, and every shop.

        Raises PriceError (``price.shop``).
        """
    def __add__(self, other: PriceBook, /) -> PriceBook:
        """The rows of both, each with the place it was read from.

        Raises PriceError (``price.duplicate``) where both price one pack in one shop on one day.
        """
    def __len__(self) -> int: ...

def make_price_book(rows: Sequence[Mapping[str, Placed]], measures: str) -> PriceBook: ...

class Cover(_Displayed):
    """Whole packs that meet a need."""

    @property
    def packs(self) -> list[tuple[int, str]]:
        """How many of which."""
    @property
    def price(self) -> Quantity:
        """Money, of all packs."""
    @property
    def leftover(self) -> Quantity:
        """What they hold beyond the need."""

def cover(need: Quantity, packs: Sequence[tuple[str, Quantity, Quantity]]) -> Cover: ...

class CoverStep(_Object):
    """Needs that one cover meets: those above `after` and up to `upto`."""

    @property
    def after(self) -> Quantity:
        """In the packs' unit; not met by this cover."""
    @property
    def upto(self) -> Quantity:
        """What the cover holds at most."""
    @property
    def cover(self) -> Cover:
        """Its leftover is that of `upto`."""

class CoverFunction(_Displayed):
    """The cheapest whole packs for every need. May be asked from several threads."""

    def at(self, need: Quantity | str) -> Cover:
        """Raises PriceError (``cover.dimension``, ``cover.limit``, ``cover.too_many``)."""
    def steps(self, low: Quantity | str, high: Quantity | str) -> list[CoverStep]:
        """The steps that meet needs above `low`, up to that of `high` or to the last there is.

        Raises PriceError (``cover.dimension``, ``cover.need``, ``cover.too_many``).
        """
    @property
    def period(self) -> Quantity | None:
        """What the covers repeat by; None where limits end them.

        Raises PriceError (``cover.too_many``).
        """
    @property
    def repeats_above(self) -> Quantity | None:
        """The need above which they repeat. Raises as `period`."""
    @property
    def most(self) -> Quantity | None:
        """All that can be bought, where every pack is limited."""
    @property
    def kernel(self) -> str:
        """The way taken: ``steps`` or ``stems``, ``in words`` or ``in fractions``."""

def make_cover_function(
    rows: Sequence[tuple[str, Quantity, Quantity, int, int, int, int | None]],
    order: str,
) -> CoverFunction: ...

class WrittenLine(_Displayed):
    """What a recipe line says, before anything is known of the recipe."""

    @property
    def kind(self) -> str:
        """``ingredient``, ``heading`` or ``separator``."""
    @property
    def heading(self) -> str:
        """The text of a heading, or the label of ``To serve: lemon wedges``."""
    @property
    def low(self) -> Fraction | None:
        """In ``unit``; None where there is no number or no lower bound."""
    @property
    def high(self) -> Fraction | None:
        """The number, of a range the high end."""
    @property
    def unit(self) -> str:
        """``cup``, ``clove``, ``tin``; ``piece`` of a bare count; empty without an amount."""
    @property
    def amount(self) -> Quantity | None:
        """Of a range the high end, of tins what they hold, of what is counted by any word pieces;
        None without a number, and where it is open which measures are meant."""
    @property
    def about(self) -> bool:
        """Whether the number is hedged: ``about``, ``or more``."""
    @property
    def vague(self) -> str:
        """``a few sprigs``, in place of an amount."""
    @property
    def fill(self) -> str:
        """``heaping``, ``scant``."""
    @property
    def size(self) -> str:
        """Of a piece or container: ``large``, ``1 inch``, ``#10``."""
    @property
    def container_size(self) -> str:
        """``400 g`` of ``2 x 400 g tins``."""
    @property
    def second_measures(self) -> list[str]:
        """Checked against the amount: ``8 oz`` of ``250 g (8 oz)``."""
    @property
    def food(self) -> str:
        """As written, without the preparation."""
    @property
    def foods(self) -> list[str]:
        """More than one where they share one amount: ``salt and pepper``."""
    @property
    def part(self) -> str:
        """``juice`` of ``juice of 2 lemons``."""
    @property
    def states(self) -> list[str]:
        """How the food is or what is done to it, in the words of the line."""
    @property
    def stage(self) -> str | None:
        """Where the line says it outright: ``EP``."""
    @property
    def alternatives(self) -> list[str]:
        """Other choices, behind ``or``."""
    @property
    def beside(self) -> list[str]:
        """Further foods with amounts of their own."""
    @property
    def notes(self) -> list[str]:
        """What else it says, in its words."""
    @property
    def to_taste(self) -> bool:
        """Whether the amount is left to the cook."""
    @property
    def optional(self) -> bool:
        """Whether it may be left out."""
    @property
    def rule(self) -> str:
        """What stands behind the bar."""

def read_line(text: Placed, measures: str, decimal: str, catalog: Catalog) -> WrittenLine: ...
def read_lines(
    texts: Sequence[str],
    measures: str,
    decimal: str,
    catalog: Catalog,
    make_error: Callable[[str, str, str, str, int, int], Error],
) -> list[WrittenLine | Error]: ...

class Line(_Displayed):
    """One ingredient of a recipe, at the recipe's size."""

    @property
    def id(self) -> str:
        """Of its food, where the file gives none."""
    @property
    def text(self) -> str:
        """As written."""
    @property
    def food(self) -> str:
        """As written."""
    @property
    def food_id(self) -> str | None:
        """In the catalogue; None where the food is unknown."""
    @property
    def amount(self) -> Quantity | None:
        """What is needed, with its stage; of a range, the high end. None where the line states no
        amount (``salt, to taste``); so are ``low``, ``exact`` and ``written``."""
    @property
    def low(self) -> Quantity | None:
        """Of a range the low end."""
    @property
    def exact(self) -> Quantity | None:
        """Before rounding to whole pieces."""
    @property
    def written(self) -> Quantity | None:
        """At the size it was written for."""
    @property
    def stage(self) -> str:
        """``AP``, ``EP``, ``cooked``, ``drained`` or ``served``."""
    @property
    def state(self) -> str:
        """Of the food: ``chopped``; or empty."""
    @property
    def size(self) -> str:
        """``large``; or empty."""
    @property
    def part(self) -> str:
        """What of the food is wanted: ``juice``."""
    @property
    def part_amount(self) -> Quantity | None:
        """What the part comes to, where a fact tells: 96 g EP of the juice of 2 lemons."""
    @property
    def drained_later(self) -> bool:
        """Measured with what it stands in, of which it is drained: tins ``, drained``."""
    @property
    def rounding_spoils(self) -> str:
        """What rounding its amount spoils: ``leavening``, ``salt``, ``gelling``; mostly empty."""
    @property
    def made_in(self) -> str:
        """The base it belongs to, among ``Recipe.food_lines``; empty for a line of the dish."""
    @property
    def takes_from(self) -> str | None:
        """The base it takes from, in place of a food."""
    @property
    def heading(self) -> str:
        """The heading the line stands under, or its own label."""
    @property
    def preparation(self) -> str:
        """Behind the comma, as written."""
    @property
    def note(self) -> str:
        """The cook's own; or empty."""
    @property
    def optional(self) -> bool:
        """Whether it may be left out."""
    @property
    def rule(self) -> str:
        """How it scales: ``in proportion``, ``fixed``, ``1 per 8 portions``."""
    @property
    def told(self) -> str:
        """The line as a cook is told it."""

class MethodStep(_Object):
    """One step of a method, at the recipe's size."""

    @property
    def text(self) -> str:
        """Temperatures in both scales."""
    @property
    def uses(self) -> list[Line]:
        """The lines it takes from, each at the amount it takes."""
    @property
    def at(self) -> str | None:
        """The temperature in both scales."""
    @property
    def time(self) -> str | None:
        """As written: times are never scaled."""
    @property
    def each_load(self) -> bool:
        """Done anew for each load."""

class Recipe(_Displayed):
    """Lines, the size they were written for, and the size they are at."""

    @property
    def name(self) -> str:
        """As in its file."""
    @property
    def serves(self) -> Fraction:
        """Portions of the written size."""
    @property
    def portions(self) -> Fraction:
        """That it serves at this size."""
    @property
    def measures(self) -> str:
        """``us``, ``metric``, ``imperial``, ``au`` or empty."""
    @property
    def tested_at(self) -> list[Fraction]:
        """Portions."""
    @property
    def tested(self) -> str:
        """Which sizes were tested, and that others are computed."""
    @property
    def lines(self) -> list[Line]:
        """At this size, without those of bases."""
    @property
    def method(self) -> list[MethodStep]:
        """Its own steps; those of a base are that recipe's."""
    @property
    def times_remark(self) -> str:
        """That times are not scaled; empty at a tested size, and where no step states a time."""
    @property
    def file(self) -> tuple[str, str] | None:
        """The name and text of its file; None where it stands in that of another."""
    @property
    def catalog(self) -> Catalog:
        """A copy of what it was read by."""
    @property
    def is_tested(self) -> bool:
        """Whether so many portions, of the written size, are stated as tested."""
    @property
    def made(self) -> Fraction:
        """The portions made: those asked for, spare ones, and what serving loses."""
    @property
    def factor(self) -> Fraction:
        """Of the written amounts."""
    @property
    def loads(self) -> Fraction:
        """Pans, trays or ovens full; 1 where the recipe states no load."""
    @property
    def batch(self) -> Quantity | None:
        """What it makes, in the unit of ``makes``, else the weight; None where neither is known."""
    @property
    def batch_weight(self) -> Quantity | None:
        """After cooking, as measured or what the loss leaves."""
    @property
    def raw_batch(self) -> Quantity | None:
        """The weight of its lines as they go in, trimmed; None where a line has no weight."""
    @property
    def tray(self) -> str:
        """The pan that its written size fills, ``trays`` times; empty where none is stated."""
    @property
    def trays(self) -> Fraction:
        """So many of ``tray`` at the written size."""
    @property
    def rounding(self) -> Fraction:
        """The share of an amount that rounding may change without being flagged."""
    def load_split(self, *, equal: bool = False) -> Loads | None:
        """What goes into each pan, tray or oven; None where the recipe states no load.

        Full loads and a short one, or all alike where ``equal``; a started portion, piece or tray
        counts whole.
        """
    @property
    def unweighed(self) -> list[str]:
        """Ids of the lines whose weight no fact gives."""
    @property
    def food_lines(self) -> list[Line]:
        """Its own lines of foods and those of its bases, whose ids begin with the base's name."""
    @property
    def bases(self) -> list[MadeBase]:
        """All bases below it, each made once for all its uses, in the order they are made."""
    def scale(
        self,
        *,
        portions: Number | None = None,
        factor: Number | None = None,
        batch: Number | Quantity | None = None,
        raw_batch: str | Quantity | None = None,
        stock: Mapping[str, Number | Quantity] | None = None,
        portion_size: Number | Quantity | None = None,
        spare: Number | None = None,
        serving_loss: Number | None = None,
    ) -> Recipe:
        """The recipe at another size, always from the written amounts.

        Args:
            portions: how many to serve.
            factor: times the written amounts.
            batch: a weight, or what ``makes`` is stated in; a number is of pieces.
            raw_batch: a weight before cooking.
            stock: line ids or foods to what there is of them; the most whole portions that allows.
            portion_size: with portions: how much each is; the lines by the portion keep to their
                number.
            spare: with portions: how many to make beside them.
            serving_loss: with portions: the share of what is made that never reaches a plate,
                ``"5 %"``.

        Raises:
            RecipeError: ``recipe.portions``, ``recipe.size``, ``size.unreachable`` with the sizes
                on both sides where a line that goes in steps jumps over the target,
                ``size.target``, ``size.stock``, ``size.spare``, ``size.loss``, ``batch.unknown``,
                ``rule.taper_end``.
        """
    def stock_limit(self, stock: Mapping[str, Number | Quantity]) -> tuple[str, Fraction]:
        """The line that limits the size, and the portions its stock would allow."""
    def bakers_percents(self, flours: Sequence[str]) -> list[tuple[str, Fraction]]:
        """Line id and weight in percent of all flours together, whose ids are given.

        Raises RecipeError (``recipe.flour``, ``batch.unknown``).
        """

class BaseUse(_Object):
    """One use of a base."""

    @property
    def line(self) -> str:
        """The line that takes it: ``sauce``, or ``filling.sauce`` in the base ``filling``."""
    @property
    def amount(self) -> Quantity:
        """What it takes, in the unit of its line."""
    @property
    def batches(self) -> Fraction:
        """Of the written base."""

class MadeBase(_Displayed):
    """A base at the size that all its uses need."""

    @property
    def name(self) -> str:
        """By which lines call it."""
    @property
    def recipe(self) -> Recipe:
        """At that size."""
    @property
    def uses(self) -> list[BaseUse]:
        """In the dish and in other bases."""
    @property
    def batches(self) -> Fraction:
        """The sum of its uses."""

def make_recipe(
    places: Mapping[str, Placed],
    serves: Number,
    measures: str,
    decimal: str,
    tested_at: Sequence[Number],
    trays: Number,
    lines: Sequence[Mapping[str, Placed | bool]],
    bases: Sequence[tuple[str, Recipe, Placed]],
    steps: Sequence[Mapping[str, Placed | list[Placed] | bool]],
    file: tuple[str, str] | None,
    catalog: Catalog,
    /,
) -> Recipe: ...
def sized_recipe(recipe: Recipe, served: Number, portions: Number, factor: Number, /) -> Recipe: ...
def times_practice() -> str:
    """Why times are not scaled, with its source."""

class ShoppingRow(_Displayed):
    """What is bought of one item."""

    @property
    def item(self) -> str:
        """As in the price book."""
    @property
    def lines(self) -> list[str]:
        """Ids of the lines it is for."""
    @property
    def need(self) -> Quantity:
        """In the packs' unit and stage."""
    @property
    def from_stock(self) -> Quantity:
        """The part of the need that is on hand."""
    @property
    def packs(self) -> list[tuple[int, str]]:
        """How many of which."""
    @property
    def terms(self) -> list[str]:
        """The offers it goes by, ``400 g tin: 3 for 2.40``."""
    @property
    def price(self) -> Quantity:
        """Money, of all packs."""
    @property
    def deposit(self) -> Quantity:
        """Money paid besides and given back."""
    @property
    def leftover(self) -> Quantity:
        """Of packs and stock, beyond the need."""
    @property
    def keeps(self) -> bool:
        """Whether the leftover keeps."""
    @property
    def keeps_days(self) -> int | None:
        """None where no number is stated."""
    @property
    def shops(self) -> list[str]:
        """Where the packs are bought."""

class Breakpoint(_Object):
    """A number of portions at which the packs of an item change."""

    @property
    def portions(self) -> Fraction:
        """The first on the curve with the new packs."""
    @property
    def item(self) -> str:
        """As in the price book."""
    @property
    def packs_before(self) -> list[tuple[int, str]]:
        """How many of which, below it."""
    @property
    def packs(self) -> list[tuple[int, str]]:
        """From it on."""

class CountRun(_Object):
    """Numbers of portions at equal distances; ``str()`` has them in words."""

    @property
    def first(self) -> Fraction:
        """In portions."""
    @property
    def last(self) -> Fraction:
        """In portions."""
    @property
    def every(self) -> Fraction:
        """From one to the next; 0 for a single one."""

class EvenCounts(_Object):
    """The numbers of portions at which nothing is left of an item's packs."""

    @property
    def item(self) -> str:
        """As in the price book."""
    @property
    def counts(self) -> list[CountRun]:
        """Ascending, in portions."""

class CheapestCount(_Object):
    """Where a portion costs least."""

    @property
    def portions(self) -> Fraction:
        """The smallest of them."""
    @property
    def per_portion(self) -> Fraction:
        """In the curve's currency."""
    @property
    def counts(self) -> list[CountRun]:
        """All of them."""

class DominatedCounts(_Object):
    """Neighbours on a curve that a larger number of portions costs no more than."""

    @property
    def first(self) -> Fraction:
        """In portions."""
    @property
    def last(self) -> Fraction:
        """In portions."""
    @property
    def by(self) -> Fraction:
        """The largest that costs no more than any of them."""
    @property
    def costs(self) -> Fraction:
        """What that one costs."""

class ExactColumn(_Object):
    """One cost at every point as 64-bit integers, each so many times ``step``.

    It has the buffer protocol, so that ``memoryview`` and ``numpy.asarray`` read it without a copy.
    """

    @property
    def step(self) -> Fraction:
        """Of money, in the curve's currency."""
    def __len__(self) -> int: ...
    def __buffer__(self, flags: int, /) -> memoryview: ...

class Curve(_Displayed):
    """The costs at each number of portions, in the currency."""

    @property
    def portions(self) -> list[Fraction]:
        """One a point, in the order given."""
    @property
    def till(self) -> list[Fraction]:
        """One a point, as are the other costs."""
    @property
    def used(self) -> list[Fraction]:
        """What the dish consumes."""
    @property
    def thrown(self) -> list[Fraction]:
        """Leftover that will not keep."""
    @property
    def borne(self) -> list[Fraction]:
        """used + thrown."""
    @property
    def currency(self) -> str:
        """ISO 4217; XXX where prices state none."""
    @property
    def unpriced(self) -> list[str]:
        """Ids of the lines that no point includes."""
    @property
    def kernel(self) -> str:
        """How the till is computed; where not in machine words, why."""
    def column(self, which: str = "till") -> ExactColumn:
        """A cost as integers. Only the till goes in whole steps.

        Raises CostError (``cost.which``, ``cost.column``).
        """
    @property
    def breakpoints(self) -> list[Breakpoint]:
        """Raises CostError (``cost.curve``) where there are more than a million."""
    @property
    def even_counts(self) -> list[EvenCounts]:
        """Of each priced item."""
    def cheapest(self, which: str = "borne") -> CheapestCount | None:
        """Where a portion costs least; None where the curve has no point.

        Raises CostError (``cost.which``).
        """
    def dominated(self, which: str = "till") -> list[DominatedCounts]:
        """Numbers of portions that a larger one on the curve costs no more than, ascending.

        Raises CostError (``cost.which``).
        """

class Why(_Displayed):
    """How a figure came about; ``str()`` draws the tree."""

    @property
    def name(self) -> str:
        """The cell: ``leeks.buy``."""
    @property
    def figure(self) -> str:
        """As told."""
    @property
    def how(self) -> str:
        """In words: the formula, or how it was given."""
    @property
    def source(self) -> str:
        """A file's line or a publication; or empty."""
    @property
    def parts(self) -> list[Why]:
        """What it was made from."""
    def data(self) -> WhyData:
        """The tree as dicts with the keys name, figure, how, source and parts."""
    def _tree_html(self) -> str:
        """The tree alone, without the frame and the style of a display."""

class Leftover(_Object):
    """What is left of an item after the dish is cooked."""

    @property
    def item(self) -> str:
        """As in the price book."""
    @property
    def amount(self) -> Quantity:
        """With its stage."""
    @property
    def value(self) -> Quantity:
        """Money, pro rata over what it was part of."""
    @property
    def bought(self) -> bool:
        """Of a pack bought; else it was on hand before."""
    @property
    def keeps(self) -> bool:
        """Whether it can be kept."""
    @property
    def keeps_days(self) -> int | None:
        """None where no number is stated."""
    @property
    def use_by(self) -> str:
        """ISO 8601, of what was on hand; or empty."""

class Costing(_Displayed):
    """A sized recipe with prices, by the four costs.

    Exactly, always: opening + till = used + thrown + closing.
    """

    @property
    def recipe(self) -> Recipe:
        """At the size that was asked for."""
    @property
    def recipe_now(self) -> Recipe:
        """At the portions that the sheet has now."""
    @property
    def till(self) -> Quantity:
        """Whole packs paid for today."""
    @property
    def used(self) -> Quantity:
        """The part of them the dish consumes, pro rata over the packs bought."""
    @property
    def thrown(self) -> Quantity:
        """Leftover that will not keep."""
    @property
    def borne(self) -> Quantity:
        """used + thrown: what the dish really costs."""
    @property
    def closing(self) -> Quantity:
        """What stays in the store: leftover that keeps, and what is not used of the stock."""
    @property
    def opening(self) -> Quantity:
        """The value of what was on hand of the items of the dish."""
    @property
    def deposit(self) -> Quantity:
        """Money paid at the till besides, and given back; no part of any cost."""
    @property
    def left(self) -> list[Leftover]:
        """What is left of the packs and of the stock, with its value."""
    def per_portion(self, which: str = "borne") -> Quantity:
        """One of the four in money a portion. Raises CostError (``cost.which``)."""
    @property
    def unpriced(self) -> list[str]:
        """Ids of the lines without a price; with any, each total reads "at least"."""
    @property
    def to_check(self) -> list[str]:
        """What was assumed or is not known."""
    @property
    def shopping(self) -> Shopping[ShoppingRow]:
        """One row an item; shown as a list to buy by."""
    @property
    def cautions(self) -> list[tuple[str, str, list[str]]]:
        """Text, source and line ids of each."""
    @property
    def cells(self) -> list[str]:
        """The names that ``why`` takes."""
    def explain(self, cell: str) -> Why:
        """The derivation as data. Raises CostError (``why.unknown_cell``, ``why.unpriced``)."""
    def why(self, cell: str) -> str:
        """The derivation as a text tree. Raises what ``explain`` raises."""
    @property
    def offers(self) -> list[Offer]:
        """The price rows for its lines, those that are left out among them."""
    @property
    def options(self) -> CostOptions:
        """What ``scalepan.cost`` was given: strict, taxes, stock and day."""
    @property
    def sheet(self) -> LiveSheet:
        """The live sheet: every figure is a cell, ``leeks.edible`` as well as ``till``.

        Made when first asked for; from then on the figures of the costing are those of the sheet.
        """
    def override(
        self,
        name: str,
        value: CellInput,
        *,
        why: str,
        who: str = "",
        when: str = "",
    ) -> None:
        """Puts a measured value in the place of a figure; only what depends on it runs again.

        A bare number takes the figure's unit. Raises SheetError (``sheet.unknown`` with the nearest
        names, ``sheet.dimension``, ``sheet.reason`` without a reason).
        """
    def release(self, name: str) -> None:
        """Takes an override back. Raises SheetError (``sheet.unknown``, ``sheet.released``)."""
    @property
    def is_changed(self) -> bool:
        """Whether a figure of its sheet may be another than recipe and prices give."""
    def text(self) -> str:
        """The text of the costing's file: recipe, facts and prices it goes by, and its changes.

        Raises:
            CostError: ``cost.recipe_text`` for a recipe without a text of its own; ``cost.kept``
                where the sheet holds what a file cannot.
            SheetError: ``sheet.control_character`` in a text.
            NumberError: ``number.too_many_digits``.
        """
    def save(self, path: PathLike) -> None:
        """Writes the file, whole or not at all; ``scalepan.read_costing`` reads it.

        Raises FileError (``file.unwritable``), and what ``text`` raises.
        """
    def refresh(self, prices: PriceBook | None = None, catalog: Catalog | None = None) -> Refreshed:
        """The same recipe, size and changes by the prices and facts of another day.

        Args:
            prices: left out, those it goes by now.
            catalog: left out, the bundled one.

        Raises what ``scalepan.cost`` and ``scalepan.read_recipe`` raise.
        """
    def most_portions(self, spend: str | Quantity) -> WithinSpend:
        """The most whole portions whose till is within a spend.

        Raises CostError (``cost.spend``, also where limits or what is on hand allow no more than
        is within the spend; ``cost.curve``; ``cost.limit`` and ``cost.stock`` for one portion).
        """
    def least_spend(self, portions: Number) -> LeastSpend:
        """What a whole number of portions takes at the till, and the most the same till buys.

        Raises CostError (``cost.portions``, ``cost.spend``, ``cost.curve``).
        """
    def pack_prices(self, item: str) -> list[PackPrice]:
        """Each pack of an item or line, and the price at which it becomes the better buy.

        Raises CostError (``cost.item``).
        """
    def swaps(
        self, asked: Sequence[tuple[str, str | Sequence[str]]], by: str = "till"
    ) -> list[Swap]:
        """Lines in place of one of the dish's own, each costed in full.

        Args:
            asked: line ids with the line, or lines, to put there: amounts for the written size of
                the dish or of the base that the line belongs to.
            by: which of the four costs ranks them, the one that saves most first.

        Raises CostError (``swap.line``, ``cost.which``) and the errors of lines.
        """
    def make_or_buy(self, base: str, item: str) -> MakeOrBuy:
        """A base of the dish made, beside as much of an item bought ready.

        Raises RecipeError (``base.unknown``, ``base.ready``) and the errors of lines.
        """
    def drivers(self, more: Number = "10 %") -> list[Driver]:
        """What each item bears and what so much more of it would add, the dearest first.

        Raises CostError (``cost.more``; ``cost.limit`` and ``cost.stock`` where so much more of an
        item cannot be had).
        """
    def curve(self, portions: Iterable[Number]) -> Curve:
        """The costs at each number of portions, in the order given, up to a million of them.

        A range that goes up stands for its points without being gone through.
        Raises RecipeError (``recipe.portions``), CostError (``cost.curve``; ``cost.limit`` and
        ``cost.stock`` at the first number that cannot be had), and what costing the recipe at one
        of the points raises.
        """

def cost(
    recipe: Recipe,
    prices: PriceBook,
    strict: bool,
    taxes: str,
    stock: Stock | None,
    day: str,
) -> Costing: ...

class DishNeed(_Object):
    """How much of an item is for one dish."""

    @property
    def dish(self) -> str:
        """Its name."""
    @property
    def need(self) -> Quantity:
        """In the packs' unit and stage."""

class BasketRow(ShoppingRow):
    """What is bought of one item, and the dishes it is for."""

    @property
    def dishes(self) -> list[DishNeed]:
        """With how much each needs."""

class BasketDish(_Object):
    """A dish of a basket, charged its share of every item by use.

    Exactly, always: opening + till = used + thrown + closing; and the dishes come to the basket.
    """

    @property
    def name(self) -> str:
        """As given, or the recipe's."""
    @property
    def id(self) -> str:
        """Of its name; in the basket the ids of its lines begin with it: ``pea_soup.onions``."""
    @property
    def unpriced(self) -> list[str]:
        """Ids of its lines without a price; with any, its totals read "at least"."""
    @property
    def recipe(self) -> Recipe:
        """At the size it is made."""
    @property
    def portions(self) -> Fraction:
        """That it serves."""
    @property
    def till(self) -> Quantity:
        """Its share of the packs paid for today; money, as are the others."""
    @property
    def used(self) -> Quantity:
        """What it consumes."""
    @property
    def thrown(self) -> Quantity:
        """Its share of the leftover that will not keep."""
    @property
    def borne(self) -> Quantity:
        """used + thrown."""
    @property
    def closing(self) -> Quantity:
        """Its share of what stays in the store."""
    @property
    def opening(self) -> Quantity:
        """The value of what was on hand of its items."""
    def per_portion(self, which: str = "borne") -> Quantity:
        """One of the four in money a portion. Raises CostError (``cost.which``)."""
    @property
    def apart(self) -> Costing:
        """The same dish bought alone."""
    @property
    def saving(self) -> Quantity:
        """That the till takes less for it than apart; below zero where the others gain more."""
    @property
    def saving_borne(self) -> Quantity:
        """That it bears less than apart; may be below zero."""

class Basket(_Displayed):
    """Several dishes bought together, by the four costs.

    Exactly, always: opening + till = used + thrown + closing. Dishes are compared without what is
    on hand; then the till is never above that of the dishes bought apart.
    """

    @property
    def till(self) -> Quantity:
        """Whole packs paid for today; money, as are the others."""
    @property
    def used(self) -> Quantity:
        """What the dishes consume, pro rata over the packs bought."""
    @property
    def thrown(self) -> Quantity:
        """Leftover that will not keep."""
    @property
    def borne(self) -> Quantity:
        """used + thrown: what the dishes really cost."""
    @property
    def closing(self) -> Quantity:
        """What stays in the store."""
    @property
    def opening(self) -> Quantity:
        """The value of what was on hand of its items."""
    @property
    def deposit(self) -> Quantity:
        """Paid at the till besides, and given back."""
    @property
    def left(self) -> list[Leftover]:
        """What is left of the packs and of the stock, with its value."""
    @property
    def apart_till(self) -> Quantity:
        """The sum of the tills of the dishes, each bought alone."""
    @property
    def apart_borne(self) -> Quantity:
        """The sum of what the dishes bear, each bought alone."""
    @property
    def saving(self) -> Quantity:
        """That the till takes less than apart: ``apart_till - till``, never below zero."""
    @property
    def saving_borne(self) -> Quantity:
        """The same of what is borne. Below zero where a cheaper pack leaves more to throw away."""
    @property
    def dishes(self) -> list[BasketDish]:
        """In the order given."""
    @property
    def shopping(self) -> Shopping[BasketRow]:
        """One row an item, for all dishes."""
    @property
    def unpriced(self) -> list[str]:
        """Ids of the lines without a price; with any, each total reads "at least"."""
    @property
    def to_check(self) -> list[str]:
        """What was assumed or is not known, and which items are not bought in one lot."""
    @property
    def cautions(self) -> list[tuple[str, str, list[str]]]:
        """Text, source, and lines or dishes of each."""
    @property
    def cells(self) -> list[str]:
        """The names that ``why`` takes: ``till``, ``pea_soup.till``, ``pea_soup.onions.buy``."""
    def explain(self, cell: str) -> Why:
        """The derivation as data. Raises CostError (``why.unknown_cell``, ``why.unpriced``)."""
    def why(self, cell: str) -> str:
        """The derivation as a text tree. Raises what ``explain`` raises."""

def basket(
    dishes: Sequence[tuple[Placed, Recipe]],
    prices: PriceBook,
    strict: bool,
    taxes: str,
    stock: Stock | None,
    day: str,
) -> Basket: ...
def lines_to_check(recipe: Recipe) -> list[str]: ...
def cautions(recipe: Recipe) -> list[tuple[str, str, list[str]]]: ...
def safety_cautions(recipe: Recipe) -> list[tuple[str, str, list[str]]]:
    """Those without the allergens."""

class LabelItem(_Object):
    """One ingredient: all lines of one food together, or a base with its own ingredients."""

    @property
    def name(self) -> str:
        """As the label has it."""
    @property
    def grams(self) -> Fraction | None:
        """Edible, as it goes in; None where no fact gives it."""
    @property
    def weighed(self) -> bool:
        """False where no fact gives the weight of one of its lines."""
    @property
    def allergens(self) -> list[str]:
        """Of either list."""
    @property
    def check_pack(self) -> bool:
        """Whether its allergens are not known, or depend on the maker."""
    @property
    def optional(self) -> bool:
        """Whether it may be left out."""
    @property
    def parts(self) -> list[LabelItem]:
        """Of a base."""

class Label(_Displayed):
    """A draft of a label: ingredients by falling weight, and allergens through bases."""

    @property
    def items(self) -> list[LabelItem]:
        """Equal weights as in the recipe; those without a weight last."""
    @property
    def allergens_eu(self) -> list[str]:
        """On the list of Regulation (EU) 1169/2011, Annex II."""
    @property
    def allergens_us(self) -> list[str]:
        """Of the nine major allergens of the US FDA."""
    @property
    def unknown(self) -> list[str]:
        """Names of the ingredients whose pack must be checked."""
    @property
    def text(self) -> str:
        """One statement a line."""

def label(recipe: Recipe) -> Label:
    """The label text of a recipe at its size, as a draft for whoever answers for it.

    The order is that of Regulation (EU) 1169/2011 Art. 18, allergens stand in capitals after
    Art. 21 (both from memory). Local food law decides.
    """

def caution_footing() -> str: ...

class CashTotal(_Object):
    """A bill as cash pays it."""

    @property
    def paid(self) -> Quantity:
        """Money, a multiple of ``step``."""
    @property
    def error(self) -> Quantity:
        """Paid less the exact total."""
    @property
    def step(self) -> Fraction:
        """The smallest amount cash can pay, in whole units of the currency."""
    @property
    def source(self) -> str:
        """Of the smallest amount."""

def cash_total(bill: Quantity, rounding: str, step: Number | None) -> CashTotal: ...

class Selling(_Displayed):
    """What a portion costs and is sold for; shares are of the net price."""

    @property
    def food_cost(self) -> Quantity:
        """Money a portion."""
    @property
    def net(self) -> Quantity:
        """The price without tax."""
    @property
    def tax(self) -> Quantity:
        """gross - net."""
    @property
    def gross(self) -> Quantity:
        """The price with tax."""
    @property
    def food_cost_share(self) -> Fraction:
        """Food cost / net price; times 100 the food-cost percentage."""
    @property
    def gross_profit_share(self) -> Fraction:
        """1 - food_cost_share."""
    @property
    def contribution(self) -> Quantity:
        """Net price - food cost."""

class PriceFound(_Displayed):
    """The price for a food-cost percentage, exact and as it stands on the card."""

    @property
    def exact(self) -> Selling:
        """At just the percentage."""
    @property
    def shelf(self) -> Selling:
        """At the next gross price of the ending asked for."""
    @property
    def raised(self) -> Quantity:
        """The shelf's gross price less the exact one."""

def selling_at(food_cost: Quantity, price: Quantity, tax: Number) -> Selling: ...
def price_for_share(
    food_cost: Quantity, share: Number, tax: Number, ending: Number | None, step: Number
) -> PriceFound: ...

class WithinSpend(_Object):
    """The most whole portions within a spend."""

    @property
    def portions(self) -> Fraction:
        """At least 1."""
    @property
    def till(self) -> Quantity:
        """Money, for these."""
    @property
    def till_next(self) -> Quantity:
        """Of one portion more, above the spend."""

class LeastSpend(_Object):
    """What a number of portions takes at the till, and how far the same till goes."""

    @property
    def portions(self) -> Fraction:
        """As asked."""
    @property
    def till(self) -> Quantity:
        """Money, in all."""
    @property
    def most(self) -> Fraction:
        """Portions for the same till."""
    @property
    def till_next(self) -> Quantity | None:
        """Of one portion more than those; None where none up to a million takes more."""

class PackPrice(_Object):
    """One pack of an item, beside all others it can be bought in."""

    @property
    def pack(self) -> str:
        """As written."""
    @property
    def shop(self) -> str:
        """Or empty."""
    @property
    def price(self) -> Quantity:
        """Now."""
    @property
    def taken(self) -> bool:
        """Whether it is among the packs to buy now."""
    @property
    def only(self) -> bool:
        """Whether nothing else meets the need, so that it is bought at any price."""
    @property
    def worth(self) -> Quantity | None:
        """The highest price at which the cheapest packs for the need hold it.

        None where it is the only one, or in none even if it costs nothing.
        """
    @property
    def taken_at_worth(self) -> bool:
        """Whether it is taken at just that price, where others cost the same.

        Ties go to least left over, then to fewest packs, then to the earlier row.
        """
    @property
    def by_size(self) -> Quantity | None:
        """The price at which it costs as much for what it holds as the best other pack."""

class BreakEven(_Object):
    """The price at which a pack becomes the better buy for a need."""

    @property
    def only(self) -> bool:
        """Whether no other pack meets the need, so that it is bought at any price."""
    @property
    def price(self) -> Quantity | None:
        """The highest at which the cheapest packs for the need hold it; None where only."""
    @property
    def packs(self) -> list[tuple[int, str]]:
        """Bought at this price."""
    @property
    def taken(self) -> bool:
        """Whether they hold the pack, or another choice that costs the same goes before it."""
    @property
    def by_size(self) -> Quantity | None:
        """The price at which it costs as much for what it holds as the best of the others."""

def break_even(
    need: Quantity,
    pack: tuple[str, Quantity],
    others: Sequence[tuple[str, Quantity, Quantity]],
) -> BreakEven: ...

class Swap(_Displayed):
    """The dish with other lines in place of one, the rest of it unchanged."""

    @property
    def line(self) -> str:
        """Id of the line replaced."""
    @property
    def lines(self) -> list[str]:
        """In place of it, as written."""
    @property
    def till(self) -> Quantity:
        """Of the whole dish."""
    @property
    def borne(self) -> Quantity:
        """Money, of the whole dish."""
    @property
    def saved_till(self) -> Quantity:
        """The dish as it is, less this; below zero where this takes more."""
    @property
    def saved_borne(self) -> Quantity:
        """The same of what is borne."""
    @property
    def unpriced(self) -> list[str]:
        """Ids of the new lines without a price: the saving is less by what they cost."""
    @property
    def allergens_gained(self) -> list[str]:
        """``milk (EU, US)``: what no other line of the dish has, and the lists that name it."""
    @property
    def allergens_lost(self) -> list[str]:
        """What the dish no longer has."""
    @property
    def allergens_unknown(self) -> list[str]:
        """New foods that the catalogue does not have: check the pack."""

class MakeOrBuy(_Object):
    """A base of a dish made, beside an item bought ready in its place."""

    @property
    def base(self) -> str:
        """Its name."""
    @property
    def item(self) -> str:
        """As in the price book."""
    @property
    def amount(self) -> Quantity:
        """That the dish takes of it."""
    @property
    def packs(self) -> list[tuple[int, str]]:
        """Of the item."""
    @property
    def leftover(self) -> Quantity:
        """Of the item."""
    @property
    def lines(self) -> list[str]:
        """Ids of those that only the base needs."""
    @property
    def made_till(self) -> Quantity:
        """Their shares by use."""
    @property
    def made_borne(self) -> Quantity:
        """The same of what is borne."""
    @property
    def bought_till(self) -> Quantity:
        """Of the item."""
    @property
    def bought_borne(self) -> Quantity:
        """The same of what is borne."""
    @property
    def dish_made_till(self) -> Quantity:
        """Of the whole dish as it is."""
    @property
    def dish_made_borne(self) -> Quantity:
        """The same of what is borne."""
    @property
    def dish_bought_till(self) -> Quantity:
        """Of the whole dish with the item: less what other lines no longer share."""
    @property
    def dish_bought_borne(self) -> Quantity:
        """The same of what is borne."""
    @property
    def unpriced_made(self) -> list[str]:
        """Lines of the base without a price: making it takes more than is known."""
    @property
    def unpriced_bought(self) -> list[str]:
        """The item, where it has no price."""

class Driver(_Object):
    """What one item bears, and what more of it would add."""

    @property
    def item(self) -> str:
        """As in the price book."""
    @property
    def lines(self) -> list[str]:
        """Ids of those that need it."""
    @property
    def borne(self) -> Quantity:
        """Money."""
    @property
    def share(self) -> Fraction:
        """Of what the dish bears."""
    @property
    def more_till(self) -> Quantity:
        """That the till takes more where the lines need so much more."""
    @property
    def more_borne(self) -> Quantity:
        """The same of what is borne."""

class Interval(_Displayed):
    """All that an amount may be: from ``low`` to ``high``, or at least ``low``."""

    def __init__(self, low: Number | Quantity, high: Number | Quantity | None = None) -> None:
        """Raises SheetError (``sheet.interval``) where high is below low, MeasureError
        (``quantity.compare``) where they are of two kinds."""
    @property
    def low(self) -> Quantity:
        """The lower end."""
    @property
    def high(self) -> Quantity | None:
        """None where there is no upper bound."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Text(_Object):
    """A text as the value of a cell, where a bare str is an amount."""

    def __init__(self, written: str) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Formula(_Object):
    """A formula of one row's own, where a value could stand; it names cells in full."""

    def __init__(self, text: str) -> None: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Thing(_Object):
    """A food, a recipe, offers or packs: what a cell of a costing's sheet holds beside figures.

    It may be set in another cell of its kind: the offers of other prices, say.
    """

    @property
    def kind(self) -> str:
        """``a food``, ``a recipe``, ``offers of weight AP in GBP``, ``packs of ...``."""
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class _Verbs(_Object):
    """What changes a sheet. A verb of a ``Sheet`` makes the change at once, or refuses it and
    leaves the sheet as it was; one of ``Changes`` notes it, and ``Sheet.apply`` may refuse it."""

    def set(self, name: str, value: CellInput, *, source: str = "") -> None:
        """Gives a value; a new cell takes its kind and dimension from it and keeps them.

        A bare number is of the unit that the cell is shown in. ``source`` says where the value
        comes from.
        Raises SheetError (``sheet.name``, ``sheet.taken``, ``sheet.formula``, ``sheet.dimension``,
        ``sheet.value``), MeasureError and NumberError.
        """
    def redeclare(self, name: str, value: CellInput, *, source: str = "") -> None:
        """As ``set``, but the value may be of another dimension; what reads the cell is checked.

        Raises what ``set`` raises, and SheetError (``formula.*``) where a reader no longer fits.
        """
    def define(self, name: str, formula: str) -> None:
        """Gives a formula to a cell, to a column (``lines.need``) or to one row's cell of a column
        that is given. Dimensions and stages are checked now, not when it runs.

        Raises SheetError (``formula.*`` at the culprit, ``sheet.name``, ``sheet.taken``,
        ``sheet.cycle``, ``sheet.dimension``, ``sheet.overridden``, ``sheet.in_rows``).
        """
    def override(
        self, name: str, value: CellInput, *, why: str, who: str = "", when: str = ""
    ) -> None:
        """Puts a measured value in the place of the cell's own, until released.

        Raises SheetError (``sheet.unknown``, ``sheet.reason`` without a reason,
        ``sheet.dimension``).
        """
    def release(self, name: str) -> None:
        """Raises SheetError (``sheet.unknown``, ``sheet.released`` without an override)."""
    def remove(self, name: str) -> None:
        """Of a cell or a column (``lines.need``) that nothing reads, or of a block of rows.

        Raises SheetError (``sheet.unknown``, ``sheet.read``, ``sheet.in_rows``).
        """
    def rename(self, name: str, to: str) -> None:
        """Of a cell, of rows, of one row (``lines.leeks``, to ``chives``) or of a column
        (``lines.need``, to ``wanted``); formulas go on reading it.

        Raises SheetError (``sheet.unknown``, ``sheet.name``, ``sheet.taken``, ``sheet.in_rows``).
        """
    def add_rows(
        self, name: str, *, given: Mapping[str, str], formulas: Mapping[str, str] = ...
    ) -> None:
        """A block of rows, without rows as yet.

        Args:
            given: the columns that each row is given, with what they hold: a unit,
                ``plain number``, ``yes or no`` or ``text``.
            formulas: of the other columns; they name the columns of their own row by their names
                (``amount``), and other cells as ever.

        Raises SheetError (``sheet.name``, ``sheet.taken``, ``sheet.many``, ``formula.*``) and
        MeasureError for a unit.
        """
    def add_row(
        self,
        rows: str,
        row: str,
        given: Mapping[str, CellInput | tuple[CellInput, str] | Formula] = ...,
        *,
        before: str = "",
    ) -> None:
        """A row, whose cells are called ``leeks.amount``.

        Args:
            rows: the block.
            given: for each column that is given: a value, a value and where it comes from, or a
                formula of its own.
            before: the row that comes next; empty: at the end.

        Raises SheetError (``sheet.unknown``, ``sheet.name``, ``sheet.taken``, ``sheet.row``,
        ``sheet.formula``, ``sheet.dimension``, ``sheet.cycle``).
        """
    def remove_row(self, rows: str, row: str) -> None:
        """Raises SheetError (``sheet.unknown``, ``sheet.read``)."""
    def move_row(self, rows: str, row: str, *, before: str = "") -> None:
        """Before another row, or to the end. Raises SheetError (``sheet.unknown``)."""

class Changes(_Verbs):
    """Changes in their order, to be made together: all, or none."""

    def __init__(self) -> None: ...
    def __len__(self) -> int: ...
    def extend(self, others: Changes) -> None:
        """Adds other changes behind these."""
    def listed(self) -> list[tuple[str, dict[str, object]]]:
        """Each as its verb and what that is given, by the names of its arguments."""
    def singly(self) -> list[Changes]:
        """Each on its own."""
    def ordered(self) -> Changes:
        """Each behind those it builds on, otherwise as they come.

        Raises SheetError (``sheet.cycle``) where some build on each other.
        """

class SweptCell(_Object):
    """What one cell comes out as, point by point."""

    @property
    def name(self) -> str:
        """The cell."""
    @property
    def unit(self) -> str:
        """In which the figures are shown."""
    @property
    def figures(self) -> list[Quantity | bool | Interval | str | Exception]:
        """One a point; where the cell failed, the error it held."""
    @property
    def fractions(self) -> list[Fraction | None]:
        """In the unit shown; none where the cell is no single number."""
    @property
    def column(self) -> ExactColumn:
        """The figures as counts of one step, which NumPy reads without a copy.

        Raises SheetError (``sheet.column``) where they do not fit 64 bits or a point is no single
        number.
        """
    def __len__(self) -> int: ...
    def __getitem__(self, point: int) -> Quantity | bool | Interval | str | Exception: ...

def twin(costing: Costing) -> Costing:
    """Another object of the same costing, with the same live sheet."""

def restored(name: str, state: bytes, beside: tuple[object, ...]) -> object:
    """As ``scalepan.pickles.restored``."""

class Sheet(_Verbs, _Displayed):
    """Named cells, of which some are given and some follow by formulas.

    A change runs the formulas that depend on it, each once, and no others. A change that is
    refused leaves the sheet as it was. Any number of threads may read while one changes.
    """

    @overload
    def __init__(self) -> None: ...
    @overload
    def __init__(self, costing: Costing) -> None: ...
    def apply(self, changes: Changes) -> None:
        """Makes all changes in their order, or none. Raises what their verbs raise."""
    def restore(self, changes: Changes) -> None:
        """As ``apply``, for changes in any order. Raises SheetError (``sheet.cycle``) too."""
    def undo(self) -> bool:
        """Takes the last change back; whether there was one. The last 1000 can be taken back."""
    def redo(self) -> bool:
        """Makes again what was taken back last; whether there was such a change."""
    def value(self, name: str) -> CellValue:
        """In the unit that the cell is shown in; of a text a str.

        Raises SheetError (``sheet.unknown``), or the error that the cell holds, with the cell it
        arose in and the column in its formula.
        """
    def told(self, name: str) -> str:
        """The figure for people: ``at least 31.2 GBP``. Raises what ``value`` raises."""
    def formula(self, name: str) -> str:
        """As written; empty for a cell that is given. Raises SheetError (``sheet.unknown``)."""
    def __contains__(self, name: str) -> bool: ...
    def cells(self) -> list[str]:
        """All names, those of rows' cells too, in the order they came in."""
    def blocks(self) -> list[str]:
        """Names of blocks of rows."""
    def rows(self, name: str) -> list[str]:
        """Of a block, in their order. Raises SheetError (``sheet.unknown``)."""
    def columns(self, rows: str) -> list[str]:
        """Of a block. Raises SheetError (``sheet.unknown``)."""
    def readers(self, name: str) -> list[str]:
        """Cells whose formulas read this one. Raises SheetError (``sheet.unknown``)."""
    def explain(self, name: str) -> Why:
        """How the figure comes about, down to what is given.

        Raises SheetError (``sheet.unknown``).
        """
    def why(self, name: str) -> str:
        """As ``explain``, as a tree of text."""
    @property
    def ran(self) -> list[str]:
        """The formulas and totals that the last change ran, in the order they ran in; a total is
        called ``sum(lines.need)``. A change that is refused leaves it as it was."""
    def changes(self) -> Changes:
        """What makes an empty sheet this one; the same for all sheets that hold the same."""
    def _sweep(
        self,
        input: str,
        values: Iterable[str | Number | Quantity],
        cells: list[str],
        progress: Callable[[int], None] | None,
    ) -> tuple[list[Quantity], list[SweptCell], str]: ...
    def _meetings(
        self,
        input: str,
        cell: str,
        target: str | Number | Quantity,
        low: str | Number | Quantity,
        high: str | Number | Quantity,
        aim: str = "equal",
    ) -> tuple[
        list[tuple[Quantity, Quantity, bool, bool]],
        tuple[Quantity, Quantity] | None,
        tuple[Quantity, Quantity] | None,
    ]: ...
    def values_with(self, changes: Changes, names: Sequence[str]) -> list[CellValue | Error]:
        """What the cells come out as with some changes made, which are then taken back without a
        trace; an error in the place of a cell that has no value.

        Raises what ``apply`` raises.
        """
