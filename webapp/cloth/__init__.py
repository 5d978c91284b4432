"""The cloth bench: what cloth is this."""
