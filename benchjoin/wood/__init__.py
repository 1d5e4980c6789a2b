"""What wood does by itself: it takes up and gives off water, swells and shrinks, has a weight. Pure functions."""
