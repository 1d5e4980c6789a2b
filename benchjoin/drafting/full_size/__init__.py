"""Paper that is laid on the wood: bars to check it by, pages of tiles and strips, what a printer does to lengths."""
