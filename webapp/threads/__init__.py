"""Thread: the legend of a project, how much of it there must be, what she has, and what is to be bought."""
