"""Sheets into files: SVG, PDF and PNG, their fonts and names, each file whole or not at all."""
