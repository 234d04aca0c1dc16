"""The choice of a practice's pieces: DEVELOPERS.md, "The choice", says in which order it goes. The
pages make the same in ``site_src/scripts/compose/``.
"""
