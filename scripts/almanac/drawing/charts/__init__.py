"""Charts of computed results: bars, strips, columns, ladders, neighbours, drag over speed."""
