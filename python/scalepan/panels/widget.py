"""The widget: carries messages between a desk and the pages that show it."""

from __future__ import annotations

import sys
from importlib import resources
from typing import TYPE_CHECKING, Any
from weakref import WeakSet

import traitlets
from anywidget import AnyWidget

from scalepan.display import bundle
from scalepan.panels import twin  # noqa: F401  makes the display of a desk known

if TYPE_CHECKING:
    from collections.abc import Container

    from scalepan.panels.desk import Desk, State
    from scalepan.sheets import Sheet

_FILES = resources.files("scalepan.panels")


class Panel(AnyWidget):
    """A live panel, as ``scalepan.panel`` makes it."""

    _esm = traitlets.Unicode((_FILES / "panel.js").read_text(encoding="utf-8")).tag(sync=True)
    _css = traitlets.Unicode((_FILES / "panel.css").read_text(encoding="utf-8")).tag(sync=True)
    state: traitlets.Dict[str, object] = traitlets.Dict().tag(sync=True)

    def __init__(self, desk: Desk) -> None:
        # A page that opens later is sent the state as it is then: the desk keeps it in place.
        super().__init__(state=desk.state)
        self._desk = desk
        self.on_msg(self._hear)
        _PANELS.add(self)
        _follow_the_notebook()

    @property
    def sheet(self) -> Sheet:
        """What it shows, and changes."""
        return self._desk.sheet

    def refresh(self) -> None:
        """Shows the sheet as it is now, after a change that was not made in the panel.

        In a Jupyter notebook this is done after each cell that runs.
        """
        self._tell(self._desk.refresh())

    def _repr_mimebundle_(  # type: ignore[override]  # anywidget leaves these out
        self, include: Container[str] | None = None, exclude: Container[str] | None = None
    ) -> tuple[dict[str, Any], dict[str, Any]]:
        """The widget, and beside it the same figures as HTML and as plain text."""
        widget, metadata = super()._repr_mimebundle_() or ({}, {})
        return {**widget, **bundle(self._desk, include, exclude)}, metadata

    def _hear(self, _: object, message: object, __: object) -> None:
        self._tell(self._desk.answer(message))
        for other in list(_PANELS):
            if other is not self and other.sheet is self.sheet:
                other.refresh()

    def _tell(self, answer: State | None) -> None:
        if answer is not None:
            self.send(answer)


_PANELS: WeakSet[Panel] = WeakSet()


def _refresh_all(_: object = None) -> None:
    for panel in list(_PANELS):
        if panel.comm is not None:
            panel.refresh()


def _follow_the_notebook() -> None:
    """IPython tells when a cell has run, so that nothing need ask again and again."""
    ipython = sys.modules.get("IPython")
    shell = ipython.get_ipython() if ipython is not None else None
    if shell is not None:
        shell.events.register("post_run_cell", _refresh_all)
