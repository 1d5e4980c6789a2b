"""What lies on a page: border and title block, tables, drawings in their room, and what may not lie on each other."""
