"""The data by which a practice or a set is run on the deck."""
