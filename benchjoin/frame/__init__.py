"""What the maker describes, frozen, with no solving: stock, legs, rails, levels, clears and the frame of them all."""
