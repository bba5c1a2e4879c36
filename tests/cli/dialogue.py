# SPDX-License-Identifier: Apache-2.0
"""Talks with `rodtravel walkround`: through a pseudo-terminal as a person does, or through pipes as a script does."""
import fcntl
import os
import pty
import select
import signal
import struct
import subprocess
import termios

PATIENCE = 20  # seconds until silence is a failure; far beyond what any answer takes
PAUSE = 0.001  # seconds of silence behind what looks like a prompt; a prompt is written in one piece


def has_terminals():
    """Some confined systems have no pseudo-terminals."""
    try:
        for end in pty.openpty():
            os.close(end)
    except OSError:
        return False
    return True


def on_terminal(words, environment, columns=0):
    """The exit status of a command, and what a terminal of that width shows of it; 0 = it does not say how wide it is."""
    master, slave = pty.openpty()
    fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", 24 if columns else 0, columns, 0, 0))
    shown = bytearray()
    with subprocess.Popen(words, stdin=subprocess.DEVNULL, stdout=slave, stderr=subprocess.DEVNULL,
                          env=environment) as child:
        os.close(slave)
        try:
            while block := os.read(master, 65536):  # a terminal holds a few kilobytes that nobody reads
                shown.extend(block)
        except OSError:
            pass  # the end of a terminal
    os.close(master)
    return child.returncode, shown.decode("utf-8").replace("\r\n", "\n")


class Dialogue:
    """One run of the command. `said` is all it wrote, `prompts` the questions in their order."""

    def __init__(self, command, *arguments, terminal=True, columns=80, raw=False, before=None, environment=None):
        self.said, self.prompts = "", []
        self.patient = raw  # a question may come back any number of times
        words = [command, "walkround", *map(str, arguments)]
        options = {"preexec_fn": before, "env": environment or dict(os.environ, TERM="dumb")}
        if terminal:
            self.end, slave = pty.openpty()
            fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))
            if raw:
                self.make_raw(slave)
            self.process = subprocess.Popen(words, stdin=slave, stdout=slave, stderr=slave, start_new_session=True,
                                            **options)
            os.close(slave)
            self.source = self.end
        else:
            self.process = subprocess.Popen(words, stdin=subprocess.PIPE, stdout=subprocess.PIPE,
                                            stderr=subprocess.STDOUT, **options)
            self.end, self.source = self.process.stdin.fileno(), self.process.stdout.fileno()

    @staticmethod
    def make_raw(terminal):
        """Every byte reaches the program, none is echoed or means anything to the terminal."""
        mode = termios.tcgetattr(terminal)
        mode[0] &= ~(termios.ICRNL | termios.INLCR | termios.IXON | termios.ISTRIP | termios.IGNCR)
        mode[3] &= ~(termios.ICANON | termios.ECHO | termios.ISIG | termios.IEXTEN)
        termios.tcsetattr(terminal, termios.TCSANOW, mode)

    def read(self, patience):
        """Some text, or None at the end or when nothing came."""
        if not select.select([self.source], [], [], patience)[0]:
            return None
        try:
            block = os.read(self.source, 65536)
        except OSError:
            block = b""  # the end of a terminal
        if not block:
            return None
        text = block.decode("utf-8", "replace").replace("\r\n", "\n")
        self.said += text
        return text

    def prompt(self):
        """Waits for the next question; None when the program has ended. A question may be wrapped in front of '> '."""
        fresh = ""
        while True:
            text = self.read(PATIENCE)
            if text is None:
                assert self.process.poll() is not None or self.wait() is not None, "silence: " + self.said[-500:]
                return None
            fresh += text
            if fresh.endswith((": ", "> ")) and not select.select([self.source], [], [], PAUSE)[0]:
                break
        lines = fresh.split("\n")
        question = lines[-1][:-2]
        if lines[-1] == "> ":
            question = ""
            for line in reversed(lines[:-1]):
                if line.startswith(("= ", "! ", "  ", "Part ", "Check: ")) or not line or line.endswith((".", ":")):
                    break
                question = (line + " " + question).strip()
        self.prompts.append(question)
        assert self.prompts[-9:] != [question] * 9 or self.patient, "asked again and again: " + self.said[-500:]
        return question

    def send(self, text, end="\n"):
        data = text if isinstance(text, bytes) else text.encode()
        data += end.encode()
        while data:
            data = data[os.write(self.end, data):]

    def answer(self, text):
        """Sends an answer; returns what is said until the next question, or the end."""
        before = len(self.said)
        self.send(text)
        self.prompt()
        return self.said[before:]

    def drain(self):
        while self.read(PATIENCE) is not None:
            pass

    def wait(self):
        """The exit status, after everything was read."""
        if self.end is not None:
            self.drain()
            self.close()
        return self.process.wait(PATIENCE)

    def close(self):
        if self.process.stdin is not None:
            for stream in (self.process.stdin, self.process.stdout):
                try:
                    stream.close()
                except OSError:
                    pass
        elif self.end is not None:
            os.close(self.end)
        self.end = None

    def kill(self, number=signal.SIGKILL):
        self.process.send_signal(number)
        return self.wait()

    def leave(self):
        """Ends a run that is of no more interest."""
        if self.process.poll() is None:
            self.process.kill()
        if self.end is not None:
            self.wait()
