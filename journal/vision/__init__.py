"""What pixels tell: squaring a picture up, laying it flat. NumPy and OpenCV come on first use."""
