"""benchjoin: from a described bench to full-size marking templates and dimensioned elevations."""
