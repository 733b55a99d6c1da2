"""The Halden Rook: a made-up car, its years of work, and the pictures drawn of it."""
