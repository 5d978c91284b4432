"""The demonstration: an invented stitcher's house, filled with months of evenings."""
