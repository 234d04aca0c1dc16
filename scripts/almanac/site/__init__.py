"""Pages, data files and pictures of the site, written as plain Markdown, JSON, CSV and SVG."""
