"""Reminders: taking the work off the frame at night."""
