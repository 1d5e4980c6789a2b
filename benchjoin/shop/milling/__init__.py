"""Milling: batches and blanks for the machines, the order of work, and the sizes that were found on the wood."""
