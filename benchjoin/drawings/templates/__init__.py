"""What is laid on the wood: the page of a set, story sticks and lay-on patterns, the marks that all of them bear."""
