"""What the screens show, as plain lines of text: no terminal, no Textual, so that it can be tested alone."""
