"""Stitch: the page on which the work is tapped in."""
