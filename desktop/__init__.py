"""What a person sees and touches: window, prints, command line; uses Qt and every room below."""
