# SPDX-License-Identifier: Apache-2.0
"""Writes a wheel: the same files make the same bytes."""
import base64
import hashlib
import itertools
import os
import time
import zipfile

EXECUTABLE, READABLE = 0o100755, 0o100644


def wheel_tags(tag):
    """Each single tag of a name whose parts are lists."""
    return [f"Tag: {'-'.join(each)}" for each in itertools.product(*(part.split(".") for part in tag.split("-")))]


def record_line(path, content):
    digest = base64.urlsafe_b64encode(hashlib.sha256(content).digest()).rstrip(b"=").decode()
    return f"{path},sha256={digest},{len(content)}\n"


def write_wheel(folder, stem, tag, files):
    """files: {path in the wheel: (content, whether it is a program)}; those of the format itself are added here. stem:
    name and version. Returns the path."""
    about = f"{stem}.dist-info"
    lines = ["Wheel-Version: 1.0", "Generator: rodtravel", "Root-Is-Purelib: false"] + wheel_tags(tag)
    files = files | {f"{about}/WHEEL": (("\n".join(lines) + "\n").encode(), False)}
    record = "".join(record_line(path, content) for path, (content, _) in sorted(files.items())) + f"{about}/RECORD,,\n"
    files[f"{about}/RECORD"] = (record.encode(), False)
    path = os.path.join(folder, f"{stem}-{tag}.whl")
    with zipfile.ZipFile(path, "w") as wheel:
        # An installer may read the description without the rest: it comes last.
        for name in sorted(files, key=lambda name: (name.startswith(about), name.endswith("RECORD"), name)):
            write_member(wheel, name, *files[name])
    return path


def write_member(wheel, name, content, program):
    # A ZIP file knows no day before 1980.
    seconds = max(int(os.environ.get("SOURCE_DATE_EPOCH", 0)), 315532800)
    member = zipfile.ZipInfo(name, time.gmtime(seconds)[:6])
    member.external_attr = (EXECUTABLE if program else READABLE) << 16
    member.create_system = 3    # Unix: the rights are those of a file
    member.compress_type = zipfile.ZIP_DEFLATED
    wheel.writestr(member, content, compresslevel=9)
