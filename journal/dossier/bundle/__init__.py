"""The bundle: what lies where in it, what it says of itself, its seals, and its check."""
