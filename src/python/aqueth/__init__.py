# SPDX-License-Identifier: BSL-1.0
"""Physical properties of ethanol-water mixtures.

Functions have the names and units of the C and C++ interfaces. A call with numbers gives a number, and raises Refusal
where an argument is out of range. A call with arrays gives an array, with NaN for refused elements; `reasons` tells why.
"""
from . import _core, ufuncs
from ._core import *  # noqa: F403
from ._core import __version__
from .codes import Argument, AzeotropeSide, Limit, Medium, StrengthScale, Sugar
from .parcel import Parcel, Strength
from .refusal import Reasons, Refusal, reasons

__all__ = [name for name in vars(_core) if name in _core._ufuncs or name.endswith("Result")]
__all__ += ["Argument", "AzeotropeSide", "Limit", "Medium", "Parcel", "Reasons", "Refusal", "Strength", "StrengthScale",
            "Sugar", "Sweetener", "__version__", "reasons", "ufuncs"]
