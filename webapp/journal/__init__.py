"""The journal: everything done, in order, and the fold that makes numbers of it."""
