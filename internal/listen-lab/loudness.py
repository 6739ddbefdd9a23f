"""K-weighting, by which levels of strokes are meant: ITU-R BS.1770-4 Annex 1, the analogue parameters of libebur128 (MIT)."""
import math
import numpy as np


def k_sections(rate):
    """The shelf and the high-pass at `rate` Hz, as second-order sections for scipy.signal.sosfilt."""
    k, q = math.tan(math.pi * 1681.974450955533 / rate), 0.7071752369554196
    high = 10 ** (3.999843853973347 / 20)
    band = high ** 0.4996667741545416
    a0 = 1 + k / q + k * k
    shelf = [(high + band * k / q + k * k) / a0, 2 * (k * k - high) / a0, (high - band * k / q + k * k) / a0,
             1, 2 * (k * k - 1) / a0, (1 - k / q + k * k) / a0]
    k, q = math.tan(math.pi * 38.13547087602444 / rate), 0.5003270373238773
    a0 = 1 + k / q + k * k
    return np.array([shelf, [1, -2, 1, 1, 2 * (k * k - 1) / a0, (1 - k / q + k * k) / a0]])


def k_response(rate, n):
    """Complex gain at the n // 2 + 1 frequencies of a real transform of n samples."""
    z = np.exp(-2j * np.pi * np.arange(n // 2 + 1) / n)
    h = np.ones(len(z), complex)
    for b0, b1, b2, a0, a1, a2 in k_sections(rate):
        h *= (b0 + b1 * z + b2 * z ** 2) / (a0 + a1 * z + a2 * z ** 2)
    return h
