"""What a restoration is: plain values and rules, free of Qt, SQL and disk."""
