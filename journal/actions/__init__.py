"""One function per thing a person does; the window and the command line call these alone."""
