"""The one page that is carried to the machine: a card as text, Markdown or HTML."""
