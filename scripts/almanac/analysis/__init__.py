"""What pages, reports, checks and reviews all ask of a catalogue: every figure worked out once and
kept, two catalogues compared.
"""
