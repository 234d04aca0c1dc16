"""What composing stands on and what is said of it: the table of a squad, its data, the answer and
the entry.
"""
