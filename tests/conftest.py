"""Settings for every test: a slow machine is no failure of a property."""

from hypothesis import settings

settings.register_profile("almanac", deadline=None)
settings.load_profile("almanac")
