/** Makes an MP3 file of what a teacher said, which every browser plays. */
import { encodeMp3 } from '@shedbook/sound';
import type { SpokenOrder } from './voice-messages.ts';

self.onmessage = ({ data: { samples, sampleRateHz } }: MessageEvent<SpokenOrder>) => {
  encodeMp3({ left: samples, right: samples, sampleRateHz }).then((bytes) => {
    self.postMessage(bytes);
    self.close();
  }, reportError);
};
