"""Midspan: judge and set up the camshaft chain drive of an engine."""
