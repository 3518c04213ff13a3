"""What a person types, as numbers; and numbers, as a person reads them."""
