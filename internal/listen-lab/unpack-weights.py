"""Unpacks packed weights (weights.data.ts, held-back.weights.mjs) for train.py's START: what pack-weights.py did, undone.

Usage: python3 unpack-weights.py PACKED network.f32
"""
import base64, re, sys
import numpy as np

packed, target = sys.argv[1:3]
# as LAYERS in packages/listen/src/network/network.ts: rows, what each row reads, kernel
LAYERS = dict(c1=(40, 24, 3), c2=(56, 40, 3), c3=(64, 56, 3), l1=(160, 288, 1), d1=(224, 544, 1), d2=(128, 224, 1), out=(39, 128, 1),
              z=(20, 128, 1), proto=(26, 20, 1), f1=(32, 14, 1), u=(13 * 32, 46, 1), f2=(24, 32, 1), f3=(1, 24, 1))
data, at, parts = base64.b64decode(re.search(r"'([A-Za-z0-9+/=]+)'", open(packed).read())[1]), 0, []


def take(kind, count):
    global at
    values = np.frombuffer(data, kind, count, at)
    at += values.nbytes
    return values


for rows, inputs, kernel in LAYERS.values():
    scale, bias = take('<f4', rows), take('<f4', rows)
    w = take('i1', rows * inputs * kernel).reshape(rows, kernel, inputs) * scale[:, None, None]
    parts += [w.transpose(0, 2, 1).ravel(), bias]  # input, then kernel position
assert at == len(data)
np.concatenate(parts).astype('<f4').tofile(target)
