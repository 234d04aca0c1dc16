"""Revisions of the repository that a folder stands in, read from git's objects: their files, their
history, what was renamed.
"""
