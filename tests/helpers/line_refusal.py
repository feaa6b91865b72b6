"""The error of a line that cannot be read."""

from __future__ import annotations

import pytest
import scalepan


def refusal(line: str, measures: str | None = "metric", decimal: str = "point") -> scalepan.Error:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.read_line(line, measures=measures, decimal=decimal)
    return caught.value


def expect(error: scalepan.Error, kind: type[scalepan.Error], code: str, text: str) -> None:
    assert (type(error), error.code, str(error)) == (kind, code, f"line 1:{text}")
    assert error.column == int(text.split(":")[0])
