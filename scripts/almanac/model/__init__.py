"""Documents to frozen dataclasses; every reference linked; the Catalogue. Computes nothing."""
