"""Packs trained weights for the package: python3 pack-weights.py NETWORK_FOLDER weights.data.ts worked.json"""
import base64, json, sys
import numpy as np

folder, target, worked = sys.argv[1:4]
info = json.load(open(folder + '/network.json'))
data = np.fromfile(folder + '/network.f32', '<f4')
at, parts = 0, []
for name, shape in info['shapes']:
    n = int(np.prod(shape))
    w, b = data[at: at + n].reshape(shape), data[at + n: at + n + shape[0]]
    at += n + shape[0]
    if len(shape) == 3:
        w = w.transpose(0, 2, 1)  # kernel position, then input
    w = w.reshape(shape[0], -1)
    scale = np.abs(w).max(1) / 127 + 1e-12
    parts += [scale.astype('<f4').tobytes(), b.astype('<f4').tobytes(), np.round(w / scale[:, None]).astype('i1').tobytes()]
assert at == len(data)
text = base64.b64encode(b''.join(parts)).decode()
open(target, 'w').write("/** Weights of the stroke network, packed by internal/listen-lab/pack-weights.py; see weights.ts. */\n"
                        "export const WEIGHTS =\n  '" + text + "';\n")
w = info['worked']
round_ = lambda v, n=6: [round(x, n) for x in v]
json.dump(dict(x=round_(w['x'][4000 - 1700: 4000 + 2800]), at=1700, s=round_(w['s']), l=round_(w['l']), ref=round(w['ref'], 6), y=round_(w['y'])), open(worked, 'w'))
