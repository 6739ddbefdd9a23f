export { loudnessDb } from '@shedbook/sound';
