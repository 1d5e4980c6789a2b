"""Joint details: each distinct joint enlarged, leg and rail together, seen from three sides."""
