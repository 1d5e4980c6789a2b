import bare_machine  # noqa: F401 - every Python that finds this folder on PYTHONPATH imports this file as it starts
