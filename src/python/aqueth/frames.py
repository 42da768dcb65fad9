# SPDX-License-Identifier: BSL-1.0
"""Columns of pandas and of dask.dataframe, which a ufunc of three arguments cannot take beside plain numbers."""
from __future__ import annotations

import functools
from typing import Any

import numpy as np

from . import _core


def call(name: str, *arguments: Any, **keywords: Any) -> Any:
    """Calls a function with columns among its arguments: columns come out, with the same index."""
    if any(type(a).__module__.startswith("dask.") for a in arguments):
        return _lazily(name, *arguments, **keywords)
    import pandas as pd

    if any(isinstance(a, pd.DataFrame) for a in arguments):
        raise TypeError(f"{name} takes columns, not a whole DataFrame")
    columns = [a for a in arguments if isinstance(a, pd.Series)]
    if not columns:  # an Index
        return getattr(_core, name)(*(np.asarray(a) if isinstance(a, pd.Index) else a for a in arguments), **keywords)
    index = columns[0].index
    if not all(index.equals(c.index) for c in columns[1:]):  # as in arithmetic of pandas: by their labels
        index = functools.reduce(lambda one, other: one.union(other), (c.index for c in columns))
        arguments = tuple(a.reindex(index) if isinstance(a, pd.Series) else a for a in arguments)
    numbers = (a.to_numpy(dtype=float, na_value=np.nan) if isinstance(a, pd.Series) else a for a in arguments)
    found = getattr(_core, name)(*numbers, **keywords)
    if isinstance(found, tuple):
        return type(found)(pd.Series(part, index=index, name=field) for field, part in zip(found.__match_args__, found))
    return pd.Series(found, index=index, name=name)


def _lazily(name: str, *arguments: Any, **keywords: Any) -> Any:
    """the same for dask.dataframe: partition by partition, when the result is needed"""
    import dask.dataframe as dd

    fields = getattr(_core._results.get(name), "__match_args__", None)
    if fields is None:
        return dd.map_partitions(getattr(_core, name), *arguments, meta=(name, "f8"), **keywords)
    table = dd.map_partitions(_table, name, *arguments, meta=[(field, "f8") for field in fields], **keywords)
    return _core._results[name](table[field] for field in fields)


def _table(name: str, *arguments: Any, **keywords: Any) -> Any:
    import pandas as pd

    found = getattr(_core, name)(*arguments, **keywords)
    return pd.DataFrame(dict(zip(found.__match_args__, found)))
