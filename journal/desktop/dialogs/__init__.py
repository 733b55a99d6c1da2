"""Windows that ask for something or show a list, one file each."""
