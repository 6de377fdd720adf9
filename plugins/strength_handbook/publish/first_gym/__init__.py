"""A gym's own folder from nothing: what a coach answers, and the files that follow from it."""
