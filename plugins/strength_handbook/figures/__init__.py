"""Figures of a body in a lift: from a base pose and angles to joints, checks, words and SVG."""
