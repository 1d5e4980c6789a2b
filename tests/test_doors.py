import benchjoin


def test_all_is_sorted():
    assert list(benchjoin.__all__) == sorted(set(benchjoin.__all__))


def test_every_name_in_all_exists_and_is_ours():
    strangers = [
        name for name in benchjoin.__all__ if not getattr(benchjoin, name).__module__.startswith("benchjoin")
    ]
    assert strangers == []
