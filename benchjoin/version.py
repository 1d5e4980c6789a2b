"""The version, in this one place: the package's metadata and the command line read it."""

__version__ = "0.2.0"
