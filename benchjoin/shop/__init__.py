"""Planning the work from a layout: what to cut and, later in the job, how. Nothing here draws."""
