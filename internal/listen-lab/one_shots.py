"""A shelf of one-shot drum samples, as bank.json (one row a sample) and bank.i16 (mono, signed 16 bit)."""
import json, os
import numpy as np

LONG = {'ride', 'crash', 'hihat-open'}


class Shelf:
    """Samples of many kits; each begins at its physical onset."""

    def __init__(self, rate, folder=None, splits=('train', 'dev', 'test', 'own')):
        """An empty shelf, or the one written in `folder`, for samples of some splits."""
        self.splits = splits
        self.rate, self.rows, self.blob, self.at, self.seen, self.kept = rate, [], [], 0, {}, {}
        if folder:
            self.rows = json.load(open(folder + '/bank.json'))
            self.blob = [np.fromfile(folder + '/bank.i16', np.int16)]
            self.at = len(self.blob[0])

    def audio(self, row):
        """The sample of a row, at a peak of 1."""
        return self.kept[row['start']].astype(np.float64) / 30000

    def cut(self, x, voice, rise=0.03):
        """The sample from its physical onset (first rise over `rise` of the attack's peak) until it has died away."""
        if len(x) < 500 or np.abs(x).max() < 2e-4:
            return None
        head = np.abs(x[: self.rate // 2])
        peak = head.max()
        start = int(np.argmax(head > rise * peak))
        back = head[max(0, start - 30): start] > rise / 3 * peak
        start = max(0, start - int(back.sum()))
        x = x[start:]
        limit = int(self.rate * (3.0 if voice in LONG else 1.2))
        x = x[:limit].copy()
        env = np.abs(x)
        alive = np.nonzero(env > env.max() * 10 ** (-62 / 20))[0][-1] + 1
        x = x[: max(alive, 2000)]
        n = min(len(x) // 3, 2205)
        x[-n:] *= np.linspace(1, 0, n)
        return x

    def put(self, kit, split, voice, group, x):
        """Adds a cut sample; None is passed over."""
        if x is None or split not in self.splits:
            return
        level = 10 * np.log10(np.mean(x[: self.rate // 10] ** 2) + 1e-12)
        y = np.round(x / np.abs(x).max() * 30000).astype('<i2')
        same = (len(y), y[:4000].tobytes())
        if same not in self.seen:
            self.seen[same] = self.at
            self.kept[self.at] = y
            self.blob.append(y); self.at += len(y)
        self.rows.append(dict(kit=kit, split=split, voice=voice, group=group, level=round(float(level), 2), start=self.seen[same], length=len(y)))

    def write(self, folder):
        os.makedirs(folder, exist_ok=True)
        np.concatenate(self.blob).tofile(os.path.join(folder, 'bank.i16'))
        json.dump(self.rows, open(os.path.join(folder, 'bank.json'), 'w'))
        print(len(self.rows), 'samples', self.at * 2 / 1e6, 'MB')
