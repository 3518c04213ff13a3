"""Drawings of a tooth for paper."""
