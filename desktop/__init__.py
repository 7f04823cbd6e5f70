"""What a person sees and touches: window, face, reading line, prints, command line. Qt lives only here."""
