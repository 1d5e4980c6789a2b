"""How a drawing becomes a sheet: what all pages of a shop share, scales and paper, notes."""
