"""Reads DXF files with ezdxf and prints what it measures, one JSON object a line."""
import json
import sys

import ezdxf


def points(entity):
    kind = entity.dxftype()
    if kind == "LINE":
        return [entity.dxf.start, entity.dxf.end]
    if kind == "POLYLINE":
        return [v.dxf.location for v in entity.vertices]
    return []


for name in sys.stdin.read().split("\n"):
    if not name.strip():
        continue
    drawing = ezdxf.readfile(name)
    errors = [str(e) for e in drawing.audit().errors]
    lengths, circles, boxes, texts = [], [], {}, []
    for entity in drawing.modelspace():
        layer = entity.dxf.layer
        if entity.dxftype() == "CIRCLE":
            circles.append([layer, entity.dxf.radius])
        if entity.dxftype() == "TEXT":
            texts.append(entity.dxf.text)
        own = points(entity)
        for a, b in zip(own, own[1:]):
            lengths.append([layer, a.distance(b)])
        for p in own:
            box = boxes.setdefault(layer, [p.x, p.y, p.x, p.y])
            box[:] = [min(box[0], p.x), min(box[1], p.y), max(box[2], p.x), max(box[3], p.y)]
    print(json.dumps({"file": name, "version": drawing.dxfversion, "errors": errors,
                      "lengths": lengths, "circles": circles, "boxes": boxes, "texts": texts}))
