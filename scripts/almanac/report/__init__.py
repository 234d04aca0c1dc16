"""What the program says of computed results off the site: text for a terminal, JSON contracts,
workings in words, reviews.
"""
