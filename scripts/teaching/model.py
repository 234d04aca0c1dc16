"""A logistic model with a quadratic penalty, and the matrices that it is fitted to."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
from scipy.optimize import minimize
from scipy.sparse import csr_matrix, diags_array
from scipy.special import expit

Numbers = npt.NDArray[np.float64]
_STEPS = 150


@dataclass(frozen=True)
class Table:
    """Which text (a row) has which trait (a column, by its name), as often as it counts."""

    names: Sequence[str]
    cells: csr_matrix

    def only(self, columns: npt.NDArray[np.int64]) -> Table:
        """Some of the traits."""
        return Table([self.names[at] for at in columns], self.cells[:, columns].tocsr())

    def evened(self, least: int = 1) -> csr_matrix:
        """Each row divided by the square root of what it counts, ``least`` at least, as a text is
        weighed.
        """
        counted = np.asarray(self.cells.sum(axis=1)).ravel()
        return (diags_array(1 / np.sqrt(np.maximum(counted, least))) @ self.cells).tocsr()


def table(rows: Iterable[Iterable[str]], least: int) -> Table:
    """A table of the traits that ``least`` texts have at least."""
    numbers: dict[str, int] = {}
    places: list[int] = []
    ends = [0]
    for row in rows:
        places += [numbers.setdefault(name, len(numbers)) for name in row]
        ends.append(len(places))
    cells = csr_matrix((np.ones(len(places)), places, ends), (len(ends) - 1, len(numbers)))
    often = np.asarray((cells > 0).sum(axis=0)).ravel() >= least
    return Table(list(numbers), cells).only(np.flatnonzero(often))


@dataclass(frozen=True)
class Model:
    """The weight of each column, and what is added to every row."""

    weights: Numbers
    bias: float

    def of(self, cells: csr_matrix) -> Numbers:
        """What each row weighs."""
        weighed: Numbers = cells @ self.weights + self.bias
        return weighed


def fitted(cells: csr_matrix, unsafe: Numbers, counts: Numbers, trust: float) -> Model:
    """The model that tells unsafe rows best: the least log-loss, both sides counting the same in
    all, with half the square of the weights over ``trust``. ``counts`` says how much a row counts.
    """
    signs = 2 * unsafe - 1
    sides = [counts[unsafe == side].sum() for side in (0, 1)]
    counted = counts * np.where(unsafe == 1, sum(sides) / sides[1], sum(sides) / sides[0]) / 2

    def loss(packed: Numbers) -> tuple[float, Numbers]:
        margins = signs * (cells @ packed[:-1] + packed[-1])
        slopes = -signs * counted * expit(-margins) * trust
        value = trust * (counted * np.logaddexp(0, -margins)).sum() + packed[:-1] @ packed[:-1] / 2
        return value, np.append(cells.T @ slopes + packed[:-1], slopes.sum())

    start = np.zeros(cells.shape[1] + 1)
    best = minimize(loss, start, jac=True, method="L-BFGS-B", options={"maxiter": _STEPS}).x
    return Model(best[:-1], float(best[-1]))
