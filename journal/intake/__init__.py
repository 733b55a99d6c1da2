"""From files outside to records."""
