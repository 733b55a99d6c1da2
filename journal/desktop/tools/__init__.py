"""What the hand does on the drawing: one tool a file, each a small state machine."""
