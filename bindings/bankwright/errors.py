"""What bankwright raises. One to one with the library: what the user wrote is a finding, a caller's mistake an
exception.

| library                 | here          | is also a      |
|-------------------------|---------------|----------------|
| a bank that cannot be read whole | `Unreadable` | `ValueError` |
| `std::invalid_argument` | `Unsuitable`  | `ValueError`   |
| `std::out_of_range`     | `UnknownName` | `LookupError`  |
| `std::length_error`     | `TooLarge`    | `ValueError`   |
| `Parsed::problem`       | `BadQuantity` | `ValueError`   |
| a bare `double`, which does not compile there | `UnitNeeded` | `TypeError` |
"""
import json
from typing import Any

__all__ = ["BadQuantity", "Error", "TooLarge", "Unreadable", "Unsuitable", "UnitNeeded", "UnknownName"]


class Error(Exception):
    """Every exception that bankwright itself raises."""


class Unreadable(Error, ValueError):
    """The bank cannot be used as written. `findings` says why, in the form that `check` gives."""

    def __init__(self, findings: dict[str, Any]) -> None:
        self.findings = findings
        super().__init__("\n".join(
            f"{file['file']}:{found.get('line', '-')}: {found['message']} [{found['rule']}]"
            for file in findings["files"] for found in file["findings"] if found["level"] == "error"))

    def __reduce__(self) -> tuple[type, tuple[dict[str, Any]]]:
        return type(self), (self.findings,)


class Unsuitable(Error, ValueError):
    """What was asked for does not go with this bank or with another argument; the message names part and key."""


class UnknownName(Error, LookupError):
    """There is no part, terminal, key or quantity of that name."""


class TooLarge(Error, ValueError):
    """More than there can be room for, such as a drawing of a thousand parts."""


class BadQuantity(Error, ValueError):
    """A text that does not say a quantity of the kind that is wanted."""


class UnitNeeded(Error, TypeError):
    """A bare number where a quantity with a unit is needed; the message names units that will do."""


def unreadable(document: str) -> Unreadable:
    """The exception for a JSON document of findings; called from the compiled half."""
    return Unreadable(json.loads(document))
