"""From a description to parts, joints, sets and findings: where everything falls. Nothing here draws."""
