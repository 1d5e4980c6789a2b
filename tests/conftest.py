from hypothesis import settings

settings.register_profile("ci", derandomize=True, deadline=None, max_examples=60)
settings.load_profile("ci")  # another one: pytest --hypothesis-profile=…
