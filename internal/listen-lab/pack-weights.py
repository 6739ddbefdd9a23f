"""Packs trained weights for the package, with a worked example of the second look for its tests.

Usage: python3 pack-weights.py NETWORK_FOLDER weights.data.ts [worked.data.ts]
"""
import base64, json, sys
import numpy as np

folder, target, *worked = sys.argv[1:4]
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
# the description of the example's events, by the layer `z`
at, (w, b) = 0, (None, None)
for name, shape in info['shapes']:
    n = int(np.prod(shape))
    if name == 'z': w, b = data[at: at + n].reshape(shape), data[at + n: at + n + shape[0]]
    at += n + shape[0]
if worked:
    example = info['second']
    description = np.array(example['embedding']).reshape(-1, w.shape[1]) @ w.T + b
    rows = dict(presence=example['presence'], description=description.ravel(), near=example['written'], expected=example['expected'], again=example['again'])
    text = ''.join('  %s: [%s],\n' % (name, ', '.join('%g' % round(float(x), 4) for x in values)) for name, values in rows.items())
    open(worked[0], 'w').write('/** A worked example of the second look: six random events and what the training script made of them. */\n'
                               'export const WORKED = {\n' + text + '};\n')
