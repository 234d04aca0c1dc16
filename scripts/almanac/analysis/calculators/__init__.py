"""The calculators: what a coach would otherwise work out on a whiteboard, by the program's own
formulas.
"""

from __future__ import annotations

from collections.abc import Mapping

from almanac.analysis.calculators import (
    drag,
    kicks,
    lane_of_swimmers,
    loads,
    pools,
    races,
    tests_of_a_swimmer,
)
from almanac.analysis.calculators.calculator import Calculator

CALCULATORS: Mapping[str, Calculator] = {
    calculator.name: calculator
    for calculator in (
        tests_of_a_swimmer.SEND_OFFS,
        tests_of_a_swimmer.DESCEND,
        lane_of_swimmers.LANE,
        races.CRITICAL_SPEED,
        races.FADE,
        races.POINTS,
        drag.FROM_TIMES,
        drag.PARACHUTE,
        drag.PULLEY,
        drag.CORD,
        kicks.KICK_RATE,
        kicks.KICK_COUNT,
        kicks.STROUHAL,
        loads.SESSION_LOAD,
        loads.WEEK_LOAD,
        pools.UNITS,
        pools.OTHER_POOL,
    )
}
