"""Who stitches here: accounts, sessions, invitations."""
