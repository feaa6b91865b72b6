"""Yield tests: what trials of trimming, draining and cooking one food left, and what it cost.

trial,what,part,weight,value,use,note
1,bought,celeriac,4.2 kg,1.90 EUR/kg,,
1,by-product,peel,0.6 kg,,stock,
1,loss,,rest,,,
1,edible,,3.5 kg,,,
1,cooked,,3.1 kg,,,roasted
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from scalepan import _core
from scalepan.displays import displayed
from scalepan.errors import Error, make_error
from scalepan.files import read_text

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from scalepan._core import PartShare, StageCost, TrialRatio, YieldShare, YieldTrial
    from scalepan.csv_document import Columns, Placed
    from scalepan.files import PathLike

YIELD_COLUMNS = ("trial", "what", "part", "weight", "value", "use", "note")
RATIO_OF_SUMS = "ratio of sums"
MEAN_OF_RATIOS = "mean of ratios"

# The shares that a fact can hold, by their two stages.
_FACT_KINDS = {("AP", "EP"): "edible", ("EP", "cooked"): "cooked", ("AP", "drained"): "drained"}


@displayed
class YieldTest(NamedTuple):
    """The trials of one food, and what they say together.

    Two shares stand beside each other everywhere, each under its name: the ratio of sums and the
    mean of the trials' own ratios.

    Attributes:
        food: as the first trial names it; may be empty.
        source: where the test comes from, for the facts made of it.
        trials: each with its weights and parts, as far as it went.
        shares: ``EP/AP``, ``drained/AP``, ``cooked/EP``, ``served/cooked``, ``cooked/AP`` and
            ``served/AP``, those that were weighed, each with what is lost.
        parts: what came off, as shares of the weight bought or cooked.
        costs: at each stage, by-products credited; empty where no trial has a price.
    """

    food: str
    source: str
    trials: list[YieldTrial]
    shares: list[YieldShare]
    parts: list[PartShare]
    costs: list[StageCost]

    def __repr__(self) -> str:
        return f"<YieldTest of {self.food or 'a food'}, {len(self.trials)} trials>"

    def share(self, stage: str, of: str) -> YieldShare:
        """The share of a stage, ``share("EP", of="AP")``.

        Raises:
            FoodError: ``yield.no_stage`` with the shares there are.
        """
        for share in self.shares:
            if (share.stage, share.of) == (stage, of):
                return share
        there = ", ".join(f"{share.stage}/{share.of}" for share in self.shares)
        message = f"the yield test has no share {stage}/{of}"
        raise make_error("yield.no_stage", message, f"there are: {there}")

    def cost(self, stage: str) -> StageCost:
        """The cost at ``EP``, ``drained``, ``cooked`` or ``served``.

        Raises:
            FoodError: ``yield.no_stage`` with the stages there are.
        """
        for cost in self.costs:
            if cost.stage == stage:
                return cost
        there = ", ".join(cost.stage for cost in self.costs)
        hint = f"there are: {there}" if there else "no trial has a price"
        raise make_error("yield.no_stage", f"the yield test has no cost at {stage}", hint)

    def facts(
        self,
        *,
        food: str | None = None,
        by: str = RATIO_OF_SUMS,
        source: str | None = None,
        state: str = "",
    ) -> list[dict[str, str]]:
        """Rows for ``catalog_with(facts=...)``, one each for ``edible``, ``cooked``, ``drained``.

        The spread of the trials is in ``low`` and ``high``; one trial has none.

        Args:
            food: an id or a name of the catalogue; left out, the food of the test.
            by: ``ratio of sums`` or ``mean of ratios``: which of the two is the value.
            source: where the test comes from; left out, the source of the test.
            state: the preparation that the shares hold for, ``"peeled"``; left out, any.

        Raises:
            FoodError: ``yield.ratio`` for another ``by``, ``yield.food`` where no food is named,
                ``yield.no_stage`` where no share was weighed that a fact can hold.
        """
        if by not in (RATIO_OF_SUMS, MEAN_OF_RATIOS):
            hint = f"there are: {RATIO_OF_SUMS}, {MEAN_OF_RATIOS}"
            raise make_error("yield.ratio", f'no ratio is called "{by}"', hint)
        name = food or self.food
        if not name:
            hint = "name it in the part of the first row of a trial, or as food="
            raise make_error("yield.food", "the yield test does not say which food it is of", hint)
        where = self.source if source is None else source
        rows = [
            _fact(name, kind, share.share, by, where, state)
            for share in self.shares
            if (kind := _FACT_KINDS.get((share.of, share.stage)))
        ]
        if not rows:
            message = "the yield test has no share that a fact can hold"
            raise make_error("yield.no_stage", message, "those are EP/AP, cooked/EP, drained/AP")
        return rows


def read_yield_test(
    path: PathLike, *, measures: str | None = None, source: str | None = None
) -> YieldTest:
    """Reads a yield test from a CSV file, one weight of one trial a row.

    Args:
        path: with the columns trial, what and weight, and if wanted part, value, use and note.

            ``what`` is one of: bought; by-product (came off before cooking); loss (lost before
            cooking); edible, or drained; into the pan (where not all of the edible was cooked);
            cooked; taken off (after cooking); carving loss; served. A trial that was not bought
            for the test begins with edible.

            ``part`` names the food at a trial's first row, and what came off. ``weight`` is an
            amount (``3 lb 5 oz``, ``750 mL``), of a loss also ``rest``. ``value`` is money per unit
            (``5.00 USD/lb``) or in all (``150.00 USD``): at bought the price, at by-product and
            taken off what it is worth. ``use`` says in words what became of a part. At other
            rows ``part`` and ``use`` are remarks, as ``note`` is.
        measures: which pint and fluid ounce are meant, where weights are volumes.
        source: where the test comes from; left out, the path.

    Raises:
        FoodError: ``yield.column``, ``yield.fields``, ``yield.no_rows``, ``yield.syntax``,
            ``yield.missing``, ``yield.what``, ``yield.weight``, ``yield.stage``, ``yield.stages``,
            ``yield.value``, ``yield.duplicate``, ``yield.kind``, ``yield.currency``,
            ``yield.closing``, ``yield.credit``, ``yield.food`` and ``yield.too_many``, each with
            file and line.
        MeasureError, NumberError: what reading an amount raises.
        FileError: ``file.unreadable`` and others.
    """
    return parse_yield_test(read_text(path), file=str(path), measures=measures, source=source)


def parse_yield_test(
    text: str, *, file: str = "", measures: str | None = None, source: str | None = None
) -> YieldTest:
    """As ``read_yield_test``, from text; ``file`` is the name that errors show."""
    from scalepan.csv_document import read_rows  # here: `import scalepan` stays quick

    rows = read_rows(text, file, _columns())
    return _made(rows, measures, file if source is None else source)


def yield_test(rows: object, *, measures: str | None = None, source: str = "") -> YieldTest:
    """As ``read_yield_test``, from mappings with the columns of the file, or from a data frame.

    Raises:
        FoodError: ``yield.table``, ``yield.column``, ``yield.float``, ``yield.cell`` and what
            ``read_yield_test`` raises, with the number of the row.
    """
    from scalepan.own_tables import rows_of_table

    placed: list[Mapping[str, Placed]] = [
        {column: (text, "", number, 0) for column, text in row.texts.items()}
        for number, row in enumerate(rows_of_table(rows, _columns()), start=1)
    ]
    try:
        return _made(placed, measures, source)
    except Error as error:
        cell = f"row {error.line} of the yield table" if error.line else ""
        raise make_error(error.code, error.message, error.hint, cell=cell) from None


def _columns() -> Columns:
    from scalepan.csv_document import Columns

    optional = ("part", "value", "use", "note")
    return Columns("yield", ("trial", "what", "weight"), optional, ("weight", "value"))


def _made(rows: Sequence[Mapping[str, Placed]], measures: str | None, source: str) -> YieldTest:
    test = _core.make_yield_test(rows, measures or "")
    return YieldTest(test.food, source, test.trials, test.shares, test.parts, test.costs)


_VALUES: dict[str, Callable[[TrialRatio], _core.Quantity]] = {
    RATIO_OF_SUMS: lambda ratio: ratio.ratio_of_sums,
    MEAN_OF_RATIOS: lambda ratio: ratio.mean_of_ratios,
}


def _fact(
    food: str, kind: str, ratio: TrialRatio, by: str, source: str, state: str
) -> dict[str, str]:
    spread = ratio.trials > 1
    said = f"yield test of {ratio.trials} trial{'s' if spread else ''}, {by}"
    parts = ("own", food.lower().replace(" ", "_"), kind, state.lower().replace(" ", "_"))
    return {
        "fact": ".".join(part for part in parts if part),
        "food": food,
        "kind": kind,
        "state": state,
        "value": str(_VALUES[by](ratio)),
        "low": str(ratio.low) if spread else "",
        "high": str(ratio.high) if spread else "",
        "source": f"{said}, {source}" if source else said,
    }
