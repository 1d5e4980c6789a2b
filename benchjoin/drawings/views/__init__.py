"""The piece as it is seen: elevations, plan, sections, pictures, parts and joints."""
