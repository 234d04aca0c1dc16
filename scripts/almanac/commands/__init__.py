"""The command line. Holds no logic: each command reads, calls, prints, and returns its exit
code.
"""
