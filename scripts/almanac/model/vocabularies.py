"""What the program itself knows of vocabularies: which field takes its words from which, and the
few words that it asks for by name. Everything else about a word is the club's, in its file.
"""

from __future__ import annotations

VOCABULARY_OF = {
    "mode": "modes",
    "kick": "kicks",
    "stroke": "strokes",
    "position": "positions",
    "arms": "arms",
    "effort": "efforts",
    "goal": "goals",
    "level": "levels",
}
"""The vocabulary of each field that is one word, or a list of words of one."""
