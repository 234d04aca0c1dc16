"""Results to Markdown, JSON and CSV on disk, from templates in ``site_src``. Computes no number."""
