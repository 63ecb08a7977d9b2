"""A frame as made: where the seats in its surface are."""
