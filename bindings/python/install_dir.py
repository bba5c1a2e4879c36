# SPDX-License-Identifier: Apache-2.0
"""Where this Python looks for packages below a prefix; nothing if it looks where meson would install, or nowhere there.

Arguments: the prefix, the directory that meson would take.
"""
import os
import sys


def place(prefix, usual, path):
    below = [each for each in path if os.path.basename(each) in ("site-packages", "dist-packages")
             and each.startswith(os.path.join(prefix, ""))]
    return below[0] if below and usual not in path else ""


if __name__ == "__main__":
    print(place(sys.argv[1], sys.argv[2], sys.path))
