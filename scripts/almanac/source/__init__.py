"""Bytes to documents with the place of every key and value; schemas to findings. Knows no drill."""
