export const some = new Set([1]).union(new Set([2]));
export const two = Promise.withResolvers();
export const lock = navigator.wakeLock.request('screen');
export const frame = new VideoFrame(image);
