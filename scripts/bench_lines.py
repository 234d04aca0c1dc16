"""How every benchmark prints a figure: beside its goal, and whether it is kept."""

from __future__ import annotations


class Report:
    """Lines of measured against goal; remembers whether one was missed."""

    def __init__(self, width: int = 48) -> None:
        """``width`` letters hold what was measured."""
        self.missed = False
        self.width = width

    def line(
        self,
        what: str,
        value: float,
        goal: float,
        unit: str = "",
        more: str = "",
        *,
        at_least: bool = False,
        digits: int = 0,
    ) -> None:
        """One figure: fine at most at its goal, or with ``at_least`` at least at it."""
        fine = value >= goal if at_least else value <= goal
        self.missed |= not fine
        bound = "at least" if at_least else "at most"
        print(
            f"{'fine' if fine else 'OVER':5}{what:{self.width}}{value:>10,.{digits}f} {unit:3} "
            f"{bound} {goal:,.{digits}f}{more}",
            flush=True,
        )

    @property
    def exit_code(self) -> int:
        """1 where a goal was missed, else 0."""
        return int(self.missed)
