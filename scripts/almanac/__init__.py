"""Deck Almanac: a swimming club's drill catalogue as code.

Data flows one way through these layers, and each imports only the layers before it::

    units, findings -> source -> model -> arithmetic -> checks -> figures -> pages -> commands
"""

__version__ = "0.1.0"
