"""Words of the catalogue and computed results drawn as SVG text."""
