"""Every number on every page: pure functions over the model. No I/O, no clock, no globals, no
text.
"""
