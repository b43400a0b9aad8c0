"""Statistics that need a library: on the service only, never on the phone."""
