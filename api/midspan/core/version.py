"""The version of the calculations, kept with every saved result.

It moves when a computed number, a limit or a verdict can change; the changelog
says which under "Changed numbers".
"""

VERSION = "0.1.0"
