"""The body of a swimmer: from the words of an entry to joint angles, to a posed body, to SVG and a
description in words.
"""
