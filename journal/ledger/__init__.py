"""Money and hours: shared out, summed, compared."""
