"""Story sticks: one strip with every mark of a part, in pieces on desk pages."""
