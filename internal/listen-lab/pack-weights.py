"""Packs trained weights for the package, with a worked example of the second look for its tests.

Usage: python3 pack-weights.py NETWORK_FOLDER weights.data.ts [worked.data.ts]
"""
import base64, json, sys
import numpy as np

folder, target, *worked = sys.argv[1:4]
info = json.load(open(folder + '/network.json'))
data = np.fromfile(folder + '/network.f32', '<f4')
shapes = info['shapes']


def layers():
    """(name, weights, biases) of each layer, as views of the data."""
    at = 0
    for name, shape in shapes:
        n = int(np.prod(shape))
        yield name, data[at: at + n].reshape(shape), data[at + n: at + n + shape[0]]
        at += n + shape[0]


def equalise(into, out):
    """Scales hidden units, which changes nothing but what bytes lose of `out`: M. Nagel and others, "Data-free quantization", ICCV 2019.

    `into` are the layers whose rows, over and over, are the units that `out` reads."""
    units = out.shape[1]
    size = np.sqrt(sum((w.reshape(-1, units, w.shape[1]) ** 2).sum(2).mean(0) for w, _ in into))
    scale = np.sqrt((np.abs(out).max(0) + 1e-9) / size)
    for w, b in into:
        again = np.tile(scale, len(w) // units)
        w *= again[:, None]; b *= again
    out /= scale


def rounded(w, scale, moments):
    """Whole numbers of `scale` nearest to `w` in what they give for inputs of these second moments, by descent from the nearest."""
    q = np.round(w / scale)
    for row, step, want in zip(q, scale[:, 0], w):
        for _ in range(60):
            slope = moments @ (row * step - want)
            gain = [(2 * sign * step * slope[i] + step ** 2 * moments[i, i], i, sign) for i in range(len(row)) for sign in (-1, 1) if abs(row[i] + sign) <= 127]
            best, i, sign = min(gain)
            if best >= -1e-15: break
            row[i] += sign
    return q


def moments_of_events(w, b):
    """Second moments of an event's numbers, as of `moments_of` in train.py: logits of deviation 3, claims and embeddings from 0 to 1."""
    voices = len(info['voices'])
    mean = np.concatenate([np.zeros(voices), np.full(voices, 0.5), w.sum(1) / 2 + b])
    spread = np.zeros((len(mean), len(mean)))
    spread[:voices, :voices] = np.eye(voices) * (3 / 4) ** 2
    spread[voices:2 * voices, voices:2 * voices] = np.eye(voices) / 12
    spread[2 * voices:, 2 * voices:] = w @ w.T / 12
    return spread + np.outer(mean, mean)


by_name = {name: (w, b) for name, w, b in layers()}
equalise([by_name['f1'], by_name['u']], by_name['f2'][0])
equalise([by_name['f2']], by_name['f3'][0])
moments = dict(f1=np.array(info['moments']), u=moments_of_events(*by_name['z']))
parts = []
for name, w, b in layers():
    if w.ndim == 3:
        w = w.transpose(0, 2, 1)  # kernel position, then input
    w = w.reshape(len(w), -1)
    scale = np.abs(w).max(1) / 127 + 1e-12
    whole = rounded(w, scale[:, None], moments[name]) if name in moments else np.round(w / scale[:, None])
    parts += [scale.astype('<f4').tobytes(), b.astype('<f4').tobytes(), whole.astype('i1').tobytes()]
text = base64.b64encode(b''.join(parts)).decode()
open(target, 'w').write("/** Weights of the stroke network, packed by internal/listen-lab/pack-weights.py; see weights.ts. */\n"
                        "export const WEIGHTS =\n  '" + text + "';\n")
if worked:
    example, (w, b) = info['second'], by_name['z']
    description = np.array(example['embedding']).reshape(-1, w.shape[1]) @ w.T + b
    rows = dict(presence=example['presence'], description=description.ravel(), near=example['written'], expected=example['expected'], again=example['again'])
    text = ''.join('  %s: [%s],\n' % (name, ', '.join('%g' % round(float(x), 4) for x in values)) for name, values in rows.items())
    open(worked[0], 'w').write('/** A worked example of the second look: six random events and what the training script made of them. */\n'
                               'export const WORKED = {\n' + text + '};\n')
