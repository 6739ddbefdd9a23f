export const lock = navigator.wakeLock?.request('screen');
export const frame = typeof VideoFrame === 'undefined' ? null : new VideoFrame(image);
export const some = [3, 1].toSorted();
export const named = CSS.escape('a');
