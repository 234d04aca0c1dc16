"""Refusing what no measurement can be, before it turns into a division by zero, a complex number or
a nan.
"""

from __future__ import annotations

import math
from fractions import Fraction


def above_zero(**values: float | Fraction) -> None:
    """Raise ValueError, naming it, for a value that is not a finite number above zero."""
    for what, value in values.items():
        if not 0 < value < math.inf:
            raise ValueError(f"{what.replace('_', ' ')} must be above zero, not {value}")


def not_below_zero(**values: float | Fraction) -> None:
    """Raise ValueError, naming it, for a value that is not a finite number from zero up."""
    for what, value in values.items():
        if not 0 <= value < math.inf:
            raise ValueError(f"{what.replace('_', ' ')} must not be below zero, not {value}")
