#!/usr/bin/python3
"""Writes a copy of the judging rooms in which a seeded sample of operators, constants and
comparisons can each be switched to another at run time.

    make_mutants.py ROOT OUT COUNT SEED

OUT gets CMakeLists.txt, src and tests as in ROOT, the mutated files in place of their own, and
mutants.json: one entry for each, in the order of the sample, with its file, line, what stands there
and what stands for it. Needs Debian's python3-clang-14.
"""

import collections
import hashlib
import json
import multiprocessing
import pathlib
import shutil
import sys
import typing

from clang import cindex
from clang.cindex import CursorKind as Kind
from clang.cindex import TypeKind

ROOMS = ("rig", "snow", "passage", "terrain", "hazard")
HERE = "::rimehaul::mutants::"
OTHER = {
    "<": ("less_or_equal_for_less", "not_less_for_less"),
    "<=": ("less_for_less_or_equal", "greater_for_less_or_equal"),
    ">": ("greater_or_equal_for_greater", "not_greater_for_greater"),
    ">=": ("greater_for_greater_or_equal", "less_for_greater_or_equal"),
    "==": ("not_equal_for_equal",),
    "!=": ("equal_for_not_equal",),
    "+": ("minus_for_plus",),
    "-": ("plus_for_minus",),
    "*": ("divided_for_times",),
    "/": ("times_for_divided",),
    "+=": ("minus_for_plus_into",),
    "-=": ("plus_for_minus_into",),
    "&&": ("left_alone", "right_alone"),
    "||": ("left_alone", "right_alone"),
}
NUMBERS = (TypeKind.BOOL, TypeKind.INT, TypeKind.UINT, TypeKind.LONG, TypeKind.ULONG,
           TypeKind.DOUBLE)
CONSTANT = (Kind.FLOATING_LITERAL, Kind.INTEGER_LITERAL, Kind.CXX_BOOL_LITERAL_EXPR)

class Source:
    """One file and what can be changed in it."""

    def __init__(self, path, root):
        self.path = path
        self.name = str(path.relative_to(root))
        self.text = path.read_bytes()
        self.sites = []
        self.seen = set()
        self.texts = collections.Counter()

    def part(self, extent):
        return self.text[extent.start.offset:extent.end.offset].decode()

    def add(self, node, kind, operator, names):
        place = (operator.start.offset, operator.end.offset)
        if place in self.seen:
            return
        self.seen.add(place)
        text = " ".join(self.part(node).split())
        self.sites.append({
            "file": self.name, "line": operator.start.line, "kind": kind,
            "from": node.start.offset, "to": node.end.offset, "operator": place,
            "text": text, "occurrence": self.texts[text], "names": names})
        self.texts[text] += 1


def operator_between(source, left, right):
    """The extent of the operator token between two operands."""
    between = source.text[left.end.offset:right.start.offset].decode()
    token = between.strip(" \n()")
    start = left.end.offset + between.find(token)
    return token, start, start + len(token)


def is_number(kind):
    """A plain number or truth, or a quantity: what can be a tenth larger."""
    kind = kind.get_canonical()
    return kind.kind in NUMBERS or "units::Quantity<" in kind.spelling or "units::Slope" in kind.spelling


def is_text(node):
    return "basic_string" in node.type.get_canonical().spelling


def is_reckoned_at_build(source, node):
    """What is reckoned when the program is built cannot be switched when it runs."""
    start = node.extent.start.offset
    return (node.kind in (Kind.STATIC_ASSERT, Kind.ENUM_DECL) or
            (node.kind == Kind.VAR_DECL and b"constexpr" in source.text[start:start + 40]))


class Place(typing.NamedTuple):
    offset: int
    line: int


class Extent(typing.NamedTuple):
    start: Place
    end: Place


def part_of(extent, start, end):
    line = extent.start.line
    return Extent(Place(start, line), Place(end, line))


def look(source, node, in_body):
    for child in node.get_children():
        if child.location.file is None or child.location.file.name != str(source.path):
            if child.kind not in (Kind.UNEXPOSED_EXPR, Kind.CALL_EXPR, Kind.NAMESPACE):
                continue
        if is_reckoned_at_build(source, child):
            continue
        if child.kind == Kind.CASE_STMT:
            parts = list(child.get_children())
            for part in parts[1:]:
                visit(source, part, in_body)
                look(source, part, in_body)
            continue
        visit(source, child, in_body)
        look(source, child, in_body or child.kind == Kind.COMPOUND_STMT)


def visit(source, node, in_body):
    if not in_body or is_text(node):
        return
    extent = node.extent
    if node.kind in (Kind.BINARY_OPERATOR, Kind.COMPOUND_ASSIGNMENT_OPERATOR):
        operands = list(node.get_children())
        if len(operands) != 2:
            return
        token, start, end = operator_between(source, operands[0].extent, operands[1].extent)
        if token in OTHER:
            source.add(extent, token, part_of(extent, start, end), OTHER[token])
    elif node.kind == Kind.CALL_EXPR and node.spelling.startswith("operator"):
        operands = list(node.get_children())
        # A comparison that the compiler makes of <=> is there twice; the inner one knows its ends.
        if len(operands) != 3 or operands[2].extent.start.offset < operands[1].extent.end.offset:
            return
        token = source.part(operands[1].extent)
        if token in OTHER and token not in ("&&", "||"):
            source.add(extent, token, operands[1].extent, OTHER[token])
    elif node.kind == Kind.UNARY_OPERATOR and source.part(extent).startswith("-"):
        start = extent.start.offset
        source.add(extent, "negated", part_of(extent, start, start + 1), ("unchanged_for_negated",))
    elif node.kind in CONSTANT:
        source.add(extent, "constant", extent, ("changed",))
    elif node.kind == Kind.DECL_REF_EXPR and node.referenced is not None:
        named = node.referenced
        if (named.kind == Kind.VAR_DECL and named.spelling.startswith("k") and
                named.spelling[1:2].isupper() and
                named.semantic_parent.kind in (Kind.NAMESPACE, Kind.TRANSLATION_UNIT) and
                is_number(node.type)):
            source.add(extent, "constant", extent, ("changed",))


def sites_of(place):
    path, root = place
    source = Source(path, root)
    unit = cindex.Index.create().parse(
        str(path), args=["-x", "c++", "-std=c++20", f"-I{root}/src"])
    for told in unit.diagnostics:
        if told.severity >= cindex.Diagnostic.Error:
            sys.exit(f"{path}: {told}")
    look(source, unit.cursor, False)
    return source.sites


def edits_of(mutant):
    """(offset, order, text removed, text put there); outer parts open first and close last."""
    size = mutant["to"] - mutant["from"]
    number, name = mutant["id"], mutant["other"]
    start, end = mutant["operator"]
    if mutant["kind"] in ("&&", "||"):
        held = f" || {HERE}on({number}))" if mutant["kind"] == "&&" else f" && !{HERE}on({number}))"
        if name == "right_alone":
            return [(mutant["from"], (1, -size), 0, "(("), (start, (0, size), 0, held + " "),
                    (mutant["to"], (0, size), 0, ")")]
        return [(mutant["from"], (1, -size), 0, "("), (end, (1, -size), 0, " ("),
                (mutant["to"], (0, size), 0, held + ")")]
    if mutant["kind"] == "constant":
        return [(mutant["from"], (1, -size), 0, f"{HERE}{name}({number}, "), (mutant["to"], (0, size), 0, ")")]
    if mutant["kind"] == "negated":
        return [(mutant["from"], (1, -size), 1, f"{HERE}{name}({number}, "), (mutant["to"], (0, size), 0, ")")]
    return [(mutant["from"], (1, -size), 0, f"{HERE}{name}({number}, "), (start, (0.5, 0), end - start, ","),
            (mutant["to"], (0, size), 0, ")")]


def mutated(text, mutants):
    edits = sorted((edit for mutant in mutants for edit in edits_of(mutant)),
                   key=lambda edit: (edit[0], edit[1]))
    result, at = b"", 0
    for offset, _, removed, put in edits:
        result += text[at:offset] + put.encode()
        at = offset + removed
    return result + text[at:]


def drawn(site, seed):
    """A number drawn for each place, the same however the sources change elsewhere."""
    lot = f"{seed}|{site['file']}|{site['text']}|{site['occurrence']}"
    return hashlib.sha256(lot.encode()).hexdigest()


def main():
    root, out = (pathlib.Path(argument).resolve() for argument in sys.argv[1:3])
    count, seed = int(sys.argv[3]), sys.argv[4]
    paths = [(path, root) for room in ROOMS
             for path in sorted((root / "src" / room).iterdir()) if path.suffix in (".cpp", ".h")]
    with multiprocessing.Pool() as pool:
        sites = [site for found in pool.map(sites_of, paths, 1) for site in found]
    sample = sorted(sites, key=lambda site: drawn(site, seed))[:count]
    for number, site in enumerate(sample):
        names = site.pop("names")
        site["id"] = number
        site["other"] = names[int(drawn(site, seed)[:8], 16) % len(names)]
    shutil.rmtree(out, ignore_errors=True)
    out.mkdir(parents=True)
    shutil.copy(root / "CMakeLists.txt", out)
    for folder in ("src", "tests", "docs", "routes", "dem-samples"):
        shutil.copytree(root / folder, out / folder)
    for name in {site["file"] for site in sample}:
        mine = [site for site in sample if site["file"] == name]
        (out / name).write_bytes(mutated((root / name).read_bytes(), mine))
    told = [{key: site[key] for key in ("id", "file", "line", "kind", "other", "text")}
            for site in sample]
    (out / "mutants.json").write_text(json.dumps({"places": len(sites), "mutants": told}, indent=1))
    print(f"mutants: {len(sample)} of {len(sites)} places")


if __name__ == "__main__":
    main()
