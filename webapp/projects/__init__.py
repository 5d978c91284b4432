"""Projects: one design being stitched each."""
