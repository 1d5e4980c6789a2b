"""What is read and ticked: lists of parts, settings and findings, the cover and the contents."""
