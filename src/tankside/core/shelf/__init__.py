"""Bottles, batches and the arithmetic of their ledger."""
