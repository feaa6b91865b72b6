"""A page that shows a panel: the panel's own script, and a stand-in for a notebook's model."""

from __future__ import annotations

import copy
from typing import Any

import scalepan

# The script is loaded as a notebook loads it: from a text. What Python answers is heard in order.
SHOW = """async ([script, style, state]) => {
  const heard = new Set();
  window.hear = (answers) => answers.forEach((answer) => heard.forEach((each) => each(answer)));
  const model = {
    get: () => state,
    on: (_, each) => heard.add(each),
    off: (_, each) => heard.delete(each),
    send: async (message) => hear(await toPython(message)),
  };
  const sheet = document.createElement('style');
  sheet.textContent = style;
  document.head.append(sheet);
  const url = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
  const { default: { render } } = await import(url);
  window.leave = render({ model, el: document.querySelector('main') });
}"""


class Answers:
    """What a panel sends, in the place of a notebook's channel."""

    def __init__(self, panel: Any) -> None:
        self.panel = panel
        self._sent: list[Any] = []
        panel.send = lambda answer: self._sent.append(copy.deepcopy(answer))

    def to(self, message: object) -> list[Any]:
        """What a page's message is answered with."""
        data = {"method": "custom", "content": message}
        self.panel._handle_msg({"content": {"data": data}, "buffers": []})
        return self.taken()

    def taken(self) -> list[Any]:
        """What was sent since."""
        sent, self._sent = self._sent, []
        return sent


def merged(state: dict[str, Any], patch: dict[str, Any]) -> dict[str, Any]:
    """As a page merges a patch: figures and controls by name, everything else whole."""
    by_name = {key: {**state[key], **patch.get(key, {})} for key in ("figures", "controls")}
    new = {key: value for key, value in patch.items() if key != "after"}
    return {**state, **new, **by_name}


def large_sheet(cells: int = 1000) -> scalepan.Sheet:
    """A thousand cells: portions, what each line is written with, and what it needs."""
    sheet = scalepan.Sheet()
    sheet.set("portions", 40)
    sheet.set("serves", 4)
    for place in range((cells - 2) // 2):
        sheet.set(f"line{place}.written", f"{100 + place}/7 g EP")
        sheet.define(f"line{place}.need", f"line{place}.written * portions / serves")
    return sheet


def show(page: Any, panel: Any) -> Answers:
    """Shows the panel in a page, whose messages go to Python."""
    answers = Answers(panel)
    page.expose_function("toPython", answers.to)
    page.evaluate(SHOW, [panel._esm, panel._css, copy.deepcopy(panel.state)])
    return answers
