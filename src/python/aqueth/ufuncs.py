# SPDX-License-Identifier: BSL-1.0
"""The functions of aqueth as ufuncs of numpy, for what asks for a ufunc. They never raise Refusal.

Pickles of these ufuncs, as Dask sends them to its workers, name this module.
"""
from . import _core

globals().update(_core._ufuncs)
__all__ = sorted(_core._ufuncs)
