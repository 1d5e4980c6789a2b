"""What a notebook shows: pages of HTML for values, and sliders that redraw them."""
