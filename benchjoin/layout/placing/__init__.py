"""Where every member stands, before any joint takes wood: sizes, heights, places along length and depth, corners."""
