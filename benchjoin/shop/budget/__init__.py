"""The error budget: what the way of measuring does to the marks, and to the squareness of the frame."""
