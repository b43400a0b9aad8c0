"""References to the document's examples; a service starts without working the examples out."""


def named(name: str) -> dict[str, dict[str, str]]:
    """Refer to an example of `examples.ALL`, in the form OpenAPI wants."""
    return {name: {"$ref": f"#/components/examples/{name}"}}
