"""Changes of an entry's text at the places where they belong: every other byte, comments and layout
too, stays.
"""
