"""What a coach may write, typed and frozen: room, exercises, programs, doses, house rules.

Text with a unit becomes a number here and nowhere else. Every type refuses unknown keys; what a
coach reads about a refusal is worded in `reading.wording`.
"""
