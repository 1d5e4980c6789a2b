"""What the command line does, step by step: open a design, list its papers, write them where they harm nobody's."""
