"""Drafts: what a person has typed and not saved yet, kept safe from hang-ups and crashes."""
