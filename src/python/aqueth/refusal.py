# SPDX-License-Identifier: BSL-1.0
"""Why a function refuses: an exception for numbers, a mask and reasons for arrays."""
from __future__ import annotations

from typing import Any, Callable, Iterator, NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from . import _core
from .codes import Argument, Limit


class Refusal(ValueError):
    """An argument is out of range, or what is asked for is impossible.

    function   name of the function
    argument   which quantity was refused
    limit      what sets its range
    value      the refused value
    lower      least accepted value
    upper      greatest accepted value; infinity where there is none
    """

    def __init__(self, function: str, argument: int, limit: int, value: float, lower: float, upper: float,
                 text: str) -> None:
        super().__init__(function, argument, limit, value, lower, upper, text)
        self.function = function
        self.argument = Argument(argument)
        self.limit = Limit(limit)
        self.value = value
        self.lower = lower
        self.upper = upper
        self.text = text

    def __str__(self) -> str:
        return f"{self.function}: {self.text}"


class Reasons(NamedTuple):
    """Why elements were refused, as arrays of one shape. Elements that were answered have refused False, codes 0 and NaN.

    `[r for r in reasons.refusals()]` lists them as exceptions.
    """

    function: str
    refused: NDArray[np.bool_]
    argument: NDArray[np.int32]
    limit: NDArray[np.int32]
    value: NDArray[np.float64]
    lower: NDArray[np.float64]
    upper: NDArray[np.float64]

    def refusals(self) -> Iterator[tuple[tuple[int, ...], Refusal]]:
        """Gives the index of every refused element, and the exception that it would raise as a number."""
        for index in np.argwhere(self.refused):
            at = tuple(int(i) for i in index)
            why = (int(self.argument[at]), int(self.limit[at]), float(self.value[at]), float(self.lower[at]),
                   float(self.upper[at]))
            yield at, Refusal(self.function, *why, _core._refusal_text(*why))


def reasons(function: Callable[..., Any], *arguments: ArrayLike) -> Reasons:
    """Tells which elements `function(*arguments)` refuses, and why.

    function   a function of aqueth, such as density_kg_m3
    arguments  those of the call, numbers or arrays
    """
    name = getattr(function, "__name__", str(function))
    if name not in _core._reasons:
        raise TypeError(f"reasons: {name} is no function of aqueth")
    found = Reasons(name, *(np.asarray(part) for part in _core._reasons[name](*(np.asarray(a) for a in arguments))))
    if (found.refused & np.isnan(found.upper)).any():
        raise ValueError(f"{name}: an enumeration has no such value")
    return found
