"""Timber meets paper: one kind of drawing a file. Each asks the layout where things are and makes a sheet of it."""
