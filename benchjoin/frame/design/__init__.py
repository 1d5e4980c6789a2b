"""Design files: a frame as plain TOML in the words of the Python, read and written back."""
