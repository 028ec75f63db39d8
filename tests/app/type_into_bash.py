#!/usr/bin/env python3
"""Types a line behind "rimehaul " into a bash with the completion and tells the words it became.

usage: type_into_bash.py COMPLETION PROGRAM LINE
"""
import os
import pty
import re
import select
import sys

completion, program, line = sys.argv[1:]
child, terminal = pty.fork()
if child == 0:
    os.environ.update(
        TERM="dumb", PS1="", INPUTRC="/dev/null", PATH=os.path.dirname(program) + ":" + os.environ["PATH"]
    )
    os.execvp("bash", ["bash", "--norc", "--noprofile", "-i"])


def read_until(mark):
    text = ""
    while not re.search(mark, text, re.DOTALL):
        if not select.select([terminal], [], [], 60)[0]:
            sys.exit("bash says nothing more than: " + text)
        text += os.read(terminal, 4096).decode()
    return text


def type_in(text):
    os.write(terminal, text.encode())


type_in(f"source '{completion}'; PS1=; bind 'set bell-style none'; echo re''ady\n")
read_until("\nready")
type_in("rimehaul " + line)
# To the start of the line, over the program's name, and what tells the words in its place.
type_in("\x01\x1bd" + "printf '<%s' 'words>'; printf '[%s]'" + "\x05" + "; echo '<e''nd>'\n")
told = read_until("<words>.*<end>")
print(re.search("<words>(.*)<end>", told, re.DOTALL).group(1).strip(), end="")
type_in("exit\n")
