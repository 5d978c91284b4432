"""Hours: where the time went."""
