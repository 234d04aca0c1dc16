"""What a coach would rather not have in a block, in points: fewer are better. House preference
throughout.
"""

from __future__ import annotations

EMPTY = 5000
"""A slot in which nothing stands."""
SERVES_NOTHING, COMPOSED = 60, 40
"""A practice that serves no goal that is wished for; one that is not in the catalogue yet."""
SPARE, SPARE_IN_TAPER, SPARE_FROM, SPARE_STEP = 12, 1, 5, 5
"""Minutes of the slot that a practice leaves, by steps; in a taper, which is shorter by intent. A
week that is to be light is so by easier work.
"""
UNTESTED, TESTED_ELSEWHERE = 3000, 90
"""A benchmark that is not run in a week in which it is wished for; one that is run again on another
day of the week, at another hour or in another pool than before, which is hard to compare.
"""
GOAL_SHORT, GOAL_LONG_GONE, GOAL_NEVER = 70, 35, 400
"""A session fewer than wished that serves a goal, and two weeks without one, times its weight; a
goal that nothing serves.
"""
LOAD_OVER, LOAD_UNDER, LOAD_STEPS = 16, 6, 200
"""A week off its load, by steps of a full week: half of a hundredth each."""
SHARE = 8
"""A thousandth of a share beyond its range."""
INSIDE = 3
"""Thousandths inside the range of a share that are aimed at: lane groups differ a little."""
STROKE = 6
"""A thousandth of the metres of two weeks that a stroke has too few."""
CUT, NOT_LIGHTER = 8, 3
"""A thousandth of a usual week by which a taper cuts too little or too much; a hundredth of a usual
practice by which a day of it is too long.
"""
CUT_MARGIN = 15
"""Thousandths inside the range: lane groups swim a little more, or less, than the first."""
AGAIN, AGAIN_DAYS = 90, 7
"""A main set that comes again within so many days."""
SAME_AGAIN, SAME_AGAIN_DAYS = 60, 8
"""A practice that does: on the same day of the week after, too."""
TOO_OFTEN = 40
"""A practice once more than its share of the slots, and one."""
SAME_WARM_UP, WARM_UPS_OF = 15, 4
"""A warm-up that is more than half of four in a row."""
HARD_AFTER_HARD, TEST_AFTER_TEST, NEVER_LIGHT, LIGHT_OF = 30, 25, 30, 3
"""Two hard days that touch; two days with tests that do; so many days in a row of which none is
light.
"""
ALL_OUT_APART, STARTS_SEVEN_DAYS = 2, 2
"""Limits, not points. Days in a row of which at most one is all-out, tests apart; and practices
with dives in seven days.
"""
