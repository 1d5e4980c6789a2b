"""Which fastener goes into each joint, how long, where, into which hole, and what it holds."""
