"""The choice of a practice for each slot of a block: rules with points, a plan by filling and
exchange, a bound, and a solver where there is one.
"""
