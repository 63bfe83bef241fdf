"""What third_party/npm.json lists, fetched from the npm registry once and unpacked: without npm, each held to its
sha512."""
import base64
import concurrent.futures
import contextlib
import hashlib
import io
import json
import os
import pathlib
import shutil
import ssl
import subprocess
import tarfile
import tempfile
import urllib.error
import urllib.request

SECONDS = 20  # of each fetch


class CannotBeHad(Exception):
    pass


def registry():
    """What the machine's npm is set to, where it has one."""
    named = os.environ.get("NPM_CONFIG_REGISTRY", "")
    if not named and shutil.which("npm"):
        with contextlib.suppress(subprocess.SubprocessError):
            named = subprocess.run(["npm", "config", "get", "registry"], capture_output=True, text=True, check=False,
                                   timeout=SECONDS).stdout.strip()
    return (named if named.startswith("http") else "https://registry.npmjs.org").rstrip("/")


def trust():
    context = ssl.create_default_context()  # honours SSL_CERT_FILE
    more = os.environ.get("NODE_EXTRA_CA_CERTS", "")
    if pathlib.Path(more).is_file():
        context.load_verify_locations(more)
    return context


def tarball(package, of, context):
    name, version = package["name"], package["version"]
    address = f"{of}/{name}/-/{name.split('/')[-1]}-{version}.tgz"
    try:
        with urllib.request.urlopen(address, timeout=SECONDS, context=context) as answer:
            content = answer.read()
    except (OSError, urllib.error.URLError) as reason:
        raise CannotBeHad(f"{address}: {reason}") from None
    found = "sha512-" + base64.b64encode(hashlib.sha512(content).digest()).decode()
    if found != package["integrity"]:
        raise CannotBeHad(f"{address} is not what was pinned: {found}")
    return content


def unpack(content, folder):
    """Plain files only, and none outside of the folder."""
    with tarfile.open(fileobj=io.BytesIO(content)) as members:
        for member in members:
            path = pathlib.PurePosixPath(member.name)
            if not member.isfile() or ".." in path.parts or path.is_absolute():
                continue
            target = folder.joinpath(*path.parts[1:])  # the first is "package"
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(members.extractfile(member).read())


def modules(source, cache):
    """The folder node_modules. Made beside it and moved, so that half of it is never taken."""
    text = (source / "third_party/npm.json").read_bytes()
    ready = cache / f"npm-{hashlib.sha256(text).hexdigest()[:16]}"
    if not ready.is_dir():
        cache.mkdir(parents=True, exist_ok=True)
        packages = json.loads(text)["packages"]
        of, context = registry(), trust()
        with tempfile.TemporaryDirectory(dir=cache) as fresh, concurrent.futures.ThreadPoolExecutor(8) as pool:
            made = pathlib.Path(fresh) / "made"
            contents = pool.map(lambda package: tarball(package, of, context), packages)
            for package, content in zip(packages, contents):
                unpack(content, made / "node_modules" / package["at"])
            made.rename(ready)
    return ready / "node_modules"
