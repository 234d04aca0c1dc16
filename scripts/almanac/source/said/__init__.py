"""What a text or a number says by itself, in whatever way coaches write it: how many, how long,
which day, in which unit, which hazard.
"""
