import bare_machine  # noqa: F401 - from here on, programs from outside the environment are refused
from hypothesis import settings

collect_ignore = ["bare"]  # a second import would lay a second hook

settings.register_profile("ci", derandomize=True, deadline=None, max_examples=60)
settings.load_profile("ci")  # another one: pytest --hypothesis-profile=…
