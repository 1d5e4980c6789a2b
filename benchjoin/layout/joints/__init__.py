"""One file a joint: how deep it lets a rail in, which wood it takes, where its shoulders are; none knows another."""
