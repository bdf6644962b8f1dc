#!/usr/bin/env python3
"""Reads a DXF file with ezdxf and prints as JSON what is in it and what is wrong with it.

usage: audit_dxf.py FILE

Strict: exit 1 on any audit error, any automatic fix, any name that is used and not defined; exit 2 if it cannot be read.
"""
import collections
import json
import logging
import sys

import ezdxf


def shown(text):
    """A string without the format's escapes for characters beyond ASCII."""
    return ezdxf.decode_dxf_unicode(text).encode("utf-16", "surrogatepass").decode("utf-16")


def undefined_names(doc):
    """Names used by entities or tables that no table defines, as 'kind name'."""
    layers = {x.dxf.name.lower() for x in doc.layers}
    linetypes = {x.dxf.name.lower() for x in doc.linetypes}
    styles = {x.dxf.name.lower() for x in doc.styles}
    dimstyles = {x.dxf.name.lower() for x in doc.dimstyles}
    appids = {x.dxf.name.lower() for x in doc.appids}
    blocks = {x.name.lower() for x in doc.blocks}
    missing = set()

    def need(kind, name, known):
        if name.lower() not in known:
            missing.add(kind + " " + name)

    def visit(entity):
        kind = entity.dxftype()
        need("layer", entity.dxf.get("layer", "0"), layers)
        need("linetype", entity.dxf.get("linetype", "BYLAYER"), linetypes)
        if kind in ("TEXT", "MTEXT", "ATTRIB", "ATTDEF"):
            need("style", entity.dxf.get("style", "Standard"), styles)
        if kind in ("DIMENSION", "LEADER"):
            need("dimstyle", entity.dxf.get("dimstyle", "Standard"), dimstyles)
        if kind == "INSERT":
            need("block", entity.dxf.name, blocks)
            for attribute in entity.attribs:
                visit(attribute)
        if kind == "DIMENSION":
            need("block", entity.dxf.get("geometry", ""), blocks)
        if entity.xdata:
            for appid in entity.xdata.data:
                need("appid", appid, appids)

    for block in doc.blocks:
        for entity in block:
            visit(entity)
    for layer in doc.layers:
        need("linetype", layer.dxf.linetype, linetypes)
    for name, known in (("$CLAYER", layers), ("$TEXTSTYLE", styles), ("$DIMSTYLE", dimstyles)):
        need(name, doc.header.get(name, "?"), known)
    return sorted(missing)


def content(doc, layout):
    """Counts, texts, attributes and viewports of a layout."""
    counts = collections.Counter(entity.dxftype() for entity in layout)
    texts, attributes, xdata, viewports = [], [], [], []
    for entity in layout:
        kind = entity.dxftype()
        if kind in ("TEXT", "MTEXT"):
            texts.append(shown(entity.plain_text()))
        elif kind == "INSERT":
            if entity.attribs:
                attributes.append({a.dxf.tag: shown(a.plain_text()) for a in entity.attribs})
        elif kind == "VIEWPORT" and entity.dxf.id > 1:
            viewports.append({
                "scale": entity.dxf.view_height / entity.dxf.height,
                "center": [entity.dxf.view_center_point[0], entity.dxf.view_center_point[1]],
                "locked": bool(entity.dxf.flags & 16384),
                "frozen": len(entity.frozen_layers),
            })
        if entity.xdata:
            for appid, tags in entity.xdata.data.items():
                xdata.append([appid] + [shown(str(tag.value)) for tag in tags[1:]])
    return {"counts": dict(counts), "texts": texts, "attributes": attributes, "xdata": xdata, "viewports": viewports}


def main():
    logging.disable(logging.WARNING)
    try:
        doc = ezdxf.readfile(sys.argv[1])
    except (OSError, ezdxf.DXFError, ValueError) as problem:
        print(json.dumps({"unreadable": f"{type(problem).__name__}: {problem}"}))
        return 2
    undefined = undefined_names(doc)  # before the audit, which repairs in silence
    auditor = doc.audit()
    report = {
        "version": doc.dxfversion,
        "units": doc.header.get("$INSUNITS", 0),
        "measurement": doc.header.get("$MEASUREMENT", 0),
        "layers": [shown(layer.dxf.name) for layer in doc.layers],
        "blocks": [block.name for block in doc.blocks],
        "appids": [appid.dxf.name for appid in doc.appids],
        "layouts": {shown(name): content(doc, doc.layouts.get(name)) for name in doc.layout_names_in_taborder()},
        "undefined": undefined,
        "errors": [entry.message for entry in auditor.errors],
        "fixes": [entry.message for entry in auditor.fixes],
    }
    print(json.dumps(report, indent=1))
    return 1 if undefined or auditor.errors or auditor.fixes else 0


if __name__ == "__main__":
    sys.exit(main())
