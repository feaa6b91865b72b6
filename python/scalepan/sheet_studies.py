"""Questions to a sheet: one input over many values, and the input that meets a target."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from scalepan import _core
from scalepan.displays import repr_mimebundle
from scalepan.errors import Error, make_error
from scalepan.progress import progress_bar

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Sequence
    from typing import TypeAlias

    from scalepan._core import Quantity, SweptCell

    Amount: TypeAlias = str | int | Quantity


class Sweep:
    """What some cells come out as for each value of one input, exactly."""

    def __init__(
        self, name: str, values: list[Quantity], cells: list[SweptCell], kernel: str
    ) -> None:
        self.name = name
        self.values = values
        self.kernel = kernel
        self._cells = {cell.name: cell for cell in cells}

    @property
    def cells(self) -> list[str]:
        """Their names, in the order asked for."""
        return list(self._cells)

    def __getitem__(self, cell: str) -> SweptCell:
        return self._cells[cell]

    def __len__(self) -> int:
        return len(self.values)

    def __iter__(self) -> Iterator[SweptCell]:
        return iter(self._cells.values())

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sweep) and vars(self) == vars(other)

    __hash__ = None  # type: ignore[assignment]  # of lists

    _repr_mimebundle_ = repr_mimebundle

    def __repr__(self) -> str:
        return f"<Sweep of {self.name} over {len(self)} values: {', '.join(self.cells)}>"


class ValueRange(NamedTuple):
    """One value of an input, or all between two.

    Attributes:
        low, high: the ends, in the input's unit.
        with_low, with_high: whether the end belongs to them.
    """

    low: Quantity
    high: Quantity
    with_low: bool
    with_high: bool

    def __str__(self) -> str:
        if self.low == self.high:
            return str(self.low)
        first = f"from {self.low}" if self.with_low else f"above {self.low}"
        last = f"up to {self.high}" if self.with_high else f"below {self.high}"
        return f"{first} {last}"


class Studies(_core.Sheet):
    """The questions of a sheet."""

    def sweep(
        self,
        name: str,
        values: Iterable[Amount],
        cells: str | Sequence[str],
        *,
        progress: Callable[[int], None] | None = None,
    ) -> Sweep:
        """The cells for each value of the input ``name``; the sheet itself stays as it is.

        Worked out in machine words where the way from the input is made of sums, products with
        constants and roundings, with all bounds proven beforehand, else point by point;
        ``Sweep.kernel`` tells which. ``progress`` is called now and then with the number of points
        done; without it a bar is drawn after a second, where ``tqdm`` is installed. It runs without
        the interpreter's lock and can be interrupted.

        Raises SheetError (``sheet.unknown``, ``sheet.formula``, ``sheet.type``,
        ``sheet.dimension``, ``sheet.many``).
        """
        wanted = [cells] if isinstance(cells, str) else list(cells)
        if progress is not None:
            return Sweep(name, *self._sweep(name, values, wanted, progress))
        given = list(values)
        with progress_bar(len(given), f"sweep of {name}") as bar:
            return Sweep(name, *self._sweep(name, given, wanted, bar))

    def input_for(
        self, name: str, cell: str, target: Amount, *, between: tuple[Amount, Amount]
    ) -> Quantity:
        """The one value of the input ``name`` at which ``cell`` is exactly ``target``.

        Sought from the first of ``between`` to the second, both included.

        Raises SheetError: ``sheet.none`` with the nearest figures, ``sheet.several`` with all
        values that meet it, ``sheet.no_form`` where the way cannot be turned round,
        ``sheet.many``.
        """
        meetings, below, above = self._meetings(name, cell, target, *between)
        found = [ValueRange(*meeting) for meeting in meetings]
        if len(found) == 1 and found[0].low == found[0].high:
            return found[0].low
        if not found:
            raise _none(name, cell, target, (below, above))
        told = ", ".join(str(meeting) for meeting in found[:_MOST_TOLD])
        if len(found) > _MOST_TOLD:
            told += f" and {len(found) - _MOST_TOLD} more"
        message = f"{cell} is {target} for several values of {name}: {told}"
        raise make_error("sheet.several", message, "look between values that lie closer together")

    def values_for(
        self,
        name: str,
        cell: str,
        *,
        equal: Amount | None = None,
        at_most: Amount | None = None,
        at_least: Amount | None = None,
        between: tuple[Amount, Amount],
    ) -> list[ValueRange]:
        """All values of the input ``name`` at which ``cell`` meets a target or keeps to it, rising.

        Sought from the first of ``between`` to the second, both included. Values at which the cell
        has no single figure meet nothing.

        Raises SheetError: ``sheet.no_form``, ``sheet.many``, and ``sheet.target`` where not one of
        the three targets is given.
        """
        aim, target = _one_target("values_for", equal, at_most, at_least)
        found, _, _ = self._meetings(name, cell, target, *between, aim)
        return [ValueRange(*meeting) for meeting in found]

    def price_for(
        self,
        name: str,
        cell: str,
        target: Amount,
        *,
        between: tuple[Amount, Amount] | None = None,
    ) -> Quantity:
        """The price that meets the target, from nothing up to a hundred times the present one.

        Raises what ``input_for`` raises.
        """
        if between is None:
            between = (0, _present(self, name) * 100)
        return self.input_for(name, cell, target, between=between)

    def share_for(
        self,
        name: str,
        cell: str,
        target: Amount,
        *,
        between: tuple[Amount, Amount] = ("1/100", 1),
    ) -> Quantity:
        """The share that meets the target, sought from a hundredth up to all of it.

        Raises what ``input_for`` raises.
        """
        return self.input_for(name, cell, target, between=between)

    def size_for(
        self,
        cell: str,
        *,
        equal: Amount | None = None,
        at_most: Amount | None = None,
        at_least: Amount | None = None,
        size: str = "portions",
        sizes: Iterable[int] = range(1, 1001),
    ) -> Quantity:
        """The size at which ``cell`` meets a target, of the whole sizes looked through.

        With ``at_most`` the largest size that keeps to it, even where a smaller one does not; with
        ``at_least`` the smallest one that reaches it; with ``equal`` the one that meets it exactly.
        Sizes at which the cell has no single figure meet nothing.

        Raises SheetError: ``sheet.none`` with the nearest figures, ``sheet.several``,
        ``sheet.target`` where not one of the three targets is given.
        """
        aim, target = _one_target("size_for", equal, at_most, at_least)
        swept = self.sweep(size, sizes, cell)
        figures = _figures(swept, cell)
        wanted = _in_unit_of(target, swept[cell])
        if aim == "at_most":
            meets = [place for place, figure in figures if figure <= wanted][-1:]
        elif aim == "at_least":
            meets = [place for place, figure in figures if figure >= wanted][:1]
        else:
            meets = [place for place, figure in figures if figure == wanted]
        if not meets:
            raise _none(size, cell, target, _nearest(swept, figures, wanted))
        if len(meets) > 1:
            sizes_told = ", ".join(str(swept.values[place]) for place in meets[:_MOST_TOLD])
            more = f" and {len(meets) - _MOST_TOLD} more" if len(meets) > _MOST_TOLD else ""
            message = f"{cell} is {target} for several sizes: {sizes_told}{more}"
            raise make_error("sheet.several", message, "ask with at_most for the largest")
        return swept.values[meets[0]]


_MOST_TOLD = 5


def _one_target(
    verb: str, equal: Amount | None, at_most: Amount | None, at_least: Amount | None
) -> tuple[str, Amount]:
    targets = {"equal": equal, "at_most": at_most, "at_least": at_least}
    given = [(aim, target) for aim, target in targets.items() if target is not None]
    if len(given) == 1:
        return given[0]
    message = f"{verb} is given {len(given)} targets"
    raise make_error("sheet.target", message, "give one of equal, at_most, at_least")


def _figures(swept: Sweep, cell: str) -> list[tuple[int, Quantity]]:
    return [
        (place, figure)
        for place, figure in enumerate(swept[cell].figures)
        if isinstance(figure, _core.Quantity)
    ]


def _in_unit_of(target: Amount, cell: SweptCell) -> Quantity:
    """A bare number is of the unit the cell is shown in."""
    amount = target if isinstance(target, _core.Quantity) else _core.quantity(target)
    return _core.quantity(f"{target} {cell.unit}") if cell.unit and not amount.unit else amount


def _nearest(
    swept: Sweep, figures: list[tuple[int, Quantity]], wanted: Quantity
) -> tuple[tuple[Quantity, Quantity] | None, tuple[Quantity, Quantity] | None]:
    below = max(((f, -p) for p, f in figures if f < wanted), default=None)
    above = min(((f, p) for p, f in figures if f > wanted), default=None)
    return (
        None if below is None else (swept.values[-below[1]], below[0]),
        None if above is None else (swept.values[above[1]], above[0]),
    )


def _present(sheet: Studies, name: str) -> Quantity:
    value = sheet.value(name)
    if not isinstance(value, _core.Quantity):
        raise make_error("sheet.type", f"{name} is no single amount", "give between=(low, high)")
    return value


def _none(
    name: str,
    cell: str,
    target: Amount,
    nearest: tuple[tuple[Quantity, Quantity] | None, ...],
) -> Error:
    message = f"no value of {name} that was looked at makes {cell} {target}"
    told = [f"{missed[1]} at {missed[0]}" for missed in nearest if missed is not None]
    return make_error("sheet.none", message, "nearest: " + " and ".join(told) if told else "")
